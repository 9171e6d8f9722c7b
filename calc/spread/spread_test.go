package spread_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/spread"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// outcomes is what many draws come to: wall and static in psi, opening, distance in m.
type outcomes struct {
	wall, static, opening, distance []float64
	short                           int // draws that fall short
}

// bruteForce works a request with n pseudo-random draws, each changed where change is
// given, and sorts what they come to.
func bruteForce(r *calc.Request, s *calc.Setup, n int, change func(*calc.Deviations)) (o outcomes) {
	random := rand.New(rand.NewPCG(1, 2))
	p := calc.Perturb(r, s)
	for _, v := range []*[]float64{&o.wall, &o.static, &o.opening, &o.distance} {
		*v = make([]float64, 0, n)
	}
	for range n {
		var z calc.Deviations
		for d := range z {
			z[d] = random.NormFloat64()
		}
		if change != nil {
			change(&z)
		}
		x := p.Work(&z)
		if x.Short {
			o.short++
		}
		o.wall, o.static = append(o.wall, x.Wall.PSI()), append(o.static, x.Static.PSI())
		o.opening, o.distance = append(o.opening, x.Opening), append(o.distance, float64(x.Distance))
	}
	for _, v := range [][]float64{o.wall, o.static, o.opening, o.distance} {
		slices.Sort(v)
	}
	return o
}

// tenths are the bounds at 10 and 90 % of what is sorted.
func tenths(v []float64) (low, high float64) { return v[len(v)/10], v[len(v)*9/10] }

// off is how far the farther of two bounds lies off what is sorted.
func off(v []float64, low, high float64) float64 {
	l, h := tenths(v)
	return max(math.Abs(l-low), math.Abs(h-high))
}

// offShare is off as a share of how far apart the bounds of what is sorted lie.
func offShare(v []float64, low, high float64) float64 {
	l, h := tenths(v)
	return off(v, low, high) / (h - l)
}

// The same bounds by brute force: a million pseudo-random draws.
func TestBoundsAgainstMonteCarlo(t *testing.T) {
	if testing.Short() {
		t.Skip("five million solves")
	}
	for name, line := range fiveLines(t) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			r, s := solved(t, line)
			require.False(t, s.Short.Is)
			got := spread.Of(r, s)
			brute := bruteForce(r, s, 1_000_000, nil)
			wall, static := off(brute.wall, got.Wall.Low.PSI(), got.Wall.High.PSI()), off(brute.static, got.Static.Low.PSI(), got.Static.High.PSI())
			opening := off(brute.opening, got.Opening.Low, got.Opening.High)
			distance := off(brute.distance, float64(got.Distance.Low), float64(got.Distance.High))
			assert.Less(t, wall, 0.1)
			assert.Less(t, static, 0.1)
			assert.Less(t, opening, 0.01)
			assert.Less(t, distance, 0.0005)

			var shares float64
			for _, c := range got.Causes {
				shares += c.Wall
			}
			assert.InDelta(t, 1, shares, 0.02, "shares of the wall's spread")
			t.Logf("wall %.2f..%.2f psi, off by %.3f, static %.3f, opening %.4f, distance %.5f m; shares %.4f", got.Wall.Low.PSI(), got.Wall.High.PSI(), wall, static, opening, distance, shares)
		})
	}
}

// The bounds of any line by 30,000 pseudo-random draws, as shares of how far apart they lie:
// nine lines of ten are as near as 0.1 psi of the mild line's 5.8, and none is far off.
func TestBoundsOfAnyLine(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("three million solves")
	}
	random := rand.New(rand.NewPCG(7, 7))
	var wall, static, opening, distance []float64
	for len(wall) < 100 {
		r, s := solved(t, anyLine(t, random))
		if s.Short.Is {
			continue
		}
		got := spread.Of(r, s)
		brute := bruteForce(r, s, 30_000, nil)
		wall = append(wall, offShare(brute.wall, got.Wall.Low.PSI(), got.Wall.High.PSI()))
		static = append(static, offShare(brute.static, got.Static.Low.PSI(), got.Static.High.PSI()))
		opening = append(opening, offShare(brute.opening, got.Opening.Low, got.Opening.High))
		distance = append(distance, offShare(brute.distance, float64(got.Distance.Low), float64(got.Distance.High)))
	}
	for _, c := range []struct {
		name string
		off  []float64
	}{{"wall", wall}, {"static", static}, {"opening", opening}, {"distance", distance}} {
		slices.Sort(c.off)
		nine := c.off[len(c.off)*9/10-1]
		assert.Less(t, nine, 0.1/5.8, "%s: nine of ten", c.name)
		assert.Less(t, c.off[len(c.off)-1], 0.05, "%s: every one", c.name)
		t.Logf("%s: half within %.4f, nine of ten %.4f, every one %.4f", c.name, c.off[len(c.off)/2], nine, c.off[len(c.off)-1])
	}
}

