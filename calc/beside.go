package calc

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"boothset/calc/line"
	"boothset/calc/unit"
)

// Apart is a thing by which the wall of one answer stands above that of another: By is how
// much of the difference it makes, less than 0 where it makes it smaller. All that two answers
// differ by add up to the difference of their walls. Its name is the sentence "apart-" and Of.
type Apart struct {
	Of string
	By unit.Drop
}

// What a wall is made up of that is none of the kinds of parts of the line: what the gun gets,
// what the wall's gauge reads too high, and what is set above what is asked for.
const (
	ApartGun     = "gun"
	ApartGauge   = "gauge"
	ApartReserve = "reserve"
)

// Apart is what makes the wall of an answer, flowing, stand above another's, what makes most
// of it first. Neither may be
// stopped or short of supply. Parts of a kind count together.
func (s *Setup) Apart(from *Setup) (all []Apart) {
	here, there := s.madeUp(), from.madeUp()
	of := slices.Sorted(maps.Keys(here))
	for name := range there {
		if _, ok := here[name]; !ok {
			of = append(of, name)
		}
	}
	for _, name := range of {
		if by := here[name] - there[name]; math.Abs(float64(by)) >= leastApart {
			all = append(all, Apart{name, by})
		}
	}
	slices.SortStableFunc(all, func(a, b Apart) int {
		return cmp.Or(cmp.Compare(math.Abs(float64(b.By)), math.Abs(float64(a.By))), cmp.Compare(a.Of, b.Of))
	})
	return all
}

// leastApart is what two sums may differ by for rounding alone.
const leastApart = 1e-3 // Pa

// madeUp is the wall as the sum of what it is made up of: what the gun gets, what each kind of
// part downstream of the wall takes with the valve as set, and the reserve. The reserve is held back
// by the inlet valve or by a second regulator, and does not count as theirs.
func (s *Setup) madeUp() map[string]unit.Drop {
	made := map[string]unit.Drop{ApartGun: unit.Drop(s.Working.Pressure), ApartGauge: s.Wall.Reads}
	first := slices.IndexFunc(s.Line, func(p Step) bool { return p.Kind == line.RegulatorKind })
	rest := unit.Drop(s.Wall.Flowing) - made[ApartGun] - made[ApartGauge]
	for i := first + 1; i < len(s.Line); i++ {
		p := &s.Line[i]
		if p.Kind == line.PassagesKind || p.Kind == line.CapKind {
			continue
		}
		loss := p.Loss
		if p.Kind == line.RegulatorKind || p.Kind == line.ValveKind && !s.Foot.Is && i == s.valveAt() {
			loss -= s.Reserve()
		}
		made[p.Kind.String()] += loss
		rest -= loss
	}
	made[ApartReserve] = rest
	return made
}

// valveAt is the place of the gun's inlet valve in the line, -1 of a gun without one.
func (s *Setup) valveAt() int {
	if s.Valve.None {
		return -1
	}
	return slices.IndexFunc(s.Line, func(p Step) bool { return p.Kind == line.PassagesKind }) - 1
}

// Swapped is the request with a swap made in its line.
func (r *Request) Swapped(w *Swap) *Request {
	with := *r
	with.Line = slices.Clone(r.Line)
	p := &with.Line[w.Index]
	switch w.Kind {
	case SwapCouplings:
		for i := range with.Line {
			if p := &with.Line[i]; p.Kind == line.CouplingKind {
				p.Restriction, p.Entry = w.Part, w.ID
			}
		}
	case DropFilter, DropValve:
		with.Line = slices.Delete(with.Line, w.Index, w.Index+1)
		with.Learnt = with.Learnt.without(w.Index)
	case SwapBore:
		p.Hose.Bore, p.Hose.End, p.Entry = w.Bore, w.End, w.ID
	case ShortenHose:
		p.Hose.Length *= unit.Length(w.Scale)
	case SwapRegulator:
		p.Regulate(w.Regulator)
		p.Entry = w.ID
	case Renew:
		*p = *r.described(w.Index)
	default:
		p.Restriction, p.Entry = w.Part, w.ID
	}
	return &with
}

// Nearer is the one swap that brings the wall of a request nearest another's.
type Nearer struct {
	Swap Swap
	Part string     // the name in the line of what is changed
	Wall unit.Gauge // flowing, with the swap made
}

// ID is the id of the swap's sentence.
func (n *Nearer) ID() string {
	return [...]string{
		"swap-couplings", "swap-coupling", "swap-filter", "swap-no-filter", "swap-dryer", "swap-valve", "swap-no-valve",
		"swap-bore", "swap-shorter", "swap-regulator", "swap-renew",
	}[n.Swap.Kind]
}

// Figures are what that names.
func (n *Nearer) Figures() Figures {
	return Figures{TextFigure("name", n.Swap.Name), TextFigure("part", n.Part), share("scale", n.Swap.Scale)}
}

// Nearest tries each swap of a request and gives the one whose wall comes nearest to another's,
// of as near ones the one that leaves most to spare; false where none comes nearer than s, the
// request's answer. A swap with which the job is stopped, or short of supply, does not
// count.
func (r *Request) Nearest(s *Setup, to unit.Gauge) (best Nearer, ok bool) {
	away := func(wall unit.Gauge) float64 { return math.Abs(float64(wall - to)) }
	least, open := away(s.Wall.Flowing)-float64(leastFix), unit.Gauge(0)
	for i := range r.Swaps {
		w := &r.Swaps[i]
		with := r.Swapped(w)
		with.Swaps = nil
		is, err := Solve(with)
		if err != nil || is.Stopped() || is.Short.Is {
			continue
		}
		by := away(is.Wall.Flowing)
		if by < least || by == least && ok && is.Wall.Open < open {
			best, ok = Nearer{*w, r.Line[w.Index].Name, is.Wall.Flowing}, true
			least, open = by, is.Wall.Open
		}
	}
	return best, ok
}
