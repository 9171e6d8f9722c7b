package learn

import (
	"maps"
	"math"
	"slices"
	"strings"

	"boothset/calc/line"
	"boothset/calc/unit"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

const (
	// Sure is how probable a thing must be to be told as found.
	Sure = 0.8
	// suspected is how probable a piece must be to be among those that cannot be told apart.
	suspected = 0.05
)

// Odd is how probable it is, 0..1, that a piece is odd.
func (l *Learner) Odd(piece int) (p float64) {
	for i := range l.draws {
		if l.draws[i].own[piece].odd {
			p += l.weights[i]
		}
	}
	return p
}

// Nothing is how probable it is, 0..1, that no piece of the line as it stands is odd.
func (l *Learner) Nothing() (p float64) {
	for i := range l.draws {
		if l.oddSet(&l.draws[i]) == 0 {
			p += l.weights[i]
		}
	}
	return p
}

// AsDescribed is the same of a line in which nothing is odd that no reading tells of: of the draws
// those count that have it so. It is the learner itself where none has.
func (l *Learner) AsDescribed() *Learner {
	var unread uint32
	for i := range l.pieces {
		if l.inUse(i) && !strings.ContainsAny(l.passed(i), toldBy) {
			unread |= 1 << i
		}
	}
	share := 0.0
	of := *l
	of.weights = make([]float64, len(l.weights))
	for i := range l.draws {
		if l.oddSet(&l.draws[i])&unread == 0 {
			of.weights[i] = l.weights[i]
			share += l.weights[i]
		}
	}
	if share == 0 {
		return l
	}
	floats.Scale(1/share, of.weights)
	return &of
}

// unpulled is whether no reading of the line was taken with the trigger pulled: none tells of it
// then, only of gauges, and of the gun what was read elsewhere.
func (l *Learner) unpulled() bool {
	return !slices.ContainsFunc(l.own(), func(t taken) bool { return !t.Still })
}

// known is the learner that settings and showings are told of: what is odd counts for them once
// a reading tells of the line.
func (l *Learner) known() *Learner {
	if l.unpulled() {
		return l.AsDescribed()
	}
	return l
}

// Finding is what is told of what is odd.
type Finding struct {
	// Nothing is how probable it is that nothing is, and Odd how probable that a piece is, by
	// number; of a piece that is not in use it is 0.
	Nothing float64
	Odd     []float64
	// Found are the pieces that are odd, as surely as Sure; Right is whether nothing is, as surely.
	Found []int
	Right bool
	// Untold are those that may be odd, and why that cannot be told yet.
	Untold []Untold
}

// Untold is pieces of which it cannot be told yet whether they are odd.
type Untold struct {
	Pieces []int
	Why    Why
}

// Why is why a thing cannot be told yet.
type Why uint8

// The readings know only what the pieces take from the air together; no reading tells of them;
// what an odd one would take is hardly more than the readings' noise.
const (
	Together Why = iota
	Unread
	Noise
)

// String is the reason as answers name it.
func (w Why) String() string { return [...]string{"together", "unread", "noise"}[w] }

// Find tells what is odd, what may be, and why that cannot be told yet.
func (l *Learner) Find() Finding {
	f := Finding{Nothing: l.Nothing(), Odd: make([]float64, len(l.pieces))}
	f.Right = f.Nothing >= Sure
	groups, order := map[string][]int{}, []string(nil)
	for i := range l.pieces {
		if !l.inUse(i) {
			continue
		}
		f.Odd[i] = l.Odd(i)
		if f.Odd[i] >= Sure {
			f.Found = append(f.Found, i)
		} else if f.Odd[i] >= suspected && !f.Right {
			p := l.passed(i)
			if groups[p] == nil {
				order = append(order, p)
			}
			groups[p] = append(groups[p], i)
		}
	}
	var apart []int
	for _, p := range order {
		switch g := groups[p]; {
		case !strings.ContainsAny(p, toldBy):
			f.Untold = append(f.Untold, Untold{g, Unread})
		case len(g) > 1:
			f.Untold = append(f.Untold, Untold{g, Together})
		default:
			apart = append(apart, g...)
		}
	}
	if apart != nil {
		f.Untold = append(f.Untold, Untold{apart, Noise})
	}
	return f
}

// What a gauge tells of a piece, in passed: nothing, what it takes, how much air flows; toldBy is
// all but nothing.
const (
	toldNothing = '-'
	toldTakes   = 't'
	toldFlow    = 'f'
	toldBy      = "tf"
)

// passed is what each gauge of the readings tells of a piece: two pieces of which it is the same
// are known only together.
func (l *Learner) passed(piece int) string {
	var by []byte
	for _, t := range l.readings {
		for _, o := range t.seen {
			told := byte(toldNothing)
			if !t.Still && o.quantity != atWall && o.quantity != atWallBefore {
				told = l.told(piece, o.quantity, &t)
			}
			by = append(by, told)
		}
	}
	return string(by)
}

// told is what a pressure of a reading, trigger pulled, tells of a piece: what it takes where the
// air passes it between the wall's gauge and there; of the gun itself how much flows.
func (l *Learner) told(piece int, q quantity, t *taken) byte {
	p := &l.pieces[piece]
	switch {
	case p.Role == InLine && slices.Contains(t.Pieces, piece), p.Role == InletValve && p.Gun == t.Gun && q != atFoot:
		return toldTakes
	case p.Role == GunItself && p.Gun == t.Gun:
		return toldFlow
	}
	return toldNothing
}

// inUse is whether a piece is in the line as it stands, or of the request's gun.
func (m *model) inUse(i int) bool {
	if m.pieces[i].Role == InLine {
		return slices.Contains(m.stands, i)
	}
	return m.pieces[i].Gun == 0
}

// Doubt is how much there is to find out about which pieces are odd: Shannon's entropy, in bits.
func (l *Learner) Doubt() float64 {
	of := map[uint32]float64{}
	for i := range l.draws {
		of[l.oddSet(&l.draws[i])] += l.weights[i]
	}
	return stat.Entropy(slices.Sorted(maps.Values(of))) / math.Ln2
}

// Settles is the share of the doubt that a reading is expected to take away, 0..1.
func (a *Answer) Settles(w *Worth) float64 {
	if a.Doubt <= 0 {
		return 0
	}
	return min(max(w.Tells/a.Doubt, 0), 1)
}

// oddSet is which pieces in use are odd.
func (m *model) oddSet(d *draw) (set uint32) {
	for i := range m.pieces {
		if d.own[i].odd && m.inUse(i) {
			set |= 1 << i
		}
	}
	return set
}

// Bore is that of a good fitting which passes as much as a piece of the line or the inlet valve
// does, of a hose its own: half of the draws have it wider. 0 of the gun itself.
func (l *Learner) Bore(piece int) unit.Length {
	p := &l.pieces[piece]
	if p.Role == GunItself {
		return 0
	}
	part := p.Part
	if p.Role == InletValve {
		part = line.Part{Kind: line.ValveKind, Restriction: l.guns[p.Gun].Gun.Valve.Full}
	}
	bores := make([]float64, len(l.draws))
	for i := range l.draws {
		of := part
		of.Widen(l.passes(&l.draws[i], piece))
		if bores[i] = float64(of.Hose.Bore); of.Kind != line.HoseKind {
			bores[i] = float64(of.Restriction.Bore())
		}
	}
	weights := slices.Clone(l.weights)
	stat.SortWeighted(bores, weights)
	return unit.Length(stat.Quantile(0.5, stat.LinInterp, bores, weights))
}
