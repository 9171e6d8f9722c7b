package command

import (
	"boothset/calc"
	"boothset/calc/spread"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// appendWallRange appends the wall's ranges, null where nothing is set, and how often the gun
// gets less than its target from the wall as advised.
func appendWallRange(j *jsonWriter, s *spread.Spread) {
	switch {
	case s == nil:
		return
	case !s.Set:
		for _, name := range []string{"low", "high", "static_low", "static_high"} {
			j.null(name)
		}
	default:
		j.gauge("low", s.Wall.Low)
		j.gauge("high", s.Wall.High)
		j.gauge("static_low", s.Static.Low)
		j.gauge("static_high", s.Static.High)
	}
	j.number("falls_short", s.Short)
}

// appendSpread appends what the spread comes from, null where it was not worked out.
func appendSpread(j *jsonWriter, s *spread.Spread, w *words.Words) {
	if s == nil {
		j.null("spread")
		return
	}
	j.array("spread", func() {
		for i := range s.Causes {
			c := &s.Causes[i]
			j.object("", func() {
				j.text("cause", c.ID)
				j.number("wall", c.Wall)
				j.number("static", c.Static)
				j.number("opening", c.Opening)
				j.number("distance", c.Distance)
				if s.Set {
					j.object("wall_if_known", func() {
						j.gauge("low", c.Known.Low)
						j.gauge("high", c.Known.High)
					})
				} else {
					j.null("wall_if_known")
				}
				j.ground(w, c.Tolerance.Ground)
			})
		}
	})
}

func appendComparison(j *jsonWriter, c *calc.Comparison) {
	if !c.Given {
		j.null("comparison")
		return
	}
	way := func(name string, w *calc.Way) {
		j.object(name, func() {
			j.gauge("wall", w.Wall)
			j.number("opening", w.Opening)
			j.number("area", w.Area)
			j.number("mach", w.Mach)
			j.bool("choked", w.Choked)
			j.drop("eighth_turn", w.EighthTurn)
			j.drop("sag", w.Sag)
		})
	}
	j.object("comparison", func() {
		way("wall_right", &c.Right)
		way("wall_high", &c.High)
	})
}

func appendFixes(j *jsonWriter, s *calc.Setup, sys unit.System, w *words.Words) {
	j.array("fixes", func() {
		for i := range s.Fixes {
			f := &s.Fixes[i]
			j.object("", func() {
				j.text("part", f.Part)
				j.text("kind", f.Swap.Kind.String())
				j.text("with", f.Swap.ID)
				j.drop("won", f.Won)
				j.written("text", func(dst []byte) []byte { return w.Append(dst, sys, f.ID(), f.Figures()) })
			})
		}
	})
}
