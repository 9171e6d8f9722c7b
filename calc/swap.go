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
	// Part is what every coupling or filter becomes, Bore and End what the hose Index
	// of the line becomes, Scale what its length is multiplied by, Regulator what the
	// regulator becomes.
	Part      line.Restriction
	Index     int
	Bore      unit.Length
	End       line.Restriction
	Scale     float64
	Regulator line.Regulator
}

// SwapKind is which of the line a swap changes.
type SwapKind uint8

// The kinds of swap.
const (
	SwapCouplings SwapKind = iota
	SwapFilter
	DropFilter
	SwapBore
	ShortenHose
	SwapRegulator
)

// String is the swap's kind as answers name it.
func (k SwapKind) String() string {
	return [...]string{"fix-couplings", "fix-filter", "fix-no-filter", "fix-bore", "fix-shorter", "fix-regulator"}[k]
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
}

// ID is the id of the fix's sentence.
func (f *Fix) ID() string {
	if f.OfSupply {
		return [...]string{"fix-couplings-short", "fix-filter-short", "fix-no-filter-short", "fix-bore-short", "fix-shorter-short", "fix-regulator-short"}[f.Swap.Kind]
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
	here := sens.here
	if j.r.RegulatorAt == Foot { // where the line is upstream of the set pressure
		here.Prepare(j.r.Line, j.flow, j.air)
	}
	before := j.asked(&here, &j.r.Regulator, s.Short.Is)
	var best [BestFixes + 1]Fix
	n := 0
	for i := range j.r.Swaps {
		w := &j.r.Swaps[i]
		changed, regulator := here, j.r.Regulator
		part := j.swap(w, &changed, &regulator)
		if part == "" {
			continue
		}
		won := unit.Drop(before - j.asked(&changed, &regulator, s.Short.Is))
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
		best[at] = Fix{Swap: *w, Part: part, Won: won, OfSupply: s.Short.Is}
		n = min(n+1, BestFixes)
	}
	s.Fixes = append(s.Fixes, best[:n]...)
}

// asked is the pressure that the target asks for with the valve open: the setting with
// no air moving, or the supply where that is short.
func (j *job) asked(here *line.Flowing, r *line.Regulator, short bool) unit.Abs {
	set, _ := j.r.Gun.Valve.Full.Upstream(j.flow, j.working, j.air)
	if j.r.RegulatorAt != Foot {
		set = here.Upstream(set)
	}
	if !short {
		return r.Set(set.Gauge(j.air.Ambient), j.flow).Abs(j.air.Ambient)
	}
	if j.r.RegulatorAt != Nowhere {
		set, _ = r.Seat.Upstream(j.flow, set, j.air)
	}
	if j.r.RegulatorAt == Foot {
		set = here.Upstream(set)
	}
	return set
}

// swap changes a line, or its regulator, and gives the name of what was changed, empty
// where there is nothing of the kind.
func (j *job) swap(w *Swap, here *line.Flowing, r *line.Regulator) (part string) {
	parts := j.r.Line
	put := func(i int, p line.Part) {
		here.Put(i, &p, j.flow, j.air)
		part = p.Name
	}
	switch w.Kind {
	case SwapCouplings, SwapFilter:
		kind := line.CouplingKind
		if w.Kind == SwapFilter {
			kind = line.FilterKind
		}
		for i, p := range parts {
			if p.Kind == kind {
				p.Restriction = w.Part
				put(i, p)
			}
		}
	case DropFilter:
		for i := range parts {
			if parts[i].Kind == line.FilterKind {
				here.TakeOut(i)
				part = parts[i].Name
			}
		}
	case SwapBore:
		p := parts[w.Index]
		p.Hose.Bore, p.Hose.End = w.Bore, w.End
		put(w.Index, p)
	case ShortenHose:
		p := parts[w.Index]
		p.Hose.Length *= unit.Length(w.Scale)
		put(w.Index, p)
	case SwapRegulator:
		if j.r.RegulatorAt != Nowhere {
			*r = w.Regulator
			part = j.r.RegulatorName
		}
	}
	return part
}

// Figures are what the sentence of a fix names.
func (f *Fix) Figures() Figures {
	return Figures{TextFigure("name", f.Swap.Name), TextFigure("part", f.Part), drop("won", f.Won), share("scale", f.Swap.Scale)}
}
