package practice

import (
	"slices"
	"testing"
	"time"

	"boothset/calc/line"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A badly set booth shows something, and the fewest readings tell its cause from every other: no
// fewer do, and none as many that take less time.
func TestTheFewestReadings(t *testing.T) {
	kinds := map[FaultKind]int{}
	for _, f := range finds() {
		kinds[f.Cause.Kind]++
		require.NotEmpty(t, f.Signs)
		require.NotEmpty(t, f.Fewest)
		assert.Equal(t, []Cause{f.Cause}, f.Left(f.Fewest))
		assert.Equal(t, []Cause{f.Cause}, f.Left(f.Readings))
		assert.Greater(t, len(f.Left(nil)), 1)
		least := f.takes(f.set(f.Fewest))
		for i := range f.Fewest { // one fewer never does
			fewer := slices.Delete(slices.Clone(f.Fewest), i, i+1)
			assert.Greater(t, len(f.Left(fewer)), 1, "%v does without %v", f.Fewest, f.Fewest[i])
		}
		for set := range choices(len(f.Readings), len(f.Fewest)) {
			if f.takes(set) < least {
				assert.Greater(t, len(f.Left(f.chosen(set))), 1)
			}
		}
	}
	for _, k := range []FaultKind{Clogged, WallGaugeUp, WallGaugeLow, GunGaugeUp, GunGaugeLow, ValveShut, WallLow, HeldFar, HeldNear} {
		assert.Positive(t, kinds[k], k)
	}
}

// The order of one who does not know the cause comes to it, in a few readings, and takes no
// fewer than the fewest.
func TestTheOrderOfWhoDoesNotKnow(t *testing.T) {
	sum := 0
	all := finds()
	for _, f := range all {
		n := f.Name(f.Cause, f.Fewest)
		assert.True(t, n.Right)
		assert.Empty(t, n.Left)
		assert.Equal(t, n.Took, n.LeastTook)
		assert.Equal(t, []Cause{f.Cause}, f.Left(n.Order))
		assert.GreaterOrEqual(t, len(n.Order), len(f.Fewest))
		sum += len(n.Order)
		slices.SortFunc(n.Order, func(a, b Reading) int { return slices.Index(f.Readings, a) - slices.Index(f.Readings, b) })
		assert.Len(t, slices.Compact(n.Order), len(n.Order), "no reading twice")
	}
	assert.Less(t, sum, 5*len(all))
}

// A reading more never leaves more causes, and the one that it is stands to the end.
func TestReadingsRuleOut(t *testing.T) {
	for _, f := range finds()[:20] {
		before := len(f.Left(nil))
		for i := range f.Readings {
			left := f.Left(f.Readings[:i+1])
			assert.LessOrEqual(t, len(left), before)
			assert.Contains(t, left, f.Cause)
			before = len(left)
		}
		wrong := f.Causes[(slices.Index(f.Causes, f.Cause)+1)%len(f.Causes)]
		n := f.Name(wrong, nil)
		assert.False(t, n.Right)
		assert.Zero(t, n.Took)
		assert.NotEmpty(t, n.Left)
	}
}

// What readings show of a fault that was put in by hand: the gauge is off by what it is off by,
// a sound part in the clogged one's place brings the gun back to what it should get.
func TestWhatReadingsShow(t *testing.T) {
	shown := func(f *Find, k ReadingKind, part int) (shows, sound float64) {
		r := Reading{k, part}
		require.Contains(t, f.Readings, r)
		return f.Shown(r)
	}
	tried := map[FaultKind]bool{}
	for _, f := range finds() {
		if tried[f.Cause.Kind] = true; f.Setup.Foot.Is {
			continue
		}
		advised := f.Request.Spray(f.Setup, f.Setup.Set())
		wall, soundWall := shown(f, LookWall, 0)
		trueWall, _ := shown(f, LookTestWall, 0)
		gun, soundGun := shown(f, LookGun, 0)
		assert.InDelta(t, float64(advised.Wall), soundWall, 1)
		assert.InDelta(t, float64(advised.Reads), soundGun, 1)
		switch f.Cause.Kind {
		case Clogged:
			of, _ := shown(f, LookSound, f.Cause.Part)
			assert.InDelta(t, soundGun, of, 1, "a sound part in its place")
			assert.Less(t, gun, soundGun)
			assert.InDelta(t, soundWall, wall, 1)
		case WallGaugeUp:
			assert.InDelta(t, soundWall, wall, 1)
			assert.InDelta(t, f.truth.size, wall-trueWall, 1)
			still, _ := shown(f, LookStill, 0)
			assert.InDelta(t, f.truth.size, still, 1)
		case GunGaugeUp:
			assert.InDelta(t, soundGun, gun, 1, "it is set by that gauge")
			still, _ := shown(f, LookStill, 0)
			assert.InDelta(t, -f.truth.size, still, 1)
		case ValveShut:
			assert.InDelta(t, soundGun, gun, 1)
			assert.InDelta(t, soundWall*f.truth.size, wall, 1)
		case HeldFar:
			far, right := shown(f, LookDistance, 0)
			assert.InDelta(t, f.truth.size, far-right, 1e-9)
		}
	}
	assert.True(t, tried[Clogged] && tried[WallGaugeUp] && tried[GunGaugeUp] && tried[ValveShut] && tried[HeldFar])
}

// Every reading takes time, and every part that can be clogged can be swapped.
func TestReadingsTakeTime(t *testing.T) {
	for _, k := range cloggable {
		assert.NotZero(t, swapping[k], k)
	}
	for _, f := range finds()[:10] {
		for _, r := range f.Readings {
			assert.GreaterOrEqual(t, f.Takes(r), 15*time.Second, r)
		}
	}
	assert.NotContains(t, cloggable, line.RegulatorKind)
}
