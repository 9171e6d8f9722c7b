package answer

import (
	"boothset/calc/learn"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/signs"
)

// askTrouble answers what makes a gun spray badly; where readings of the line are given, on the
// line as they left it.
func askTrouble(r *question.Reader, a question.Answers, sys unit.System) (Answer, error) {
	q, faults := r.Trouble(a, sys)
	if len(faults) > 0 {
		return nil, faults[0]
	}
	if a.Has(question.GaugeReading) {
		of, faults := r.Learn(a.Of(question.Learn), sys)
		if len(faults) > 0 {
			return nil, faults[0]
		}
		learnt, err := learn.Solve(&of)
		if err != nil {
			return nil, r.Refused(err, a, sys)
		}
		q.Plan = learnt.Since
	}
	found, err := signs.Book().Solve(&q)
	if err != nil {
		return nil, r.Refused(err, a, sys)
	}
	return &Trouble{&q, found}, nil
}
