package calc

import (
	"slices"

	"boothset/calc/coat"
	"boothset/calc/supply"
	"boothset/calc/unit"
)

// wallOverStamp is how many times the inlet pressure stamped on the gun the wall may stand
// at, flowing: judgement. The hose stands at the wall's pressure until the air flows, unless a
// regulator nearer the gun holds it back.
const wallOverStamp = 2

// judge adds what speaks against spraying: a mask that starves first, then the day, as
// SolveDay has it, then the supply, then the line.
func (s *Setup) judge(r *Request) {
	day := DayOf(r)
	s.judgeMask(r)
	o := outlook{r: day, flight: newEvaporation(&r.Coat, &r.Gun, r.Day, s.Weather.Ambient), inFlight: &s.Weather.InFlight}
	var m DayRemedy
	o.judge(&s.Judgement, &m)
	if s.PotLife = day.potLife(); s.PotLife.Known {
		drive, err := day.drying(r.Day)
		if err == nil {
			s.judgePotLife(day, &s.PotLife, coat.FlashFactor(drive))
		}
	}
	s.judgeShort(r)
	s.judgeSupply(r)
	s.judgeLine(r)
}

// judgeMask adds an air-fed mask on a supply that fails.
func (s *Setup) judgeMask(r *Request) {
	masked := slices.ContainsFunc(r.Shop.System.Others, func(u supply.User) bool { return u.Mask })
	if fails := s.Short.Is || s.Supplied.Checked && !s.Supplied.Verdict.OK; r.Shop.Known && masked && fails {
		s.add(VerdictStop, "mask-starves", "limit-mask", judgementGround, Turn{ID: "turn-mask"})
	}
}

// judgeShort adds a supply that gives the gun less than its target.
func (s *Setup) judgeShort(r *Request) {
	if !s.Short.Is {
		return
	}
	level := VerdictWait
	if s.Short.Best < r.Coat.Working.Low {
		level = VerdictStop
	}
	best, low := gauge("best", s.Short.Best), gauge("low", r.Coat.Working.Low)
	if r.Supply <= s.Working.Pressure {
		s.add(level, "supply-below-target", "limit-band", r.Coat.Working.Ground, s.turnShort(r), gauge("supply", r.Supply), gauge("working", s.Working.Pressure), best, low)
		return
	}
	s.add(level, "supply-short", "limit-band", r.Coat.Working.Ground, s.turnShort(r), gauge("supply", r.Supply), best, gauge("working", s.Working.Pressure), low, TextFigure("part", s.Line[s.Bottleneck].Name))
}

// turnShort is a part of the line that alone will do, else more supply, else, where that
// would put the wall over what the gun's stamp bears, the part that costs most.
func (s *Setup) turnShort(r *Request) Turn {
	if len(s.Fixes) > 0 {
		if f := &s.Fixes[0]; s.Short.Needed-unit.Gauge(f.Won) < r.Supply {
			return mend(f)
		}
	}
	needed := s.Short.Needed + unit.Gauge(LeastReserve)
	bears := s.Wall.Open+unit.Gauge(LeastReserve)+unit.Gauge(r.Mark) <= wallOverStamp*r.Gun.Stamp.Inlet
	if needed <= TopSupply && (bears || r.RegulatorAt() == Nowhere) {
		return Turn{"turn-more-supply", Figures{gauge("needed", needed)}}
	}
	return s.mendPart()
}

// mend is a fix as what is to be done first.
func mend(f *Fix) Turn {
	return Turn{"turn-mend", append(f.Figures(), SentenceFigure("fix", f.ID()))}
}

// mendPart is the part that costs most as what is to be mended first.
func (s *Setup) mendPart() Turn {
	b := &s.Line[s.Bottleneck]
	return Turn{"turn-mend-part", Figures{TextFigure("part", b.Name), drop("loss", b.Loss)}}
}

