package tui

import (
	"errors"

	"boothset/calc"
	"boothset/presets/answer"
	"boothset/presets/question"
)

// job is answers with what comes of them.
type job struct {
	id          int              // no two that were worked out have the same
	answers     question.Answers // as taken, without the usual ones
	answer.Plan                  // with how sure it is, unless the supply is short, and its day
}

// work resolves and solves answers once, with the shop's usual ones filled in. What will not
// do comes as a *question.Fault where one answer is to blame.
func (s *session) work(a question.Answers) (j job, err error) {
	s.worked++
	j.id, j.answers = s.worked, a
	all := s.counting(a)
	var faults []*question.Fault
	if j.Request, faults = s.resolve(all, s.sys); len(faults) > 0 {
		return j, faults[0]
	}
	if j.Setup, err = s.solve(j.Request); err != nil {
		return j, s.reader.Refused(err, all, s.sys)
	}
	if err := j.SolveStages(); err != nil {
		return j, s.reader.Refused(err, all, s.sys)
	}
	if !j.Stopped() {
		j.Spread = s.sure(j.Request, j.Setup)
	}
	j.Day = calc.DayOf(j.Request)
	today, err := calc.SolveDay(j.Day)
	if err != nil {
		return j, s.reader.Refused(err, all, s.sys)
	}
	j.Today = &today
	return j, nil
}

// faultOf is the answer that an error blames, nil where it is none.
func faultOf(err error) *question.Fault {
	var f *question.Fault
	errors.As(err, &f)
	return f
}
