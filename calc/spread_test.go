package calc

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// roughly is tolerances of the size a shop's have.
var roughly = Tolerances{
	Coupling: Tolerance{Within: 0.3}, Filter: Tolerance{Within: 0.3}, Valve: Tolerance{Within: 0.3},
	HoseBore: Tolerance{Within: 0.05}, HoseEnd: Tolerance{Within: 0.2},
	StampFlow: Tolerance{Within: 0.1}, StampCap: Tolerance{Within: 0.15}, Droop: Tolerance{Within: 0.5},
	WallGauge: Tolerance{Within: unit.PascalPerPSI * 4}, GunGauge: Tolerance{Within: unit.PascalPerPSI * 1.5},
	Thermometer: Tolerance{Within: 1}, HygrometerShare: Tolerance{Within: 0.05},
}

// fiveLines are lines as unlike as a shop's may be.
func fiveLines(t require.TestingT) map[string]Request {
	mild := mildClear(t)
	mild.Tolerances = roughly
	with := func(change func(*Request)) Request {
		r := mild
		r.Line = append([]line.Part(nil), mild.Line...)
		change(&r)
		return r
	}
	return map[string]Request{
		"mild": mild,
		"slim": with(func(r *Request) {
			r.Line[0].Restriction = line.Restriction{C: unit.DM3PerSBar(2), B: 0.3}
			r.Line[2].Restriction = r.Line[0].Restriction
		}),
		"long and thin": with(func(r *Request) {
			r.Line[1].Hose = line.Hose{Length: unit.Feet(35), Bore: unit.MM(8), Roughness: line.SmoothRubber, End: line.Restriction{C: unit.DM3PerSBar(6), B: 0.5}}
		}),
		"hot waterborne": with(func(r *Request) {
			r.Coat.Waterborne = true
			r.Day.Air, r.Day.Humidity = unit.Celsius(33), 0.3
		}),
		"regulator at the foot": with(func(r *Request) { r.RegulatorAt = Foot }),
	}
}

// The same bounds by brute force: a million pseudo-random draws.
func TestBoundsAgainstMonteCarlo(t *testing.T) {
	if testing.Short() {
		t.Skip("five million solves")
	}
	for name, r := range fiveLines(t) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s, err := Solve(&r)
			require.NoError(t, err)
			require.False(t, s.Short.Is)
			got := Propagate(&r, s)
			random := rand.New(rand.NewPCG(1, 2))
			brute := propagation{draws: make([]row, 1_000_000), room: make([]float64, values*1_000_000)}
			for i := range brute.draws {
				for d := range brute.draws[i] {
					brute.draws[i][d] = random.NormFloat64()
				}
			}
			brute.run(newPerturbed(&r, s))
			bounds := func(v []float64) Range {
				slices.Sort(v)
				return Range{v[len(v)/10], v[len(v)*9/10]}
			}
			near := func(want, got unit.Gauge) { assert.InDelta(t, want.PSI(), got.PSI(), 0.1) }
			wall, static := gaugeRange(bounds(brute.out[wallOutcome])), gaugeRange(bounds(brute.out[staticOutcome]))
			near(wall.Low, got.Wall.Low)
			near(wall.High, got.Wall.High)
			near(static.Low, got.Static.Low)
			near(static.High, got.Static.High)
			opening := bounds(brute.out[openingOutcome])
			assert.InDelta(t, opening.Low, got.Opening.Low, 0.01)
			assert.InDelta(t, opening.High, got.Opening.High, 0.01)
			distance := bounds(brute.out[distanceOutcome])
			assert.InDelta(t, distance.Low, float64(got.Distance.Low), 0.0005)
			assert.InDelta(t, distance.High, float64(got.Distance.High), 0.0005)

			var shares float64
			for _, c := range got.Causes {
				shares += c.Wall
			}
			assert.InDelta(t, 1, shares, 0.02, "shares of the wall's spread")
			t.Logf("wall %.2f..%.2f psi, opening %.2f..%.2f, shares %.4f, first %s %.2f -> %.2f..%.2f", got.Wall.Low.PSI(), got.Wall.High.PSI(),
				got.Opening.Low, got.Opening.High, shares, got.Causes[0].ID, got.Causes[0].Wall, got.Causes[0].Known.Low.PSI(), got.Causes[0].Known.High.PSI())
		})
	}
}

