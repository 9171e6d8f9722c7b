package coat_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// A paint maker's page: 2 h at 20 C, 1 h at 30, half an hour at 40. The same factor is
// in a US federal guide specification.
func TestPotLifeHalvesEachTenDegrees(t *testing.T) {
	for c, want := range map[float64]time.Duration{10: 4 * time.Hour, 20: 2 * time.Hour, 30: time.Hour, 40: 30 * time.Minute} {
		p, err := coat.PotLifeAt(2*time.Hour, unit.Celsius(20), unit.Celsius(c))
		require.NoError(t, err)
		assert.Equal(t, want, p.Life, "%v C", c)
	}
}

// Arrhenius with 50 kJ/mol, worked apart: x0.51 at 30 C, x2.06 at 10 C.
func TestPotLifeAgainstArrhenius(t *testing.T) {
	for c, want := range map[float64]float64{30: 0.51, 10: 2.06} {
		arrhenius := math.Exp(50e3 / 8.314462618 * (1/(c+273.15) - 1/293.15))
		assert.InDelta(t, want, arrhenius, 0.006)
		p, err := coat.PotLifeAt(time.Hour, unit.Celsius(20), unit.Celsius(c))
		require.NoError(t, err)
		assert.InEpsilon(t, arrhenius, p.Life.Hours(), 0.04)
	}
}

// Two epoxy primer sheets: 48, 24 and 8 h at 7, 20 and 30 C; 2 and 1 days at 10 and
// 20 C. The safe life is never longer than theirs.
func TestSafePotLifeIsWithinPublishedSheets(t *testing.T) {
	for _, c := range []struct {
		at, sheet float64
	}{{7, 48}, {30, 8}, {10, 48}} {
		p, err := coat.PotLifeAt(24*time.Hour, unit.Celsius(20), unit.Celsius(c.at))
		require.NoError(t, err)
		assert.LessOrEqual(t, p.Safe.Hours(), c.sheet+1e-9, "%v C", c.at)
		assert.Greater(t, p.Safe.Hours(), 0.8*c.sheet-0.2, "%v C", c.at)
		assert.LessOrEqual(t, p.Safe, p.Life)
	}
}

func TestPotLifeOutsideItsRange(t *testing.T) {
	_, err := coat.PotLifeAt(time.Hour, unit.Celsius(20), unit.Celsius(45))
	assert.EqualError(t, err, "mix-temperature 45 C: give 5 to 40 C")
	_, err = coat.PotLifeAt(0, unit.Celsius(20), unit.Celsius(25))
	assert.ErrorContains(t, err, "pot-life 0 min")
}
