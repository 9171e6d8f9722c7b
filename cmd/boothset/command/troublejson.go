package command

import (
	"boothset/calc"
	"boothset/calc/trouble"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/signs"
	"boothset/presets/words"
)

// appendTrouble appends what makes a gun spray badly into an open object.
func appendTrouble(j *jsonWriter, t *answer.Trouble, sys unit.System, w *words.Words) {
	a := t.Found
	j.array("signs", func() {
		for _, id := range t.Request.Signs {
			j.object("", func() {
				j.text("sign", id)
				j.text("name", w.Say(signs.Name(id)))
				j.text("look", w.Say("look-sign-"+id))
				j.ground(w, signs.Book().Sign(id).Ground)
			})
		}
	})
	j.array("found", func() {
		for _, f := range t.Request.Found {
			j.object("", func() {
				j.text("check", f.Check)
				j.text("finding", f.Finding)
			})
		}
	})
	j.text("end", a.End.String())
	j.array("causes", func() {
		for i := range a.Causes {
			c := &a.Causes[i]
			j.object("", func() {
				j.text("cause", c.ID)
				j.text("name", w.Say("name-cause-"+c.ID))
				j.number("probability", c.P)
				appendFacts(j, "raised", c.Raised, sys, w)
				appendFacts(j, "lowered", c.Lowered, sys, w)
			})
		}
	})
	j.number("none_of_these", a.None)
	appendNext(j, a.Next, w)
	appendMove(j, t, sys, w)
	appendRows(j, "panel_now", t.WetRows(w))
}

func appendFacts(j *jsonWriter, name string, all []trouble.Fact, sys unit.System, w *words.Words) {
	j.array(name, func() {
		for _, f := range all {
			j.object("", func() {
				j.text("fact", f.ID)
				j.text("text", w.Text(sys, "fact-"+f.ID, f.Figures))
			})
		}
	})
}

// appendNext appends the check to make next, null where no check would tell more.
func appendNext(j *jsonWriter, n *trouble.Next, w *words.Words) {
	if n == nil {
		j.null("next")
		return
	}
	j.object("next", func() {
		j.text("check", n.ID)
		j.text("ask", w.Say("ask-check-"+n.ID))
		j.number("minutes", n.Takes.Minutes())
		j.number("moves", n.Moves)
		j.array("findings", func() {
			for _, f := range n.Findings {
				j.object("", func() {
					j.text("finding", f.ID)
					j.text("text", w.Say(answer.FindingName(n.ID, f.ID)))
				})
			}
		})
	})
}

// appendMove appends what mends the likeliest cause, and what the settings come to with that
// done, null where they were not worked out again. While there is more to look at it is null.
func appendMove(j *jsonWriter, t *answer.Trouble, sys unit.System, w *words.Words) {
	if t.Found.End == trouble.Open {
		j.null("move")
		return
	}
	j.object("move", func() {
		j.text("cause", t.Likeliest().ID)
		j.text("kind", string(t.Likeliest().Move))
		appendRows(j, "text", t.MoveText(w, sys))
		appendFacts(j, "still", t.Found.Still(), sys, w)
		if !t.Resolved() {
			j.null("after")
			return
		}
		after := t.Found.After
		j.object("after", func() {
			s := after.Setup
			j.gauge("wall", s.Wall.Flowing)
			j.gauge("wall_static", s.Wall.Static)
			j.gauge("working", s.Working.Pressure)
			j.near("distance", s.Distance.Target)
			j.number("valve_opening", s.Valve.Opening)
			j.number("valve_turns", s.Valve.Turns)
		})
	})
}

// appendRows appends the sentences of rows that are remarks.
func appendRows(j *jsonWriter, name string, rows []answer.Row) {
	j.array(name, func() {
		for _, r := range rows {
			if r.Role == answer.Remark && j.key("") {
				j.b = appendText(j.b, r.Text)
			}
		}
	})
}

// judged is what an answer says of whether to spray, nil where it says nothing of it.
func judged(a answer.Answer) *calc.Judgement {
	switch a := a.(type) {
	case *answer.Plan:
		return &a.Setup.Judgement
	case *answer.Day:
		return &a.Found.Judgement
	case *answer.Prove:
		return &a.Found.After.Judgement
	case *answer.Trouble:
		if s := a.Found.Job.Setup; s != nil {
			return &s.Judgement
		}
	}
	return nil
}
