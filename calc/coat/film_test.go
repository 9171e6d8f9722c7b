package coat_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

const squareFoot = unit.MetrePerFoot * unit.MetrePerFoot

func um(v float64) unit.Length   { return unit.Length(v) * coat.Micrometre }
func mils(v float64) unit.Length { return unit.Length(v) * coat.Mil }

// Spreading-rate bulletins and film-gauge suppliers: area of a US gallon. The last is
// a wet film of 10 mil.
func TestCoverageOfAGallonAsPublished(t *testing.T) {
	for _, c := range []struct{ solids, te, mil, ft2, tol float64 }{
		{1, 1, 1, 1604.17, 0.01},
		{0.65, 1, 5, 208.5, 0.05},
		{0.52, 0.35, 1.5, 194.6, 0.1},
		{0.35, 1, 2, 280.7, 0.05},
		{1, 1, 10, 160.4, 0.05},
	} {
		a, err := coat.Coverage(unit.USGallons(1), mils(c.mil), c.solids, c.te)
		require.NoError(t, err)
		assert.InDelta(t, c.ft2, float64(a)/squareFoot, c.tol)
	}
}

// The same bulletins in metric: a litre over a square metre is 1000 um; 65 % solids at
// 125 um is 5.2 m2/L.
func TestCoverageOfALitreAsPublished(t *testing.T) {
	a, err := coat.Coverage(unit.Litres(1), um(1000), 1, 1)
	require.NoError(t, err)
	assert.InDelta(t, 1, float64(a), 1e-12)
	a, err = coat.Coverage(unit.Litres(1), um(125), 0.65, 1)
	require.NoError(t, err)
	assert.InDelta(t, 5.2, float64(a), 1e-9)
}

// A wet/dry film bulletin: 8 mil wet at 35 % is 2.8 mil dry; with 10 % thinner the sum
// gives 2.55 (the bulletin's own text is garbled there and is not used). Two epoxy
// primer sheets, whose whole micrometres round.
func TestWetAndDryFilmAsPublished(t *testing.T) {
	for _, c := range []struct{ wet, solids, thinner, dry, tol float64 }{
		{8 * 25.4, 0.35, 0, 2.8 * 25.4, 0.01},
		{8 * 25.4, 0.35, 0.10, 2.55 * 25.4, 0.2},
		{47, 0.37, 0, 17.4, 0.05}, {65, 0.37, 0, 24.1, 0.06},
		{47, 0.37, 0, 18, 1}, {65, 0.37, 0, 25, 1},
		{94, 0.53, 0, 49.8, 0.05}, {118, 0.53, 0, 62.5, 0.05},
		{94, 0.53, 0, 50, 1}, {118, 0.53, 0, 62, 1},
	} {
		dry, err := coat.DryFromWet(um(c.wet), c.solids, c.thinner)
		require.NoError(t, err)
		assert.InDelta(t, c.dry, float64(dry/coat.Micrometre), c.tol)
	}
	// 2.2 mil of clear at 45 % is 4.9 mil wet in all.
	wet, err := coat.WetFromDry(mils(2.2), 0.45, 0)
	require.NoError(t, err)
	assert.InDelta(t, 4.9, float64(wet/coat.Mil), 0.02)
}

func TestReadySolidsCountHardenerAndThinner(t *testing.T) {
	// Invented clear 2:1 plus 10 %: (2 x 0.48 + 1 x 0.50)/3.3.
	s, err := coat.ReadySolids([]coat.Part{{2, 0.48}, {1, 0.50}, {0.3, 0}})
	require.NoError(t, err)
	assert.InDelta(t, 1.46/3.3, s, 1e-12)
	for _, bad := range [][]coat.Part{nil, {{0, 0.5}}, {{1, 1.2}}, {{-1, 0.5}, {2, 0.5}}, {{math.NaN(), 0.5}}} {
		_, err := coat.ReadySolids(bad)
		assert.Error(t, err)
	}
}

