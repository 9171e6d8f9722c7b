package calc

import (
	"slices"

	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// Learnt is what readings of a line left of it: lines as it may be, and the one in the middle of
// them, which is what it is taken for. It holds for any request on that line with its gun.
type Learnt struct {
	// Readings is how many there were, Elsewhere how many of the gun on other lines besides, and Told
	// what they came to.
	Readings, Elsewhere int
	Told                Told
	// Odds is how probable it is of each part, and Odd are those that are odd as surely as is told.
	Odds []PartOdds
	Odd  []OddPart
	// Lines are lines as it may be, each as likely; none where the readings contradict: they
	// count for nothing then. Unread are the tolerances that no reading tells of, by their places
	// in Deviations.
	Lines  []LineOff
	Unread []int
	// Middle is the line in the middle of them.
	Middle LineOff

	// line and gun are what the request was described with.
	line []line.Part
	gun  gun.Gun
}

// Told is what readings came to: that parts are odd, that none is, that it cannot be told yet, that
// two readings cannot both be right, or that they tell of the gun alone, which was read elsewhere.
type Told string

// What readings can come to.
const (
	ToldOdd         Told = "odd"
	ToldRight       Told = "right"
	ToldNotYet      Told = "untold"
	ToldContradicts Told = "contradicts"
	ToldElsewhere   Told = "elsewhere"
)

// PartOdds is how probable it is, 0..1, that a part is not what it is called; the gun itself is of
// the kind of its cap.
type PartOdds struct {
	Name string
	Kind line.Kind
	Odd  float64
	// Before is how probable it was before any reading.
	Before float64
}

// OddPart is a part that is not what it is called: Bore is that of a good fitting which passes as
// much, of a hose its own, 0 of the gun itself. Part is its place in the line, -1 of the gun and its
// inlet valve.
type OddPart struct {
	Name string
	Bore unit.Length
	Part int
}

// LineOff is how far one line is off what it is described as.
type LineOff struct {
	Deviations
	Off
}

// Of is a request on the line as it is described, on the line as it was read.
func (x *Learnt) Of(described *Request) *Request {
	if len(x.Lines) == 0 {
		r := *described
		r.Learnt = x
		return &r
	}
	p := perturbed(described)
	p.put(&x.Middle.Deviations, &x.Middle.Off)
	r := p.r
	r.Line, r.Swaps = slices.Clone(r.Line), slices.Clone(r.Swaps)
	for i := range x.Odd {
		if at := x.Odd[i].Part; at >= 0 {
			r.Swaps = append(r.Swaps, Swap{ID: r.Line[at].Entry, Name: r.Line[at].Name, Kind: Renew, Index: at})
		}
	}
	r.Gun.Calibrate(p.stamp)
	of := *x
	of.line, of.gun = described.Line, described.Gun.Gun
	r.Learnt = &of
	return &r
}

// without is the same of a line that a part was taken out of; its Lines are of the whole one.
func (x *Learnt) without(part int) *Learnt {
	if x == nil || x.line == nil {
		return x
	}
	of := *x
	of.line = slices.Delete(slices.Clone(x.line), part, part+1)
	return &of
}

// AsDescribed is the request without what its readings say.
func (r *Request) AsDescribed() *Request {
	if r.Learnt == nil {
		return r
	}
	of := *r
	if r.AsRead() {
		of.Line, of.Gun.Gun = r.Learnt.line, r.Learnt.gun
		of.Swaps = slices.DeleteFunc(slices.Clone(r.Swaps), func(w Swap) bool { return w.Kind == Renew })
	}
	of.Learnt = nil
	return &of
}

// described is a part of the line as that is described.
func (r *Request) described(part int) *line.Part {
	if r.AsRead() {
		return &r.Learnt.line[part]
	}
	return &r.Line[part]
}

// stamp is the gun's as it is described.
func (r *Request) stamp() gun.Stamp {
	if r.AsRead() {
		return r.Learnt.gun.Stamp
	}
	return r.Gun.Stamp
}

// AsRead is whether the request's line is taken as its readings have it.
func (r *Request) AsRead() bool { return r.Learnt != nil && len(r.Learnt.Lines) > 0 }

// GunReads is what the gun's gauge reads too high.
func (r *Request) GunReads() unit.Gauge {
	if !r.AsRead() {
		return 0
	}
	return unit.Gauge(r.Learnt.Middle.GunGauge)
}

// explainLearnt says what the line's readings made of it.
func (s *Setup) explainLearnt(r *Request, why *reasons) {
	switch x := r.Learnt; {
	case x == nil:
		return
	case !r.AsRead():
		why.add("line", "learnt-contradicts", ownGround, CountFigure("readings", x.Readings))
		return
	default:
		if x.Readings > 0 {
			why.add("line", "learnt-line", ownGround, CountFigure("readings", x.Readings))
		}
		if x.Elsewhere > 0 {
			why.add("line", "learnt-elsewhere", ownGround, CountFigure("readings", x.Elsewhere), TextFigure("gun", r.Gun.Name))
		}
		for i := range x.Odd {
			id, part := "learnt-part", &x.Odd[i]
			if part.Bore == 0 {
				id = "learnt-gun"
			}
			why.add("line", id, ownGround, TextFigure("part", part.Name), FigureOf("bore", FigureTip, part.Bore))
		}
		id, off := "learnt-gauge-high", s.Wall.Reads
		if off < 0 {
			id, off = "learnt-gauge-low", -off
		}
		if off >= toldGauge {
			why.add("wall", id, ownGround, RegulatorFigure(r.RegulatorAt()), drop("off", off), gauge("flowing", s.Wall.Flowing), gauge("real", s.Wall.Flowing-unit.Gauge(s.Wall.Reads)))
		}
	}
}

// ownGround is what readings of a line's own rest on, and toldGauge what its gauge must read off
// for that to be said.
var ownGround = Ground{Basis: OwnReadings}

const toldGauge = unit.Drop(0.25 * unit.PascalPerPSI)
