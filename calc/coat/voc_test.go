package coat_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// By hand: a tenth of thinner at 880 g/L to 420 g/L is (420 + 88)/1.1 = 461.8 g/L.
func TestThinnerRaisesTheVOC(t *testing.T) {
	v, err := coat.VOCWith(420, 880, 0.1)
	require.NoError(t, err)
	assert.InDelta(t, 461.82, float64(v), 0.01)
	same, err := coat.VOCWith(420, 880, 0)
	require.NoError(t, err)
	assert.Equal(t, unit.Density(420), same)
	_, err = coat.VOCWith(420, 1600, 0.1)
	assert.EqualError(t, err, "thinner-voc 1600 g/L: give 0 to 1500 g/L")
}

// Whatever is mixed, the VOC lies between the mix's and the thinner's, and nearer to the
// thinner's the more of it there is.
func TestVOCLiesBetween(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		voc := unit.Density(rapid.Float64Range(0, 800).Draw(t, "voc"))
		thinner := unit.Density(rapid.Float64Range(float64(voc), 1500).Draw(t, "thinner"))
		add := rapid.Float64Range(0, 1).Draw(t, "add")
		got, err := coat.VOCWith(voc, thinner, add)
		require.NoError(t, err)
		require.GreaterOrEqual(t, float64(got), float64(voc)-1e-9)
		require.LessOrEqual(t, float64(got), float64(thinner)+1e-9)
		more, err := coat.VOCWith(voc, thinner, 2*add)
		require.NoError(t, err)
		require.GreaterOrEqual(t, float64(more), float64(got)-1e-9)
	})
}

// 4:1:1 of 600 mL by hand: 400 mL at 0.98, 100 at 1.05 and 100 at 0.88 kg/L.
func TestWeightsOfTheParts(t *testing.T) {
	parts, err := coat.Ratio{Parts: []float64{4, 1, 1}}.Split(unit.Litres(0.6))
	require.NoError(t, err)
	got, err := coat.Weigh(parts, []unit.Density{980, 1050, 880})
	require.NoError(t, err)
	require.Len(t, got, 3)
	for i, grams := range []float64{392, 105, 88} {
		assert.InDelta(t, grams, 1000*float64(got[i]), 1e-9)
	}
	_, err = coat.Weigh(parts, []unit.Density{980})
	assert.EqualError(t, err, "densities 1 densities: give 3 to 3 densities")
	_, err = coat.Weigh(parts, []unit.Density{980, 1, 880})
	assert.ErrorContains(t, err, "density 1 kg/m3")
}
