package draw_test

import (
	"math"
	"testing"

	"boothset/tui/draw"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestScaleHasWholeSteps(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		most      int
		want      []float64
	}{
		{0, 60, 7, []float64{0, 10, 20, 30, 40, 50, 60}},
		{0, 60, 6, []float64{0, 20, 40, 60}},
		{60, 0, 4, []float64{0, 20, 40, 60}},
		{27.4, 34.1, 5, []float64{25, 30, 35}},
		{5.1, 5.9, 5, []float64{5, 5.5, 6}},
		{-1, 1, 2, []float64{-1, 0, 1}},
	} {
		s := draw.NewScale(c.low, c.high, c.most, whole)
		require.Len(t, s.Ticks, len(c.want), "%v", c)
		for i, tick := range s.Ticks {
			require.InDelta(t, c.want[i], tick.At, 1e-9)
			require.Equal(t, whole(tick.At), tick.Text)
		}
		require.InDelta(t, c.want[0], s.Low, 1e-9)
		require.InDelta(t, c.want[len(c.want)-1], s.High, 1e-9)
	}
}

func TestScaleHoldsWhatItIsMadeFor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low, high := two(t, -1e4, 1e4)
		if high-low < 1e-3 {
			t.Skip("no scale")
		}
		most := rapid.IntRange(-1, 40).Draw(t, "most")
		s := draw.NewScale(low, high, most, whole)
		slack := (high - low) * 1e-6
		require.LessOrEqual(t, s.Low, low+slack)
		require.GreaterOrEqual(t, s.High, high-slack)
		require.LessOrEqual(t, len(s.Ticks), max(most, 3))
		require.GreaterOrEqual(t, len(s.Ticks), 2)
		require.Equal(t, s.Low, s.Ticks[0].At)
	})
}

func TestScaleWithoutExtentHasNoTicks(t *testing.T) {
	for _, c := range [][2]float64{{5, 5}, {math.NaN(), 1}, {0, math.Inf(1)}, {-math.MaxFloat64, math.MaxFloat64}, {0, math.SmallestNonzeroFloat64}, {0, math.MaxFloat64}} {
		require.Empty(t, draw.NewScale(c[0], c[1], 5, whole).Ticks, "%v", c)
	}
	require.Len(t, draw.NewScale(0, 10, 3, nil).Ticks, 3, "ticks without texts")
}
