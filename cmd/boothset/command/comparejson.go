package command

import (
	"time"

	"boothset/calc"
	"boothset/presets/answer"
	"boothset/presets/card"
	"boothset/presets/shop"
)

// json is the comparisons: one of a folder's booths, of several folders one a booth.
func (c *comparing) json(j *jsonWriter) {
	j.array("comparisons", func() {
		for _, of := range c.all {
			j.object("", func() { c.compared(j, of) })
		}
	})
	if c.agreed == nil || len(c.agreed.Standing) == 0 {
		j.null("agreed")
	} else {
		j.object("agreed", func() { appendToday(j, c.agreed) })
	}
	var cautions []calc.Caution
	for _, of := range c.all {
		cautions = append(cautions, of.Cautions()...)
	}
	appendWords(j, nil, append(cautions, c.p.general()...), c.sys, c.words)
}

func (c *comparing) compared(j *jsonWriter, of *answer.Compared) {
	if of.Base == nil {
		j.null("base")
	} else {
		j.object("base", func() { named(j, of.Base) })
	}
	j.array("booths", func() {
		for _, s := range of.Sides {
			j.object("", func() {
				named(j, s)
				appendJudgement(j, &s.Plan.Setup.Judgement, c.sys, c.words)
				j.bool("stopped", s.Plan.Stopped())
				appendApart(j, s.Apart)
				c.change(j, s.Nearer)
				j.object("plan", func() { appendPlan(j, s.Plan, c.sys, c.words) })
			})
		}
	})
}

func named(j *jsonWriter, s *answer.Side) {
	j.text("booth", s.ID)
	j.text("shop", s.Shop)
	j.text("name", s.Name)
}

func appendApart(j *jsonWriter, all []calc.Apart) {
	j.array("apart", func() {
		for _, a := range all {
			j.object("", func() {
				j.text("of", a.Of)
				j.drop("by", a.By)
			})
		}
	})
}

// change is the one change that brings a booth's wall nearest the base's, null where none does.
func (c *comparing) change(j *jsonWriter, n *calc.Nearer) {
	if n == nil {
		j.null("change")
		return
	}
	j.object("change", func() {
		j.text("id", n.ID())
		j.text("to", n.Swap.ID)
		j.text("part", n.Part)
		j.gauge("wall", n.Wall)
		j.text("text", c.words.Text(c.sys, n.ID(), n.Figures()))
	})
}

// appendToday is what was agreed on for a job, against what it comes to today.
func appendToday(j *jsonWriter, a *card.Today) {
	s := a.Standing[0]
	j.text("id", s.ID)
	j.text("band", s.Band)
	j.text("agreed", s.Agreed.UTC().Format(time.RFC3339))
	j.bool("twins", len(a.Standing) > 1)
	j.gauge("wall", s.Values.Wall)
	if a.Plan.Stopped() {
		j.null("today")
	} else {
		j.gauge("today", a.Plan.Setup.Wall.Flowing)
	}
	appendApart(j, a.Apart)
	appendChanges(j, a.Changes)
}

// appendChanges is what of a line and a gun has changed since a setting was agreed on.
func appendChanges(j *jsonWriter, all []shop.Change) {
	j.array("changes", func() {
		for _, x := range all {
			j.object("", func() {
				j.text("was", x.Was.Text())
				j.text("is", x.Is.Text())
				j.bool("values", x.Values)
			})
		}
	})
}
