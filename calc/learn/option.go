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
// what it is to be set to, the others without a pressure; the gun's is the last, if it has one,
// but of ReadCap.
type Option struct {
	Kind    OptionKind
	Piece   int // that it bypasses or swaps, else -1
	Minutes float64
	Odd     Change // what is out of the line because it was found odd
	Change         // all that is out of it
	Reading
}

// Change is what is done to a line for a reading: pieces of it are bypassed, and like ones take
// the place of others.
type Change struct{ Without, Swapped []int }

// and is two changes together.
func (c Change) and(o Change) Change {
	return Change{slices.Concat(c.Without, o.Without), slices.Concat(c.Swapped, o.Swapped)}
}

// None is whether nothing is done.
func (c Change) None() bool { return len(c.Without)+len(c.Swapped) == 0 }

// Options are the readings that can be taken with the request's gun, of the line as it stands and
// of the line without what was found odd in it: as long as that takes most of the pressure, other
// parts pass little air, and what they take does not show.
func (l *Learner) Options() []Option {
	all := l.optionsWithout(Change{})
	for _, o := range l.optionsWithout(l.removable()) {
		if !slices.ContainsFunc(all, o.same) {
			all = append(all, o)
		}
	}
	return all
}

// same is whether two options are one reading.
func (o *Option) same(x Option) bool {
	return o.Still == x.Still && o.Opening == x.Opening && slices.Equal(o.Shows, x.Shows) && (o.Still || slices.Equal(o.Pieces, x.Pieces))
}

// removable is what was found odd and can be taken out of the line: swapped where a like piece is
// at hand, else bypassed; a hose cannot be.
func (l *Learner) removable() (odd Change) {
	used := []int(nil)
	for _, k := range l.stands {
		if l.Odd(k) < Sure {
			continue
		}
		if by := l.like(k, used); by >= 0 {
			odd.Swapped, used = append(odd.Swapped, k), append(used, by)
		} else if l.pieces[k].Part.Kind != line.HoseKind {
			odd.Without = append(odd.Without, k)
		}
	}
	return odd
}

// optionsWithout are the readings of a line out of which what is odd was taken.
func (l *Learner) optionsWithout(odd Change) (all []Option) {
	add := func(k OptionKind, piece int, more Change, gauges ...Gauge) {
		if len(gauges) > 0 {
			all = append(all, l.option(k, piece, odd, more, gauges))
		}
	}
	var own []Gauge // the gun's
	if l.Request.Gauge != calc.NoGauge {
		own = append(own, GunGauge)
	}
	none := Change{}
	for _, k := range []OptionKind{CompareStill, ReadOpen, ReadOpenLow} {
		add(k, -1, none, own...)
	}
	if v := &l.Setup.Valve; !v.None && v.Opening < 1 && l.Request.Gauge == calc.InHandle {
		add(ReadSet, -1, none, own...)
	}
	if !l.Setup.Valve.None && l.Request.Gauge != calc.AtFoot && !l.on(FootGauge) {
		add(ReadFoot, -1, none, append([]Gauge{FootGauge}, own...)...)
	}
	if !l.on(CapGauge) {
		add(ReadCap, -1, none, append(slices.Clone(own), CapGauge)...)
	}
	stands := l.with(odd)
	left := slices.DeleteFunc(slices.Clone(l.stands), func(k int) bool { return !slices.Contains(stands, k) })
	couplings := slices.DeleteFunc(slices.Clone(left), func(k int) bool { return l.pieces[k].Part.Kind != line.CouplingKind })
	for _, k := range left {
		hose := l.pieces[k].Part.Kind == line.HoseKind
		if !hose {
			add(Bypass, k, Change{Without: []int{k}}, own...)
		}
		if l.like(k, stands) >= 0 {
			add(Swap, k, Change{Swapped: []int{k}}, own...)
			if hose {
				others := slices.DeleteFunc(slices.Clone(left), func(other int) bool { return other == k })
				add(Straight, k, Change{Without: others, Swapped: []int{k}}, own...)
			}
		}
	}
	if len(couplings) > 1 {
		add(BypassCouplings, -1, Change{Without: couplings}, own...)
	}
	return all
}

// option is a reading of gauges, and of those that are on for a test.
func (l *Learner) option(k OptionKind, piece int, odd, more Change, gauges []Gauge) Option {
	o := Option{Kind: k, Piece: piece, Minutes: minutes[k] + l.toRemove(odd), Odd: odd, Change: odd.and(more)}
	o.Reading = Reading{Still: k == CompareStill, Opening: 1, Pieces: l.with(o.Change)}
	wall := l.highest(o.Reading)
	switch k {
	case ReadOpenLow:
		wall = l.mark(wall / 2)
	case ReadSet:
		o.Opening, wall = l.Setup.Valve.Opening, l.Setup.Wall.Flowing
	}
	o.Shows = []Shown{{Gauge: WallGauge, Pressure: wall}}
	for _, g := range []Gauge{FootGauge, CapGauge} {
		if l.on(g) && !slices.Contains(gauges, g) && !(o.Still && g == CapGauge) { // no air comes to the cap, trigger released
			o.Shows = append(o.Shows, Shown{Gauge: g})
		}
	}
	for _, g := range gauges {
		o.Shows = append(o.Shows, Shown{Gauge: g})
	}
	return o
}

// last is the reading that was taken last, nil before any.
func (l *Learner) last() *taken {
	own := l.own()
	if len(own) == 0 {
		return nil
	}
	return &own[len(own)-1]
}

// on is whether a gauge that is put on for a test is: it was read last, trigger pulled.
func (l *Learner) on(g Gauge) bool {
	for _, t := range slices.Backward(l.own()) {
		if !t.Still {
			return slices.ContainsFunc(t.Shows, func(s Shown) bool { return s.Gauge == g })
		}
	}
	return false
}

// toRemove is how many minutes it takes to take out of the line what was in it when it was read last.
func (l *Learner) toRemove(odd Change) (took float64) {
	last := l.last()
	of := func(pieces []int, each float64) {
		for _, k := range pieces {
			if last == nil || slices.Contains(last.Pieces, k) {
				took += each
			}
		}
	}
	of(odd.Without, minutes[Bypass])
	of(odd.Swapped, minutes[Swap])
	return took
}

// with is the pieces that the air passes with a change, in order.
func (l *Learner) with(c Change) []int {
	pieces := []int{}
	for _, k := range l.stands {
		switch {
		case slices.Contains(c.Without, k):
		case slices.Contains(c.Swapped, k):
			pieces = append(pieces, l.like(k, pieces))
		default:
			pieces = append(pieces, k)
		}
	}
	return pieces
}

// like is a spare piece like one of the line's that is not in use yet, -1 where there is none.
func (l *Learner) like(piece int, used []int) int {
	of := &l.pieces[piece].Part
	for k := len(l.pieces) - len(l.Spare); k < len(l.pieces); k++ {
		p := &l.pieces[k].Part
		if p.Kind == of.Kind && p.Hose == of.Hose && p.Restriction == of.Restriction && !slices.Contains(used, k) {
			return k
		}
	}
	return -1
}

// testShare is the share of the gun's highest pressure that a test goes up to: gauges are not
// right.
const testShare = 0.95

// highest is the wall's pressure for a test: that at which the open valve gives the gun nearly
// the most it may be run at, were nothing off, as far as nine tenths of the supply go.
func (l *Learner) highest(x Reading) (wall unit.Gauge) {
	t := taken{Reading: x}
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
