package calc

import (
	"math"
	"testing"

	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// anyMild is anyRequest on a mild day with supply enough: most of the others are stopped.
func anyMild(t *rapid.T) Request {
	r, mild := anyRequest(t), mildClear(t)
	mild.Day.Altitude = r.Day.Altitude
	r.Day, r.Coat, r.Supply = mild.Day, mild.Coat, max(r.Supply, unit.PSIG(250))
	return r
}

// What makes two walls differ adds up to their difference, whatever the two lines, guns and
// days are, with what makes most of it first; an answer does not differ from itself.
func TestWhatMakesWallsDifferAddsUp(t *testing.T) {
	met := 0
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyMild(t), anyMild(t)
		here, err := Solve(&a)
		require.NoError(t, err)
		there, err := Solve(&b)
		require.NoError(t, err)
		if here.Stopped() || there.Stopped() || here.Short.Is || there.Short.Is {
			return
		}
		met++
		var sum unit.Drop
		all := here.Apart(there)
		for i, x := range all {
			sum += x.By
			if i > 0 {
				require.LessOrEqual(t, math.Abs(float64(x.By)), math.Abs(float64(all[i-1].By)))
			}
		}
		require.InDelta(t, float64(here.Wall.Flowing-there.Wall.Flowing), float64(sum), float64(len(all)+10)*leastApart)
		require.Empty(t, here.Apart(here))
	})
	require.Positive(t, met)
}

// Of two lines alike but for their hose, it is the hose that makes the walls differ, by what
// the two lose; the rest is the reserve that the marks of the gauge leave.
func TestALongerHoseIsWhatMakesTheWallsDiffer(t *testing.T) {
	short, long := mildClear(t), mildClear(t)
	at := -1
	for i := range long.Line {
		if long.Line[i].Kind == line.HoseKind {
			at = i
			long.Line[i].Hose.Length *= 3
		}
	}
	require.GreaterOrEqual(t, at, 0)
	here, err := Solve(&long)
	require.NoError(t, err)
	there, err := Solve(&short)
	require.NoError(t, err)
	first := here.Apart(there)[0]
	assert.Equal(t, line.HoseKind.String(), first.Of)
	assert.InDelta(t, float64(here.Line[at].Loss-there.Line[at].Loss), float64(first.By), 1)
}

// The swap that is found, made by hand and solved, gives the wall it says, and no other swap
// comes nearer.
func TestTheNearestSwapComesNearest(t *testing.T) {
	met := 0
	rapid.Check(t, func(t *rapid.T) {
		r := anyMild(t)
		for i := range r.Line {
			if h := &r.Line[i].Hose; r.Line[i].Kind == line.HoseKind {
				h.Length = max(h.Length, 2*ShortestHose) // half of it is tried
			}
		}
		r.Swaps = everySwap(r.Line)
		s, err := Solve(&r)
		require.NoError(t, err)
		if s.Stopped() || s.Short.Is {
			return
		}
		to := s.Wall.Flowing - unit.PSIG(rapid.Float64Range(-3, 20).Draw(t, "lower"))
		away := func(wall unit.Gauge) float64 { return math.Abs(float64(wall - to)) }
		best, found := r.Nearest(s, to)
		if found {
			met++
			require.Less(t, away(best.Wall), away(s.Wall.Flowing))
		} else {
			best.Wall = s.Wall.Flowing
		}
		for i := range r.Swaps {
			by := swapped(r, r.Swaps[i])
			by.Swaps = nil
			is, err := Solve(&by)
			require.NoError(t, err)
			if is.Stopped() || is.Short.Is {
				continue
			}
			if found && r.Swaps[i] == best.Swap {
				require.InDelta(t, float64(is.Wall.Flowing), float64(best.Wall), 1e-6)
			}
			require.GreaterOrEqual(t, away(is.Wall.Flowing)+float64(leastFix)+1e-6, away(best.Wall))
		}
	})
	require.Positive(t, met)
}
