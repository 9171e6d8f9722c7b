package learn

import (
	"testing"

	"boothset/calc/calctest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Before a reading with the trigger pulled the settings are those of the line as it is described:
// about the plan's, and narrower by gauges that were compared. Whether a part is odd counts from the
// first reading that tells of one.
func TestUntilTheTriggerIsPulledTheLineIsAsDescribed(t *testing.T) {
	r := calctest.MildClear(t)
	solved := func(readings ...Reading) *Answer {
		q := Request{Plan: &r, Draws: 8000, Seed: 1}
		for _, x := range readings {
			q.Readings = append(q.Readings, Taken{Reading: x})
		}
		a, err := Solve(&q)
		require.NoError(t, err)
		return a
	}
	still := Reading{Still: true, Shows: wallAndGun(30, 28.5)}
	before, compared := solved(), solved(still)
	const near = 0.4 // psi, of a few thousand draws
	for _, a := range []*Answer{before, compared} {
		assert.True(t, a.AsDescribed)
		assert.Less(t, a.Nothing, Sure, "it is not told as found")
	}
	assert.InDelta(t, before.Taken.Wall.Low.PSI(), before.Sure.Wall.Low.PSI(), near)
	assert.InDelta(t, before.Taken.Wall.High.PSI(), before.Sure.Wall.High.PSI(), near)
	wide := func(a *Answer) float64 { return (a.Sure.Wall.High - a.Sure.Wall.Low).PSI() }
	assert.Less(t, wide(compared), 0.9*wide(before))

	// By Kalman's step the wall's gauge is 4/(4 + 0.5625 + 0.18) of 1.5 psi high, and the gun's
	// 0.5625 of it low: what gives just the target rises by the one and the other. What is set rises
	// from one mark to another.
	kalman := 1.5 * (4 + 0.5625) / (4 + 0.5625 + 0.18)
	assert.InDelta(t, before.After.Wall.Open.PSI()+kalman, compared.After.Wall.Open.PSI(), near)

	pulled := solved(still, Reading{Opening: 1, Shows: wallAndGun(32, 22)})
	assert.False(t, pulled.AsDescribed)
}
