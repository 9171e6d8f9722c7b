package calc

import (
	"slices"

	"boothset/calc/line"
	"boothset/calc/unit"
)

// Swap is something that could stand in the line in place of what does.
type Swap struct {
	ID   string // the catalogue's name of what would be put in
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

// leastFix is what a fix must win to be worth a word, and BestFixes how many are named.
const (
	leastFix  = unit.Drop(0.1 * unit.PascalPerPSI)
	BestFixes = 3
)

// fixes finds the swaps that win back most.
func (s *Setup) fixes(j *job) {
	var room [MostParts]line.Part
	r := *j.r
	trial := *j
	trial.r = &r
	before := j.asked(s.Short.Is)
	var best [BestFixes + 1]Fix
	n := 0
	for i := range j.r.Swaps {
		w := &j.r.Swaps[i]
		r.Line = append(room[:0], j.r.Line...)
		r.Regulator = j.r.Regulator
		part := w.apply(&r)
		if part == "" {
			continue
		}
		won := unit.Drop(before - trial.asked(s.Short.Is))
		if won < leastFix {
			continue
		}
		at := n
		for at > 0 && best[at-1].Won < won {
			best[at] = best[at-1]
			at--
		}
		best[at] = Fix{Swap: *w, Part: part, Won: won, OfSupply: s.Short.Is}
		n = min(n+1, BestFixes)
	}
	s.Fixes = slices.Clone(best[:n])
}

// asked is the pressure that the target asks for with the valve open: the setting with
// no air moving, or the supply where that is short.
func (j *job) asked(short bool) unit.Abs {
	open := j.setNeeded(j.flow, j.working, j.r.Gun.Valve.Full)
	if short {
		return j.supplyNeeded(j.flow, open)
	}
	return j.r.Regulator.Set(open.Gauge(j.air.Ambient), j.flow).Abs(j.air.Ambient)
}

// apply changes a request's line and gives the name of what was changed, empty where
// there is nothing of the kind.
func (w *Swap) apply(r *Request) (part string) {
	switch w.Kind {
	case SwapCouplings, SwapFilter:
		kind := line.CouplingKind
		if w.Kind == SwapFilter {
			kind = line.FilterKind
		}
		for i := range r.Line {
			if p := &r.Line[i]; p.Kind == kind {
				p.Restriction = w.Part
				part = p.Name
			}
		}
	case DropFilter:
		for i := range r.Line {
			if r.Line[i].Kind == line.FilterKind {
				part = r.Line[i].Name
				r.Line = slices.Delete(r.Line, i, i+1)
				break
			}
		}
	case SwapBore:
		h := &r.Line[w.Index].Hose
		h.Bore, h.End = w.Bore, w.End
		part = r.Line[w.Index].Name
	case ShortenHose:
		r.Line[w.Index].Hose.Length *= unit.Length(w.Scale)
		part = r.Line[w.Index].Name
	case SwapRegulator:
		if r.RegulatorAt != Nowhere {
			r.Regulator = w.Regulator
			part = r.RegulatorName
		}
	}
	return part
}

// Figures are what the sentence of a fix names.
func (f *Fix) Figures() Figures {
	return Figures{text("name", f.Swap.ID), text("part", f.Part), drop("won", f.Won), share("scale", f.Swap.Scale)}
}
