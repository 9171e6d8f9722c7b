package spread_test

import (
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/line"
	"boothset/calc/spread"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// within is the share of what is sorted that lies from low to high.
func within(v []float64, low, high float64) float64 {
	above, _ := slices.BinarySearch(v, high*(1+1e-12))
	below, _ := slices.BinarySearch(v, low*(1-1e-12))
	return float64(above-below) / float64(len(v))
}

// sixKinds are lines of six kinds: the five and a mean one with a clogged filter.
func sixKinds(t *testing.T) map[string]calc.Request {
	all := fiveLines(t)
	r := calctest.MildClear(t)
	slim := line.Restriction{C: unit.DM3PerSBar(2), B: 0.3}
	r.Line = []line.Part{
		r.Line[0],
		{Kind: line.FilterKind, Restriction: line.Restriction{C: unit.DM3PerSBar(2.5), B: 0.3}},
		{Kind: line.CouplingKind, Restriction: slim}, r.Line[2], {Kind: line.CouplingKind, Restriction: slim},
	}
	r.Gauge = calc.NoGauge
	all["clogged filter, no gun gauge"] = r
	return all
}

// Coverage by brute force, 200,000 pseudo-random draws on each kind of line: eight of ten
// lie within each range, or more where it is cut at the open valve; with them the chance of
// falling short and what the wall's range comes from.
func TestCoverage(t *testing.T) {
	if testing.Short() {
		t.Skip("a million solves")
	}
	t.Parallel()
	const n = 200_000
	for name, line := range sixKinds(t) {
		r, s := solved(t, line)
		require.False(t, s.Short.Is, name)
		got := spread.Of(r, s)
		brute := bruteForce(r, s, n, nil)
		wall := within(brute.wall, got.Wall.Low.PSI(), got.Wall.High.PSI())
		static := within(brute.static, got.Static.Low.PSI(), got.Static.High.PSI())
		opening := within(brute.opening, got.Opening.Low, got.Opening.High)
		distance := within(brute.distance, float64(got.Distance.Low), float64(got.Distance.High))
		for what, share := range map[string]float64{"wall": wall, "static": static, "distance": distance} {
			assert.InDelta(t, 0.8, share, 0.02, "%s: %s", name, what)
		}
		if got.Opening.High < 1 {
			assert.InDelta(t, 0.8, opening, 0.02, "%s: opening", name)
		} else {
			assert.InDelta(t, 0.9, opening, 0.02, "%s: opening, cut", name)
		}
		short := float64(brute.short) / n
		assert.InDelta(t, short, got.Short, 0.02, "%s: falling short", name)
		t.Logf("%s: wall %.1f to %.1f psi holds %.1f %%, static %.1f %%, valve %.0f to %.0f %% open %.1f %%, distance %.2f to %.2f in %.1f %%; short in %.1f %% of draws, told %.1f %%",
			name, got.Wall.Low.PSI(), got.Wall.High.PSI(), 100*wall, 100*static, 100*got.Opening.Low, 100*got.Opening.High, 100*opening,
			got.Distance.Low.Inches(), got.Distance.High.Inches(), 100*distance, 100*short, 100*got.Short)
		for _, c := range got.Causes {
			t.Logf("  %-14s wall %5.1f %%, valve %5.1f %%, distance %5.1f %%", c.ID, 100*c.Wall, 100*c.Opening, 100*c.Distance)
		}
	}
}

// Where nothing sets the pressure there is none to be unsure of.
func TestAFixedSupplyHasNoSetting(t *testing.T) {
	r, s := solved(t, func() calc.Request {
		r := calctest.MildClear(t)
		r.Line = r.Line[1:]
		r.Supply = unit.PSIG(40)
		return r
	}())
	got := spread.Of(r, s)
	assert.False(t, got.Set)
	assert.Zero(t, got.Wall)
	assert.Zero(t, got.Static)
	assert.Positive(t, got.Opening.Low)
	for _, c := range got.Causes {
		assert.Zero(t, c.Wall, c.ID)
		assert.Zero(t, c.Known, c.ID)
	}
}

// A wall set higher falls short less often.
func TestAHigherWallFallsShortLessOften(t *testing.T) {
	r := calctest.MildClear(t)
	last := 1.0
	for _, mark := range []float64{0.1, 1, 5, 20} {
		r.Mark = unit.PSIDrop(mark)
		q, s := solved(t, r)
		got := spread.Of(q, s).Short
		assert.LessOrEqual(t, got, last, "%g psi", mark)
		last = got
	}
	assert.Less(t, last, 0.01)
}

func TestMarked(t *testing.T) {
	g := spread.GaugeRange{Low: unit.PSIG(28.4), High: unit.PSIG(33.6)}
	got := g.Marked(unit.PSIDrop(1))
	assert.InDelta(t, 28, got.Low.PSI(), 1e-9)
	assert.InDelta(t, 34, got.High.PSI(), 1e-9)
}
