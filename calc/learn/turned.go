package learn

import (
	"math"

	"boothset/calc"
	"boothset/calc/spread"
	"boothset/calc/unit"
)

// Turned is how far the inlet valve is to be open, 0..1, 80 % sure, for the gun's gauge to show
// the plan's target with the wall's gauge at a pressure: 1 where the open valve gives no more.
func (l *Learner) Turned(wall unit.Gauge) spread.Range {
	at := *l.Setup
	at.Wall.Flowing = wall
	return spread.Of(l.asRead(), &at).Opening
}

// Turning is the inlet valve as it is to be set: how far open, with the wall's gauge at a
// pressure. It is zero where the valve is not set by the gun's gauge.
type Turning struct {
	Wall    unit.Gauge
	Opening spread.Range
}

// Off is how much further open, in turns, a valve stands than it is to be: below 0 where it is
// closed further, 0 where it stands as it is to be within half of the part that turns are told in.
func (t *Turning) Off(opening, turns float64) float64 {
	const told = 0.5 / unit.TurnParts
	switch low, high := (opening-t.Opening.Low)*turns, (opening-t.Opening.High)*turns; {
	case low < -told:
		return low
	case high > told:
		return high
	}
	return 0
}

// byGauge is whether the inlet valve is set by the gun's gauge.
func byGauge(r *calc.Request, s *calc.Setup) bool {
	return !s.Valve.None && r.Gauge == calc.InHandle && !s.Foot.Is
}

// turning is the valve to be set with the wall as it is to be set since; zero where the supply is
// short of that.
func (a *Answer) turning(plan *calc.Request) (t Turning) {
	if a.After.Short.Is || !byGauge(plan, a.After) {
		return t
	}
	return Turning{a.After.Wall.Flowing, a.Sure.Opening}
}

// turned is the same for a reading in which the valve was set so that the gun's gauge showed its
// target, as near as a gauge is read; zero of another one.
func (l *Learner) turned(x *Taken) Turning {
	wall, gun, known := unit.Gauge(0), unit.Gauge(0), 0
	for _, s := range x.Shows {
		switch {
		case s.Gauge == WallGauge && !s.Before:
			wall, known = s.Pressure, known+1
		case s.Gauge == GunGauge:
			gun, known = s.Pressure, known+1
		}
	}
	if known < 2 || !byGauge(l.Request, l.Setup) || x.Still || x.Opening >= 1 || len(x.Without)+len(x.Swapped) > 0 || math.Abs(float64(gun-l.Setup.Working.Reads)) > 2*float64(ReadingNoise) {
		return Turning{}
	}
	return Turning{wall, l.Turned(wall)}
}
