package calc

import (
	"math"

	"boothset/calc/line"
	"boothset/calc/unit"
)

// Grounds that several reasons share.
var (
	lineGround   = Ground{Basis: Computed, Source: "source-line"}
	orderGround  = Ground{Basis: Published, Source: "source-setup-order"}
	jetGround    = Ground{Basis: Estimate, Source: "source-jet"}
	dewGround    = Ground{Basis: Published, Source: "source-psychrometrics"}
	dryingGround = Ground{Basis: Estimate, Source: "source-drying"}
	leverGround  = Ground{Basis: Estimate, Source: "source-levers"}
	valveGround  = Ground{Basis: Estimate, Source: "source-valve"}
	droopGround  = Ground{Basis: Estimate, Source: "source-droop"}
)

// explain gives the reason of each value, with its own figures.
func (s *Setup) explain(r *Request) {
	why := newReasons()
	s.Judgement.explain(why)
	set := !s.Stopped() // else there is nothing to set
	if set {
		s.explainStart(r, why)
	}
	s.explainWeather(r, why)
	if set {
		s.explainGun(r, why)
		s.explainWall(r, why)
		s.explainLearnt(r, why)
		s.explainValve(r, why)
		s.explainComparison(r, why)
		s.explainDistance(r, why)
	}
	if set || s.Short.Is {
		s.explainLine(why)
	}
	if set {
		explainOrder(why)
	}
	s.explainSupply(r, why)
	s.Reasons = *why
}

// explainOrder is the gun's knobs in the order they are set, and how the pattern is proved.
func explainOrder(why *reasons) {
	for _, id := range [...]string{"setup-fan", "setup-fluid", "setup-air", "setup-paper", "setup-flood"} {
		why.add("setup", id, orderGround)
	}
}

func (s *Setup) explainStart(r *Request, why *reasons) {
	w := r.Coat.Working
	id := "gun-start"
	if s.Valve.None {
		id = "gun-start-no-valve"
	}
	why.add("gun", id, w.Ground, TextFigure("coat", r.Coat.Name), TextFigure("gun", r.Gun.Name), gauge("start", w.Start), gauge("low", min(w.Low, s.Working.Highest)), gauge("high", min(w.High, s.Working.Highest)))
}

func (s *Setup) explainGun(r *Request, why *reasons) {
	if s.Working.Pressure >= s.Working.Highest {
		why.add("gun", "gun-held-by-stamp", r.Gun.Ground, gauge("highest", s.Working.Highest))
	}
	why.add("gun", "gun-flow", r.Gun.Ground, gauge("working", s.Working.Pressure), flow("flow", s.Working.Flow), gauge("cap", s.Working.Cap),
		gauge("stampInlet", r.Gun.Stamp.Inlet), flow("stampFlow", r.stamp().Flow))
}

func (s *Setup) explainDistance(r *Request, why *reasons) {
	g := &r.Gun
	id, ground := "distance-jet", jetGround
	bounds := g.Distance
	if held := &r.Coat.Stage.Held; held.Known() {
		bounds = held.Ground
	}
	switch s.Distance.Held {
	case HeldBySheet:
		id, ground = "distance-sheet", bounds
	case HeldFarthest:
		id, ground = "distance-held-far", bounds
	case HeldNearest:
		id, ground = "distance-held-near", bounds
	}
	why.add("distance", id, ground, near("target", s.Distance.Target), gauge("cap", s.Working.Cap))
	if r.Coat.Farther > 0 {
		why.add("distance", "distance-coat", Ground{Basis: CommonPractice}, TextFigure("coat", r.Coat.Name), near("farther", r.Coat.Farther))
	}
	why.add("distance", "distance-class", g.Distance, TextFigure("gun", g.Name), near("nearest", g.Nearest), near("farthest", g.Farthest), near("felt", g.Felt.Distance), gauge("at", g.FeltAt))
}

