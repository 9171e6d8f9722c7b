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

func (t *touch) at(j *job) {
	t.job, t.flow = j, j.flow*(1+hair)
	t.here.Fix(j.after(), j.flow, j.air)
	t.above.Fix(j.after(), t.flow, j.air)
	t.working, _ = j.r.Gun.Upstream(t.flow, j.air)
}

// set is the set pressure that brings q to working through the valve at an opening.
func (t *touch) set(on *line.Flowing, q unit.Flow, working unit.Abs, opening float64) float64 {
	p, _ := t.job.r.Gun.Valve.At(opening).Upstream(q, working, t.job.air)
	return float64(on.Upstream(p))
}

// carried is how much of a change of the set pressure reaches the gun with the valve at
// an opening, and the set pressure there.
func (t *touch) carried(opening float64) (share, set float64) {
	set = t.set(&t.here, t.job.flow, t.job.working, opening)
	return float64(t.working-t.job.working) / (t.set(&t.above, t.flow, t.working, opening) - set), set
}

// nudge is how far an eighth of a turn moves the gun when the valve stands at an
// opening and the set pressure is held where it gives the target there: the slope
// of the working pressure along the opening, times the turn.
func (t *touch) nudge(opening float64) unit.Drop {
	j := t.job
	step := hair * opening
	if opening+step > 1 {
		step = -step
	}
	share, base := t.carried(opening)
	slope := (base - t.set(&t.here, j.flow, j.working, opening+step)) / step
	return unit.Drop(math.Min(slope*share*NudgeTurn/j.r.Gun.Valve.Turns, float64(j.working-j.air.Ambient)))
}

// sag is what the gun loses where the set pressure falls by SagShare of wall.
func (t *touch) sag(opening float64, wall unit.Gauge) unit.Drop {
	share, _ := t.carried(opening)
	return unit.Drop(share * SagShare * float64(wall))
}

// floor is the lowest sensible opening: the valve is not choked at or above it, and
// an eighth of a turn moves the gun by no more than MostNudge, to a part in 1,000.
func (t *touch) floor() float64 {
	j := t.job
	v := &j.r.Gun.Valve
	// Choked where u b reaches the working pressure, u = q/(C sqrt(T0/T)).
	full, _ := v.Full.Upstream(j.flow, 0, j.air)
	choked := v.Shape.Opening(float64(full) * v.Full.B / float64(j.working))
	// The nudge falls with the opening nearly as a power of it: false position in logs,
	// which gives 1 where even the open valve moves too much.
	low := math.Max(choked, 1e-3)
	return math.Exp(line.FalsePosition(func(logX float64) float64 {
		return math.Log(float64(MostNudge / t.nudge(math.Exp(logX))))
	}, math.Log(low), 0, 1e-3))
}
