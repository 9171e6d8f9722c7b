package gun

import (
	"math"

	"boothset/calc/line"
	"boothset/calc/unit"
)

// Valve is the gun's inlet valve: a restriction whose C runs with its opening.
type Valve struct {
	Full  line.Restriction // wide open
	Shape Shape            // share of Full's C at each opening
	Turns float64          // of the knob, from shut to wide open
}

// Shape gives the share of the open valve's conductance at an opening from 0 (shut)
// to 1 (open), as straight stretches between knees. It starts at 0,0, ends at 1,1
// and rises throughout.
type Shape []Knee

// Knee is a point of a Shape.
type Knee struct{ Opening, Share float64 }

// Linear is a valve whose conductance is in proportion to its opening.
var Linear = Shape{{0, 0}, {1, 1}}

// Check says what is wrong with a valve, or nil.
func (v Valve) Check() error {
	switch {
	case !(v.Full.C > 0) || math.IsInf(float64(v.Full.C), 0):
		return &Fault{ID: "valve-no-conductance"}
	case !(v.Full.B >= 0 && v.Full.B < 1):
		return &Fault{ID: "valve-ratio", Ratio: v.Full.B}
	case !(v.Turns > 0) || math.IsInf(v.Turns, 0):
		return &Fault{ID: "valve-turns"}
	}
	return v.Shape.check()
}

func (s Shape) check() error {
	if len(s) < 2 || s[0] != (Knee{}) || s[len(s)-1] != (Knee{1, 1}) {
		return &Fault{ID: "valve-shape-ends"}
	}
	for i := 1; i < len(s); i++ {
		if !(s[i].Opening > s[i-1].Opening && s[i].Share > s[i-1].Share) {
			return &Fault{ID: "valve-shape-rise", Knee: i + 1}
		}
	}
	return nil
}

// Share is the share of the open conductance at opening, which is held to 0..1.
func (s Shape) Share(opening float64) float64 {
	return s.walk(opening, func(k Knee) (float64, float64) { return k.Opening, k.Share })
}

// Opening is the opening that gives share, which is held to 0..1.
func (s Shape) Opening(share float64) float64 {
	return s.walk(share, func(k Knee) (float64, float64) { return k.Share, k.Opening })
}

func (s Shape) walk(x float64, of func(Knee) (from, to float64)) float64 {
	x = math.Min(math.Max(x, 0), 1)
	for i := 1; i < len(s); i++ {
		x1, y1 := of(s[i])
		if x <= x1 {
			x0, y0 := of(s[i-1])
			return y0 + (y1-y0)*(x-x0)/(x1-x0)
		}
	}
	return 1
}

// At is the valve as a restriction at an opening above 0.
func (v *Valve) At(opening float64) line.Restriction {
	r := v.Full
	r.C *= unit.Conductance(v.Shape.Share(opening))
	return r
}

// OpeningFor is the opening at which the valve passes q from p1 to p2, and whether it
// is then choked. ok is false where even the open valve passes too little; the opening
// is then 1.
func (v *Valve) OpeningFor(q unit.Flow, p1, p2 unit.Abs, a line.Air) (opening float64, choked, ok bool) {
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
