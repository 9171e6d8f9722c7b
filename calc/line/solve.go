package line

import (
	"math"

	"boothset/calc/unit"
)

// Root is the flow in [0, most] at which pressure(q) equals target, where pressure
// grows with q and its square grows nearly in step with q squared, as it does in a
// line of restrictions and hoses: a bracketed secant in those squares (the
// Anderson-Bjorck form of false position). pressure(0) must not be above target;
// where pressure(most) is below it, most is returned.
func Root(pressure func(unit.Flow) unit.Abs, target unit.Abs, most unit.Flow) unit.Flow {
	goal := float64(target) * float64(target)
	f := func(z float64) float64 {
		p := float64(pressure(unit.Flow(math.Sqrt(z))))
		return p*p - goal
	}
	a, b := 0.0, float64(most)*float64(most)
	fa, fb := f(a), f(b)
	if fa >= 0 {
		return 0
	}
	if fb <= 0 {
		return most
	}
	side := 0 // which end the last step moved: +1 the upper, -1 the lower
	for range 100 {
		c := b - fb*(b-a)/(fb-fa)
		fc := f(c)
		if math.Abs(fc) <= 4e-15*goal || b-a <= 1e-15*b {
			return unit.Flow(math.Sqrt(c))
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
	return unit.Flow(math.Sqrt(b))
}

// weight is how far the end that stays put is pulled in when the other end has
// moved twice running and its residual shrank to ratio of what it was.
func weight(ratio float64) float64 {
	if ratio < 1 {
		return 1 - ratio
	}
	return 0.5
}
