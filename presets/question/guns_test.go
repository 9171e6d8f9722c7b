package question_test

import (
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// A small gun and one fed from a pot, on any day and supply: held where such a gun is held,
// at no more air than its stamp, and on a line that can feed it the wall gives it its target.
func TestSmallAndPressureFedGunsOnAnyDay(t *testing.T) {
	r := questiontest.Open(t)
	for id, bounds := range map[string]struct{ near, far, flow float64 }{
		"touch-up": {3, 5, 4.5}, "pressure-feed": {4, 6, 18},
	} {
		rapid.Check(t, func(t *rapid.T) {
			d := questiontest.Drawer{T: t}
			texts := questiontest.With(d.Plan(r), "gun", id)
			texts["hose"], texts["coupling"], texts["regulator"] = []string{"25ft,3/8in"}, []string{"large-bore"}, []string{"1/2in"}
			q, s := solved(t, r, texts)
			if !q.Coat.Stage.Held.Known() && q.Coat.Stage.Times == 0 { // as the class is held
				assert.GreaterOrEqual(t, s.Distance.Target.Inches(), bounds.near-1e-9)
				assert.LessOrEqual(t, s.Distance.Target.Inches(), bounds.far+1e-9)
			}
			assert.LessOrEqual(t, s.Working.Flow.SCFM(), bounds.flow*1.1, "but for cold, dense air")
			assert.LessOrEqual(t, float64(s.Working.Pressure), float64(q.Gun.Stamp.Inlet)+1e-6)
			if q.Supply > unit.PSIG(150) && texts["filter"][0] == "none" {
				assert.False(t, s.Short.Is)
				assert.Less(t, s.Wall.Open.PSI(), 60.0, "no line is all loss")
			}
		})
	}
}

// Fed from a pot nothing is said of a cup; a cup that is typed counts.
func TestAMixFromAPot(t *testing.T) {
	r := questiontest.Open(t)
	q, a := mix(t, r, questiontest.Texts("coat", "clear", "gun", "pressure-feed", "area", "5m2"))
	assert.True(t, q.FromPot)
	assert.Equal(t, 1, a.Need.Fillings, "the pot holds it all")
	assert.InDelta(t, 0.5, a.Need.Loss.Litres(), 1e-9)
	for _, why := range a.Reasons {
		assert.NotEqual(t, "mix-cup", why.ID)
	}
	q, a = mix(t, r, questiontest.Texts("coat", "clear", "gun", "pressure-feed", "area", "5m2", "cup-size", "1L"))
	assert.False(t, q.FromPot)
	assert.Greater(t, a.Need.Fillings, 1)
	q, _ = mix(t, r, questiontest.Texts("coat", "clear", "gun", "touch-up", "area", "0.2m2"))
	assert.InDelta(t, 0.125, q.Cup.Value.Litres(), 1e-9)
}