// anyLine is a line of any hose and couplings on any day, for a gun that is run anywhere.
func anyLine(t require.TestingT, random *rand.Rand) Request {
	between := func(low, high float64) float64 { return low + (high-low)*random.Float64() }
	r := mildClear(t)
	r.Tolerances = roughly
	r.Line = append([]line.Part(nil), r.Line...)
	for i := range r.Line {
		if p := &r.Line[i]; p.Kind == line.HoseKind {
			p.Hose = line.Hose{Length: unit.Feet(between(5, 60)), Bore: unit.MM(between(6.5, 13)), Roughness: line.SmoothRubber, End: line.Restriction{C: unit.DM3PerSBar(between(3, 12)), B: 0.5}}
		} else {
			p.Restriction.C = unit.DM3PerSBar(between(2, 10))
		}
	}
	r.Day.Air, r.Day.Humidity = unit.Celsius(between(5, 42)), between(0.05, 0.95)
	r.Day.Panel = r.Day.Air + 3
	r.Coat.Waterborne = random.IntN(3) == 0
	if random.IntN(4) == 0 {
		r.RegulatorAt = Foot
	}
	r.Supply, r.Mark = unit.PSIG(between(60, 150)), unit.Drop(between(0.5, 5)*unit.PascalPerPSI)
	start := between(15, 32)
	r.Coat.Working.Start, r.Coat.Working.Low, r.Coat.Working.High = unit.PSIG(start), unit.PSIG(start-between(0.2, 4)), unit.PSIG(start+between(0.2, 4))
	return r
}

// The bounds of any line by 50 times the draws, read off their order: nine lines of ten are
// as near as the five are held to, and none is far off.
func TestBoundsOfAnyLine(t *testing.T) {
	many := makeDeviations(50 * Draws)
	random := rand.New(rand.NewPCG(7, 7))
	var wall, static, opening, distance []float64
	for len(wall) < 100 {
		r := anyLine(t, random)
		s, err := Solve(&r)
		require.NoError(t, err)
		if s.Short.Is {
			continue
		}
		got := Propagate(&r, s)
		p := propagation{draws: many, room: make([]float64, values*len(many))}
		p.run(newPerturbed(&r, s))
		off := func(v int, low, high float64) float64 {
			all := slices.Sorted(slices.Values(p.out[v]))
			return math.Max(math.Abs(all[len(all)/10]-low), math.Abs(all[len(all)*9/10]-high))
		}
		wall = append(wall, off(wallOutcome, float64(got.Wall.Low), float64(got.Wall.High))/unit.PascalPerPSI)
		static = append(static, off(staticOutcome, float64(got.Static.Low), float64(got.Static.High))/unit.PascalPerPSI)
		opening = append(opening, off(openingOutcome, got.Opening.Low, got.Opening.High))
		distance = append(distance, off(distanceOutcome, float64(got.Distance.Low), float64(got.Distance.High)))
	}
	for _, c := range []struct {
		name       string
		off        []float64
		most, ever float64
	}{
		{"wall, psi", wall, 0.1, 0.25}, {"static, psi", static, 0.1, 0.25}, {"opening", opening, 0.01, 0.1}, {"distance, m", distance, 0.0005, 0.002},
	} {
		slices.Sort(c.off)
		nine := c.off[len(c.off)*9/10-1]
		assert.Less(t, nine, c.most, "%s: nine of ten", c.name)
		assert.Less(t, c.off[len(c.off)-1], c.ever, "%s: every one", c.name)
		t.Logf("%s: half within %.5f, nine of ten %.5f, every one %.5f", c.name, c.off[len(c.off)/2], nine, c.off[len(c.off)-1])
	}
}

