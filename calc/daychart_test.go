package calc_test

import (
	"math"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The chart's limits are where the day itself changes its verdict.
func TestTheLimitsOfTheChartAreThoseOfTheDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := aDay(t, rapid.Bool().Draw(t, "waterborne"), rapid.Float64Range(5, 45).Draw(t, "air"), .5)
		r.Panel = r.Air + unit.Temp(rapid.Float64Range(-6, 4).Draw(t, "panel"))
		at := unit.Celsius(rapid.Float64Range(8, 42).Draw(t, "at"))
		l := calc.NewChart(&r).Limits(at)
		require.True(t, 0 <= l.Watch && l.Watch <= l.Wait && l.Wait <= l.Stop && l.Stop <= min(l.Dew, .85))
		require.LessOrEqual(t, l.DryWait, l.DryWatch)

		other := r
		other.Air, other.Panel, other.Paint = at, r.Panel+at-r.Air, r.Paint+at-r.Air
		other.Humidity = rapid.Float64Range(.02, 1).Draw(t, "humidity")
		for _, limit := range []float64{l.Watch, l.Wait, l.Stop, l.DryWait, l.DryWatch} {
			if math.Abs(other.Humidity-limit) < 2*calc.HumidityStep {
				return
			}
		}
		a, err := calc.SolveDay(&other)
		require.NoError(t, err)
		require.Equal(t, a.Verdict, l.At(other.Humidity), "%+v at %v: %+v", l, other.Humidity, a.Against)
	})
}
