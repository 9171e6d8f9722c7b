package supply_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boothset/calc/air"
	"boothset/calc/supply"
	"boothset/calc/unit"
)

func at(ambient unit.Abs, celsius float64) supply.Inlet {
	return supply.Inlet{Ambient: ambient, Temp: unit.Celsius(celsius)}
}

func TestFreeAirGoesWithInletDensity(t *testing.T) {
	rated := unit.SCFM(20)
	same, err := supply.FreeAir(rated, supply.SCFMInlet, supply.SCFMInlet)
	require.NoError(t, err)
	assert.InDelta(t, float64(rated), float64(same), 1e-15)

	// ideal gas: the swallowed volume is fixed, so the mass goes as the density
	ambient := unit.Abs(84.3e3)
	hot, err := supply.FreeAir(rated, supply.SCFMInlet, at(ambient, 40))
	require.NoError(t, err)
	density := air.Density(ambient, unit.Celsius(40)) / air.Density(unit.SCFMPressure, unit.Celsius(20))
	assert.InEpsilon(t, float64(rated)*density, float64(hot), 1e-12)
}

// A blower maker's note on altitude: a cubic foot at sea level is about 1.2
// at 5000 ft, and the rule of thumb takes 4 % off a compressor for each 1000 ft.
func TestFreeAirAt5000FeetAgainstRules(t *testing.T) {
	q, err := supply.FreeAir(unit.SCFM(100), supply.SCFMInlet, at(air.AtAltitude(unit.Feet(5000)), 20))
	require.NoError(t, err)
	assert.InEpsilon(t, 1.2, 100/q.SCFM(), 0.005)
	assert.InEpsilon(t, 100-5*4, q.SCFM(), 0.05)
	assert.Greater(t, q.SCFM(), 80.0, "the rule also counts a piston's dead space")
}

// The rule must stay below what a machine without any losses makes of a horsepower.
func TestPowerRuleIsBelowIdealMachines(t *testing.T) {
	const watts, p1 = 745.7, 101325.0
	ratio := (p1 + 100*unit.PascalPerPSI) / p1
	const k = (air.Gamma - 1) / air.Gamma
	power := func(stages float64) float64 { // W for each m3/s swallowed
		return stages * p1 / k * (math.Pow(ratio, k/stages) - 1)
	}
	scfm := func(wPerFlow float64) float64 { return watts / wPerFlow / unit.CubicFoot * unit.SecondPerMinute }
	assert.InEpsilon(t, 5.58, scfm(power(1)), 0.002) // handbook: 17.9 hp for 100 cfm
	assert.InEpsilon(t, 6.53, scfm(power(2)), 0.002) // 15.3
	low, high, err := supply.FromPower(5)
	require.NoError(t, err)
	assert.InEpsilon(t, 4, low.SCFM()/5, 1e-12)
	assert.InEpsilon(t, 5, high.SCFM()/5, 1e-12)
	assert.Less(t, high.SCFM()/5, scfm(power(1)))
	low, high, err = supply.FromPower(3)
	require.NoError(t, err)
	assert.InEpsilon(t, 3, low.SCFM()/3, 1e-12, "a small machine, an estimate")
	assert.InEpsilon(t, 3.5, high.SCFM()/3, 1e-12)

	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		_, _, err := supply.FromPower(bad)
		assert.Error(t, err)
	}
}

func TestFreeAirRefusesWhatNoSiteHas(t *testing.T) {
	good := supply.SCFMInlet
	for name, try := range map[string]func() (unit.Flow, error){
		"rated inlet left out": func() (unit.Flow, error) { return supply.FreeAir(unit.SCFM(10), supply.Inlet{}, good) },
		"vacuum":               func() (unit.Flow, error) { return supply.FreeAir(unit.SCFM(10), good, at(100, 20)) },
		"furnace":              func() (unit.Flow, error) { return supply.FreeAir(unit.SCFM(10), good, at(1e5, 500)) },
		"negative flow":        func() (unit.Flow, error) { return supply.FreeAir(-1, good, good) },
		"not a number":         func() (unit.Flow, error) { return supply.FreeAir(unit.Flow(math.NaN()), good, good) },
	} {
		q, err := try()
		assert.Error(t, err, name)
		assert.Zero(t, q, name)
	}
}

func TestHigherSiteOrHotterInletNeverDeliversMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-400, 5000).Draw(t, "low")
		high := rapid.Float64Range(low, 5000).Draw(t, "high")
		cold := rapid.Float64Range(-40, 60).Draw(t, "cold")
		hot := rapid.Float64Range(cold, 60).Draw(t, "hot")
		q := unit.SCFM(rapid.Float64Range(0, 100).Draw(t, "q"))
		dense, err := supply.FreeAir(q, supply.ISOInlet, at(air.AtAltitude(unit.Length(low)), cold))
		require.NoError(t, err)
		thin, err := supply.FreeAir(q, supply.ISOInlet, at(air.AtAltitude(unit.Length(high)), hot))
		require.NoError(t, err)
		require.LessOrEqual(t, thin, dense)
	})
}

func TestDemandAddsGunAndOthers(t *testing.T) {
	d, err := supply.Total(unit.SCFM(12), []supply.User{
		{Flow: unit.SCFM(8), Duty: 0.25}, {Flow: unit.SCFM(4), Duty: 1}, {Flow: unit.SCFM(30), Duty: 0},
	})
	require.NoError(t, err)
	assert.InEpsilon(t, 18, d.Mean.SCFM(), 1e-12)
	assert.InEpsilon(t, 24, d.Peak.SCFM(), 1e-12, "a tool that never runs takes nothing")

	for _, u := range []supply.User{{Flow: -1, Duty: 1}, {Flow: 1, Duty: 1.2}, {Flow: 1, Duty: math.NaN()}, {Flow: 2.1, Duty: 0.1}} {
		_, err := supply.Total(unit.SCFM(500), []supply.User{u})
		assert.Error(t, err, "%v", u)
	}
}