// A share is what the variance loses, on average, where that one thing is known: first
// order index of Sobol, by pairs of draws that share nothing else (Saltelli and others,
// Global Sensitivity Analysis: The Primer, 4.6). What is not in proportion is left out of
// ours, up to two hundredths here.
func TestSharesAgainstPairsOfDraws(t *testing.T) {
	if testing.Short() {
		t.Skip("a million and a half solves")
	}
	const pairs = 30_000
	t.Parallel()
	for _, name := range []string{"mild", "slim"} {
		r, s := solved(t, fiveLines(t)[name])
		shares := map[string]float64{}
		for _, c := range spread.Of(r, s).Causes {
			shares[c.ID] = c.Wall
		}
		p, random := calc.Perturb(r, s), rand.New(rand.NewPCG(5, 6))
		for d, id := range calc.ToleranceIDs() {
			var products, sum, squares float64
			for range pairs {
				var one, other calc.Deviations
				for e := range one {
					one[e], other[e] = random.NormFloat64(), random.NormFloat64()
				}
				other[d] = one[d]
				x, y := p.Work(&one).Wall.PSI(), p.Work(&other).Wall.PSI()
				products += x * y / pairs
				sum += (x + y) / (2 * pairs)
				squares += (x*x + y*y) / (2 * pairs)
			}
			assert.InDelta(t, (products-sum*sum)/(squares-sum*sum), shares[id], 0.02, "%s %s", name, id)
		}
	}
}

// Were the first cause known, the wall's range would be as narrow as brute force finds it
// with that one thing never off.
func TestKnownAgainstMonteCarlo(t *testing.T) {
	if testing.Short() {
		t.Skip("half a million solves")
	}
	t.Parallel()
	ids := calc.ToleranceIDs()
	for name, line := range fiveLines(t) {
		r, s := solved(t, line)
		c := spread.Of(r, s).Causes[0]
		d := slices.Index(ids[:], c.ID)
		low, high := tenths(bruteForce(r, s, 100_000, func(z *calc.Deviations) { z[d] = 0 }).wall)
		assert.InEpsilon(t, high-low, (c.Known.High - c.Known.Low).PSI(), 0.03, "%s %s: %.2f..%.2f, got %.2f..%.2f", name, c.ID, low, high, c.Known.Low.PSI(), c.Known.High.PSI())
	}
}

func TestSpreadIsTheSameTwice(t *testing.T) {
	r, s := solved(t, calctest.MildClear(t))
	assert.Equal(t, spread.Of(r, s), spread.Of(r, s))
}

func TestNoToleranceNoSpread(t *testing.T) {
	r, s := solved(t, calctest.MildClear(t))
	r.Tolerances = calc.Tolerances{}
	p := spread.Of(r, s)
	assert.InDelta(t, s.Wall.Flowing.PSI(), p.Wall.Low.PSI(), 1e-6)
	assert.InDelta(t, s.Wall.Flowing.PSI(), p.Wall.High.PSI(), 1e-6)
	assert.InDelta(t, r.Line[0].Regulator().Set(s.Wall.Flowing, s.Working.Flow).PSI(), p.Static.Low.PSI(), 1e-6)
	assert.InDelta(t, s.Valve.Opening, p.Opening.High, 1e-9)
	assert.InDelta(t, float64(s.Distance.Target), float64(p.Distance.Low), 1e-9)
	assert.Empty(t, p.Causes)
}

