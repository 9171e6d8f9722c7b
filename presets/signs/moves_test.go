package signs_test

import (
	"fmt"
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/trouble"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/signs"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// jobOf is a job drawn from what a shop could have, with its wall, its distance, its thinner and
// a timing of its mix.
func jobOf(t *rapid.T, r *question.Reader) *trouble.Job {
	d := questiontest.Drawer{T: t}
	texts := d.Plan(r)
	d.Bench(texts)
	texts["wall"] = []string{d.Number("wall-now", "%.0fpsi", 15, 90)}
	if texts["regulator"][0] == question.None {
		texts["regulator"] = []string{"1/2in"}
	}
	texts["distance"] = []string{d.Number("held", "%.1fin", 3, 14)}
	texts["grade"] = []string{rapid.SampledFrom([]string{"fast", "standard", "slow", "slowest"}).Draw(t, "grade")}
	texts["sign"] = []string{"orange-peel"}
	q, faults := r.Trouble(r.ReadAll(question.Trouble, texts, unit.US), unit.US)
	if len(faults) > 0 {
		t.Skip(fmt.Sprint(faults[0]))
	}
	a, err := signs.Book().Solve(&q)
	if err != nil {
		t.Skip(err.Error())
	}
	return a.Job
}

// steps is how much a fact counts in a job, 0 where it is none of its facts.
func steps(j *trouble.Job, id string) int {
	for _, f := range j.Facts() {
		if f.ID == id {
			return f.Steps
		}
	}
	return 0
}

// The advice leads where it says: with a cause's move made, the setup's own figure that spoke
// for that cause is back within its bounds.
func TestAMoveMendsWhatSpokeForItsCause(t *testing.T) {
	r, b := questiontest.Open(t), signs.Book()
	seen := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		j := jobOf(t, r)
		for _, x := range []struct{ cause, fact string }{
			{"air-high", "wall-high"}, {"air-low", "wall-low"}, {"valve-choked", "valve-tight"}, {"far", "held-far"}, {"near", "held-near"},
			{"thinner-fast", "grade-fast"}, {"thinner-slow", "grade-slow"}, {"damp-panel", "near-dew"}, {"damp-panel", "damp-air"}, {"cold", "too-cold"}, {"hot-panel", "too-hot"}, {"starved", "line-short"},
		} {
			if steps(j, x.fact) < 2 && slices.Contains([]string{"near-dew", "damp-air"}, x.fact) || steps(j, x.fact) == 0 {
				continue // nothing past a bound is to be mended
			}
			after, ok := j.After(b.Cause(x.cause))
			if !ok {
				continue
			}
			seen[x.fact]++
			now := steps(after, x.fact)
			if x.fact == "near-dew" || x.fact == "damp-air" {
				now-- // near its bound may be as far as it goes
			}
			if now > 0 {
				t.Fatalf("%s: %s still counts %d after its move", x.cause, x.fact, now)
			}
		}
	})
	for _, fact := range []string{"wall-high", "wall-low", "valve-tight", "held-far", "held-near", "grade-fast", "grade-slow", "near-dew", "too-cold", "line-short"} {
		require.Positive(t, seen[fact], "%s was never drawn", fact)
	}
}

// A step of pressure from the plan's own moves the gun by as much, or to the end of what the
// coat is run at, and the wall and the distance with it.
func TestAStepOfPressureIsWorkedOutAgain(t *testing.T) {
	r, b := questiontest.Open(t), signs.Book()
	rapid.Check(t, func(t *rapid.T) {
		j := jobOf(t, r)
		request := *j.Request
		request.HasNow = false
		s, err := calc.Solve(&request)
		require.NoError(t, err)
		j.Request, j.Setup = &request, s
		for cause, way := range map[string]float64{"air-high": -1, "air-low": 1} {
			after, ok := j.After(b.Cause(cause))
			if !ok {
				continue
			}
			moved := unit.Drop(after.Setup.Working.Wanted - s.Working.Wanted)
			w := &request.Coat.Working
			end := after.Setup.Working.Wanted == w.Low || after.Setup.Working.Wanted == w.High || after.Setup.Working.Wanted == s.Working.Highest
			require.True(t, end || max(moved-unit.Drop(way)*trouble.Step, unit.Drop(way)*trouble.Step-moved) < 1, "%s: %v", cause, moved)
			require.GreaterOrEqual(t, way*float64(moved), 0.0)
			require.GreaterOrEqual(t, way*float64(after.Setup.Wall.Open-s.Wall.Open), -1e-6, cause)
			require.GreaterOrEqual(t, way*float64(after.Setup.Distance.Target-s.Distance.Target), -1e-9, cause)
		}
	})
}

