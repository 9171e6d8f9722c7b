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

// By hand: ln(66/57)/ln(57/0.83) = 3.46631 % of thinner; and of 2 %, 66 (0.83/66)^(0.02/1.02)
// = 60.5731 mm2/s.
func TestThinnerByHand(t *testing.T) {
	add, err := coat.ThinnerFor(unit.MM2PerS(66), unit.MM2PerS(57), coat.SolventViscosity)
	require.NoError(t, err)
	assert.InDelta(t, 0.0346631, add, 1e-7)
	nu, err := coat.Thinned(unit.MM2PerS(66), coat.SolventViscosity, 0.02)
	require.NoError(t, err)
	assert.InEpsilon(t, 60.5731, nu.MM2PerS(), 1e-6)
}

// By hand: ln(66/57)/0.05 = 2.93 C warmer.
func TestWarmthByHand(t *testing.T) {
	k := coat.EstimatedSlope().Typical
	assert.InDelta(t, 20.93, k.Reaches(unit.MM2PerS(66), unit.Celsius(18), unit.MM2PerS(57)).C(), 0.005)
}

func TestThinningThatCannotBeWorked(t *testing.T) {
	_, err := coat.ThinnerFor(unit.MM2PerS(90), unit.MM2PerS(1), coat.SolventViscosity)
	assert.EqualError(t, err, "wanted-viscosity 1 mm2/s: give 1.245 to 1e+05 mm2/s")
	_, err = coat.Thinned(unit.MM2PerS(90), coat.SolventViscosity, -0.1)
	assert.EqualError(t, err, "thinner -10 %: give 0 to 200 %")
	_, err = coat.Thinned(unit.MM2PerS(math.NaN()), coat.SolventViscosity, 0)
	assert.ErrorContains(t, err, "viscosity NaN")
}

// Thinner and warmth each lead where they were worked to lead, and more of either makes it
// thinner.
func TestThinnerAndWarmthLeadWhereTheySay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		nu := unit.MM2PerS(rapid.Float64Range(5, 500).Draw(t, "nu"))
		target := nu * unit.Kinematic(rapid.Float64Range(0.5, 0.99).Draw(t, "target"))
		thinner := unit.MM2PerS(rapid.Float64Range(0.3, 1.1).Draw(t, "thinner"))
		add, err := coat.ThinnerFor(nu, target, thinner)
		require.NoError(t, err)
		require.Greater(t, add, 0.0)
		if add <= 1 {
			got, err := coat.Thinned(nu, thinner, add)
			require.NoError(t, err)
			require.InEpsilon(t, float64(target), float64(got), 1e-9)
			less, err := coat.Thinned(nu, thinner, 2*add)
			require.NoError(t, err)
			require.Less(t, less, got)
		}
		k := coat.Slope(rapid.Float64Range(0.03, 0.08).Draw(t, "slope"))
		at := unit.Celsius(rapid.Float64Range(5, 30).Draw(t, "at"))
		got, err := coat.AtTemperature(nu, at, k.Reaches(nu, at, target), k)
		require.NoError(t, err)
		require.InEpsilon(t, float64(target), float64(got), 1e-9)
	})
}
