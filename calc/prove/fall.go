package prove

import (
	"math"
	"slices"

	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/unit"
)

// Fall is what the gun's gauge fell by while the trigger was held ten seconds.
type Fall struct {
	First, After unit.Gauge
	By           unit.Drop // below 0 where it rose
	Is           bool      // it fell by more than two readings of one gauge scatter
	Of           Faller
	// Supply is what was left before the wall's regulator, 0 where it was not read, and Needed
	// what must be left there to hold the wall; 0 where nothing fell.
	Supply, Needed unit.Gauge
}

// Faller is what does not hold.
type Faller uint8

// The air holds; it falls, and no reading tells what of; the wall's regulator does not hold what
// it is fed; the supply does not feed it; the wall holds, and the air is lost after it.
const (
	Holds Faller = iota
	Untold
	Regulator
	Supply
	AfterWall
)

// String is the faller as answers name it.
func (f Faller) String() string {
	return [...]string{"holds", "untold", "regulator", "supply", "after-wall"}[f]
}

// Scatters is what two readings of one gauge may differ by without anything having changed: three
// standard deviations of their difference.
var Scatters = unit.Drop(3 * math.Sqrt2 * float64(learn.ReadingNoise))

// held is the gauges with the trigger held and the inlet valve wide open.
type held struct{ wall, gun unit.Gauge }

// Held reports whether one of the readings is of the trigger held, which First is told beside.
func Held(taken []learn.Taken) bool { return lastHeld(taken) != nil }

// lastHeld is the last of the readings in which the trigger was held with the valve wide open, the
// line as it stands and both gauges read; nil where there is none.
func lastHeld(taken []learn.Taken) *held {
	for _, x := range slices.Backward(taken) {
		var h held
		for _, s := range x.Shows {
			switch {
			case s.Gauge == learn.GunGauge:
				h.gun = s.Pressure
			case s.Gauge == learn.WallGauge && !s.Before:
				h.wall = s.Pressure
			}
		}
		if !x.Still && x.Opening >= 1 && len(x.Without)+len(x.Swapped) == 0 && h.gun > 0 && h.wall > 0 {
			return &h
		}
	}
	return nil
}

// fall judges what the gun's gauge fell by: the supply by what is left of it before the
// regulator, where that was read, else by the compressor's own figures.
func fall(plan *calc.Request, s *calc.Setup, h *held, seen *Seen) *Fall {
	f := &Fall{First: seen.First, After: h.gun, By: unit.Drop(seen.First - h.gun), Supply: seen.Supply}
	if f.By <= Scatters {
		return f
	}
	wall := seen.FirstWall // what the regulator was to hold
	if wall == 0 {
		wall = h.wall + unit.Gauge(f.By) // a line loses less as less flows: the wall fell by no less
	}
	f.Needed = plan.SupplyFor(s, wall, seen.First)
	f.Is, f.Of = true, Untold
	switch {
	case seen.FirstWall > 0 && unit.Drop(seen.FirstWall-h.wall) <= Scatters:
		f.Of = AfterWall
	case f.Supply > 0 && f.Supply < f.Needed:
		f.Of = Supply
	case f.Supply > 0:
		f.Of = Regulator
	case s.Supplied.Checked && !s.Supplied.Verdict.OK:
		f.Of = Supply
	}
	return f
}