// A mix brought to what is advised is then within its sheet's seconds.
func TestAThinnedMixIsWithinItsSheet(t *testing.T) {
	r, b := questiontest.Open(t), signs.Book()
	mended := 0
	for seconds := 16; seconds < 60; seconds++ {
		texts := questiontest.Texts("sign", "coarse", "coat", "clear", "cup", "zahn2", "seconds", fmt.Sprint(seconds), "paint", "58F")
		q, faults := r.Trouble(r.ReadAll(question.Trouble, texts, unit.US), unit.US)
		require.Empty(t, faults)
		a, err := b.Solve(&q)
		require.NoError(t, err)
		if after, ok := a.Job.After(b.Cause("mix-thick")); ok {
			mended++
			require.Equal(t, 1, steps(after, "mix-in"), "%d s", seconds)
		}
	}
	require.Greater(t, mended, 5)
}

// What the facts say and what the sentences of them name is all there.
func TestTheFactsOfAJobAreSaid(t *testing.T) {
	r, b := questiontest.Open(t), signs.Book()
	w := r.Words()
	rapid.Check(t, func(t *rapid.T) {
		for _, f := range jobOf(t, r).Facts() {
			_, known := b.Raised[f.ID]
			require.True(t, known, f.ID)
			require.NotContains(t, w.Text(unit.US, "fact-"+f.ID, f.Figures), "{")
			require.Empty(t, questiontest.Unsound(f.Figures, f.ID))
		}
	})
}

// What a move changes, the job as it is sprayed bears out: nearer lands wetter and farther drier,
// less pressure makes coarser drops that land no drier, and more pressure finer ones.
func TestAMoveChangesWhatIsSprayed(t *testing.T) {
	r, b := questiontest.Open(t), signs.Book()
	seen := map[string]int{}
	sprayed := func(j *trouble.Job, wall unit.Gauge, held unit.Length) (calc.Sprayed, bool) {
		x := j.Request.Spray(j.Setup, calc.Set{Wall: wall, Opening: j.Setup.Valve.Opening, Distance: held})
		return x, x.Known && x.Lost > 1e-6
	}
	rapid.Check(t, func(t *rapid.T) {
		j := jobOf(t, r)
		s := j.Setup
		if s.Stopped() || s.Short.Is || j.Request.RegulatorAt() == calc.Nowhere || s.Foot.Is {
			t.Skip("nothing is set at the wall")
		}
		for cause, way := range map[string]float64{"far": -1, "near": 1} {
			after, ok := j.After(b.Cause(cause))
			if !ok || way*float64(after.Held-j.Held) <= 0 {
				continue
			}
			was, ok1 := sprayed(j, s.Wall.Flowing, j.Held)
			is, ok2 := sprayed(after, s.Wall.Flowing, after.Held)
			if ok1 && ok2 {
				seen[cause]++
				require.GreaterOrEqual(t, way*(is.Lost-was.Lost), 0.0, cause)
			}
		}
		target := s.Distance.Target
		for cause, way := range map[string]float64{"air-high": 1, "air-low": -1} {
			after, ok := j.After(b.Cause(cause))
			now := s.Wall.Flowing
			if s.Now.Given && way*float64(s.Now.Wall-s.Wall.Flowing) > 0 {
				now = s.Now.Wall
			}
			if !ok {
				continue
			}
			was, ok1 := sprayed(j, now, target)
			is, ok2 := sprayed(after, after.Setup.Wall.Flowing, target)
			if ok1 && ok2 && way*float64(was.Gun-is.Gun) > 1000 { // a seventh of a psi
				seen[cause]++
				require.Greater(t, way*float64(is.Drops-was.Drops), 0.0, "%s: the drops", cause)
			}
		}
	})
	for _, cause := range []string{"far", "near", "air-high", "air-low"} {
		require.Positive(t, seen[cause], cause)
	}
}
