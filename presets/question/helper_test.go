package question_test

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"

	"github.com/stretchr/testify/require"
)

// plan is the request that texts come to, which there must be.
func plan(t require.TestingT, r *question.Reader, texts question.Texts, sys unit.System) *calc.Request {
	q, faults := r.Plan(r.ReadAll(question.Plan, texts, sys), sys)
	require.Empty(t, faults)
	return q
}

// planFaults is what will not do of texts.
func planFaults(r *question.Reader, texts question.Texts, sys unit.System) []*question.Fault {
	_, faults := r.Plan(r.ReadAll(question.Plan, texts, sys), sys)
	return faults
}

// solved is the answer to texts that must be accepted.
func solved(t require.TestingT, r *question.Reader, texts question.Texts) (*calc.Request, *calc.Setup) {
	q := plan(t, r, texts, unit.US)
	s, err := calc.Solve(q)
	require.NoError(t, err)
	return q, s
}

// day, thin, film and mix are the requests and the answers that texts come to.

func day(t require.TestingT, r *question.Reader, sys unit.System, texts question.Texts) (calc.DayRequest, calc.DayAnswer) {
	q, faults := r.Day(r.ReadAll(question.Day, texts, sys), sys)
	require.Empty(t, faults)
	a, err := calc.SolveDay(&q)
	require.NoError(t, err)
	return q, a
}

func thin(t require.TestingT, r *question.Reader, sys unit.System, texts question.Texts) (calc.ThinRequest, calc.ThinAnswer) {
	q, faults := r.Thin(r.ReadAll(question.Thin, texts, sys), sys)
	require.Empty(t, faults)
	a, err := calc.SolveThin(&q)
	require.NoError(t, err)
	return q, a
}

func film(t require.TestingT, r *question.Reader, texts question.Texts) (calc.FilmRequest, calc.FilmAnswer) {
	q, faults := r.Film(r.ReadAll(question.Film, texts, unit.US), unit.US)
	require.Empty(t, faults)
	a, err := calc.SolveFilm(&q)
	require.NoError(t, err)
	return q, a
}

func mix(t require.TestingT, r *question.Reader, texts question.Texts) (calc.MixRequest, calc.MixAnswer) {
	q, faults := r.Mix(r.ReadAll(question.Mix, texts, unit.US), unit.US)
	require.Empty(t, faults)
	a, err := calc.SolveMix(&q)
	require.NoError(t, err)
	return q, a
}

// ask is what a question says to texts: its first fault, or what solving says.
func ask(r *question.Reader, q *question.Question, texts question.Texts, sys unit.System) (answer any, err error) {
	a := r.ReadAll(q, texts, sys)
	var faults []*question.Fault
	switch q {
	case question.Plan:
		var x *calc.Request
		if x, faults = r.Plan(a, sys); len(faults) == 0 {
			answer, err = calc.Solve(x)
		}
	case question.Day:
		answer, faults, err = asked(r.Day, calc.SolveDay, a, sys)
	case question.Thin:
		answer, faults, err = asked(r.Thin, calc.SolveThin, a, sys)
	case question.Film:
		answer, faults, err = asked(r.Film, calc.SolveFilm, a, sys)
	case question.Mix:
		answer, faults, err = asked(r.Mix, calc.SolveMix, a, sys)
	}
	if len(faults) > 0 {
		return nil, faults[0]
	}
	return answer, r.Refused(err, a, sys)
}

func asked[Q, A any](resolve func(question.Answers, unit.System) (Q, []*question.Fault), solve func(*Q) (A, error), a question.Answers, sys unit.System) (any, []*question.Fault, error) {
	q, faults := resolve(a, sys)
	if len(faults) > 0 {
		return nil, faults, nil
	}
	answer, err := solve(&q)
	return answer, nil, err
}
