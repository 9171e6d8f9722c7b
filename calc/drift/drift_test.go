package drift_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"boothset/calc/drift"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2, individuals control charts: ten
// batches, centre 50.81, mean moving range 1.8778, limits 55.8041 and 45.8159 (from memory, held
// against two other uses of the example). The handbook's d2 is 1.128.
func ExampleIndividualsOf() {
	c := drift.IndividualsOf([]float64{49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1})
	fmt.Printf("%.2f, %.2f to %.2f\n", c.Centre, c.Lower, c.Upper)
	// Output: 50.81, 45.82 to 55.80
}

// NIST/SEMATECH e-Handbook, 6.3.2.3, CUSUM control charts: twenty means against 325, allowance
// 0.3175, decision interval 4.1959; the upper sum passes it at the fourteenth (from memory, held
// against another use of the example).
func TestCUSUMOfTheHandbook(t *testing.T) {
	c := drift.CUSUM{Target: 325, Allowance: 0.3175, Decision: 4.1959}
	up := []float64{0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.00, 19.04}
	down := []float64{0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.25, 0.31, 0, 0, 0, 0, 0, 0, 0, 0, 0}
	for i, x := range []float64{
		324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600,
		324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350,
	} {
		assert.Equal(t, i >= 13, c.Add(x), i+1)
		assert.InDelta(t, up[i], c.Up, 0.011, i+1)
		assert.InDelta(t, down[i], c.Down, 0.011, i+1)
	}
	by, n := c.Shift()
	assert.Equal(t, 8, n, "since the thirteenth")
	assert.InDelta(t, 0.3175+19.04/8, by, 0.01)
}

// Average run lengths of a two-sided CUSUM with allowance 0.5, published (Lucas and Crosier
// 1982, from memory): 168 at decision interval 4, 465 at 5. Either side takes twice that.
func TestRunLengths(t *testing.T) {
	for decision, want := range map[float64]float64{4: 168, 5: 465} {
		assert.InEpsilon(t, want, drift.RunLength(0.5, decision)/2, 0.02)
	}
	rapid.Check(t, func(t *rapid.T) {
		allowance, length := rapid.Float64Range(0.25, 2).Draw(t, "allowance"), rapid.Float64Range(500, 1e5).Draw(t, "length")
		require.InEpsilon(t, length, drift.RunLength(allowance, drift.DecisionFor(allowance, length)), 1e-6)
	})
}

// Siegmund's approximation against runs that were drawn.
func TestRunLengthsDrawn(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1985))
	for _, allowance := range []float64{0.5, 1} {
		decision := drift.DecisionFor(allowance, 300)
		const runs = 2000
		total := 0
		for range runs {
			c := drift.CUSUM{Allowance: allowance, Decision: decision}
			for c.Up <= decision {
				c.Add(rng.NormFloat64())
				total++
			}
		}
		assert.InEpsilon(t, 300, float64(total)/runs, 0.1, allowance)
	}
}

// psi makes readings with one gun of losses over the model.
func psi(over ...float64) (all []drift.Reading) {
	for _, v := range over {
		all = append(all, drift.Reading{Gun: "a", Over: unit.Drop(v * unit.PascalPerPSI), Flow: 1})
	}
	return all
}

// A step of 2 psi is dated to the reading where it came, and told by how much it is.
func TestAStepIsDated(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	const years, at = 200, 120
	dated, shift := 0, 0.0
	for range years {
		over := make([]float64, readings)
		for i := range over {
			over[i] = 3 + 0.5*rng.NormFloat64()
			if i >= at {
				over[i] += 2
			}
		}
		for _, a := range drift.Watch(psi(over...)).Alarms {
			if a.At >= at {
				if a.Since >= at-2 && a.Since <= at+2 {
					dated++
				}
				shift += float64(a.Shift) / unit.PascalPerPSI / years
				break
			}
		}
	}
	assert.Greater(t, dated, years*9/10)
	assert.InDelta(t, 2, shift, 0.3)
}

// Where one gun of three alone has changed, one of the first three alarms blames that gun;
// where the line has, none of them blames any, as a rule.
func TestTheLineAndAGunAreToldApart(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 5))
	const years, at = 200, 150
	blamed := func(changed string) (none, that int) {
		for range years {
			year := booth{3, 0.5, 0}.year(rng, func(int) float64 { return 0 })
			for i := at; i < len(year); i++ {
				if changed == "" || year[i].Gun == changed {
					year[i].Over += 1.5 * unit.PascalPerPSI
				}
			}
			guns := map[string]bool{}
			alarms := 0
			for _, a := range drift.Watch(year).Alarms {
				if a.At >= at && alarms < 3 {
					alarms++
					guns[a.Gun] = true
				}
			}
			if guns[""] && len(guns) == 1 {
				none++
			}
			if guns[changed] {
				that++
			}
		}
		return none, that
	}
	line, _ := blamed("")
	assert.Greater(t, line, years*8/10)
	_, gun := blamed("b")
	assert.Greater(t, gun, years*8/10)
}

func TestTooFewReadingsTellNothing(t *testing.T) {
	for _, n := range []int{0, 1, 20} {
		w := drift.Watch(psi(make([]float64, n)...))
		assert.Empty(t, w.Alarms)
		assert.Len(t, w.Points, n)
		for _, p := range w.Points {
			assert.False(t, p.Watched)
		}
	}
	assert.Empty(t, drift.Watch(psi(make([]float64, 100)...)).Alarms, "a gauge that never moves is not read")
}

// Whatever the readings, nothing is undefined, and what is told lies among them.
func TestWatchingAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 120).Draw(t, "n")
		all := make([]drift.Reading, n)
		for i := range all {
			all[i] = drift.Reading{
				Gun: rapid.SampledFrom([]string{"a", "b"}).Draw(t, "gun"), Over: unit.Drop(rapid.Float64Range(-1e6, 1e6).Draw(t, "over")),
				Flow: rapid.Float64Range(0.2, 3).Draw(t, "flow"),
			}
		}
		w := drift.Watch(all)
		require.Len(t, w.Points, n)
		for _, p := range w.Points {
			for _, v := range []float64{float64(p.Value), float64(p.Lower), float64(p.Upper), p.Up, p.Down, p.Decision} {
				require.False(t, math.IsNaN(v) || math.IsInf(v, 0))
			}
		}
		for _, a := range w.Alarms {
			require.True(t, 0 <= a.Since && a.Since <= a.At && a.At < n)
		}
	})
}
