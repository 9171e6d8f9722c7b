package main

import (
	"fmt"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

func filmQuestion() question {
	return question{
		name: "film", brief: "wet and dry film, coats, passes and gun speed",
		intro: `boothset film: what film a coat wants, and how fast to move the gun for it.

  boothset film --coat clear --gun reduced-pressure --cup-volume 100mL --cup-time 33s
  boothset film --coat clear --solids 42 --wet 4mil,5mil
`,
		schema: "boothset.film/1", fields: presets.FilmFields(),
		ask: asks((*presets.Catalogue).Film, calc.SolveFilm, func(r *calc.FilmRequest, a *calc.FilmAnswer) reply { return &filmReply{r, a} }),
	}
}

type filmReply struct {
	r *calc.FilmRequest
	a *calc.FilmAnswer
}

func (f *filmReply) stopped() bool { return f.a.Stopped() }

func (f *filmReply) print(p *printer) {
	r, a := f.r, f.a
	sys := p.sys
	heading(p, &r.Laying, fmt.Sprintf("%s solids", unit.PercentText(r.Solids.Value, unit.Usual)))
	if len(a.Laid) > 0 {
		low, high := unit.Length(0), unit.Length(0)
		for _, c := range a.Laid {
			low, high = low+c.Low, high+c.High
		}
		value := about(a.About) + filmText(sys, low)
		if high > low {
			value += " to " + filmText(sys, high)
		}
		p.row("LAID", value, "dry, by the comb")
	}
	each := "EACH COAT"
	if len(a.Laid) > 0 && a.Left > 0 {
		each = "NEXT COAT"
	}
	if len(a.Laid) == 0 || a.Left > 0 {
		p.row(each, about(a.About)+filmText(sys, a.Each.Wet)+" wet", "dries to "+filmText(sys, a.Each.Dry))
	}
	coats := fmt.Sprint(a.Coats.Value)
	switch {
	case len(a.Laid) > 0 && a.Left == 0:
		coats = fmt.Sprint(len(a.Laid), " laid")
	case len(a.Laid) > 0:
		coats = fmt.Sprintf("%d laid, %d to go", len(a.Laid), a.Left)
	}
	p.row("COATS", coats, filmText(sys, a.Running.Total)+" dry in all"+wanted(sys, r))
	if pass := &a.Pass; pass.Known {
		p.row("GUN SPEED", about(f.rough())+sys.Speed(pass.Speed, words.SpeedDecimals), stretch(sys, pass.Speed))
		passes := "passes " + sys.Small(pass.Step, unit.Usual) + " apart"
		if pass.Passes > 0 {
			p.row("PASSES", fmt.Sprint(pass.Passes, " a coat"), passes)
		} else {
			p.row("PASSES", sys.Small(pass.Step, unit.Usual)+" apart", "")
		}
	}
	if a.AtSpeed.Wet > 0 {
		p.row("AT "+sys.Speed(r.GunSpeed, words.SpeedDecimals), about(f.rough())+filmText(sys, a.AtSpeed.Wet)+" wet", "dries to "+filmText(sys, a.AtSpeed.Dry)+" a coat")
	}
	if r.Before > 0 {
		p.row("OLD AND NEW", filmText(sys, a.Running.Whole), "with the "+filmText(sys, r.Before)+" already there")
	}
	p.line("")
	p.cautions(a.Cautions)
	p.line("")
	p.reasons(a.Reasons)
}

// rough reports whether the speed rests on estimates.
func (f *filmReply) rough() bool {
	return f.a.About || f.a.Pass.Rate.Estimate || !f.r.Held.Typed
}

// wanted is the family's films, empty where none are known.
func wanted(sys unit.System, r *calc.FilmRequest) string {
	if !r.Wants.Known {
		return ""
	}
	return fmt.Sprintf("; usual %s to %s", filmText(sys, r.Wants.Low), filmText(sys, r.Wants.High))
}

// stretch says a speed as the time that a length takes, which a hand can practise.
func stretch(sys unit.System, v unit.Speed) string {
	l, name := 3*unit.Length(unit.MetrePerFoot), "3 ft"
	if sys == unit.Metric {
		l, name = 1, "1 m"
	}
	return fmt.Sprintf("%s in %.1f s", name, float64(l)/float64(v))
}

func (f *filmReply) appendJSON(j *jsonWriter, sys unit.System, w *words.Words) {
	r, a := f.r, f.a
	appendLaying(j, &r.Laying)
	j.object("coats", func() {
		j.count("all", a.Coats.Value)
		j.count("laid", len(a.Laid))
		j.count("left", a.Left)
		j.standing(w, a.Coats.Standing)
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
	appendRunning(j, &a.Running)
	j.bool("about", a.About)
	appendWords(j, a.Reasons, a.Cautions, sys, w)
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

// filmText is a film as a person reads it.
func filmText(sys unit.System, l unit.Length) string {
	return sys.Film(l, words.FilmDecimals(sys, l))
}

// about stands before figures that rest on estimates.
func about(rough bool) string {
	if rough {
		return "about "
	}
	return ""
}

// heading writes what is laid, and with which gun.
func heading(p *printer, l *calc.Laying, more ...string) {
	if l.Gun != "" {
		more = append([]string{l.Gun + " gun"}, more...)
	}
	p.paragraph("%s, %s.", l.Coat, strings.Join(more, ", "))
	p.line("")
}
