package answer

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// Thin is how to bring a mix to its sheet's viscosity.
type Thin struct {
	Request *calc.ThinRequest
	Found   *calc.ThinAnswer
}

// Stopped reports whether the mix cannot be brought there as asked.
func (t *Thin) Stopped() bool { return t.Found.Stopped() }

// Reasons is why the remedy is what it is.
func (t *Thin) Reasons() []calc.Reason { return t.Found.Reasons }

// Cautions is what is to be known before spraying.
func (t *Thin) Cautions() []calc.Caution { return t.Found.Cautions }

// Advice is what to do, in a sentence.
func (t *Thin) Advice(w *words.Words, sys unit.System) string {
	return w.Text(sys, t.Found.Sentence(t.Request), t.Found.Figures(t.Request))
}

// Rows is all that is said of it.
func (t *Thin) Rows(w *words.Words, sys unit.System) []Row {
	r, a := t.Request, t.Found
	o := &speaker{words: w, sys: sys}
	o.heading(o.say("thin-heading", calc.TextFigure("coat", r.Coat), calc.FigureOf("seconds", calc.FigureCup, r.Reading.Seconds),
		calc.TextFigure("cup", r.Reading.Cup.Label), calc.FigureOf("paint", calc.FigureTemp, r.Reading.At)))
	level := calc.Note
	if t.Stopped() {
		level = calc.Stop
	}
	o.block(Row{Role: Verdict, Level: level, ID: string(a.Remedy), Name: o.say("remedy-" + string(a.Remedy)), Text: t.Advice(w, sys)})
	sheetTemp := calc.FigureOf("temp", calc.FigureTemp, r.Sheet.Value.At)
	wanted := "thin-at-usual"
	if r.Sheet.Ground.Basis == calc.Sheet {
		wanted = "thin-at-sheet"
	}
	otherCup := r.Sheet.Value.Cup.ID != r.Reading.Cup.ID
	all := []Row{{Role: Value, About: "wanted", Name: o.say("label-wanted"), Text: o.about(otherCup, o.seconds(a.Wanted.Low.Seconds, a.Wanted.High.Seconds)), More: o.say(wanted, sheetTemp)}}
	if r.Reading.At != r.Sheet.Value.At {
		all = append(all, Row{Role: Value, About: "yours", Name: o.say("label-yours"), Text: o.about(true, words.CupText(a.Corrected.Seconds)), More: t.corrected(o, sheetTemp)})
	}
	switch a.Remedy {
	case calc.RemedyWarm, calc.RemedyThin, calc.RemedyWarmThin:
		all = append(all, Row{Role: Value, About: "then", Name: o.say("label-then"), Text: o.about(true, words.CupText(a.Reached.Seconds)), More: o.say("thin-then", calc.FigureOf("temp", calc.FigureTemp, a.WarmTo))})
	}
	o.block(all...)
	o.cautions(a.Cautions)
	o.why(a.Reasons)
	return o.rows
}

// corrected is where the corrected reading holds and how far it may be off, or that two
// readings gave it.
func (t *Thin) corrected(o *speaker, at calc.Figure) string {
	c := &t.Found.Corrected
	if t.Found.Slope.Fitted {
		return o.say("thin-at-readings", at)
	}
	return o.say("thin-at-span", at, calc.TextFigure("span", o.seconds(c.Low, c.High)))
}

// seconds is a span of a cup's seconds, the unit said once: "16 to 18 s".
func (p *speaker) seconds(low, high float64) string {
	return p.span(words.CupNumber(low), words.CupText(high))
}
