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

// job is an invented shop's clear, wanted at 18 s DIN (57 mm2/s).
func job(nu, at float64) coat.Thinning {
	return coat.Thinning{
		Viscosity: unit.MM2PerS(nu), At: unit.Celsius(at), Target: unit.MM2PerS(57), Warmest: unit.Celsius(25),
		Slope: coat.EstimatedSlope(), Thinner: coat.SolventViscosity, MaxAdd: 0.10,
	}
}

func TestWarmFirstThenThin(t *testing.T) {
	for _, c := range []struct {
		name   string
		job    coat.Thinning
		remedy coat.Remedy
		to     float64 // C
		add    float64
	}{
		{"already thin enough", job(50, 18), coat.Ready, 18, 0},
		// ln(66/57)/0.05 = 2.93 C
		{"warming alone", job(66, 18), coat.Warm, 20.93, 0},
		// ln(90/57)/0.05 = 9.1 C, to 27.1: past 25. At 25 C 90 exp(-0.35) = 63.4;
		// x/(1-x) = ln(63.4/57)/ln(57/0.83) = 0.0253
		{"warm to the bound, then thin", job(90, 18), coat.WarmAndAdd, 25, 0.0253},
		{"at its warmest already", job(66, 26), coat.Add, 26, 0.0347},
		{"not within the coat's limit", job(300, 15), coat.Cannot, 25, 0.10},
	} {
		a, err := coat.Thin(c.job)
		require.NoError(t, err, c.name)
		assert.Equal(t, c.remedy, a.Remedy, c.name)
		assert.InDelta(t, c.to, a.WarmTo.C(), 0.01, c.name)
		assert.InDelta(t, c.add, a.Add, 1e-4, c.name)
	}
}

func TestWarmItOrAddALittle(t *testing.T) {
	// "Warm it to 70 F or add 4 %": 66 mm2/s at 65 F.
	r := job(66, 18)
	a, err := coat.Thin(r)
	require.NoError(t, err)
	assert.InDelta(t, 70, a.WarmTo.F(), 0.5)
	assert.InDelta(t, 0.035, a.AddAlone, 1e-3)
	assert.True(t, a.AddAllowed)
	r.MaxAdd = 0.03
	a, err = coat.Thin(r)
	require.NoError(t, err)
	assert.False(t, a.AddAllowed, "the coat takes 3 %")
	assert.Equal(t, coat.Warm, a.Remedy)
}

func TestThinningThatCannotBeWorked(t *testing.T) {
	r := job(90, 18)
	r.Target = unit.MM2PerS(1)
	_, err := coat.Thin(r)
	assert.EqualError(t, err, "wanted-viscosity 1 mm2/s: give 1.245 to 1e+05 mm2/s")
	r = job(90, 18)
	r.MaxAdd = -0.1
	_, err = coat.Thin(r)
	assert.EqualError(t, err, "most-thinner -10 %: give 0 to 200 %")
	r = job(90, math.NaN())
	_, err = coat.Thin(r)
	assert.ErrorContains(t, err, "paint-temperature NaN C")
}

func TestThinningKeepsItsPromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := coat.Thinning{
			Viscosity: unit.MM2PerS(rapid.Float64Range(5, 2000).Draw(t, "nu")),
			At:        unit.Celsius(rapid.Float64Range(0, 40).Draw(t, "at")),
			Target:    unit.MM2PerS(rapid.Float64Range(5, 300).Draw(t, "target")),
			Warmest:   unit.Celsius(rapid.Float64Range(0, 40).Draw(t, "warmest")),
			Slope:     coat.EstimatedSlope(),
			Thinner:   unit.MM2PerS(rapid.Float64Range(0.3, 3).Draw(t, "thinner")),
			MaxAdd:    rapid.Float64Range(0, 0.5).Draw(t, "max"),
		}
		a, err := coat.Thin(r)
		require.NoError(t, err)
		assert.LessOrEqual(t, a.Add, r.MaxAdd, "never beyond the coat's maximum")
		assert.GreaterOrEqual(t, a.Add, 0.0)
		assert.GreaterOrEqual(t, a.WarmTo, r.At, "never cooled")
		assert.LessOrEqual(t, a.WarmTo, max(r.At, r.Warmest))
		switch a.Remedy {
		case coat.Ready:
			assert.LessOrEqual(t, r.Viscosity, r.Target)
		case coat.Cannot:
			assert.Greater(t, a.Reached, r.Target)
			assert.LessOrEqual(t, a.Reached, r.Viscosity)
		default:
			assert.Equal(t, r.Target, a.Reached)
		}
		if a.Add > 0 {
			assert.GreaterOrEqual(t, a.WarmTo, r.Warmest, "no thinner while warming would do")
			// Mixing the advised share by hand lands on what was promised.
			warm := math.Log(float64(r.Viscosity)) - 0.05*float64(a.WarmTo-r.At)
			x := a.Add / (1 + a.Add)
			assert.InEpsilon(t, float64(a.Reached), math.Exp((1-x)*warm+x*math.Log(float64(r.Thinner))), 1e-9)
		}
	})
}