func TestCombGivesARange(t *testing.T) {
	low, high, err := coat.CombRange(mils(2), mils(3), 0.45)
	require.NoError(t, err)
	assert.InDelta(t, 0.9, float64(low/coat.Mil), 1e-9)
	assert.InDelta(t, 1.35, float64(high/coat.Mil), 1e-9)
	_, _, err = coat.CombRange(um(80), um(60), 0.45)
	assert.EqualError(t, err, "next-tooth 60 um: give 80 to 5000 um")
}

func TestRunningTotalAgainstLimits(t *testing.T) {
	clear := coat.Limits{Low: mils(2), High: mils(2.5)}
	for _, c := range []struct {
		coats  []unit.Length
		before float64
		state  coat.FilmState
		near   bool
		over   bool
	}{
		{nil, 0, coat.Under, false, false},
		{[]unit.Length{mils(1.1)}, 4, coat.Under, false, false},
		{[]unit.Length{mils(1.1), mils(1.1)}, 4, coat.Inside, false, false},
		{[]unit.Length{mils(1.25), mils(1.25)}, 4, coat.Inside, false, false},
		{[]unit.Length{mils(1.1), mils(1.1), mils(1.1)}, 6, coat.Over, false, false},
		{[]unit.Length{mils(1.1), mils(1.1)}, 8, coat.Inside, true, false},
		{[]unit.Length{mils(1.1), mils(1.1)}, 10, coat.Inside, false, true},
	} {
		r, err := coat.RunningTotal(c.coats, mils(c.before), clear)
		require.NoError(t, err)
		assert.Equal(t, c.state, r.State, "%v", c)
		assert.Equal(t, c.near, r.Near, "%v", c)
		assert.Equal(t, c.over, r.WholeOver, "%v", c)
		assert.InDelta(t, float64(clear.High), float64(r.Total+r.Room), 1e-12)
	}
	_, err := coat.RunningTotal(nil, 0, coat.Limits{Low: mils(2), High: mils(1)})
	assert.ErrorContains(t, err, "upper-film-limit 25.4 um: give 50.8")
}

func TestCoatsForATotal(t *testing.T) {
	for _, c := range []struct {
		total, most float64
		n           int
	}{{2.2, 1.2, 2}, {2.4, 1.2, 2}, {2.5, 1.2, 3}, {0.8, 1.2, 1}, {0.9, 0.3, 3}} {
		n, each, err := coat.CoatsFor(mils(c.total), mils(c.most))
		require.NoError(t, err)
		assert.Equal(t, c.n, n, "%v", c)
		assert.InEpsilon(t, c.total, float64(each/coat.Mil)*float64(n), 1e-9)
	}
}

func TestFilmGivenNonsenseNamesIt(t *testing.T) {
	_, err := coat.WetFromDry(um(50), 1.4, 0)
	assert.EqualError(t, err, "volume-solids 140 %: give 1 to 100 %")
	_, err = coat.DryFromWet(um(50), 0.4, -0.5)
	assert.EqualError(t, err, "thinner -50 %: give 0 to 200 %")
	_, err = coat.Coverage(unit.Litres(1), 0, 0.4, 0.5)
	assert.EqualError(t, err, "dry-film 0 um: give 0.1 to 5000 um")
	_, err = coat.Coverage(unit.Litres(1), um(50), 0.4, 0)
	assert.EqualError(t, err, "transfer-efficiency 0 %: give 1 to 100 %")
}

func TestWetAndDryComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dry := um(rapid.Float64Range(1, 40).Draw(t, "dry"))
		vs := rapid.Float64Range(0.05, 1).Draw(t, "solids")
		thinner := rapid.Float64Range(0, 2).Draw(t, "thinner")
		wet, err := coat.WetFromDry(dry, vs, thinner)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, wet, dry)
		back, err := coat.DryFromWet(wet, vs, thinner)
		require.NoError(t, err)
		assert.InEpsilon(t, float64(dry), float64(back), 1e-12)
	})
}
