package trouble

import (
	"boothset/calc"
	"boothset/calc/unit"
)

// Job is what is known of the job that sprays badly: its setup, and what was seen of how it is
// sprayed. What is not known is left empty.
type Job struct {
	Request *calc.Request
	Setup   *calc.Setup // of Request

	Held  unit.Length // from the panel, as it is held; 0 where not known
	Grade calc.Grade  // of the thinner or hardener in the mix; empty where not known

	// Mix is a timing of the mix, and Timed what it comes to; nil where it was not timed.
	Mix   *calc.ThinRequest
	Timed *calc.ThinAnswer
	// Film is combs read, and Laid what they come to; nil where none was read.
	Film *calc.FilmRequest
	Laid *calc.FilmAnswer

	read bool // the line was read: what its parts are called says no more that it carries
	// slower: the thinner was changed for the grade that the day wants, from a faster one.
	slower bool
}

// solved is the job with another request.
func (j *Job) solved(r *calc.Request) (*Job, bool) {
	s, err := calc.Solve(r)
	if err != nil {
		return nil, false
	}
	to := *j
	to.Request, to.Setup = r, s
	return &to, true
}

// Wanted is the grade of thinner and hardener that the day wants.
func (j *Job) Wanted() calc.Grade {
	d := &j.Request.Day
	return calc.GradeFor(d.Air, d.Panel, max(1, j.Request.Shop.Panels))
}

// grades is the grades, the fastest first.
var grades = []calc.Grade{calc.GradeFast, calc.GradeStandard, calc.GradeSlow, calc.GradeSlowest}
