package answer

import (
	"math"

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
	low, high := a.Wanted.Low.Seconds, a.Wanted.High.Seconds
	if otherCup {
		low, high = math.Round(low), math.Round(high)
	}
	all := []Row{{Role: Value, About: "wanted", Name: o.say("label-wanted"), Text: o.about(otherCup, o.seconds(low, high)), More: o.say(wanted, sheetTemp)}}
	if r.Reading.At != r.Sheet.Value.At {
		all = append(all, Row{Role: Value, About: "yours", Name: o.say("label-yours"), Text: o.about(true, words.CupText(math.Round(a.Corrected.Seconds))), More: t.corrected(o, sheetTemp)})
	}
	switch a.Remedy {
	case calc.RemedyWarmThin:
		all = append(all, o.step("warmed", "label-warmed", "thin-warmed", a.Warmed, a.To))
		fallthrough
	case calc.RemedyCool, calc.RemedyWarm, calc.RemedyThin:
		all = append(all, o.step("then", "label-then", "thin-then", a.Reached, a.To))
	}
	o.block(append(all, o.voc(&r.VOC, a.VOC)...)...)
	o.cautions(a.Cautions)
	o.why(a.Reasons)
	return o.rows
}

// step is what a step brings a mix to, in whole seconds: a cup is read no closer.
func (p *speaker) step(about, label, more string, x calc.Read, at unit.Temp) Row {
	return Row{Role: Value, About: about, Name: p.say(label), Text: p.about(true, words.CupText(math.Round(x.Seconds))), More: p.say(more, calc.FigureOf("temp", calc.FigureTemp, at))}
}

// corrected is where the corrected reading holds and how far it may be off, or that two
// readings gave it.
func (t *Thin) corrected(o *speaker, at calc.Figure) string {
	c := &t.Found.Corrected
	if t.Found.Slope.Fitted {
		return o.say("thin-at-readings", at)
	}
	return o.say("thin-at-span", at, calc.TextFigure("span", o.seconds(math.Round(c.Low), math.Round(c.High))))
}

// seconds is a span of a cup's seconds, the unit said once: "16 to 18 s".
func (p *speaker) seconds(low, high float64) string {
	return p.span(words.CupNumber(low), words.CupText(high))
}