// A filter that is not in the line is no cause, nor is the regulator's droop one of the
// flowing wall's.
func TestWhatIsNotThereHasNoShare(t *testing.T) {
	r, s := solved(t, calctest.MildClear(t))
	droop := false
	for _, c := range spread.Of(r, s).Causes {
		assert.NotEqual(t, "filter", c.ID)
		if c.ID == "droop" {
			droop = true
			assert.Zero(t, c.Wall)
			assert.Zero(t, c.Distance)
			assert.Positive(t, c.Static)
		}
	}
	assert.True(t, droop)
}

func TestShortSupplyHasNoSpread(t *testing.T) {
	r, s := solved(t, func() calc.Request { r := calctest.MildClear(t); r.Supply = unit.PSIG(20); return r }())
	require.True(t, s.Short.Is)
	assert.Nil(t, spread.Of(r, s))
}

// Knowing one thing leaves a narrower range, and the first cause narrows it most.
func TestKnowingTheFirstCauseNarrowsMost(t *testing.T) {
	width := func(g spread.GaugeRange) float64 { return float64(g.High - g.Low) }
	for name, line := range fiveLines(t) {
		r, s := solved(t, line)
		p := spread.Of(r, s)
		require.NotEmpty(t, p.Causes)
		for _, c := range p.Causes {
			assert.LessOrEqual(t, width(c.Known), width(p.Wall), "%s %s", name, c.ID)
			assert.GreaterOrEqual(t, width(c.Known), width(p.Causes[0].Known), "%s %s", name, c.ID)
		}
		assert.Less(t, width(p.Causes[0].Known), width(p.Wall))
	}
}

// A gauge that is checked narrows what is left, by what was foretold.
func TestCheckedGaugeNarrows(t *testing.T) {
	r, s := solved(t, calctest.MildClear(t))
	before := spread.Of(r, s)
	require.Equal(t, "wall-gauge", before.Causes[0].ID)
	r.Tolerances.WallGauge.Within = 0
	after := spread.Of(r, s)
	assert.InDelta(t, before.Causes[0].Known.Low.PSI(), after.Wall.Low.PSI(), 0.1)
	assert.InDelta(t, before.Causes[0].Known.High.PSI(), after.Wall.High.PSI(), 0.1)
	for _, c := range after.Causes {
		assert.NotEqual(t, "wall-gauge", c.ID)
	}
}

// A wider tolerance never makes an answer surer.
func TestWiderToleranceWidens(t *testing.T) {
	r, s := solved(t, calctest.MildClear(t))
	narrow := spread.Of(r, s)
	r.Tolerances.Coupling.Within *= 2
	r.Tolerances.WallGauge.Within *= 2
	wide := spread.Of(r, s)
	assert.Less(t, float64(wide.Wall.Low), float64(narrow.Wall.Low))
	assert.Greater(t, float64(wide.Wall.High), float64(narrow.Wall.High))
}

// BenchmarkSpread is the solves of a spread and what is read off them.
func BenchmarkSpread(b *testing.B) {
	r, s := solved(b, calctest.MildClear(b))
	b.ReportAllocs()
	for b.Loop() {
		if p := spread.Of(r, s); len(p.Causes) == 0 {
			b.Fatal("no causes")
		}
	}
}

// The turns of the knob are its opening's bounds, the farther closed the less open, as the
// knob is counted.
func TestTurnsOfTheKnobAreThoseOfItsOpening(t *testing.T) {
	for _, fromShut := range []bool{false, true} {
		r := calctest.MildClear(t)
		r.Gun.Valve.Turns, r.Gun.Valve.FromShut = 3, fromShut
		p := spread.Of(solved(t, r))
		assert.InDelta(t, 3*(1-p.Opening.High), p.Turns.Low, 1e-12)
		assert.InDelta(t, 3*(1-p.Opening.Low), p.Turns.High, 1e-12)
		assert.InDelta(t, 3*p.Opening.Low, p.FromShut.Low, 1e-12)
		assert.InDelta(t, 3*p.Opening.High, p.FromShut.High, 1e-12)
		assert.Equal(t, map[bool]spread.Range{false: p.Turns, true: p.FromShut}[fromShut], p.Knob())
		assert.Less(t, p.Opening.Low, 0.62, "a valve in proportion stands there")
	}
}
