package answer

import (
	"boothset/calc/learn"
	"boothset/calc/line"
	"boothset/calc/trouble"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/signs"
)

// askTrouble answers what makes a gun spray badly; where readings of the line are given, with
// what they say of its parts.
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
		q.Odd = oddities(r, &Learn{&of, learnt})
	}
	found, err := signs.Book().Solve(&q)
	if err != nil {
		return nil, r.Refused(err, a, sys)
	}
	return &Trouble{&q, found}, nil
}

// Draws tell no probability finer than this from none or all.
const finestOdd = 0.005

// oddities is how likely each part in use is not what it is called, by the readings.
func oddities(r *question.Reader, l *Learn) (all []trouble.Oddity) {
	for i, p := range l.Found.Odd {
		if p == 0 {
			continue // not in use
		}
		kind := line.CapKind
		switch piece := &l.Found.Pieces[i]; piece.Role {
		case learn.InLine:
			kind = piece.Part.Kind
		case learn.InletValve:
			kind = line.ValveKind
		}
		all = append(all, trouble.Oddity{Part: l.Called(r.Words(), i), Kind: kind.String(), Prior: learn.OddShare, Now: min(max(p, finestOdd), 1-finestOdd)})
	}
	return all
}
