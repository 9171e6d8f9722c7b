package air_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boothset/calc/air"
	"boothset/calc/unit"
)

// Isentropic flow tables: an ideal nozzle chokes at 0.52828 of the pressure at rest.
func TestCriticalRatioOfTheTables(t *testing.T) {
	assert.InDelta(t, 0.5282817877, air.CriticalRatio, 1e-10)
}

// What lies outside the formulas is held to their ends: -100 and 200 C, 0.1 % to all of
// saturation, 1 kPa. The pressures there are the handbook's equations 5 and 6, worked apart
// from this package.
func TestWhatTheFormulasAreHeldTo(t *testing.T) {
	cold, hot := unit.Celsius(-100), unit.Celsius(200)
	assert.InEpsilon(t, 0.001405102, float64(air.SaturationPressure(cold)), 1e-5)
	assert.InEpsilon(t, 1555073.7456, float64(air.SaturationPressure(hot)), 1e-5)
	assert.Equal(t, air.SaturationPressure(cold), air.SaturationPressure(unit.Celsius(-150)))
	assert.Less(t, air.SaturationPressure(cold), air.SaturationPressure(unit.Celsius(-99.9)))
	assert.Equal(t, air.SaturationPressure(hot), air.SaturationPressure(unit.Celsius(300)))
	assert.Greater(t, air.SaturationPressure(hot), air.SaturationPressure(unit.Celsius(199.9)))
	assert.InDelta(t, -100, air.VapourDewPoint(0).C(), 1e-6)
	assert.InDelta(t, 200, air.VapourDewPoint(1e9).C(), 1e-6)

	room := unit.Celsius(20)
	assert.Equal(t, 0.001, air.DriestHumidity)
	assert.InEpsilon(t, 2.3388037, float64(air.VapourPressure(room, 0)), 1e-6)
	assert.InEpsilon(t, 2338.8037, float64(air.VapourPressure(room, 3)), 1e-6)
	assert.Equal(t, 0.001, air.RelativeHumidity(room, 0))
	assert.Equal(t, 1.0, air.RelativeHumidity(room, 1e5))
	assert.Equal(t, air.HumidityRatio(room, 1, 101325), air.SaturationRatio(room, 101325))

	// By hand, equation 20: 0.621945 x 990/10 where vapour is held to 99 % of 1 kPa.
	assert.InEpsilon(t, 61.572555, air.VapourRatio(5000, 10), 1e-9)
	assert.InEpsilon(t, 0.621945*500/500, air.VapourRatio(500, 10), 1e-9)
	assert.Zero(t, air.VapourRatio(-1, 1e5))
	assert.InEpsilon(t, 0.621945*0.5/99999.5, air.VapourRatio(0.5, 1e5), 1e-9)
	// Compression is reckoned from 1 kPa on either side.
	assert.Equal(t, air.PressureDewPoint(500, 1e3, 5e3), air.PressureDewPoint(500, 10, 5e3))
	assert.Equal(t, air.PressureDewPoint(500, 5e3, 1e3), air.PressureDewPoint(500, 5e3, 10))
}

// Up to the triple point, 0.01 C, saturation is over ice and above it over water: equations
// 5 and 6 half a millikelvin to either side, which are 611.6348 and 611.6822 Pa the other way round.
func TestIceGivesWayToWaterAtTheTriplePoint(t *testing.T) {
	for k, pa := range map[float64]float64{273.1595: 611.63184275, 273.1605: 611.67924347} {
		assert.InEpsilon(t, pa, float64(air.SaturationPressure(unit.Temp(k))), 1e-7, "%v K", k)
		assert.InDelta(t, k, float64(air.VapourDewPoint(unit.Abs(pa))), 1e-6)
	}
}

// The standard atmosphere's lowest place here is 500 m below the sea: 107.478 kPa and
// 18.25 C in US Standard Atmosphere 1976, table I; at 11 km 22.632 kPa and -56.5 C.
func TestLowestAndHighestPlace(t *testing.T) {
	assert.InDelta(t, 107478, float64(air.AtAltitude(-500)), 1)
	assert.InDelta(t, 18.25, air.TempAtAltitude(-500).C(), 1e-9)
	assert.InDelta(t, 22632, float64(air.AtAltitude(11000)), 1)
	assert.InDelta(t, -56.5, air.TempAtAltitude(11000).C(), 1e-9)
	// Between them a metre still counts.
	assert.Greater(t, air.AtAltitude(-499), air.AtAltitude(-498))
	assert.Equal(t, air.AtAltitude(-500), air.AtAltitude(-501))
	assert.Greater(t, air.AtAltitude(10999), air.AtAltitude(11000))
	assert.Equal(t, air.AtAltitude(11000), air.AtAltitude(11001))
}
