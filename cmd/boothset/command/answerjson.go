package command

import (
	"slices"

	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/words"
)

// planRoom is room for a plan as JSON: growing into it would copy it several times.
const planRoom = 16 << 10

// appendAnswer appends an answer as one JSON object, with the general caution where the run
// has not said it; of it what is picked. Figures have twelve digits.
func appendAnswer(dst []byte, q *question.Question, a answer.Answer, said bool, sys unit.System, w *words.Words, pick *picked) []byte {
	if dst == nil {
		dst = make([]byte, 0, planRoom)
	}
	cautions := a.Cautions()
	if !said {
		cautions = append(slices.Clip(cautions), answer.General)
	}
	j := jsonWriter{b: dst, fresh: true, pick: pick}
	j.object("", func() {
		j.text("schema", schema(q.Name))
		if of := judged(a); of != nil {
			appendJudgement(&j, of, sys, w)
		}
		j.bool("stopped", a.Stopped())
		switch a := a.(type) {
		case *answer.Plan:
			appendPlan(&j, a, sys, w)
		case *answer.Day:
			appendDay(&j, a, sys)
		case *answer.Thin:
			appendThin(&j, a, sys, w)
		case *answer.Film:
			appendFilm(&j, a, sys, w)
		case *answer.Mix:
			appendMix(&j, a, sys, w)
		case *answer.Learn:
			appendLearn(&j, a, sys, w)
		case *answer.Prove:
			appendSteps(&j, a, sys, w)
			appendLearn(&j, &a.Learn, sys, w)
		case *answer.Trouble:
			appendTrouble(&j, a, sys, w)
		}
		appendWords(&j, a.Reasons(), cautions, sys, w)
	})
	return j.b
}
