package calc_test

import (
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
		l := r.Limits(at)
		require.LessOrEqual(t, l.Wait, l.Stop+calc.HumidityStep)

		other := r
		other.Air, other.Panel, other.Paint = at, r.Panel+at-r.Air, r.Paint+at-r.Air
		other.Humidity = rapid.Float64Range(.02, 1).Draw(t, "humidity")
		near := func(limit float64) bool {
			return other.Humidity > limit-1.01*calc.HumidityStep && other.Humidity < limit+1.01*calc.HumidityStep
		}
		if near(l.Wait) || near(l.Stop) {
			return
		}
		want := calc.VerdictGo
		switch {
		case other.Humidity > l.Stop:
			want = calc.VerdictStop
		case other.Humidity > l.Wait:
			want = calc.VerdictWait
		}
		a, err := calc.SolveDay(&other)
		require.NoError(t, err)
		require.Equal(t, want, a.Verdict, "%v at %v", l, other.Humidity)
	})
}
