package answer

import (
	"slices"
	"strconv"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// Film is the film of a coat and how the gun is moved for it.
type Film struct {
	Request *calc.FilmRequest
	Found   *calc.FilmAnswer
}

// Stopped reports whether the film cannot be laid as asked.
func (f *Film) Stopped() bool { return f.Found.Stopped() }

// Reasons is why the film is what it is.
func (f *Film) Reasons() []calc.Reason { return f.Found.Reasons }

// Cautions is what is to be known before spraying.
func (f *Film) Cautions() []calc.Caution { return f.Found.Cautions }

// Rows is all that is said of it.
func (f *Film) Rows(w *words.Words, sys unit.System) []Row {
	r, a := f.Request, f.Found
	o := &speaker{words: w, sys: sys}
	o.applied("film-heading-gun", "film-heading", &r.Application, calc.FigureOf("solids", calc.FigureShare, r.Solids.Value))
	o.block(slices.Concat(f.coats(o), f.speed(o), f.old(o))...)
	o.cautions(a.Cautions)
	o.why(a.Reasons)
	return o.rows
}

// coats is the rows of what was applied and of what is to go.
func (f *Film) coats(o *speaker) (all []Row) {
	r, a := f.Request, f.Found
	if len(a.Laid) > 0 {
		low, high := unit.Length(0), unit.Length(0)
		for _, c := range a.Laid {
			low, high = low+c.Low, high+c.High
		}
		value := o.sys.Film(low, unit.Usual)
		if high > low {
			value = o.span(value, o.sys.Film(high, unit.Usual))
		}
		all = append(all, Row{Role: Value, About: "laid", Name: o.say("label-laid"), Text: o.about(a.About, value), More: o.say("film-by-comb")})
	}
	if len(a.Laid) == 0 || a.Left > 0 {
		label := "label-each"
		if len(a.Laid) > 0 {
			label = "label-next"
		}
		all = append(all, Row{Role: Value, About: "each", Name: o.say(label), Text: o.about(a.About, o.wet(a.Each)), More: o.say("film-dries", calc.FigureOf("dry", calc.FigureFilm, a.Each.Dry))})
	}
	laid, left := calc.CountFigure("laid", len(a.Laid)), calc.CountFigure("left", a.Left)
	number := strconv.Itoa(a.Coats.Value)
	switch {
	case len(a.Laid) > 0 && a.Left == 0:
		number = o.say("film-laid-stop", laid)
	case len(a.Laid) > 0:
		number = o.say("film-laid-left", laid, left)
	}
	total := calc.FigureOf("total", calc.FigureFilm, a.Running.Total)
	more := o.say("film-total", total)
	if r.Wants.Known {
		more = o.say("film-total-usual", total, calc.FigureOf("low", calc.FigureFilm, r.Wants.Low), calc.FigureOf("high", calc.FigureFilm, r.Wants.High))
	}
	return append(all, Row{Role: Value, About: "coats", Name: o.say("label-coats"), Text: number, More: more})
}

// speed is the rows of how the gun is moved, and of what a given speed applies.
func (f *Film) speed(o *speaker) (all []Row) {
	r, a := f.Request, f.Found
	if pass := &a.Pass; pass.Known && a.OneMore.Dry == 0 {
		all = append(all, Row{Role: Value, About: "speed", Name: o.say("label-speed"), Text: o.about(f.rough(), o.sys.Speed(pass.Speed, unit.Usual)), More: o.stretch(pass.Speed)})
		step := calc.FigureOf("step", calc.FigureDistance, pass.Step)
		if pass.Passes > 0 {
			all = append(all, Row{Role: Value, About: "passes", Name: o.say("label-passes"), Text: o.say("film-passes-each", calc.CountFigure("passes", pass.Passes)), More: o.say("film-passes-apart", step)})
		} else {
			all = append(all, Row{Role: Value, About: "passes", Name: o.say("label-passes"), Text: o.say("film-apart", step)})
		}
	}
	if a.AtSpeed.Wet > 0 {
		all = append(all, Row{Role: Value, About: "at-speed", Name: o.say("label-at-speed", calc.BriefFigure("speed", calc.FigureSpeed, r.GunSpeed)), Text: o.about(f.rough(), o.wet(a.AtSpeed)),
			More: o.say("film-dries-each", calc.FigureOf("dry", calc.FigureFilm, a.AtSpeed.Dry))})
	}
	return all
}

// old is the row of the film that was there before, if any was.
func (f *Film) old(o *speaker) []Row {
	if f.Request.Before <= 0 {
		return nil
	}
	return []Row{{Role: Value, About: "whole", Name: o.say("label-whole"), Text: o.sys.Film(f.Found.Running.Whole, unit.Usual), More: o.say("film-before", calc.FigureOf("before", calc.FigureFilm, f.Request.Before))}}
}

// rough reports whether the speed rests on estimates.
func (f *Film) rough() bool {
	return f.Found.About || f.Found.Pass.Rate.Estimate || !f.Request.Held.Typed
}

// stretch says a speed as the time that a length takes, which a hand can practise: in whole
// seconds where they are several, as a speed is known.
func (p *speaker) stretch(v unit.Speed) string {
	l := 3 * unit.Length(unit.MetrePerFoot)
	if p.sys == unit.Metric {
		l = 1
	}
	seconds, decimals := float64(l)/float64(v), 0
	if seconds < 2.5 {
		decimals = 1
	}
	return p.say("film-stretch", calc.TextFigure("length", p.sys.Long(l, 0)), calc.TextFigure("seconds", strconv.FormatFloat(seconds, 'f', decimals, 64)))
}

// wet is a coat's wet film.
func (p *speaker) wet(c calc.OneCoat) string {
	return p.say("film-wet", calc.FigureOf("wet", calc.FigureFilm, c.Wet))
}

// applied adds what is applied and what else its sentence names: one sentence tells of a
// gun, the other of none.
func (p *speaker) applied(withGun, without string, l *calc.Application, more ...calc.Figure) {
	id := withGun
	if l.Gun == "" {
		id = without
	}
	p.heading(p.say(id, append(more, calc.TextFigure("coat", l.Coat), calc.TextFigure("gun", l.Gun))...))
}
