package calc

import (
	"boothset/calc/line"
	"boothset/calc/unit"
)

// Way is one way to the same pressure at the gun.
type Way struct {
	Wall       unit.Gauge
	Opening    float64
	Area       float64   // of the open valve's sonic conductance, the share at the opening
	Mach       float64   // in the valve's throat
	EighthTurn unit.Drop // what an eighth of a turn moves at the gun
	Sag        unit.Drop // what the gun loses where the wall sags by SagShare, by its slope
	Choked     bool
}

// Comparison is the same target reached with the wall right and the valve open, and
// with the wall high and the valve shut down.
type Comparison struct {
	Given       bool // there is a high wall to compare with
	Right, High Way
}

// compare sets the advised wall against the one that is set now, or the whole supply.
func (s *Setup) compare(j *job, sens *sensitivity) {
	if s.Short.Is || s.Valve.None || j.footSets() {
		return
	}
	high := j.r.Supply + j.reads(j.wall)
	if j.r.HasNow {
		high = j.r.Now
	}
	if high < s.Wall.Flowing+unit.Gauge(LeastReserve) {
		return
	}
	other, ok := sens.way(high)
	if !ok {
		return
	}
	other.Sag = sens.sag(other.Opening, high)
	v := &s.Valve
	s.Comparison = Comparison{
		Given: true,
		Right: Way{Wall: s.Wall.Flowing, Opening: v.Opening, Area: v.Area, Mach: v.Mach, Choked: v.Choked, EighthTurn: v.EighthTurn, Sag: sens.sag(v.Opening, s.Wall.Flowing)},
		High:  other,
	}
}

// way is how the target is reached from a wall as its gauge reads it, all but its sag. ok is false where even
// the open valve gives less. A second regulator holds back what is above its own setting.
func (sens *sensitivity) way(wall unit.Gauge) (w Way, ok bool) {
	j := sens.job
	w.Wall, w.Opening, w.Area = wall, 1, 1
	set, _, ok := line.Downstream(j.r.Line[j.wall+1:j.sets+1], j.flow, (wall - j.reads(j.wall)).Abs(j.air.Ambient), j.air)
	if !ok {
		return w, false
	}
	if j.footSets() {
		into, choked := j.r.Gun.Valve.Full.Upstream(j.flow, j.working, j.air)
		w.Mach, w.EighthTurn = j.valveMach(into, 1, choked), sens.eighthTurn(1)
		return w, set >= j.open
	}
	into, _, ok := line.Downstream(j.after(), j.flow, set, j.air)
	if !ok {
		return w, false
	}
	w.Opening, w.Choked, ok = j.r.Gun.Valve.OpeningFor(j.flow, into, j.working, j.air)
	w.Area = j.r.Gun.Valve.Shape.Share(w.Opening)
	w.Mach = j.valveMach(into, w.Opening, w.Choked)
	w.EighthTurn = sens.eighthTurn(w.Opening)
	return w, ok
}
