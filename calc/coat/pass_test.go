package coat_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

func TestTimedCupGivesTheRate(t *testing.T) {
	r, err := coat.TimedRate(unit.Litres(0.1), 30*time.Second)
	require.NoError(t, err)
	assert.InDelta(t, 200, r.Value.MLPerMin(), 1e-9)
	assert.False(t, r.Estimate)
	assert.Equal(t, r.Low, r.High)
	_, err = coat.TimedRate(unit.Litres(0.1), 0)
	assert.EqualError(t, err, "time 0 s: give 1 to 3600 s")
}

// Bernoulli with the losses alone, v = sqrt(2 push/1.5), is the limit of a thin liquid
// in a wide tip; Hagen and Poiseuille alone, v = push d2/(32 nu L), of a thick one in a
// narrow tip. Push is 9.80665 x 0.1 + 5000/1000 = 5.980665 m2/s2.
func TestTipRateBetweenOrificeAndTube(t *testing.T) {
	const push = 5.980665
	area := func(d float64) float64 { return 3.14159265358979 / 4 * d * d }
	wide, err := coat.TipRate(unit.MM(3), unit.MM2PerS(5), 1000)
	require.NoError(t, err)
	assert.InEpsilon(t, 2.8239*area(3e-3), float64(wide.Value), 0.02)
	thick, err := coat.TipRate(unit.MM(0.5), unit.MM2PerS(500), 1000)
	require.NoError(t, err)
	assert.InEpsilon(t, push*0.25e-6/(32*500e-6*2e-3)*area(0.5e-3), float64(thick.Value), 0.01)
}

func TestTipRateIsMarkedAndOfTheRightOrder(t *testing.T) {
	// A 1.3 tip with clear at 18 s DIN: common practice is 100 to 250 mL/min, no
	// published source.
	r, err := coat.TipRate(unit.MM(1.3), unit.MM2PerS(57), 980)
	require.NoError(t, err)
	assert.True(t, r.Estimate)
	assert.Greater(t, r.Value.MLPerMin(), 100.0)
	assert.Less(t, r.Value.MLPerMin(), 250.0)
	assert.InEpsilon(t, 0.6, float64(r.Low/r.Value), 1e-9)
	assert.InEpsilon(t, 1.4, float64(r.High/r.Value), 1e-9)
	_, err = coat.TipRate(unit.MM(13), unit.MM2PerS(57), 980)
	assert.EqualError(t, err, "tip 13 mm: give 0.5 to 3 mm")
}

func TestWiderTipOrThinnerCoatNeverFlowsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.Float64Range(0.5, 2.9).Draw(t, "tip")
		nu := rapid.Float64Range(5, 490).Draw(t, "nu")
		rho := rapid.Float64Range(700, 1800).Draw(t, "density")
		rate := func(d, nu float64) coat.FluidRate {
			r, err := coat.TipRate(unit.MM(d), unit.MM2PerS(nu), rho)
			require.NoError(t, err)
			return r.Value
		}
		assert.Greater(t, rate(d+0.1, nu), rate(d, nu))
		assert.Less(t, rate(d, nu+10), rate(d, nu))
	})
}

// By hand: 180 mL/min = 3e-6 m3/s, 65 % landing, a 250 mm fan overlapped by half and
// 0.4 m/s leave 3e-6 x 0.65/(0.125 x 0.4) = 39 um.
func TestFilmOfAPassByHand(t *testing.T) {
	p := coat.Pass{Rate: coat.MLPerMin(180), Transfer: 0.65, Fan: unit.MM(250), Overlap: 0.5}
	wet, err := p.WetFilm(0.4)
	require.NoError(t, err)
	assert.InDelta(t, 39, float64(wet/coat.Micrometre), 1e-9)
	step, err := p.Step()
	require.NoError(t, err)
	assert.InDelta(t, 125, step.MM(), 1e-9)
	for height, want := range map[float64]int{0.2: 1, 0.25: 1, 0.26: 2, 0.375: 2, 1.0: 7} {
		n, err := p.Passes(unit.Length(height))
		require.NoError(t, err)
		assert.Equal(t, want, n, "%v m", height)
	}
}

func TestPassesThatNoHandMakes(t *testing.T) {
	p := coat.Pass{Rate: coat.MLPerMin(180), Transfer: 0.65, Fan: unit.MM(250), Overlap: 0.5}
	_, err := p.WetFilm(15.6)
	assert.EqualError(t, err, "gun-speed 15.6 m/s: give 0.05 to 3 m/s")
	p.Overlap = 1
	_, err = p.WetFilm(0.4)
	assert.EqualError(t, err, "overlap 100 %: give 0 to 90 %")
	p.Overlap, p.Fan = 0.5, 0
	_, err = p.Passes(1)
	assert.EqualError(t, err, "fan-width 0 mm: give 10 to 600 mm")
}

func TestAFasterGunLaysLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := coat.Pass{
			Rate:     coat.MLPerMin(rapid.Float64Range(50, 500).Draw(t, "rate")),
			Transfer: rapid.Float64Range(0.2, 0.8).Draw(t, "te"),
			Fan:      unit.MM(rapid.Float64Range(80, 400).Draw(t, "fan")),
			Overlap:  rapid.Float64Range(0, 0.75).Draw(t, "overlap"),
		}
		v := unit.Speed(rapid.Float64Range(0.1, 2.9).Draw(t, "speed"))
		wet, err := p.WetFilm(v)
		require.NoError(t, err)
		faster, err := p.WetFilm(v + 0.05)
		require.NoError(t, err)
		assert.Less(t, faster, wet)
		more := p
		more.Overlap += 0.1
		thicker, err := more.WetFilm(v)
		require.NoError(t, err)
		assert.Greater(t, thicker, wet)
	})
}
