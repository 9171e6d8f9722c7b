package trouble

import (
	"boothset/calc"
	"boothset/calc/unit"
)

// Step is what a pressure is moved by, and Nearer a distance, where the plan's own does not do:
// small enough to try on paper, large enough to see. Common practice.
const (
	Step   = unit.Drop(2 * unit.PascalPerPSI)
	Nearer = unit.Length(1 * unit.MetrePerInch)
)

// After is the job as it stands once a cause is mended by its move, solved anew; false where
// nothing of it is worked out, or where its numbers leave no room for the move.
func (j *Job) After(c *Cause) (*Job, bool) {
	if c.Move == MoveThin {
		return j.thinned()
	}
	if j.Setup == nil {
		return nil, false
	}
	switch c.Move {
	case MoveLower, MoveRaise:
		return j.pressed(c.Move)
	case MoveOpen:
		return j.asAdvised()
	case MoveLine:
		return j.relined()
	case MoveDistance:
		to := *j
		to.Held = j.Setup.Distance.Target
		return &to, true
	case MoveDay:
		return j.weathered()
	case MoveGrade:
		to := *j
		to.slower = j.Grade != j.Wanted()
		to.Grade = j.Wanted()
		return &to, true
	}
	return nil, false
}

// asAdvised is the wall set as the plan has it.
func (j *Job) asAdvised() (*Job, bool) {
	if j.Setup.Short.Is || j.Setup.Stopped() {
		return nil, false
	}
	r := *j.Request
	r.HasNow, r.Now = true, j.Setup.Wall.Flowing
	return j.solved(&r)
}

// pressed is the gun run lower or higher: the wall as planned where it stands off that to the
// same side, else a step from the plan's pressure, within what the coat is run at.
func (j *Job) pressed(m Move) (*Job, bool) {
	s := j.Setup
	if s.Short.Is || s.Stopped() {
		return nil, false
	}
	if now := s.Now; now.Given && (m == MoveLower && now.Wall > s.Wall.Flowing || m == MoveRaise && now.Wall < s.Wall.Flowing) {
		return j.asAdvised()
	}
	r := *j.Request
	w := &r.Coat.Working
	at := s.Working.Wanted - unit.Gauge(Step)
	if m == MoveRaise {
		at = s.Working.Wanted + unit.Gauge(Step)
	}
	at = min(max(at, w.Low), w.High, s.Working.Highest)
	if at == s.Working.Wanted {
		return nil, false
	}
	// The weather's correction is in the plan's pressure already.
	*w = calc.Band{Start: at, Low: at, High: at, Fixed: true, Ground: w.Ground}
	r.HasNow = false
	to, ok := j.solved(&r)
	return to, ok && !to.Setup.Short.Is
}

// relined is the line with the one change that wins most, and the wall as planned for it; with
// the wall alone where no change wins anything.
func (j *Job) relined() (*Job, bool) {
	if len(j.Setup.Fixes) == 0 {
		return j.asAdvised()
	}
	r := j.Request.Swapped(&j.Setup.Fixes[0].Swap)
	r.Swaps = nil
	r.HasNow = false
	to, ok := j.solved(r)
	return to, ok && !to.Setup.Short.Is
}

// weathered is panel, paint or air brought to where the day goes.
func (j *Job) weathered() (*Job, bool) {
	m, ok := j.remedy()
	if !ok {
		return nil, false
	}
	r := *j.Request
	r.Day = m.On(r.Day)
	return j.solved(&r)
}

// remedy is what makes the day fit for spraying; false where it is.
func (j *Job) remedy() (m calc.DayRemedy, ok bool) {
	a, err := calc.SolveDay(calc.DayOf(j.Request))
	return a.Remedy, err == nil && a.Remedy.ID != ""
}

// thinned is the mix as its sheet asks for it.
func (j *Job) thinned() (*Job, bool) {
	if j.Timed == nil {
		return nil, false
	}
	switch j.Timed.Remedy {
	case calc.RemedyCool, calc.RemedyWarm, calc.RemedyThin, calc.RemedyWarmThin:
	default:
		return nil, false // nothing to do, or no amount that is known
	}
	mix := *j.Mix
	mix.HasSecond = false // its slope is in what was reached
	mix.Reading.Seconds, mix.Reading.At = j.Timed.Reached.Seconds, j.Timed.To
	timed, err := calc.SolveThin(&mix)
	if err != nil {
		return nil, false
	}
	to := *j
	to.Mix, to.Timed = &mix, &timed
	return &to, true
}
