package answer

import (
	"testing"

	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// A volume to pour is never less than the need, and no more than a step above it.
func TestPouredIsRoundedUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := unit.Litres(rapid.Float64Range(0.01, 1000).Draw(t, "L"))
		for _, sys := range []unit.System{unit.US, unit.Metric} {
			p := poured(sys, v)
			assert.GreaterOrEqual(t, float64(p), float64(v)*(1-1e-6))
			assert.Less(t, (p - v).Litres(), max(0.0301, 0.1*v.Litres()))
		}
	})
}
