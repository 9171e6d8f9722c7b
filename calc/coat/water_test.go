package coat_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boothset/calc/air"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

func waterDrive(t require.TestingT, c, rh float64) float64 {
	d, err := coat.WaterDrive(unit.Celsius(c), rh, coat.ReferencePressure)
	require.NoError(t, err)
	return d
}

// The wet-bulb depression relative to that of 20 C and 50 %, worked apart from this
// package with a fixed psychrometer constant (0.000662/C), at 20, 30, 50, 65, 75, 85
// and 90 % humidity. The real constant moves by about 2 % over this range, and the
// table has two decimals.
func TestDryingIndexAgainstAFixedPsychrometer(t *testing.T) {
	humidity := []float64{0.20, 0.30, 0.50, 0.65, 0.75, 0.85, 0.90}
	base := waterDrive(t, 20, 0.5)
	for c, row := range map[float64][]float64{
		15: {1.45, 1.24, 0.86, 0.58, 0.41, 0.24, 0.16},
		20: {1.72, 1.47, 1.00, 0.68, 0.47, 0.28, 0.18},
		25: {2.01, 1.70, 1.14, 0.77, 0.53, 0.31, 0.21},
		30: {2.30, 1.94, 1.29, 0.86, 0.59, 0.35, 0.23},
		35: {2.60, 2.17, 1.43, 0.95, 0.65, 0.38, 0.25},
	} {
		for i, want := range row {
			assert.InDelta(t, want, waterDrive(t, c, humidity[i])/base, 0.03*want+0.006, "%v C, %v", c, humidity[i])
		}
	}
}

func TestWaterDriveOnTheReferenceDayAndInFog(t *testing.T) {
	assert.InDelta(t, 1, waterDrive(t, 21, 0.5), 1e-12)
	assert.InDelta(t, 0, waterDrive(t, 21, 1), 1e-3)
	assert.Equal(t, coat.LongestFlash, coat.FlashFactor(waterDrive(t, 15, 1)))
	_, err := coat.WaterDrive(unit.Celsius(20), 1.2, coat.ReferencePressure)
	assert.EqualError(t, err, "humidity 120 %: give 0 to 100 %")
	_, err = coat.WaterDrive(unit.Celsius(80), 0.2, coat.ReferencePressure)
	assert.EqualError(t, err, "air-temperature 80 C: give -10 to 60 C")
	_, err = coat.WaterDrive(unit.Celsius(20), 0.2, 0)
	assert.EqualError(t, err, "air-pressure 0 bar: give 0.5 to 1.2 bar")
}

// A damp morning of 15 C and 85 %: warming that very air to 25 C lifts the drying of
// a waterborne coat several times.
func TestWarmingDampAirLiftsWaterborneDrying(t *testing.T) {
	cold := waterDrive(t, 15, 0.85)
	assert.Less(t, cold, 0.25)
	rh := air.Reheated(unit.Celsius(15), 0.85, unit.Celsius(25))
	assert.InDelta(t, 0.46, rh, 0.01)
	assert.Greater(t, waterDrive(t, 25, rh), 4*cold)
}

// The bulb freezes in cold, very dry air: an iced wick gives its vapour
// less readily, and the drive steps down by 5 %.
func TestDrierAirNeverDriesWaterSlower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Float64Range(1, 50).Draw(t, "c")
		rh := rapid.Float64Range(0, 0.99).Draw(t, "rh")
		drier := rapid.Float64Range(0, rh).Draw(t, "drier")
		wetter := waterDrive(t, c, rh)
		slack := 1e-6
		if air.WetBulb(unit.Celsius(c), drier, coat.ReferencePressure) < unit.Celsius(0) {
			slack = 0.06 * wetter
		}
		assert.GreaterOrEqual(t, waterDrive(t, c, drier), wetter-slack)
		assert.GreaterOrEqual(t, waterDrive(t, c, rh), 0.0)
	})
}
