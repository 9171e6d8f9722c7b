package calc

import (
	"math"

	"boothset/calc/line"
	"boothset/calc/unit"
)

const (
	// EighthOfTurn is the turn of the valve's knob whose effect is given: an eighth.
	EighthOfTurn = 1.0 / unit.TurnParts
	// MostEighthTurn is how much an eighth of a turn may move the gun before the opening is too small.
	MostEighthTurn = unit.Drop(1 * unit.PascalPerPSI)
)

// sensitivity is how sensitive the gun is to the inlet valve and to the set pressure at a job's
// target: the line at the target's flow and at one slopeStep above it.
type sensitivity struct {
	job         *job
	here, above line.Flowing
	flow        unit.Flow // slopeStep above the target's
	working     unit.Abs  // there
}

// slopeStep is the relative step of the slopes.
const slopeStep = 1e-5

func (s *sensitivity) at(j *job) {
	s.job, s.flow = j, j.flow*(1+slopeStep)
	s.here.Prepare(j.after(), j.flow, j.air)
	s.above.Prepare(j.after(), s.flow, j.air)
	s.working, _ = j.r.Gun.Upstream(s.flow, j.air)
}

// set is the set pressure that brings q to working through the valve at an opening.
func (s *sensitivity) set(on *line.Flowing, q unit.Flow, working unit.Abs, opening float64) float64 {
	p, _ := s.job.r.Gun.Valve.At(opening).Upstream(q, working, s.job.air)
	return float64(on.Upstream(p))
}

// carried is how much of a change of the set pressure reaches the gun with the valve at
// an opening, and the set pressure there.
func (s *sensitivity) carried(opening float64) (share, set float64) {
	set = s.set(&s.here, s.job.flow, s.job.working, opening)
	return float64(s.working-s.job.working) / (s.set(&s.above, s.flow, s.working, opening) - set), set
}

// eighthTurn is how far an eighth of a turn moves the gun with the valve at an
// opening and the set pressure is held where it gives the target there: the slope
// of the working pressure along the opening, times the turn.
func (s *sensitivity) eighthTurn(opening float64) unit.Drop {
	j := s.job
	step := slopeStep * opening
	if opening+step > 1 {
		step = -step
	}
	share, base := s.carried(opening)
	slope := (base - s.set(&s.here, j.flow, j.working, opening+step)) / step
	return unit.Drop(math.Min(slope*share*EighthOfTurn/j.r.Gun.Valve.Turns, float64(j.working-j.air.Ambient)))
}

// sag is what the gun loses where the set pressure falls by SagShare of wall, as its gauge reads it.
func (s *sensitivity) sag(opening float64, wall unit.Gauge) unit.Drop {
	share, _ := s.carried(opening)
	return unit.Drop(share * SagShare * float64(wall-s.job.reads(s.job.wall)))
}

// floor is the lowest sensible opening: the valve is not choked at or above it, and
// an eighth of a turn moves the gun by no more than MostEighthTurn, to a part in 1,000.
func (s *sensitivity) floor() float64 {
	j := s.job
	v := &j.r.Gun.Valve
	if v.None {
		return 1
	}
	// Choked where u b reaches the working pressure, u = q/(C sqrt(T0/T)).
	full, _ := v.Full.Upstream(j.flow, 0, j.air)
	choked := v.Shape.Opening(float64(full) * v.Full.B / float64(j.working))
	// It falls with the opening nearly as a power of it: false position in logs,
	// which gives 1 where even the open valve moves too much.
	low := math.Max(choked, 1e-3)
	return math.Exp(line.FalsePosition(func(logX float64) float64 {
		return math.Log(float64(MostEighthTurn / s.eighthTurn(math.Exp(logX))))
	}, math.Log(low), 0, 1e-3))
}