// judgeSupply adds a compressor and receiver that do not last for the panel.
func (s *Setup) judgeSupply(r *Request) {
	c := &s.Supplied
	v := &c.Verdict
	ground := Ground{Basis: Computed, Source: "source-receiver"}
	switch {
	case !c.Checked:
	case v.OK:
		s.judgeSeries(r)
	case v.FromFull.Time >= r.Shop.Spraying:
		s.add(VerdictWait, "supply-from-full", "limit-lasts", ground, Turn{ID: "turn-full"}, minutes("hold", v.Hold.Time), minutes("full", v.FromFull.Time), minutes("spraying", r.Shop.Spraying))
	default:
		s.add(VerdictStop, "supply-gives-out", "limit-lasts", ground, turnSupply(v), minutes("hold", v.Hold.Time), gauge("lowest", v.Lowest), gauge("needed", c.Needed), minutes("spraying", r.Shop.Spraying))
	}
}

// judgeSeries adds panels one after another that the air does not last for, and a compressor
// that makes less than is drawn though the receiver hides it for a panel.
func (s *Setup) judgeSeries(r *Request) {
	c := &s.Supplied
	v, n := &c.Verdict, &c.Series
	if n.Recovers && (r.Shop.Panels > 1 || n.Fall == 0) {
		return
	}
	turn := Turn{"turn-pause", Figures{minutes("pause", n.Enough.Time)}}
	if n.Enough.Endless {
		turn = Turn{"turn-compressor", Figures{flow("delivered", v.Demand.Mean)}}
	}
	f := []Figure{CountFigure("held", n.Held), CountFigure("panels", r.Shop.Panels), minutes("pause", r.Shop.Pause), flow("short", -v.Margin), drop("fall", n.Fall)}
	ground := Ground{Basis: Computed, Source: "source-receiver"}
	if n.Held < r.Shop.Panels {
		s.add(VerdictWait, "supply-series", "limit-recovers", ground, turn, f...)
		return
	}
	s.add(VerdictWatch, "supply-deficit", "limit-recovers", ground, turn, f...)
}

// turnSupply is what makes a supply last.
func turnSupply(v *supply.Verdict) Turn {
	id := "turn-compressor"
	switch v.Limit {
	case supply.SwitchLimit:
		id = "turn-switch"
	case supply.MainLimit:
		id = "turn-main"
	case supply.ReceiverLimit:
		id = "turn-receiver"
	}
	return Turn{id, Figures{flow("delivered", v.EnoughDelivered), volume("receiver", v.EnoughReceiver)}}
}

// judgeLine adds what is wrong between the wall and the gun.
func (s *Setup) judgeLine(r *Request) {
	switch {
	case s.overStamp():
		s.add(VerdictStop, "gun-over-stamp", "limit-regulator", Ground{Basis: Computed, Source: "source-line"}, Turn{ID: "turn-regulator"},
			gauge("gun", s.Working.Pressure), gauge("highest", s.Working.Highest), gauge("supply", r.Supply))
		return
	case r.RegulatorAt() == Nowhere:
		s.add(VerdictWait, "no-regulator", "limit-regulator", judgementGround, Turn{ID: "turn-regulator"}, gauge("supply", r.Supply), gauge("open", s.Wall.Open))
		return
	}
	if most := wallOverStamp * r.Gun.Stamp.Inlet; !s.Short.Is && !s.Foot.Is && s.Wall.Flowing > most {
		turn := s.mendPart()
		if len(s.Fixes) > 0 && s.Wall.Flowing-unit.Gauge(s.Fixes[0].Won) <= most {
			turn = mend(&s.Fixes[0])
		}
		s.add(VerdictWait, "wall-high", "limit-wall", judgementGround, turn, RegulatorFigure(r.RegulatorAt()), gauge("flowing", s.Wall.Flowing), gauge("inlet", r.Gun.Stamp.Inlet))
	}
}
