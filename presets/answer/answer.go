package answer

import (
	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/words"
)

// Answer is what a question comes to.
type Answer interface {
	// Rows is all that is said of it, in a language and a system's units.
	Rows(w *words.Words, sys unit.System) []Row
	// Stopped reports whether the job cannot be done as asked.
	Stopped() bool
	// Reasons and Cautions are those of its rows, as data.
	Reasons() []calc.Reason
	Cautions() []calc.Caution
}

// Ask answers a question; bare numbers of faults are told in the system's units. What will
// not do comes as a *question.Fault.
func Ask(r *question.Reader, q *question.Question, a question.Answers, sys unit.System) (Answer, error) {
	switch q {
	case question.Plan:
		p, err := AskPlan(r, a, sys)
		if err != nil {
			return nil, err
		}
		return p, nil
	case question.Day:
		return ask(r, a, sys, (*question.Reader).Day, calc.SolveDay, func(q *calc.DayRequest, a *calc.DayAnswer) Answer { return &Day{q, a} })
	case question.Thin:
		return ask(r, a, sys, (*question.Reader).Thin, calc.SolveThin, func(q *calc.ThinRequest, a *calc.ThinAnswer) Answer { return &Thin{q, a} })
	case question.Learn:
		return ask(r, a, sys, (*question.Reader).Learn, learn.Solve, func(q *learn.Request, a **learn.Answer) Answer { return &Learn{q, *a} })
	case question.Prove:
		return askProve(r, a, sys)
	case question.Trouble:
		return askTrouble(r, a, sys)
	case question.Film:
		return ask(r, a, sys, (*question.Reader).Film, calc.SolveFilm, func(q *calc.FilmRequest, a *calc.FilmAnswer) Answer { return &Film{q, a} })
	default:
		return ask(r, a, sys, (*question.Reader).Mix, calc.SolveMix, func(q *calc.MixRequest, a *calc.MixAnswer) Answer { return &Mix{q, a} })
	}
}

// ask joins a question's resolving, its solving and its answer.
func ask[Q, A any](r *question.Reader, a question.Answers, sys unit.System, resolve func(*question.Reader, question.Answers, unit.System) (Q, []*question.Fault), solve func(*Q) (A, error), say func(*Q, *A) Answer) (Answer, error) {
	q, faults := resolve(r, a, sys)
	if len(faults) > 0 {
		return nil, faults[0]
	}
	found, err := solve(&q)
	if err != nil {
		return nil, r.Refused(err, a, sys)
	}
	return say(&q, &found), nil
}
