package calc

import (
	"testing"

	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A very hot, very dry day, 40 C and 12 %, worked apart from this package with scipy: the
// jet, El-Shanawany and Lefebvre's drops of the usual tip and coating, Antoine's vapour
// pressure, the d-squared law with Ranz and Marshall integrated along the free jet, and the
// correction of ln(drier)/ln 2.5 of 8 % in half psi.
func TestVeryHotVeryDryDayAgainstScipy(t *testing.T) {
	clear, water := mildClear(t), highVolumeBase(t)
	water.Coat.Waterborne = true
	for name, c := range map[string]struct {
		r             Request
		psi           float64
		before, now   float64 // of what can evaporate, at the start
		drier, growth float64
		distance      float64
		levers        map[string]float64
	}{
		"solvent clear": {clear, 24, 0.1070196114458365, 0.2953081776364703, 2.525306462594532, 0.02834518539564268, 5.276292648219488, map[string]float64{
			"lever-pressure": 0.04619418933058339, "lever-nearer": 0.07993495215897128,
			"lever-thinner": 0.3044789703902674, "lever-cooler": 0.21923067081126635,
		}},
		"waterborne base": {water, 23, 0.04749763972600644, 0.24365391068808107, 4.624779613864058, 0.032383291830970995, 5.814155215942428, map[string]float64{
			"lever-pressure": 0.10848213636561899, "lever-nearer": 0.21547942454365954, "lever-cooler": 0.2681223403885812,
		}},
	} {
		c.r.Day = Day{Air: unit.Celsius(40), Panel: unit.Celsius(40), Humidity: 0.12}
		s := solved(t, c.r)
		f := s.Weather.InFlight
		require.True(t, f.Known)
		assert.InDelta(t, c.psi, s.Working.Pressure.PSI(), 1e-9, name)
		assert.InEpsilon(t, c.before, f.before, 1e-8, name)
		assert.InEpsilon(t, c.now, f.now, 1e-8, name)
		assert.InEpsilon(t, c.drier, f.Drier, 1e-8, name)
		assert.InEpsilon(t, c.growth, f.Growth, 1e-7, name)
		assert.InEpsilon(t, c.distance, s.Distance.Target.Inches(), 1e-8, name)
		require.Len(t, f.Levers, len(c.levers), name)
		for i, l := range f.Levers {
			assert.InEpsilon(t, c.levers[l.ID], l.Less, 1e-7, "%s %s", name, l.ID)
			if i > 0 {
				assert.LessOrEqual(t, l.Less, f.Levers[i-1].Less, "the strongest first")
			}
		}
	}
}

// All of the correction is given from 2.5 times as dry on (an estimate), in half psi down
// from 8 % of 26 psi: by hand ln 1.6/ln 2.5 x 2.08 = 1.067.
func TestCorrectionByHand(t *testing.T) {
	r := mildClear(t)
	e := newEvaporation(&r, unit.SCFMPressure)
	f := e.atStart()
	require.InEpsilon(t, 0.08*26, f.most.PSI(), 1e-9)
	for ln, psi := range map[float64]float64{
		-1: 0, 0: 0, 0.2202: 0, 0.2204: -0.5, 0.4700: -1, 0.8810: -1.5, 0.8812: -2, 0.9163: -2, 3: -2,
	} {
		assert.InDelta(t, psi, f.correction(ln).PSI(), 1e-9, "ln %v", ln)
	}
	// Just as far as the drops grow by 4 %: twice the growth a psi would halve the way.
	assert.InEpsilon(t, 0.04, mostGrowth, 1e-12)
}

// A hygrometer that reads 2.5 % off on a day of 40 C and 12 % moves the logarithm of what a
// waterborne coat loses by 1.05303 a unit of humidity, a thermometer by 0.053185 a kelvin,
// by central differences of the same script.
func TestSlopesOfTheWeatherAgainstScipy(t *testing.T) {
	r := highVolumeBase(t)
	r.Coat.Waterborne = true
	r.Day = Day{Air: unit.Celsius(40), Panel: unit.Celsius(40), Humidity: 0.12}
	s := solved(t, r)
	slope := weatherSlopeOf(&r, &s.Weather)
	assert.InEpsilon(t, -1.0530296910297055, slope.perHumidity, 1e-6)
	assert.InEpsilon(t, 0.053185043491789985, slope.perKelvin, 1e-6)
	// A solvent does not mind the water in the air.
	r.Coat.Waterborne = false
	slope = weatherSlopeOf(&r, &s.Weather)
	assert.Zero(t, slope.perHumidity)
}
