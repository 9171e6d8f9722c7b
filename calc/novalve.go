package calc

import (
	"math"

	"boothset/calc/unit"
)

// A gun without an inlet valve takes what its line brings it: the wall alone sets it, on a mark
// of its gauge, with nothing held back.

// nearestMark sets the wall where the gun has no inlet valve: on the mark nearest to what
// gives the target, within what the gun may be run at and what the supply holds; without a
// regulator the supply stands. What the gun gets from it is the target from there on.
func (j *job) nearestMark() {
	amb := j.air.Ambient
	if j.sets < 0 {
		j.takeWall(j.r.Supply)
		return
	}
	most, _ := j.limit()
	reads := j.reads(j.sets)
	limit := most.Gauge(amb) + reads
	open, step := j.open.Gauge(amb)+reads, float64(j.r.Mark)
	for n := math.Round(float64(open) / step); n >= 1; n-- {
		mark := unit.Gauge(n * step)
		_, q := j.gunAt(j.sets, (mark - reads).Abs(amb), 1)
		held := j.heldBy(j.r.Supply.Abs(amb), j.sets, q).Gauge(amb) + reads
		if mark <= limit && mark <= held {
			j.takeWall(mark)
			return
		}
	}
	j.takeWall(open) // no mark is low enough
}

// takeWall takes what the gun gets from a set pressure, as its gauge reads it, as its target.
func (j *job) takeWall(set unit.Gauge) {
	j.take(&j.setting, j.sets, set)
	working, _ := j.gunAt(j.sets, j.set, 1)
	j.solveFor(working.Gauge(j.air.Ambient))
	j.open, j.reserve = j.set, 0
}

// overStamp is whether a gun that nothing holds back is run past the most that it may be.
func (s *Setup) overStamp() bool {
	return !s.Short.Is && s.Valve.None && s.Working.Pressure > s.Working.Highest*(1+1e-9)
}

// explainNoValve says what sets a gun without an inlet valve, and what it gets.
func (s *Setup) explainNoValve(r *Request, why *reasons) {
	id := "wall-no-valve"
	if r.RegulatorAt() == Nowhere {
		id = "wall-none-no-valve"
	}
	why.add("wall", id, lineGround, gauge("flowing", s.Wall.Flowing), gauge("working", s.Working.Pressure), gauge("wanted", s.Working.Wanted),
		flow("flow", s.Working.Flow), gauge("supply", r.Supply))
}

// nowNoValve says what the wall as it stands does to a gun without an inlet valve.
func (s *Setup) nowNoValve(r *Request, set unit.Gauge, why *reasons) {
	n := &s.Now
	why.add("valve", "now-no-valve", lineGround, RegulatorFigure(r.RegulatorAt()), gauge("wall", n.Wall), gauge("gun", n.GunIfOpen),
		gauge("wanted", s.Working.Wanted), gauge("set", set))
}
