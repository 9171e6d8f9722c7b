package command

import (
	"slices"
	"strconv"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

func filmQuestion() question {
	return question{
		name: "film", brief: "brief-film",
		help: help{intro: "film-intro", schema: "boothset.film/1", examples: []string{
			"boothset film --coat clear --gun reduced-pressure --cup-volume 100mL --cup-time 33s",
			"boothset film --coat clear --solids 42 --wet 4mil,5mil",
		}},
		fields: presets.FilmFields(),
		ask:    asks((*presets.Catalogue).Film, calc.SolveFilm, func(r *calc.FilmRequest, a *calc.FilmAnswer) reply { return &filmReply{r, a} }),
	}
}

type filmReply struct {
	r *calc.FilmRequest
	a *calc.FilmAnswer
}

func (f *filmReply) stopped() bool { return f.a.Stopped() }

func (f *filmReply) print(p *printer) {
	r, a := f.r, f.a
	heading(p, "film-heading-gun", "film-heading", &r.Application, calc.FigureOf("solids", calc.FigureShare, r.Solids.Value))
	p.rows(leastValue, slices.Concat(f.coats(p), f.speed(p), f.old(p))...)
	p.line("")
	p.cautions(a.Cautions)
	p.line("")
	p.reasons(a.Reasons)
}

// coats is the rows of what is laid and of what is to go.
func (f *filmReply) coats(p *printer) (all []row) {
	r, a := f.r, f.a
	if len(a.Laid) > 0 {
		low, high := unit.Length(0), unit.Length(0)
		for _, c := range a.Laid {
			low, high = low+c.Low, high+c.High
		}
		value := filmText(p.sys, low)
		if high > low {
			value = p.span(value, filmText(p.sys, high))
		}
		all = append(all, row{p.say("label-laid"), p.about(a.About, value), p.say("film-by-comb")})
	}
	if len(a.Laid) == 0 || a.Left > 0 {
		label := "label-each"
		if len(a.Laid) > 0 {
			label = "label-next"
		}
		all = append(all, row{p.say(label), p.about(a.About, wetText(p, a.Each)), p.say("film-dries", calc.FigureOf("dry", calc.FigureFilm, a.Each.Dry))})
	}
	laid, left := calc.FigureOf("laid", calc.FigureCount, len(a.Laid)), calc.FigureOf("left", calc.FigureCount, a.Left)
	count := strconv.Itoa(a.Coats.Value)
	switch {
	case len(a.Laid) > 0 && a.Left == 0:
		count = p.say("film-laid", laid)
	case len(a.Laid) > 0:
		count = p.say("film-laid-left", laid, left)
	}
	total := calc.FigureOf("total", calc.FigureFilm, a.Running.Total)
	more := p.say("film-total", total)
	if r.Wants.Known {
		more = p.say("film-total-usual", total, calc.FigureOf("low", calc.FigureFilm, r.Wants.Low), calc.FigureOf("high", calc.FigureFilm, r.Wants.High))
	}
	return append(all, row{p.say("label-coats"), count, more})
}

// speed is the rows of how the gun is moved, and of what a given speed lays.
func (f *filmReply) speed(p *printer) (all []row) {
	r, a := f.r, f.a
	if pass := &a.Pass; pass.Known {
		all = append(all, row{p.say("label-speed"), p.about(f.rough(), p.sys.Speed(pass.Speed, words.SpeedDecimals)), stretch(p, pass.Speed)})
		step := calc.FigureOf("step", calc.FigureDistance, pass.Step)
		if pass.Passes > 0 {
			all = append(all, row{p.say("label-passes"), p.say("film-passes-each", calc.FigureOf("passes", calc.FigureCount, pass.Passes)), p.say("film-passes-apart", step)})
		} else {
			all = append(all, row{p.say("label-passes"), p.say("film-apart", step), ""})
		}
	}
	if a.AtSpeed.Wet > 0 {
		all = append(all, row{p.say("label-at-speed", calc.FigureOf("speed", calc.FigureSpeed, r.GunSpeed)), p.about(f.rough(), wetText(p, a.AtSpeed)),
			p.say("film-dries-each", calc.FigureOf("dry", calc.FigureFilm, a.AtSpeed.Dry))})
	}
	return all
}

// old is the row of the film that was there before, if any was.
func (f *filmReply) old(p *printer) []row {
	if f.r.Before <= 0 {
		return nil
	}
	return []row{{p.say("label-whole"), filmText(p.sys, f.a.Running.Whole), p.say("film-before", calc.FigureOf("before", calc.FigureFilm, f.r.Before))}}
}

// rough reports whether the speed rests on estimates.
func (f *filmReply) rough() bool {
	return f.a.About || f.a.Pass.Rate.Estimate || !f.r.Held.Typed
}

// stretch says a speed as the time that a length takes, which a hand can practise.
func stretch(p *printer, v unit.Speed) string {
	l := 3 * unit.Length(unit.MetrePerFoot)
	if p.sys == unit.Metric {
		l = 1
	}
	return p.say("film-stretch", said("length", p.sys.Long(l, 0)), said("seconds", strconv.FormatFloat(float64(l)/float64(v), 'f', 1, 64)))
}

// wetText is a coat's wet film.
func wetText(p *printer, c calc.OneCoat) string {
	return p.say("film-wet", calc.FigureOf("wet", calc.FigureFilm, c.Wet))
}

func (f *filmReply) appendJSON(j *jsonWriter, sys unit.System, w *words.Words) {
	r, a := f.r, f.a
	appendLaying(j, &r.Application, w)
	j.object("coats", func() {
		j.count("all", a.Coats.Value)
		j.count("laid", len(a.Laid))
		j.count("left", a.Left)
		j.standing(w, a.Coats.Ground)
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

// heading writes what is laid and what else its sentence names: one sentence tells of a
// gun, the other of none.
func heading(p *printer, withGun, without string, l *calc.Application, more ...calc.Figure) {
	id := withGun
	if l.Gun == "" {
		id = without
	}
	p.paragraph(p.say(id, append(more, said("coat", l.Coat), said("gun", l.Gun))...))
	p.line("")
}
