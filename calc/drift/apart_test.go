package drift_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"boothset/calc/drift"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Of a balanced table with one value a cell the components follow from the mean squares in
// closed form: booths (2, 4, 9), painters (1, 3), by hand. Row means 2, 4, 9 less the grand
// mean 5: sum of squares 2 x 26 = 52 on 2; column means 4, 6: 3 x 2 = 6 on 1; residual 4 on 2.
func TestApartByHand(t *testing.T) {
	table := map[string][2]float64{"one": {0, 4}, "two": {3, 5}, "three": {9, 9}}
	var values []drift.Value
	for booth, row := range table {
		for i, v := range row {
			values = append(values, drift.Value{Booth: booth, Painter: []string{"a", "b"}[i], V: v})
		}
	}
	s := drift.Apart(values)
	require.True(t, s.Told)
	assert.InDelta(t, 2, s.Within*s.Within, 1e-9, "4 on 2")
	assert.InDelta(t, (52./2-2)/2, s.Booths*s.Booths, 1e-9)
	assert.InDelta(t, (6./1-2)/3, s.Painters*s.Painters, 1e-9)
}

// On average the components are those that values were drawn with, however unevenly painters
// are spread over booths.
func TestApartOfDraws(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	const runs, booths, painters = 400, 12, 12
	var ofBooths, ofPainters, within float64
	for range runs {
		var b, p [12]float64
		for i := range b {
			b[i], p[i] = 0.5*rng.NormFloat64(), 1.5*rng.NormFloat64()
		}
		var values []drift.Value
		for range 200 {
			i := rng.IntN(booths)
			j := (i + rng.IntN(1+rng.IntN(painters))) % painters // mostly their own booth
			values = append(values, drift.Value{Booth: string(rune('a' + i)), Painter: string(rune('a' + j)), V: b[i] + p[j] + 0.7*rng.NormFloat64()})
		}
		s := drift.Apart(values)
		require.True(t, s.Told)
		ofBooths, ofPainters, within = ofBooths+s.Booths*s.Booths/runs, ofPainters+s.Painters*s.Painters/runs, within+s.Within*s.Within/runs
	}
	assert.InDelta(t, 0.25, ofBooths, 0.05)
	assert.InDelta(t, 2.25, ofPainters, 0.25)
	assert.InDelta(t, 0.49, within, 0.01)
}

// Painters who each have a booth of their own cannot be told from it.
func TestPaintersWithABoothOfTheirOwn(t *testing.T) {
	var values []drift.Value
	for i := range 60 {
		who := string(rune('a' + i%3))
		values = append(values, drift.Value{Booth: who, Painter: who, V: float64(i % 7)})
	}
	assert.Equal(t, drift.Spreads{}, drift.Apart(values))
	assert.Equal(t, drift.Spreads{}, drift.Apart(nil))
	rapid.Check(t, func(t *rapid.T) {
		var values []drift.Value
		for range rapid.IntRange(0, 40).Draw(t, "n") {
			values = append(values, drift.Value{
				Booth: rapid.SampledFrom([]string{"a", "b", "c"}).Draw(t, "booth"), Painter: rapid.SampledFrom([]string{"x", "y"}).Draw(t, "painter"),
				V: rapid.Float64Range(-1e3, 1e3).Draw(t, "v"),
			})
		}
		s := drift.Apart(values)
		for _, v := range []float64{s.Booths, s.Painters, s.Within} {
			require.False(t, math.IsNaN(v) || math.IsInf(v, 0) || v < 0)
		}
	})
}
