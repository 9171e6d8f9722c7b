package learn

import (
	"math/rand/v2"
	"testing"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/spread"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The wall that the line asks for which plans are worked with since is in the middle of the range
// that is told, whatever of it cannot be told yet.
func TestThePlanSinceIsInTheMiddle(t *testing.T) {
	calctest.WithoutRace(t)
	for seed := range uint64(12) {
		random := rand.New(rand.NewPCG(seed, 31))
		of := shopLine(t, random)
		y := newTruth(of, random, 1, int(seed%3))
		l, err := New(of, few, seed)
		require.NoError(t, err)
		options := l.Options()
		for n, k := range []int{0, 1, 1 + int(seed)%4, 5, 6} {
			require.NoError(t, l.Add(y.shows(options[k].Reading, random)))
			since := l.left(l.Find(), nil).Of(of.Request)
			after, err := calc.Solve(since)
			require.NoError(t, err)
			s := spread.Of(since, after)
			if s == nil {
				continue // the supply is short of it
			}
			wall := after.Wall.Open + unit.Gauge(after.Reserve())
			assert.InDelta(t, s.Middle.PSI(), wall.PSI(), 0.02*(s.Wall.High-s.Wall.Low).PSI()+0.05, "%d after %d", seed, n+1)
		}
	}
}
