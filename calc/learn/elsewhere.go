package learn

import (
	"slices"

	"boothset/calc"
)

// Elsewhere is another line that a plan's gun was read on, by its readings: those with a part in the
// place of another, or that was replaced since, are left out, and what the wall's gauge showed before
// the trigger was pulled.
func Elsewhere(plan *calc.Request, taken []Taken) OtherLine {
	wall, _ := plan.Regulators()
	other := OtherLine{Parts: plan.Line[wall+1:], WallGauge: plan.Tolerances.WallGauge}
	ids := PieceIDs(plan)
	for i := range taken {
		x := &taken[i]
		r := x.Reading
		r.Shows = slices.DeleteFunc(slices.Clone(r.Shows), func(s Shown) bool { return s.Before })
		if len(x.Swapped) > 0 || len(r.Shows) < 2 || r.Gun != 0 || slices.ContainsFunc(ids, func(id string) bool { return x.Was[id] > 0 }) {
			continue
		}
		r.Pieces = []int{}
		for k, id := range ids {
			if !slices.Contains(x.Without, id) {
				r.Pieces = append(r.Pieces, k)
			}
		}
		other.Readings = append(other.Readings, r)
	}
	return other
}
