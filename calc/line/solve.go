package line

import (
	"math"

	"boothset/calc/unit"
)

// Root is the flow in [0, most] at which pressure(q) equals target, where pressure
// grows with q and its square grows nearly in step with q squared, as it does in a
// line of restrictions and hoses: false position in those squares. pressure(0) must
// not be above target; where pressure(most) is below it, most is returned.
func Root(pressure func(unit.Flow) unit.Abs, target unit.Abs, most unit.Flow) unit.Flow {
	goal := float64(target) * float64(target)
	z := FalsePosition(func(z float64) float64 {
		p := float64(pressure(unit.Flow(math.Sqrt(z))))
		return p*p/goal - 1
	}, 0, float64(most)*float64(most), 1e-14)
	return unit.Flow(math.Sqrt(z))
}

// FalsePosition is where f, rising from a to b, is 0: a bracketed secant that pulls in
// the end that stays put (Anderson and Bjorck's form). It stops where |f| is at most
// within or the bracket has closed, and gives a where f(a) is above 0 already, b where
// f(b) is still below it.
func FalsePosition(f func(float64) float64, a, b, within float64) float64 {
	fa, fb := f(a), f(b)
	if fa >= 0 {
		return a
	}
	if fb <= 0 {
		return b
	}
	side := 0 // which end the last step moved: +1 the upper, -1 the lower
	for range 100 {
		c := b - fb*(b-a)/(fb-fa)
		fc := f(c)
		if math.Abs(fc) <= within || b-a <= 1e-15*math.Abs(b) {
			return c
		}
		if fc > 0 {
			if side > 0 {
				fa *= weight(fc / fb)
			}
			b, fb, side = c, fc, 1
		} else {
			if side < 0 {
				fb *= weight(fc / fa)
			}
			a, fa, side = c, fc, -1
		}
	}
	return b
}

// weight is how far the end that stays put is pulled in when the other end has
// moved twice running and its residual shrank to ratio of what it was.
func weight(ratio float64) float64 {
	if ratio < 1 {
		return 1 - ratio
	}
	return 0.5
}
