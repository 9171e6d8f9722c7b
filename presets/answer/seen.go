package answer

import (
	"math"
	"slices"
	"time"

	"boothset/calc"
	"boothset/calc/prove"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/signs"
	"boothset/presets/words"
)

// SeenRows is what was seen at the gun beside what was expected, with what to do where it is
// otherwise.
func (p *Prove) SeenRows(w *words.Words, sys unit.System) (rows []Row) {
	add := func(of *question.Field, id string, f ...calc.Figure) {
		rows = append(rows, Row{Role: Remark, About: of.Name, ID: id, Text: w.Text(sys, id, f)})
	}
	if f := p.Judged.Fall; f != nil {
		add(question.FirstGun, fallSentence(f), calc.FigureOf("first", calc.FigureGauge, f.First), calc.FigureOf("after", calc.FigureGauge, f.After),
			calc.FigureOf("by", calc.FigureDrop, max(f.By, 0)), calc.FigureOf("supply", calc.FigureGauge, f.Supply), calc.BriefFigure("needed", calc.FigureGauge, f.Needed))
	}
	if push := p.Judged.Push; push != nil {
		id, off := "prove-seen-felt", push.Off()
		switch {
		case !push.Known:
			id = "prove-seen-felt-sheet"
		case off < 0:
			id = "prove-seen-felt-near"
		case off > 0:
			id = "prove-seen-felt-far"
		}
		hold := "prove-hold"
		if end := push.Hold.Held; end == calc.HeldNearest || end == calc.HeldFarthest {
			hold += "-" + string(end)
		}
		target := calc.FigureOf("target", calc.FigureDistance, push.Hold.Target)
		add(question.Felt, id, calc.FigureOf("felt", calc.FigureDistance, push.Felt), calc.FigureOf("low", calc.FigureDistance, push.Low), calc.FigureOf("high", calc.FigureDistance, push.High),
			calc.FigureOf("off", calc.FigureDistance, math.Abs(float64(off))), target, calc.TextFigure("hold", w.Text(sys, hold, calc.Figures{target})))
	}
	for _, of := range []struct {
		*question.Field
		seen string
	}{{question.Pattern, p.Seen.Pattern}, {question.Flood, p.Seen.Flood}} {
		switch of.seen {
		case "":
		case prove.Even:
			add(of.Field, "prove-seen-"+of.Name)
		default:
			add(of.Field, "prove-seen-"+of.Name+"-sign", calc.SentenceFigure("sign", signs.Name(of.seen)))
		}
	}
	if t := p.Trouble; t != nil {
		first := t.Likeliest()
		add(question.Pattern, "prove-trouble", calc.SentenceFigure("cause", "name-cause-"+first.ID), calc.FigureOf("share", calc.FigureShare, wholePercent(first.P)),
			calc.TextFigure("told", t.Headline(w, sys).Text), calc.TextFigure("id", t.Request.Signs[0]))
	}
	if film := p.Judged.Film; film != nil && film.Comb.Wetted > 0 {
		id, off := "prove-seen-comb", film.Off()
		switch {
		case off < 0:
			id = "prove-seen-comb-under"
		case off > 0:
			id = "prove-seen-comb-over"
		}
		add(question.Wet, id, calc.FigureOf("wet", calc.FigureFilm, film.Comb.Wetted), calc.FigureOf("low", calc.FigureFilm, film.Low), calc.FigureOf("high", calc.FigureFilm, film.High),
			calc.FigureOf("off", calc.FigureFilm, math.Abs(float64(off))), calc.FigureOf("by", calc.FigureShare, roughly(math.Abs(film.Times-1))))
		switch {
		case film.Staged:
		case film.Thin:
			add(question.Wet, "prove-coats-thin")
		case film.Left == 0:
			add(question.Wet, "prove-coats-none")
		default:
			add(question.Wet, "prove-coats-left", calc.CountFigure("left", film.Left), calc.FigureOf("next", calc.FigureFilm, film.Next.Wet))
		}
	}
	return rows
}

// SeenRowsOf is SeenRows of one field: of what is read while the trigger is held, all of that.
func (p *Prove) SeenRowsOf(w *words.Words, sys unit.System, f *question.Field) []Row {
	if question.OfHeld(f) {
		f = question.FirstGun
	}
	return slices.DeleteFunc(p.SeenRows(w, sys), func(r Row) bool { return r.About != f.Name })
}

// BeforeRows is what was seen before, with its day.
func (p *Prove) BeforeRows(w *words.Words) (rows []Row) {
	for _, b := range p.Before {
		rows = append(rows, Row{Role: Remark, About: b.Name, ID: "prove-before", Text: w.Text(unit.US, "prove-before", calc.Figures{
			calc.SentenceFigure("what", b.Sentence(question.SayLabel)), calc.TextFigure("value", b.Text), calc.TextFigure("day", b.At.Format(time.DateOnly)),
		})})
	}
	return rows
}

// roughly is a share that a hand can tell: to a twentieth, and no less than that.
func roughly(share float64) float64 { return max(math.Round(20*share)/20, 0.05) }

// fallSentence is what is said of what the gun's gauge fell by.
func fallSentence(f *prove.Fall) string {
	if f.Of == prove.Supply && f.Supply == 0 {
		return "prove-seen-supply-figures"
	}
	return "prove-seen-" + f.Of.String()
}

// turnedRow is the inlet valve as it was set in a reading, beside how far open it was to be.
func (p *Prove) turnedRow(w *words.Words, sys unit.System, reading int) Row {
	t, x, v := &p.Found.Turned[reading], &p.Request.Readings[reading], &p.Found.Setup.Valve
	id := "prove-turned"
	switch off := t.Off(x.Opening, v.TurnsOf); {
	case off < 0:
		id = "prove-turned-shut"
	case off > 0:
		id = "prove-turned-open"
	}
	return Row{Role: Remark, About: "reading", ID: id, Text: w.Text(sys, id, calc.Figures{
		calc.CountFigure("number", reading+1), v.Knob("knob", x.Opening), v.Knob("from", t.Opening.High), v.Knob("to", t.Opening.Low),
	})}
}
