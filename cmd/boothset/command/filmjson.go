package command

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/words"
)

// appendFilm appends what is known of it into an open object.
func appendFilm(j *jsonWriter, f *answer.Film, sys unit.System, w *words.Words) {
	r, a := f.Request, f.Found
	appendApplication(j, &r.Application, w)
	j.object("coats", func() {
		j.count("all", a.Coats.Value)
		j.count("laid", len(a.Laid))
		j.count("left", a.Left)
		j.ground(w, a.Coats.Ground)
	})
	appendOneCoat(j, "each", a.Each)
	appendPass(j, r, a)
	if a.AtSpeed.Wet > 0 {
		appendOneCoat(j, "at_speed", a.AtSpeed)
	} else {
		j.null("at_speed")
	}
	j.array("combs", func() {
		for _, c := range a.Laid {
			j.object("", func() {
				j.film("wetted", c.Wetted)
				j.film("next", c.Next)
				j.film("dry_low", c.Low)
				j.film("dry_high", c.High)
			})
		}
	})
	if a.OneMore.Dry > 0 {
		j.object("one_more", func() {
			j.film("dry", a.OneMore.Dry)
			j.film("total", a.OneMore.Total)
		})
	} else {
		j.null("one_more")
	}
	appendRunning(j, &a.Running)
	j.bool("about", a.About)
}

func appendOneCoat(j *jsonWriter, name string, c calc.OneCoat) {
	j.object(name, func() {
		j.film("wet", c.Wet)
		j.film("dry", c.Dry)
	})
}

// appendPass appends how the gun is moved, null where the fluid rate is not known.
func appendPass(j *jsonWriter, r *calc.FilmRequest, a *calc.FilmAnswer) {
	p := &a.Pass
	if !p.Known {
		j.null("pass")
		return
	}
	j.object("pass", func() {
		j.number("fluid_ml_min", p.Rate.Value.MLPerMin())
		j.number("fluid_low_ml_min", p.Rate.Low.MLPerMin())
		j.number("fluid_high_ml_min", p.Rate.High.MLPerMin())
		j.text("fluid_from", [...]string{calc.FluidGiven: "given", calc.FluidTimed: "timed", calc.FluidTip: "estimated"}[r.Fluid.From])
		appendTransfer(j, p.Transfer)
		j.near("fan", r.Fan.Value)
		j.number("overlap", r.Overlap.Value)
		j.speed("speed", p.Speed)
		j.speed("speed_low", p.Low)
		j.speed("speed_high", p.High)
		j.near("step", p.Step)
		if p.Passes > 0 {
			j.count("passes", p.Passes)
		} else {
			j.null("passes")
		}
	})
}
