package air_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boothset/calc/air"
	"boothset/calc/unit"
)

// readVectors reads a file of numbers under a line of names.
func readVectors(t *testing.T, path string) [][]float64 {
	f, err := os.Open(path)
	require.NoError(t, err)
	defer func() { require.NoError(t, f.Close()) }()
	lines, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	var rows [][]float64
	for _, line := range lines[1:] {
		row := make([]float64, len(line))
		for i, s := range line {
			row[i], err = strconv.ParseFloat(s, 64)
			require.NoError(t, err)
		}
		rows = append(rows, row)
	}
	return rows
}

// wickBalance is the humidity ratio at which a bulb at wetBulb stands still in air
// at dry, both in C: ASHRAE equation 33 over water or 35 over ice.
func wickBalance(ice bool, wetBulb, dry float64, p unit.Abs) float64 {
	saturated := air.SaturationRatio(unit.Celsius(wetBulb), p)
	if ice {
		return ((2830-0.24*wetBulb)*saturated - 1.006*(dry-wetBulb)) / (2830 + 1.86*dry - 2.1*wetBulb)
	}
	return ((2501-2.326*wetBulb)*saturated - 1.006*(dry-wetBulb)) / (2501 + 1.86*dry - 4.186*wetBulb)
}

func TestMoistAirAgainstPsychrolib(t *testing.T) {
	rows := readVectors(t, "testdata/psychrolib.csv")
	require.GreaterOrEqual(t, len(rows), 500)
	var worst struct{ pws, ratio, dewPoint, wetBulb, density, ambient float64 }
	twoBulbs := 0
	for _, r := range rows {
		c, rh, p := r[0], r[1], unit.Abs(r[3])
		dry := unit.Celsius(c)
		relative := func(worst *float64, want, got float64) { *worst = max(*worst, math.Abs(got/want-1)) }
		relative(&worst.ambient, r[3], float64(air.AtAltitude(unit.Length(r[2]))))
		relative(&worst.pws, r[4], float64(air.SaturationPressure(dry)))
		worst.dewPoint = max(worst.dewPoint, math.Abs(air.DewPoint(dry, rh).C()-r[5]))
		ratio := air.HumidityRatio(dry, rh, p)
		relative(&worst.ratio, r[6], ratio)
		relative(&worst.density, r[8], air.MoistDensity(dry, rh, p))

		wetBulb := air.WetBulb(dry, rh, p).C()
		assert.InDelta(t, ratio, wickBalance(wetBulb < 0, wetBulb, c, p), 1e-12, "the equation holds at %v C, %v, %v Pa", c, rh, p)
		if c > 0 && wickBalance(false, 0, c, p) <= ratio && ratio <= wickBalance(true, 0, c, p) {
			// Here a wet bulb above 0 C and an iced one below both solve the equations,
			// and the library's bisection ends on either; this package's on the wet one.
			twoBulbs++
			assert.GreaterOrEqual(t, wetBulb, 0.0)
			if r[7] < 0 {
				continue
			}
		}
		worst.wetBulb = max(worst.wetBulb, math.Abs(wetBulb-r[7]))
	}
	t.Logf("worst of %d points: %+v; %d with two wet bulbs", len(rows), worst, twoBulbs)
	assert.Less(t, worst.pws, 1e-6, "saturation pressure, relative")
	assert.Less(t, worst.ratio, 1e-6, "humidity ratio, relative")
	assert.Less(t, worst.dewPoint, 1e-6, "dew point, C; the library's last Newton step is under 1e-3 C")
	assert.Less(t, worst.wetBulb, 0.01, "wet bulb, C")
	assert.Less(t, worst.density, 4e-5, "density, relative; gas constant 287.042 against 287.05")
	assert.Less(t, worst.ambient, 5e-6, "pressure at altitude, relative; the library's exponent is rounded to 5.2559")
	assert.Less(t, twoBulbs, len(rows)/20, "so the points let off above stay few")
}
