package calc

import (
	"math"

	"boothset/calc/line"
	"boothset/calc/unit"
)

const (
	// NudgeTurn is the turn of the valve's knob that Nudge speaks of.
	NudgeTurn = 0.125
	// MostNudge is how much a nudge may move the gun before the opening is too small.
	MostNudge = unit.Drop(1 * unit.PascalPerPSI)
)

// touch is how touchy the inlet valve is at a job's target: the line at the target's
// flow and at one a hair above it.
type touch struct {
	job         *job
	here, above line.Flowing
	flow        unit.Flow // a hair above the target's
	working     unit.Abs  // there
}

// hair is the relative step of the slopes.
const hair = 1e-5

func (j *job) touch() touch {
	t := touch{job: j, flow: j.flow * (1 + hair)}
	t.here = line.At(j.after(), j.flow, j.air)
	t.above = line.At(j.after(), t.flow, j.air)
	t.working, _ = j.r.Gun.Upstream(t.flow, j.air)
	return t
}

// nudge is how far an eighth of a turn moves the gun when the valve stands at an
// opening and the set pressure is held where it gives the target there: the slope
// of the working pressure along the opening, times the turn.
func (t *touch) nudge(opening float64) unit.Drop {
	j := t.job
	v := &j.r.Gun.Valve
	step := hair * opening
	if opening+step > 1 {
		step = -step
	}
	set := func(line *line.Flowing, q unit.Flow, working unit.Abs, opening float64) float64 {
		p, _ := v.At(opening).Upstream(q, working, j.air)
		return float64(line.Upstream(p))
	}
	base := set(&t.here, j.flow, j.working, opening)
	dSetDx := (set(&t.here, j.flow, j.working, opening+step) - base) / step
	dSetDq := set(&t.above, t.flow, t.working, opening) - base
	dWorkingDq := float64(t.working - j.working)
	move := -dSetDx / dSetDq * dWorkingDq * NudgeTurn / v.Turns
	return unit.Drop(math.Min(move, float64(j.working-j.air.Ambient)))
}

// floor is the lowest sensible opening: the valve is not choked at or above it, and
// an eighth of a turn moves the gun by no more than MostNudge.
func (t *touch) floor() float64 {
	j := t.job
	v := &j.r.Gun.Valve
	// Choked where u b reaches the working pressure, u = q/(C sqrt(T0/T)).
	full, _ := v.Full.Upstream(j.flow, 0, j.air)
	choked := v.Shape.Opening(float64(full) * v.Full.B / float64(j.working))
	if t.nudge(1) > MostNudge {
		return 1
	}
	// The nudge falls with the opening nearly as a power of it: false position in logs.
	low := math.Max(choked, 1e-3)
	return math.Exp(line.FalsePosition(func(logX float64) float64 {
		return math.Log(float64(MostNudge / t.nudge(math.Exp(logX))))
	}, math.Log(low), 0, 1e-6))
}
