package command

import (
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

func thinQuestion() question {
	return question{
		name: "thin", brief: "brief-thin",
		help: help{intro: "thin-intro", schema: "boothset.thin/1", examples: []string{
			"boothset thin --coat clear --cup din4 --seconds 21 --paint 62F --sheet-seconds 16-18 --max-thinner 5",
			"boothset thin --coat clear --cup ford4 --seconds 26 --paint 68F",
		}},
		fields: presets.ThinFields(),
		ask:    asks((*presets.Catalogue).Thin, calc.SolveThin, func(r *calc.ThinRequest, a *calc.ThinAnswer) reply { return &thinReply{r, a} }),
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
	p.paragraph(p.say("thin-heading", said("coat", r.Coat), calc.FigureOf("seconds", calc.FigureCup, r.Reading.Seconds),
		said("cup", r.Reading.Cup.Label), calc.FigureOf("paint", calc.FigureTemp, r.Reading.At)))
	p.line("")
	p.hang("  "+p.say("remedy-"+string(a.Remedy)), t.advice(p.sys, p.words))
	p.line("")
	sheetTemp := calc.FigureOf("temp", calc.FigureTemp, r.Sheet.Value.At)
	wanted := "thin-at-usual"
	if r.Sheet.Ground.Basis == calc.Sheet {
		wanted = "thin-at-sheet"
	}
	all := []row{{p.say("label-wanted"), p.about(t.otherCup(), seconds(p, a.Wanted.Low.Seconds, a.Wanted.High.Seconds)), p.say(wanted, sheetTemp)}}
	if r.Reading.At != r.Sheet.Value.At {
		all = append(all, row{p.say("label-yours"), p.about(true, words.CupText(a.Corrected.Seconds)), t.corrected(p, sheetTemp)})
	}
	switch a.Remedy {
	case calc.RemedyWarm, calc.RemedyThin, calc.RemedyWarmThin:
		all = append(all, row{p.say("label-then"), p.about(true, words.CupText(a.Reached.Seconds)), p.say("thin-then", calc.FigureOf("temp", calc.FigureTemp, a.WarmTo))})
	}
	p.rows(leastValue, all...)
	p.line("")
	p.cautions(a.Cautions)
	p.line("")
	p.reasons(a.Reasons)
}

func (t *thinReply) otherCup() bool { return t.r.Sheet.Value.Cup.ID != t.r.Reading.Cup.ID }

// corrected is where the corrected reading holds and how far it may be off, or that two
// readings gave it.
func (t *thinReply) corrected(p *printer, at calc.Figure) string {
	c := &t.a.Corrected
	if t.a.Slope.Fitted {
		return p.say("thin-at-readings", at)
	}
	return p.say("thin-at-span", at, said("span", seconds(p, c.Low, c.High)))
}

// seconds is a span of a cup's seconds, the unit said once: "16 to 18 s".
func seconds(p *printer, low, high float64) string {
	return p.span(strings.TrimSuffix(words.CupText(low), " s"), words.CupText(high))
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
			j.standing(w, r.Sheet.Ground)
		})
		j.object("max_thinner", func() {
			j.number("share", r.MostThinner.Value)
			j.standing(w, r.MostThinner.Ground)
		})
		j.object("warm_limit", func() {
			j.temp("temp", r.Warmest.Value)
			j.standing(w, r.Warmest.Ground)
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
