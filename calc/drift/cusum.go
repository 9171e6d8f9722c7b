package drift

import "math"

// CUSUM is the two tabular cumulative sums of ISO 7870-4: of what values are above a target by
// more than an allowance, and of what they are below it.
type CUSUM struct {
	Target, Allowance, Decision float64
	// Up and Down are the sums, and Above and Below how many values each has been above 0 for.
	Up, Down     float64
	Above, Below int
}

// Add takes a value, and reports whether a sum passes the decision interval.
func (c *CUSUM) Add(v float64) bool {
	c.Up, c.Above = next(c.Up, v-c.Target-c.Allowance, c.Above)
	c.Down, c.Below = next(c.Down, c.Target-v-c.Allowance, c.Below)
	return c.Up > c.Decision || c.Down > c.Decision
}

func next(sum, more float64, n int) (float64, int) {
	if sum += more; sum <= 0 {
		return 0, 0
	}
	return sum, n + 1
}

// Shift is by how much the values have left the target since the sum that is larger left 0, and
// for how many values that is: the usual estimates of the tabular CUSUM. 0 where neither has.
func (c *CUSUM) Shift() (by float64, since int) {
	switch {
	case c.Above+c.Below == 0:
		return 0, 0
	case c.Up >= c.Down:
		return c.Allowance + c.Up/float64(c.Above), c.Above
	}
	return -c.Allowance - c.Down/float64(c.Below), c.Below
}

// overshoot is what a sum passes a boundary by, in standard deviations, on average: Siegmund's
// correction, 1.166.
const overshoot = 1.166

// RunLength is how many values, on average, a one-sided CUSUM of normal values on target takes
// to pass its decision interval for nothing, allowance and decision interval in standard
// deviations: Siegmund's approximation (Sequential Analysis, 1985), within a few percent for
// an allowance of 0.25 to 1.5.
func RunLength(allowance, decision float64) float64 {
	x := 2 * allowance * (decision + overshoot)
	return (math.Exp(x) - x - 1) / (2 * allowance * allowance)
}

// DecisionFor is the decision interval, in standard deviations, at which a one-sided CUSUM runs
// so long for nothing: RunLength turned round.
func DecisionFor(allowance, runLength float64) float64 {
	x := 1.0
	for range 30 { // each step leaves less than a third of the error where an alarm is rare
		x = math.Log(1 + x + 2*allowance*allowance*runLength)
	}
	return x/(2*allowance) - overshoot
}
