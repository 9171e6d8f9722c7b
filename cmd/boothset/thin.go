package main

import (
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

func thinQuestion() question {
	return question{
		name: "thin", brief: "a cup's reading against the sheet: warm it, thin it, or spray",
		intro: `boothset thin: what a mix wants to reach its sheet's viscosity.

  boothset thin --coat clear --cup din4 --seconds 21 --paint 62F --sheet-seconds 16-18 --max-thinner 5
  boothset thin --coat clear --cup ford4 --seconds 26 --paint 68F
`,
		schema: "boothset.thin/1", fields: presets.ThinFields(),
		ask: asks((*presets.Catalogue).Thin, calc.SolveThin, func(r *calc.ThinRequest, a *calc.ThinAnswer) reply { return &thinReply{r, a} }),
	}
}

type thinReply struct {
	r *calc.ThinRequest
	a *calc.ThinAnswer
}

func (t *thinReply) stopped() bool { return t.a.Stopped() }

// advice is what to do, in a sentence.
func (t *thinReply) advice(sys unit.System, w *words.Words) string {
	return w.Text(sys, t.a.Sentence(t.r), t.a.Figures(t.r))
}

func (t *thinReply) print(p *printer) {
	r, a := t.r, t.a
	sys := p.sys
	p.paragraph("%s. %s in the %s cup, paint at %s.", r.Coat, words.CupText(r.Reading.Seconds),
		r.Reading.Cup.Label, sys.Temp(r.Reading.At, unit.Usual))
	p.line("")
	p.hang("  "+strings.ToUpper(remedyName[a.Remedy]), t.advice(sys, p.words))
	p.line("")
	p.row("WANTED", about(t.otherCup())+span(a.Wanted.Low.Seconds, a.Wanted.High.Seconds), "at "+sys.Temp(r.Sheet.Value.At, unit.Usual)+", "+sheetName(r.Sheet.Standing))
	if r.Reading.At != r.Sheet.Value.At {
		p.row("YOURS", about(true)+words.CupText(a.Corrected.Seconds), "at "+sys.Temp(r.Sheet.Value.At, unit.Usual)+", "+t.spread())
	}
	switch a.Remedy {
	case calc.RemedyWarm, calc.RemedyThin, calc.RemedyWarmThin:
		p.row("THEN", about(true)+words.CupText(a.Reached.Seconds), "at "+sys.Temp(a.WarmTo, unit.Usual)+"; time it again")
	}
	p.line("")
	p.cautions(a.Cautions)
	p.line("")
	p.reasons(a.Reasons)
}

var remedyName = map[calc.Remedy]string{
	calc.RemedyNone: "spray", calc.RemedyWarm: "warm", calc.RemedyThin: "thin", calc.RemedyWarmThin: "warm, then thin",
	calc.RemedyUnthinned: "too thin", calc.RemedyCannot: "too thick",
}

func (t *thinReply) otherCup() bool { return t.r.Sheet.Value.Cup.ID != t.r.Reading.Cup.ID }

// spread is how far the corrected reading may be off, empty where two readings gave it.
func (t *thinReply) spread() string {
	c := &t.a.Corrected
	if t.a.Slope.Fitted {
		return "by your two readings"
	}
	return span(c.Low, c.High)
}

// span is seconds as "16 to 18 s".
func span(low, high float64) string {
	return strings.TrimSuffix(words.CupText(low), " s") + " to " + words.CupText(high)
}

func sheetName(s calc.Standing) string {
	if s.Basis == calc.Sheet {
		return "the sheet's"
	}
	return "the coat's usual"
}

func (t *thinReply) appendJSON(j *jsonWriter, sys unit.System, w *words.Words) {
	r, a := t.r, t.a
	s := &r.Sheet.Value
	j.object("input", func() {
		j.text("coat", r.CoatID)
		appendReading(j, "reading", r.Reading)
		if r.HasSecond {
			appendReading(j, "second", r.Second)
		} else {
			j.null("second")
		}
		j.object("sheet", func() {
			j.text("cup", s.Cup.ID)
			j.number("low_s", s.Low)
			j.number("aim_s", s.Aim)
			j.number("high_s", s.High)
			j.temp("temp", s.At)
			j.standing(w, r.Sheet.Standing)
		})
		j.object("max_thinner", func() {
			j.number("share", r.MostThinner.Value)
			j.standing(w, r.MostThinner.Standing)
		})
		j.object("warm_limit", func() {
			j.temp("temp", r.Warmest.Value)
			j.standing(w, r.Warmest.Standing)
		})
		j.text("units", systemName(sys))
	})
	j.text("remedy", string(a.Remedy))
	j.text("text", t.advice(sys, w))
	j.bool("about", a.About)
	j.object("viscosity", func() {
		j.number("mm2_s", a.Nu.Nu.MM2PerS())
		j.number("low_mm2_s", a.Nu.Low.MM2PerS())
		j.number("high_mm2_s", a.Nu.High.MM2PerS())
		j.bool("about", a.Nu.About)
	})
	j.object("corrected", func() {
		j.number("seconds", a.Corrected.Seconds)
		j.number("low_s", a.Corrected.Low)
		j.number("high_s", a.Corrected.High)
		j.number("change_per_c", float64(a.Slope.Typical))
		j.bool("fitted", a.Slope.Fitted)
	})
	j.object("wanted", func() {
		j.number("low_s", a.Wanted.Low.Seconds)
		j.number("aim_s", a.Wanted.Aim.Seconds)
		j.number("high_s", a.Wanted.High.Seconds)
	})
	j.temp("warm_to", a.WarmTo)
	j.number("add", a.Add)
	if a.AddAlone > 0 {
		j.object("instead", func() {
			j.number("add", a.AddAlone)
			j.temp("at", a.AloneAt)
		})
	} else {
		j.null("instead")
	}
	j.object("reached", func() {
		j.number("seconds", a.Reached.Seconds)
		j.number("mm2_s", a.Reached.Nu.MM2PerS())
	})
	appendWords(j, a.Reasons, a.Cautions, sys, w)
}

func appendReading(j *jsonWriter, name string, r calc.Reading) {
	j.object(name, func() {
		j.text("cup", r.Cup.ID)
		j.number("seconds", r.Seconds)
		j.temp("temp", r.At)
	})
}