func TestSpreadIsTheSameTwice(t *testing.T) {
	r := mildClear(t)
	r.Tolerances = roughly
	s, err := Solve(&r)
	require.NoError(t, err)
	assert.Equal(t, Propagate(&r, s), Propagate(&r, s))
}

func TestNoToleranceNoSpread(t *testing.T) {
	r := mildClear(t)
	s, err := Solve(&r)
	require.NoError(t, err)
	p := Propagate(&r, s)
	assert.InDelta(t, s.Wall.Flowing.PSI(), p.Wall.Low.PSI(), 1e-6)
	assert.InDelta(t, s.Wall.Flowing.PSI(), p.Wall.High.PSI(), 1e-6)
	assert.InDelta(t, s.Valve.Opening, p.Opening.High, 1e-9)
	assert.InDelta(t, float64(s.Distance.Target), float64(p.Distance.Low), 1e-9)
	assert.Empty(t, p.Causes)
}

// Knowing one thing leaves a narrower range, and the first cause narrows it most.
func TestKnowingTheFirstCauseNarrowsMost(t *testing.T) {
	for name, r := range fiveLines(t) {
		s, err := Solve(&r)
		require.NoError(t, err)
		p := Propagate(&r, s)
		width := func(g GaugeRange) float64 { return float64(g.High - g.Low) }
		require.NotEmpty(t, p.Causes)
		for _, c := range p.Causes {
			assert.LessOrEqual(t, width(c.Known), width(p.Wall)*1.005, "%s %s", name, c.ID)
			assert.GreaterOrEqual(t, width(c.Known), width(p.Causes[0].Known)*0.98, "%s %s", name, c.ID)
		}
		assert.Less(t, width(p.Causes[0].Known), width(p.Wall))
	}
}

// A wider tolerance never makes an answer surer.
func TestWiderToleranceWidens(t *testing.T) {
	r := mildClear(t)
	r.Tolerances = roughly
	s, err := Solve(&r)
	require.NoError(t, err)
	narrow := Propagate(&r, s)
	r.Tolerances.Coupling.Within *= 2
	r.Tolerances.WallGauge.Within *= 2
	wide := Propagate(&r, s)
	assert.Less(t, float64(wide.Wall.Low), float64(narrow.Wall.Low))
	assert.Greater(t, float64(wide.Wall.High), float64(narrow.Wall.High))
}

// BenchmarkPropagation is the solves of a spread and what is read off them.
func BenchmarkPropagation(b *testing.B) {
	r := mildClear(b)
	r.Tolerances = roughly
	s, err := Solve(&r)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if p := Propagate(&r, s); len(p.Causes) == 0 {
			b.Fatal("no causes")
		}
	}
}

func TestQuantileAgainstSorting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.SliceOfN(rapid.Float64Range(-5, 5), 2, 700).Draw(t, "v")
		share := rapid.Float64Range(0, 1).Draw(t, "share")
		var sum, weights float64
		half := math.Max(halfWindow*float64(len(v)), 1)
		for i, x := range slices.Sorted(slices.Values(v)) {
			off := (float64(i) + 0.5 - share*float64(len(v))) / half
			w := math.Max(1-off*off, 0)
			sum += w * x
			weights += w
		}
		assert.InDelta(t, sum/weights, quantile(v, share), 1e-9)
	})
}

// The deviations are those of a standard normal distribution, and uncorrelated.
func TestDeviations(t *testing.T) {
	z := deviations
	require.Len(t, z, Draws)
	for d := range Dimensions {
		col := make([]float64, Draws)
		for i := range z {
			col[i] = z[i][d]
		}
		assert.InDelta(t, -1.2816, quantile(col, 0.1), 0.02, "10 %% of dimension %d", d)
		assert.InDelta(t, 1.2816, quantile(col, 0.9), 0.02, "90 %% of dimension %d", d)
		for e := range d {
			var product float64
			for i := range z {
				product += z[i][d] * z[i][e] / Draws
			}
			assert.InDelta(t, 0, product, 1e-9)
		}
	}
}
