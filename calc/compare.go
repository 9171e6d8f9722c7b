package calc

import (
	"boothset/calc/line"
	"boothset/calc/unit"
)

// Way is one way to the same pressure at the gun.
type Way struct {
	Wall    unit.Gauge
	Opening float64
	Mach    float64   // in the valve's throat
	Nudge   unit.Drop // what an eighth of a turn moves at the gun
	Sag     unit.Drop // what the gun loses where the wall sags by SagShare
	Choked  bool
}

// Comparison is the same target reached with the wall right and the valve open, and
// with the wall high and the valve shut down.
type Comparison struct {
	Given       bool // there is a high wall to compare with
	Right, High Way
}

// compare sets the advised wall against the one that stands, or the whole supply.
func (s *Setup) compare(j *job, t *touch) {
	if s.Short.Is {
		return
	}
	high := j.r.Supply
	if j.r.HasNow {
		high = j.r.Now
	}
	if high < s.Wall.Flowing+unit.Gauge(LeastReserve) {
		return
	}
	right, ok1 := j.way(s.Wall.Flowing, t)
	other, ok2 := j.way(high, t)
	s.Comparison = Comparison{Given: ok1 && ok2, Right: right, High: other}
}

// way works out how the target is reached from a wall.
func (j *job) way(wall unit.Gauge, t *touch) (Way, bool) {
	amb := j.air.Ambient
	into, _, ok := line.Downstream(j.after(), j.flow, wall.Abs(amb), j.air)
	if !ok {
		return Way{}, false
	}
	w := Way{Wall: wall}
	w.Opening, w.Choked, ok = j.r.Gun.Valve.OpeningFor(j.flow, into, j.working, j.air)
	if !ok {
		return Way{}, false
	}
	w.Mach = j.valveMach(into, w.Opening, w.Choked)
	w.Nudge = t.nudge(w.Opening)
	sagged, _ := j.gunAt(unit.Gauge(float64(wall)*(1-SagShare)).Abs(amb), w.Opening)
	w.Sag = unit.Drop(j.working - sagged)
	return w, true
}
