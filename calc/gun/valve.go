package gun

import (
	"math"

	"boothset/calc/line"
	"boothset/calc/unit"
)

// Valve is the gun's inlet valve: a restriction whose C runs with its opening.
type Valve struct {
	// None is whether the gun has none: then all passes, and nothing else counts.
	None  bool
	Full  line.Restriction // wide open
	Shape Shape
	Turns float64 // of the knob, from shut to wide open, above 0
	// FromShut is whether the knob is counted from shut; else it is from wide open.
	FromShut bool
}

// Shape is the power of the opening, 0 (shut) to 1 (open), that the valve's conductance goes
// with: 1 is in proportion, above that the valve opens late, below it early. Above 0. An
// estimate: no flow of a gun's inlet valve over its opening was found in print.
type Shape float64

// Linear is a valve whose conductance is in proportion to its opening.
const Linear Shape = 1

// none is the valve of a gun that has none: a conductance without end takes no pressure.
var none = Valve{None: true, Full: line.Restriction{C: unit.Conductance(math.Inf(1))}, Shape: Linear, Turns: 1}

// Check says what is wrong with a valve, or nil.
func (v Valve) Check() error {
	switch {
	case v.None:
		return nil
	case !(v.Full.C > 0) || math.IsInf(float64(v.Full.C), 0):
		return &Fault{ID: "valve-no-conductance"}
	case !(v.Full.B >= 0 && v.Full.B < 1):
		return &Fault{ID: "valve-ratio", Ratio: v.Full.B}
	case !(v.Turns > 0) || math.IsInf(v.Turns, 0):
		return &Fault{ID: "valve-turns"}
	case !(v.Shape > 0) || math.IsInf(float64(v.Shape), 0):
		return &Fault{ID: "valve-shape"}
	}
	return nil
}

// Share is the share of the open conductance at opening, which is held to 0..1.
func (s Shape) Share(opening float64) float64 { return math.Pow(held(opening), float64(s)) }

// Opening is the opening that gives share, which is held to 0..1.
func (s Shape) Opening(share float64) float64 { return math.Pow(held(share), 1/float64(s)) }

func held(x float64) float64 { return min(max(x, 0), 1) }

// At is the valve as a restriction at an opening above 0.
func (v *Valve) At(opening float64) line.Restriction {
	r := v.Full
	if v.None {
		return r
	}
	r.C *= unit.Conductance(v.Shape.Share(opening))
	return r
}

// OpeningFor is the opening at which the valve passes q from p1 to p2, and whether it
// is then choked. ok is false where even the open valve passes too little; the opening
// is then 1.
func (v *Valve) OpeningFor(q unit.Flow, p1, p2 unit.Abs, a line.Air) (opening float64, choked, ok bool) {
	if v.None {
		return 1, false, true
	}
	c, choked, ok := v.Full.Needed(q, p1, p2, a)
	if !ok || c > v.Full.C {
		return 1, false, false
	}
	return v.Shape.Opening(float64(c / v.Full.C)), choked, true
}

// Mach is the Mach number in the throat when the valve passes q from p1 at an opening
// above 0: 1 where that is all it can pass.
func (v *Valve) Mach(q unit.Flow, p1 unit.Abs, opening float64, a line.Air) float64 {
	r := v.At(opening)
	return line.ThroatMach(float64(q) / float64(r.Flow(p1, 0, a)))
}
