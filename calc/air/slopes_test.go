package air

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boothset/calc/unit"
)

// The slopes that Newton's method goes by are those of the handbook's formulas themselves,
// by central differences: a wrong one still comes to the root, but slowly.
func TestSlopesAreTheFormulas(t *testing.T) {
	const h = 1e-3
	for _, c := range []float64{-90, -40, -1, 1, 25, 60, 150} {
		k := c + unit.ZeroCelsius
		for name, formula := range map[string]func(float64) (float64, float64){"water": overWater, "ice": overIce} {
			up, _ := formula(k + h)
			down, _ := formula(k - h)
			_, slope := formula(k)
			assert.InEpsilon(t, (up-down)/(2*h), slope, 1e-7, "%s at %v C", name, c)
		}
	}
	for _, b := range []bulb{wetWick, icyWick} {
		for _, c := range []float64{-20, -3, 4, 20, 35} {
			at, dry, p := unit.Celsius(c), unit.Celsius(c+7), unit.Abs(9e4)
			up, _ := b.excess(at+h, dry, 0.004, p)
			down, _ := b.excess(at-h, dry, 0.004, p)
			_, slope := b.excess(at, dry, 0.004, p)
			assert.InEpsilon(t, (up-down)/(2*h), slope, 1e-5, "%v at %v C", b, c)
		}
	}
}