func (s *Setup) explainLine(why *reasons) {
	b := &s.Line[s.Bottleneck]
	if s.Short.Is {
		why.add("line", "line-limit", lineGround, TextFigure("part", b.Name), drop("loss", b.Loss), gauge("best", s.Short.Best), gauge("needed", s.Short.Needed))
		return
	}
	why.add("line", "line-bottleneck", lineGround, TextFigure("part", b.Name), drop("loss", b.Loss), share("share", b.Share))
	if couplings, n := s.couplings(); n > 1 && couplings > couplingsWorthSaying {
		why.add("line", "line-couplings", lineGround, ratio("count", float64(n)), drop("loss", couplings))
	}
}

// explainComparison sets the wall right and the valve open against the wall high and
// the valve shut down.
func (s *Setup) explainComparison(r *Request, why *reasons) {
	c := &s.Comparison
	if !c.Given {
		return
	}
	id := "compare"
	if c.High.Choked {
		id = "compare-choked"
	}
	set, h := c.Right, c.High
	why.add("valve", id, lineGround, RegulatorFigure(r.RegulatorAt()), gauge("wall", set.Wall), s.Valve.Knob("valve", set.Opening), share("opening", set.Opening), drop("nudge", set.EighthTurn), drop("sag", set.Sag),
		gauge("highWall", h.Wall), s.Valve.Knob("highValve", h.Opening), share("highOpening", h.Opening), drop("highNudge", h.EighthTurn), drop("highSag", h.Sag),
		gauge("working", s.Working.Pressure), share("sagShare", SagShare))
}

// couplingsWorthSaying is the loss in all couplings together from which the answer
// speaks of them.
const couplingsWorthSaying = unit.Drop(3 * unit.PascalPerPSI)

func (s *Setup) couplings() (loss unit.Drop, n int) {
	for _, step := range s.Line {
		if step.Kind == line.CouplingKind {
			loss += step.Loss
			n++
		}
	}
	return loss, n
}

func (s *Setup) explainWeather(r *Request, why *reasons) {
	w := s.Weather
	f := append(pace(w.Drying), temp("air", r.Day.Air), share("humidity", r.Day.Humidity), times("drier", w.InFlight.Drier),
		drop("less", -w.Correction), share("growth", w.InFlight.Growth))
	switch {
	case !r.Coat.Dries():
		why.add("weather", "weather-lamp", Ground{Basis: Computed}, TextFigure("coat", r.Coat.Name))
	case r.Coat.Working.Fixed:
		why.add("weather", "weather-sheet", dryingGround, f...)
	case w.Held:
		why.add("weather", "weather-hot-held", dryingGround, f...)
	case w.Correction < 0 && math.Round(w.InFlight.Growth*100) < 1: // what prints as 0 %
		why.add("weather", "weather-hot-drops", dryingGround, f...)
	case w.Correction < 0:
		why.add("weather", "weather-hot", dryingGround, f...)
	case w.Drying < slowDrying:
		why.add("weather", "weather-slow", dryingGround, f...)
	default:
		why.add("weather", "weather-mild", dryingGround, f...)
	}
	if w.InFlight.Drier > worthLevers {
		for _, l := range w.InFlight.Levers {
			why.add("weather", l.ID, leverGround, l.Size, share("less", l.Less))
		}
	}
	id, margin := "weather-dew", w.PanelMargin
	if margin < 0 {
		id, margin = "weather-dew-below", -margin
	}
	why.add("weather", id, dewGround, temp("dew", w.DewPoint), temp("panel", r.Day.Panel), degrees("margin", margin))
}

// worthLevers is how much drier a coat must land for the answer to say what would
// help.
const worthLevers = 1.25

// slowDrying is the drying below which a day is called slow.
const slowDrying = 0.7

