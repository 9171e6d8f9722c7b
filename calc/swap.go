package calc

import (
	"slices"

	"boothset/calc/line"
	"boothset/calc/unit"
)

// Swap is a part that could replace one of the line.
type Swap struct {
	ID   string // the catalogue's id of what would be put in
	Name string // what it is called in a sentence
	Kind SwapKind
	// Index is the part of the line that is changed; SwapCouplings changes every coupling.
	Index int
	// Part is what a restriction becomes, Bore and End what a hose becomes, Scale what its
	// length is multiplied by, Regulator what a regulator becomes.
	Part      line.Restriction
	Bore      unit.Length
	End       line.Restriction
	Scale     float64
	Regulator line.Regulator
}

// SwapKind is what a swap changes.
type SwapKind uint8

// The kinds of swap.
const (
	SwapCouplings SwapKind = iota
	SwapCoupling
	SwapFilter
	DropFilter
	SwapDryer
	SwapValve
	DropValve
	SwapBore
	ShortenHose
	SwapRegulator
	Renew // a part that its line's readings found odd, for one that is what it is called
)

// String is the swap's kind as answers name it.
func (k SwapKind) String() string {
	return [...]string{
		"fix-couplings", "fix-coupling", "fix-filter", "fix-no-filter", "fix-dryer", "fix-valve", "fix-no-valve",
		"fix-bore", "fix-shorter", "fix-regulator", "fix-renew",
	}[k]
}

// Fix is a swap with what it wins back: how much lower the wall can be set, with no air
// moving, and give the same at the gun; where the supply is short, how much less supply
// it takes.
type Fix struct {
	Swap Swap
	Part string // the name in the line of what is changed
	Won  unit.Drop
	// OfSupply is whether Won is supply that it takes less of.
	OfSupply bool
	At       Place // of the regulator whose setting is won back
}

// ID is the id of the fix's sentence.
func (f *Fix) ID() string {
	if f.OfSupply {
		return [...]string{
			"fix-couplings-short", "fix-coupling-short", "fix-filter-short", "fix-no-filter-short", "fix-dryer-short", "fix-valve-short", "fix-no-valve-short",
			"fix-bore-short", "fix-shorter-short", "fix-regulator-short", "fix-renew-short",
		}[f.Swap.Kind]
	}
	return f.Swap.Kind.String()
}

// leastFix is what a fix must win to be listed, and BestFixes how many are.
const (
	leastFix  = unit.Drop(0.1 * unit.PascalPerPSI)
	BestFixes = 3
)

// fixes finds the swaps that win back most, of each part the best of a kind. The line is
// worked out once at the target's flow; a swap changes its own parts in it.
func (s *Setup) fixes(j *job, sens *sensitivity) {
	if len(j.r.Swaps) == 0 {
		return
	}
	b := bench{job: j, short: s.Short.Is, wall: j.r.regulator(j.wall)}
	if b.from = j.wall + 1; s.Short.Is {
		b.from = 0 // the supply is upstream of every part
	}
	if b.here = sens.here; b.from != j.sets+1 {
		b.here.Prepare(j.r.Line[b.from:], j.flow, j.air)
	}
	before := b.asked()
	var best [BestFixes + 1]Fix
	n := 0
	for i := range j.r.Swaps {
		w := &j.r.Swaps[i]
		changed := b
		part := changed.swap(w)
		if part == "" {
			continue
		}
		won := unit.Drop(before - changed.asked())
		if won < leastFix {
			continue
		}
		// The same change to the same part counts once, with the swap that wins more.
		if i := slices.IndexFunc(best[:n], func(f Fix) bool { return f.Swap.Kind == w.Kind && f.Part == part }); i >= 0 {
			if best[i].Won >= won {
				continue
			}
			copy(best[i:], best[i+1:])
			n--
		}
		at := n
		for at > 0 && best[at-1].Won < won {
			best[at] = best[at-1]
			at--
		}
		best[at] = Fix{Swap: *w, Part: part, Won: won, OfSupply: s.Short.Is, At: j.r.RegulatorAt()}
		n = min(n+1, BestFixes)
	}
	s.Fixes = append(s.Fixes, best[:n]...)
}

// bench is a line to try swaps in, at the target's flow.
type bench struct {
	*job
	here  line.Flowing
	from  int            // the first part in it
	wall  line.Regulator // the one whose setting is won back
	short bool
}

// asked is the pressure that the target asks for with the valve open: the wall's setting with
// no air moving, or the supply where that is short.
func (b *bench) asked() unit.Abs {
	p, _ := b.r.Gun.Valve.Full.Upstream(b.flow, b.working, b.air)
	p = b.here.Upstream(p)
	if b.short {
		return p
	}
	return b.wall.Set(p.Gauge(b.air.Ambient), b.flow).Abs(b.air.Ambient)
}

// swap makes the change and gives the name of what was changed, empty where that is not
// among the parts tried.
func (b *bench) swap(w *Swap) (part string) {
	switch w.Kind {
	case SwapCouplings:
		for i := b.from; i < len(b.r.Line); i++ {
			if p := b.r.Line[i]; p.Kind == line.CouplingKind {
				p.Restriction = w.Part
				b.put(i, &p)
				part = p.Name
			}
		}
		return part
	case SwapRegulator:
		if w.Index == b.job.wall {
			b.wall = w.Regulator
		}
	}
	p := b.r.Line[w.Index]
	switch w.Kind {
	case DropFilter, DropValve:
		if w.Index >= b.from {
			b.here.TakeOut(w.Index - b.from)
		}
	case SwapBore:
		p.Hose.Bore, p.Hose.End = w.Bore, w.End
		b.put(w.Index, &p)
	case ShortenHose:
		p.Hose.Length *= unit.Length(w.Scale)
		b.put(w.Index, &p)
	case SwapRegulator:
		p.Regulate(w.Regulator)
		b.put(w.Index, &p)
	case Renew:
		p = *b.r.described(w.Index)
		b.put(w.Index, &p)
	default:
		p.Restriction = w.Part
		b.put(w.Index, &p)
	}
	return p.Name
}

// put puts a part in the place of the i-th of the line, where that is tried.
func (b *bench) put(i int, p *line.Part) {
	if i >= b.from {
		b.here.Put(i-b.from, p, b.flow, b.air)
	}
}

// Figures are what the sentence of a fix names.
func (f *Fix) Figures() Figures {
	return Figures{TextFigure("name", f.Swap.Name), TextFigure("part", f.Part), drop("won", f.Won), share("scale", f.Swap.Scale), RegulatorFigure(f.At)}
}
