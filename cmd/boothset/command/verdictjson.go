package command

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/words"
)

// appendJudgement appends a verdict, what turns it, null where it goes, and each thing that
// speaks against spraying.
func appendJudgement(j *jsonWriter, of *calc.Judgement, sys unit.System, w *words.Words) {
	j.text("verdict", of.Verdict.String())
	if of.Verdict == calc.VerdictGo {
		j.null("turn")
	} else {
		j.text("turn", answer.TurnText(w, sys, of.Turn()))
	}
	j.array("against", func() {
		for i := range of.Against {
			c := &of.Against[i]
			j.object("", func() {
				j.text("id", c.ID)
				j.text("level", c.Level.String())
				j.text("turn", answer.TurnText(w, sys, c.Turn))
				j.text("text", w.Text(sys, c.ID, c.Figures))
				j.ground(w, c.Ground)
			})
		}
	})
}