func (s *Setup) explainWall(r *Request, why *reasons) {
	at := r.RegulatorAt()
	f := []Figure{gauge("open", s.Wall.Open), gauge("working", s.Working.Pressure), drop("lost", unit.Drop(s.Wall.Open-s.Working.Pressure)-s.Wall.Reads),
		gauge("flowing", s.Wall.Flowing), drop("reserve", s.Reserve()), gauge("supply", r.Supply)}
	switch {
	case s.Short.Is:
		why.add("wall", "wall-short", lineGround, f...)
		return
	case s.Valve.None && !s.Foot.Is:
		if s.explainNoValve(r, why); at == Nowhere {
			return
		}
	case at == Nowhere:
		why.add("wall", "wall-none", lineGround, f...)
		return
	case s.Foot.Is:
		why.add("wall", "wall-feeds", lineGround, append(f, gauge("foot", s.Foot.Flowing))...)
		why.add("wall", "foot-sets", lineGround, gauge("foot", s.Foot.Flowing), brief(gauge("static", s.Foot.Static)), gauge("working", s.Working.Pressure), flow("flow", s.Working.Flow))
	case at == Foot:
		why.add("wall", "wall-foot", lineGround, f...)
	case s.Wall.Held:
		why.add("wall", "wall-held", lineGround, append(f, RegulatorFigure(at), gauge("highest", s.Working.Highest))...)
	default:
		why.add("wall", "wall-set", lineGround, f...)
	}
	why.add("wall", "wall-static", droopGround, brief(gauge("static", s.Wall.Static)), gauge("flowing", s.Wall.Flowing), flow("flow", s.Working.Flow))
}

func (s *Setup) explainValve(r *Request, why *reasons) {
	v, regulator := s.Valve, RegulatorFigure(r.RegulatorAt())
	switch {
	case v.None:
		why.add("valve", "valve-none", r.Gun.Ground)
	case s.Short.Is:
		why.add("valve", "valve-open-wide", lineGround)
	case s.Foot.Is:
		why.add("valve", "valve-open-foot", lineGround, gauge("working", s.Working.Pressure))
	default:
		why.add("valve", "valve-opening", valveGround, append(v.byHand(r.Gauge), gauge("reads", s.Working.Reads), share("opening", v.Opening),
			drop("reserve", v.Reserve), drop("nudge", v.EighthTurn))...)
		_, least := v.Limit()
		if v.Opening < v.Floor {
			why.add("valve", "valve-below-floor", valveGround, regulator, least, share("floor", v.Floor), gauge("open", s.Wall.Open))
		} else {
			why.add("valve", "valve-floor", valveGround, regulator, v.Knob("valve", v.Floor), share("floor", v.Floor), drop("most", MostEighthTurn))
		}
	}
	if part := r.Gun.ValveOfLine.Name; part != "" {
		why.add("valve", "valve-of-line", Ground{Basis: CommonPractice}, TextFigure("part", part))
	}
	for i := range r.Line {
		if p := &r.Line[i]; p.Kind == line.ValveKind {
			id := "valve-in-line-open"
			if v.None {
				id = "valve-in-line-alone"
			}
			why.add("valve", id, Ground{Basis: CommonPractice}, TextFigure("part", p.Name))
		}
	}
	s.explainGauge(r, why)
	if n := s.Now; n.Given {
		set := s.Wall.Flowing
		if s.Short.Is {
			set = s.Wall.Open // what it would take, had the supply it
		}
		if v.None {
			s.nowNoValve(r, set, why)
			return
		}
		id := "now-valve"
		switch {
		case !n.Enough:
			id = "now-too-low"
		case s.Foot.Is:
			id = "now-foot"
		case n.Choked:
			id = "now-choked"
		}
		why.add("valve", id, lineGround, regulator, gauge("wall", n.Wall), gauge("gun", n.GunIfOpen), v.Knob("valve", n.Opening), share("opening", n.Opening),
			drop("nudge", n.EighthTurn), gauge("working", s.Working.Pressure), gauge("set", set))
	}
}
