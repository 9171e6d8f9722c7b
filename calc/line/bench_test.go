package line_test

import (
	"testing"

	"boothset/calc/line"
	"boothset/calc/unit"
)

// The hose's arithmetic, as calc/testdata/bench_peer.sh sets it beside a reference
// library's.
func BenchmarkFrictionFactor(b *testing.B) {
	b.ReportAllocs()
	var sum float64
	for b.Loop() {
		sum += line.FrictionFactor(42535, 1.5e-6/0.009525)
	}
	if sum <= 0 {
		b.Fatal(sum)
	}
}

func BenchmarkHoseDownstream(b *testing.B) {
	h := smooth(25, 0.375)
	p1 := unit.PSIG(30).Abs(unit.SCFMPressure)
	b.ReportAllocs()
	for b.Loop() {
		if _, ok := h.Downstream(unit.SCFM(10), p1, still); !ok {
			b.Fatal("choked")
		}
	}
}
