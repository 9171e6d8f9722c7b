package air_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boothset/calc/air"
	"boothset/calc/unit"
)

// geopotential is the height of the standard atmosphere at z metres above sea
// level, with the earth's radius of US Standard Atmosphere 1976.
func geopotential(z float64) unit.Length { return unit.Length(z * 6356766 / (6356766 + z)) }

func TestStandardAtmosphereAt5km(t *testing.T) {
	// US Standard Atmosphere 1976 at 5000 m geometric, as worked in the documentation
	// of the python3-fluids library (ATMOSPHERE_1976).
	h := geopotential(5000)
	temp, p := air.TempAtAltitude(h), air.AtAltitude(h)
	assert.InEpsilon(t, 54048.28614576141, float64(p), 1e-8)
	assert.InEpsilon(t, 255.67554322180348, float64(temp), 1e-12)
	assert.InEpsilon(t, 1.62824814e-5, air.Viscosity(temp), 1e-8)
	// Its gas constant is 287.053 where this package rounds to 287.05.
	assert.InEpsilon(t, .73642842, air.Density(p, temp), 1.5e-5)
	assert.InEpsilon(t, 320.54552, float64(air.SoundSpeed(temp)), 1e-5)
}

func TestPressureAtAltitudeASHRAETable1(t *testing.T) {
	// ASHRAE Handbook of Fundamentals, chapter 1, table 1, as in psychrolib's tests
	// (500 and 1000 m); 2000 m by the same library's formula.
	for h, pa := range map[float64]float64{0: 101325, 500: 95461, 1000: 89875, 2000: 79495} {
		assert.InDelta(t, pa, float64(air.AtAltitude(unit.Length(h))), 2, "%v m", h)
	}
}

func TestAltitudeIsHeldToTheTroposphere(t *testing.T) {
	assert.Equal(t, air.AtAltitude(-500), air.AtAltitude(-1e9))
	assert.Equal(t, air.AtAltitude(11000), air.AtAltitude(1e9))
	assert.InDelta(t, 216.65, float64(air.TempAtAltitude(1e9)), 1e-9, "the standard's tropopause")
}

func TestViscosityUSStandardAtmosphere(t *testing.T) {
	// python3-fluids, ATMOSPHERE_1976.viscosity.
	for k, mu := range map[float64]float64{
		288.15: 1.789380e-5, 293.15: 1.813406e-5, 298.15: 1.837234e-5, 308.15: 1.884315e-5, 300: 1.846002e-5,
	} {
		assert.InEpsilon(t, mu, air.Viscosity(unit.Temp(k)), 1e-6, "%v K", k)
	}
}

func TestDryAirDensityAndSound(t *testing.T) {
	// python3-fluids, ATMOSPHERE_1976: its gas constant is 287.053, here 287.05, which
	// is the whole difference (1e-5, half that for sound).
	assert.InEpsilon(t, 1.224999, air.Density(seaLevel, unit.Celsius(15)), 1.5e-5)
	assert.InEpsilon(t, 1.292270, air.Density(seaLevel, unit.Celsius(0)), 1.5e-5)
	assert.InEpsilon(t, 340.2941, float64(air.SoundSpeed(unit.Celsius(15))), 1e-5)
	// An online engineering handbook: 0.07494 lb/ft3 at 70 F and 1 atm.
	assert.InEpsilon(t, 0.07494*0.45359237/unit.CubicFoot, air.Density(seaLevel, unit.Fahrenheit(70)), 1e-3)
}
