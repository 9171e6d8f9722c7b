package command

import (
	"cmp"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/words"
)

// appendPlan appends what is known of a plan into an open object.
func appendPlan(j *jsonWriter, p *answer.Plan, sys unit.System, w *words.Words) {
	r, s := p.Request, p.Setup
	j.object("input", func() { appendInput(j, r, sys) })
	if p.Stopped() { // nothing is set
		for _, name := range [...]string{"first", "wall", "foot", "gun", "distance", "valve"} {
			j.null(name)
		}
	} else {
		appendSettings(j, p, sys, w)
	}
	if p.ShowsLine() {
		appendLine(j, s)
	} else {
		j.null("line")
		j.null("bottleneck")
	}
	if s.Short.Is {
		j.object("short", func() {
			j.gauge("best", s.Short.Best)
			j.gauge("supply_needed", s.Short.Needed)
		})
	} else {
		j.null("short")
	}
	if p.Stopped() {
		j.null("now")
	} else {
		appendNow(j, s)
	}
	j.object("weather", func() {
		j.temp("dew_point", s.Weather.DewPoint)
		j.degrees("panel_margin", s.Weather.PanelMargin)
		j.number("drying", s.Weather.Drying)
		j.drop("correction", s.Weather.Correction)
		appendLanding(j, &s.Weather.InFlight, sys, w)
	})
	appendSpread(j, p.Spread, w)
	appendLearnt(j, p, sys, w)
	appendSupply(j, r, s)
	if p.Stopped() {
		j.null("comparison")
	} else {
		appendComparison(j, &s.Comparison)
	}
	appendFixes(j, s, sys, w)
	appendStages(j, p)
}

// appendSettings appends what to do first, null where that is nothing, and what to set.
func appendSettings(j *jsonWriter, p *answer.Plan, sys unit.System, w *words.Words) {
	r, s := p.Request, p.Setup
	if s.First.ID != "" {
		j.text("first", answer.TurnText(w, sys, s.First))
	} else {
		j.null("first")
	}
	j.object("wall", func() {
		j.gauge("flowing", s.Wall.Flowing)
		j.gauge("static", s.Wall.Static)
		j.gauge("open", s.Wall.Open)
		j.gauge("limit", s.Wall.Limit)
		appendWallRange(j, p.Spread)
	})
	if s.Foot.Is {
		j.object("foot", func() {
			j.gauge("flowing", s.Foot.Flowing)
			j.gauge("static", s.Foot.Static)
			j.gauge("open", s.Foot.Open)
			j.gauge("limit", s.Foot.Limit)
		})
	} else {
		j.null("foot")
	}
	j.object("gun", func() { appendGun(j, r, s) })
	j.object("distance", func() {
		j.near("target", s.Distance.Target)
		j.near("low", s.Distance.Low)
		j.near("high", s.Distance.High)
		if s.Distance.Held == calc.NotHeld {
			j.null("held")
		} else {
			j.text("held", string(s.Distance.Held))
		}
		if p.Spread != nil {
			likely := p.LikelyDistance()
			j.near("spread_low", likely.Low)
			j.near("spread_high", likely.High)
		}
	})
	appendValve(j, p)
}

// appendLine appends the parts of the line.
func appendLine(j *jsonWriter, s *calc.Setup) {
	j.array("line", func() {
		for i := range s.Line {
			appendStep(j, &s.Line[i])
		}
	})
	j.text("bottleneck", s.Line[s.Bottleneck].Name)
}

// appendValve appends how the inlet valve stands, null where the gun has none.
func appendValve(j *jsonWriter, p *answer.Plan) {
	s := p.Setup
	if s.Valve.None {
		j.null("valve")
		return
	}
	j.object("valve", func() {
		j.number("opening", s.Valve.Opening)
		j.number("area", s.Valve.Area)
		j.number("turns", s.Valve.Turns)
		j.number("of_turns", s.Valve.TurnsOf)
		j.number("from_shut", s.Valve.FromShut)
		j.drop("reserve", s.Valve.Reserve)
		j.number("floor", s.Valve.Floor)
		j.bool("choked", s.Valve.Choked)
		j.number("mach", s.Valve.Mach)
		j.drop("eighth_turn", s.Valve.EighthTurn)
		if p.Spread != nil {
			j.number("low", p.Spread.Opening.Low)
			j.number("high", p.Spread.Opening.High)
			j.number("turns_low", p.Spread.Turns.Low)
			j.number("turns_high", p.Spread.Turns.High)
		}
	})
}

// appendLanding appends how dry the coat lands, null where the models do not reach.
func appendLanding(j *jsonWriter, l *calc.InFlight, sys unit.System, w *words.Words) {
	if !l.Known {
		j.null("landing")
		return
	}
	j.object("landing", func() {
		j.number("drier", l.Drier)
		j.number("drop_growth", l.Growth)
		j.array("levers", func() {
			for i := range l.Levers {
				v := &l.Levers[i]
				j.object("", func() {
					j.text("lever", v.ID)
					j.number("less", v.Less)
					f := [...]calc.Figure{v.Size, {Name: "less", Kind: calc.FigureShare, Value: v.Less}}
					j.written("text", func(dst []byte) []byte { return w.Append(dst, sys, v.ID, f[:]) })
				})
			}
		})
	})
}

