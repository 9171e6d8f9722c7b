package learn

import (
	"math"
	"slices"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// OptionKind is what kind of reading can be taken next.
type OptionKind uint8

// The kinds: both gauges with no air moving; valve wide open at the highest pressure, and at
// half of it; the valve where it is to stand; a gauge before the inlet valve; one at the cap; a
// part bypassed; all couplings bypassed; a spare part in the place of another; a spare hose
// straight from the wall to the gun.
const (
	CompareStill OptionKind = iota
	ReadOpen
	ReadOpenLow
	ReadSet
	ReadFoot
	ReadCap
	Bypass
	BypassCouplings
	Swap
	Straight
)

// String is the kind as answers name it.
func (k OptionKind) String() string {
	return [...]string{"still", "open", "open-low", "set", "foot", "cap", "bypass", "bypass-couplings", "swap", "straight"}[k]
}

// minutes are what each kind takes: estimates.
var minutes = [...]float64{CompareStill: 1, ReadOpen: 1, ReadOpenLow: 1, ReadSet: 2, ReadFoot: 6, ReadCap: 6, Bypass: 5, BypassCouplings: 8, Swap: 8, Straight: 8}

// Option is a reading that can be taken next. Its gauges are told in Shows, the wall's with
// what it is to be set to, the others without a pressure.
type Option struct {
	Kind    OptionKind
	Piece   int // that is bypassed or swapped, else -1
	By      int // the spare piece that takes its place, else -1
	Minutes float64
	Reading
}

// testShare is the share of the gun's highest pressure that a test goes up to: gauges are not
// right.
const testShare = 0.95

// Options are the readings that can be taken with the request's gun.
func (l *Learner) Options() (all []Option) {
	add := func(k OptionKind, piece, by int, x Reading, gauges ...Gauge) {
		if len(gauges) == 0 {
			return
		}
		wall := l.highest(x)
		if k == ReadOpenLow {
			wall = l.mark(wall / 2)
		} else if k == ReadSet {
			wall = l.Setup.Wall.Flowing
		}
		x.Shows = []Shown{{Gauge: WallGauge, Pressure: wall}}
		for _, g := range gauges {
			x.Shows = append(x.Shows, Shown{Gauge: g})
		}
		all = append(all, Option{k, piece, by, minutes[k], x})
	}
	var own []Gauge // the gun's
	if l.Request.Gauge != calc.NoGauge {
		own = append(own, GunGauge)
	}
	open := Reading{Opening: 1}
	add(CompareStill, -1, -1, Reading{Still: true, Opening: 1}, own...)
	add(ReadOpen, -1, -1, open, own...)
	add(ReadOpenLow, -1, -1, open, own...)
	if v := &l.Setup.Valve; !v.None && v.Opening < 1 && l.Request.Gauge == calc.InHandle {
		add(ReadSet, -1, -1, Reading{Opening: v.Opening}, own...)
	}
	if !l.Setup.Valve.None && l.Request.Gauge != calc.AtFoot {
		add(ReadFoot, -1, -1, open, append([]Gauge{FootGauge}, own...)...)
	}
	add(ReadCap, -1, -1, open, append(slices.Clone(own), CapGauge)...)
	couplings := []int(nil)
	for at, k := range l.stands {
		part := &l.pieces[k].Part
		if part.Kind == line.CouplingKind {
			couplings = append(couplings, k)
		}
		if part.Kind != line.HoseKind {
			add(Bypass, k, -1, Reading{Opening: 1, Pieces: slices.Delete(slices.Clone(l.stands), at, at+1)}, own...)
		}
		for by := range l.pieces {
			if spare := &l.pieces[by]; spare.Role == InLine && spare.Part.Kind == part.Kind && l.loose(by) {
				swapped := slices.Clone(l.stands)
				swapped[at] = by
				add(Swap, k, by, Reading{Opening: 1, Pieces: swapped}, own...)
				if part.Kind == line.HoseKind {
					add(Straight, k, by, Reading{Opening: 1, Pieces: []int{by}}, own...)
				}
			}
		}
	}
	if len(couplings) > 1 {
		add(BypassCouplings, -1, -1, Reading{Opening: 1, Pieces: slices.DeleteFunc(slices.Clone(l.stands), func(k int) bool { return slices.Contains(couplings, k) })}, own...)
	}
	return all
}

// loose is whether a piece is spare: at hand, and not in the line.
func (m *model) loose(k int) bool {
	return !slices.Contains(m.stands, k) && k >= len(m.pieces)-len(m.Spare)
}

// highest is the wall's pressure for a test: that at which the open valve gives the gun nearly
// the most it may be run at, were nothing off, as far as nine tenths of the supply go.
func (l *Learner) highest(x Reading) (wall unit.Gauge) {
	t := taken{Reading: x}
	if t.Pieces == nil {
		t.Pieces = l.stands
	}
	l.each(1, func(w *worker, _ int) {
		w.put(&draw{})
		w.arrange(&t)
		most := testShare * w.gun.Highest(l.air)
		wall = unit.Gauge(w.march(most.Abs(w.ambient))[atWall])
	})
	return l.mark(min(wall, 0.9*l.Request.Supply))
}

// mark is the mark of the wall's gauge at or below a pressure, the first at least.
func (m *model) mark(p unit.Gauge) unit.Gauge {
	step := float64(m.Request.Mark)
	return unit.Gauge(max(math.Floor(float64(p)/step), 1) * step)
}
