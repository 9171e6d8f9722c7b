package calc

import (
	"slices"
	"testing"

	"boothset/calc/line"
	"boothset/calc/unit"
)

// BenchmarkLineSolve is one full line: from the target the flow, the cap, the set
// pressure for an open valve, the wall's mark and the opening.
func BenchmarkLineSolve(b *testing.B) {
	r := mildClear(b)
	j := newJob(&r, unit.SCFMPressure)
	b.ReportAllocs()
	for b.Loop() {
		j.pressure(0)
		j.setWall()
		if x, _, _ := r.Gun.Valve.OpeningFor(j.flow, j.valveInlet(), j.working, j.air); x <= 0 {
			b.Fatal("shut")
		}
	}
}

// BenchmarkForward is the forward solve: what the gun gets from a wall pressure.
func BenchmarkForward(b *testing.B) {
	r := mildClear(b)
	j := newJob(&r, unit.SCFMPressure)
	b.ReportAllocs()
	for b.Loop() {
		if w, _ := j.gunAt(j.sets, 4e5, 0.5); w <= 0 {
			b.Fatal("no pressure")
		}
	}
}

// BenchmarkSetup is a complete setup with its reasons and cautions, and a shop's choice
// of other parts to try.
func BenchmarkSetup(b *testing.B) {
	r := mildClear(b)
	r.Line = slices.Insert(r.Line, 1, line.Part{Name: "filter", Kind: line.FilterKind, Restriction: line.Restriction{C: unit.DM3PerSBar(6), B: 0.3}})
	alike := slices.DeleteFunc(everySwap(r.Line), func(w Swap) bool { // as of a line whose couplings are all of one kind
		return w.Kind == SwapCoupling || w.Kind == SwapCouplings && w.Index != 2
	})
	r.Swaps = append(alike, alike...)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Solve(&r); err != nil {
			b.Fatal(err)
		}
	}
}