// appendInput echoes what was asked, as it was understood: of a line that was read, what it is
// described as.
func appendInput(j *jsonWriter, r *calc.Request, sys unit.System) {
	r = r.AsDescribed()
	j.text("coat", r.Coat.ID)
	j.text("stage", r.Coat.Stage.ID)
	appendHardener(j, r.Coat.Hardener)
	j.text("gun", r.Gun.ID)
	j.temp("temp", r.Day.Air)
	j.number("humidity", r.Day.Humidity)
	j.temp("panel", r.Day.Panel)
	j.run("altitude", r.Day.Altitude)
	j.gauge("supply", r.Supply)
	appendInputLine(j, r)
	j.text("gauge", [...]string{calc.InHandle: question.InHandle, calc.AtFoot: question.AtFoot, calc.NoGauge: question.None}[r.Gauge])
	j.drop("mark", r.Mark)
	j.drop("gauge_within", unit.Drop(r.Tolerances.WallGauge.Within))
	if r.HasNow {
		j.gauge("wall", r.Now)
	} else {
		j.null("wall")
	}
	j.text("units", catalogue.SystemName(sys))
}

// appendInputLine echoes the line: its parts in order, and besides what the usual line is said by.
func appendInputLine(j *jsonWriter, r *calc.Request) {
	part := func(p *line.Part) {
		j.object("", func() {
			j.text("kind", p.Kind.String())
			if p.Kind != line.HoseKind {
				j.text("entry", p.Entry)
				return
			}
			j.run("length", p.Hose.Length)
			j.near("bore", p.Hose.Bore)
		})
	}
	j.array("line", func() {
		for i := range r.Line {
			part(&r.Line[i])
		}
		if valve := &r.Gun.ValveOfLine; valve.Name != "" {
			part(valve)
		}
	})
	j.temp("hose_temp", r.HoseTemp())
	j.array("hose", func() {
		for i := range r.Line {
			if p := &r.Line[i]; p.Kind == line.HoseKind {
				j.object("", func() {
					j.run("length", p.Hose.Length)
					j.near("bore", p.Hose.Bore)
				})
			}
		}
	})
	for _, k := range [...]line.Kind{line.CouplingKind, line.FilterKind, line.RegulatorKind} {
		if entry, one := entryOf(r, k); one {
			j.text(k.String(), entry)
		} else {
			j.null(k.String())
		}
	}
	if at := r.RegulatorAt(); at != calc.Nowhere {
		j.text("regulator_at", [...]string{calc.Wall: question.AtWall, calc.Foot: question.AtGun}[at])
	}
}

// entryOf is the catalogue's name of the parts of a kind; false where they are of several.
func entryOf(r *calc.Request, k line.Kind) (entry string, one bool) {
	entry, one = question.None, true
	for i := range r.Line {
		if p := &r.Line[i]; p.Kind == k {
			one = one && (entry == question.None || entry == p.Entry)
			entry = p.Entry
		}
	}
	return entry, one
}

func appendGun(j *jsonWriter, r *calc.Request, s *calc.Setup) {
	j.gauge("working", s.Working.Pressure)
	j.gauge("wanted", s.Working.Wanted)
	if r.Gauge == calc.NoGauge {
		j.null("reads")
	} else {
		j.gauge("reads", s.Working.Reads)
	}
	j.gauge("cap", s.Working.Cap)
	j.flow("flow", s.Working.Flow)
	j.gauge("max_inlet", s.Working.Highest)
	if r.Gun.CapLimit > 0 {
		j.gauge("cap_limit", r.Gun.CapLimit)
	} else {
		j.null("cap_limit")
	}
	j.number("jet_mach", s.Working.JetMach)
}

func appendStep(j *jsonWriter, p *calc.Step) {
	j.object("", func() {
		j.text("name", p.Name)
		j.text("kind", p.Kind.String())
		j.gauge("in", p.In)
		j.gauge("out", p.Out)
		j.drop("loss", p.Loss)
		j.number("share", p.Share)
		j.number("mach", p.Mach)
	})
}

func appendNow(j *jsonWriter, s *calc.Setup) {
	n := &s.Now
	if !n.Given {
		j.null("now")
		return
	}
	j.object("now", func() {
		j.gauge("wall", n.Wall)
		j.gauge("gun_if_open", n.GunIfOpen)
		if !s.Valve.None {
			j.number("opening_needed", n.Opening)
			j.number("area_needed", n.Area)
			j.number("turns_needed", (1-n.Opening)*s.Valve.TurnsOf)
		}
		j.bool("enough", n.Enough)
		j.bool("choked", n.Choked)
		j.number("mach", n.Mach)
		j.drop("eighth_turn", n.EighthTurn)
	})
}

// appendWords appends reasons and cautions with their sentences.
func appendWords(j *jsonWriter, reasons []calc.Reason, cautions []calc.Caution, sys unit.System, w *words.Words) {
	j.array("reasons", func() {
		for i := range reasons {
			r := &reasons[i]
			j.object("", func() {
				j.text("about", r.About)
				j.text("id", r.ID)
				j.written("text", func(dst []byte) []byte { return w.Append(dst, sys, r.ID, r.Figures) })
				j.ground(w, r.Ground)
			})
		}
	})
	j.array("cautions", func() {
		for i := range cautions {
			c := &cautions[i]
			j.object("", func() {
				j.text("level", string(c.Level))
				j.text("id", c.ID)
				j.bool("safety", c.Safety)
				j.written("text", func(dst []byte) []byte { return w.Append(dst, sys, c.ID, c.Figures) })
				if c.Basis != "" {
					j.ground(w, c.Ground)
				}
			})
		}
	})
}

// appendHardener appends what the coat is hardened with.
func appendHardener(j *jsonWriter, h calc.Hardener) {
	j.text("hardener", cmp.Or(string(h), "unknown"))
}
