package shop_test

import (
	"math/rand/v2"
	"testing"
	"time"

	"boothset/calc/unit"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// years is the jobs of two years on a booth of Quarry Lane Refinish, which is invented: the line
// loses more by what more gives, psi.
func years(more func(n int) float64) []*shop.Record {
	rng := rand.New(rand.NewPCG(9, 9))
	jobs := make([]*shop.Record, 400)
	for n := range jobs {
		r := job(0)
		r.At = aDay.AddDate(0, 0, -2*365+n*365*2/400)
		r.Gun = []string{"four", "five"}[n%2]
		r.Set = shop.Values{}
		r.Read = shop.Values{Wall: unit.PSIG(31.5), Gun: unit.PSIG(25 - more(n) + 0.4*rng.NormFloat64())}
		r.Asked = map[string][]string{"line": {"hose=35ft,3/8in"}}
		jobs[n] = &r
	}
	return jobs
}

func TestTheDriftOfABooth(t *testing.T) {
	r := questiontest.Open(t)
	b := boothIn(t, folder(t, "booths/two.toml", boothTwo), r, "two")
	step := func(n int) float64 {
		if n < 250 {
			return 0
		}
		return 1.5
	}
	for name, c := range map[string]struct {
		jobs  []*shop.Record
		cause shop.Cause
	}{
		"a filter that clogs":   {years(func(n int) float64 { return min(max(float64(n-250)/60, 0), 2.5) }), shop.CauseFilter},
		"a coupling":            {years(step), shop.CausePart},
		"a filter changed":      {years(func(n int) float64 { return -step(n) }), shop.CauseFreer},
		"one gun":               {years(func(n int) float64 { return step(n) * float64(n%2) * 1.5 }), shop.CauseGun},
		"another hose, entered": {years(step), shop.CauseLine},
	} {
		if c.cause == shop.CauseLine {
			for _, r := range c.jobs[250:] {
				r.Asked["line"] = []string{"hose=50ft,3/8in"}
			}
		}
		d := shop.DriftOf(b, c.jobs)
		require.NotEmpty(t, d.Changes, name)
		first := d.Changes[0]
		assert.InDelta(t, 250, first.Since, 45, name)
		assert.Equal(t, c.cause, first.Cause, "%s: %+v", name, first)
	}
	assert.Empty(t, shop.DriftOf(b, years(func(int) float64 { return 0 })).Changes)
	assert.Empty(t, shop.DriftOf(nil, nil).Changes)
}

// A job that was set otherwise than it was answered is not held to the answer.
func TestWhatIsHeldToTheModel(t *testing.T) {
	whole := *years(func(int) float64 { return 0 })[0]
	assert.True(t, whole.Held())
	for name, change := range map[string]func(r *shop.Record){
		"no gauge at the gun": func(r *shop.Record) { r.Read.Gun = 0 },
		"another wall":        func(r *shop.Record) { r.Set.Wall = unit.PSIG(38) },
		"read otherwise":      func(r *shop.Record) { r.Read.Wall = unit.PSIG(38) },
		"another opening":     func(r *shop.Record) { r.Answered.Opening, r.Set.Opening = 0.8, 0.6 },
		"no answer":           func(r *shop.Record) { r.Answered = shop.Values{} },
	} {
		r := whole
		change(&r)
		assert.False(t, r.Held(), name)
	}
	late := whole
	late.At = late.At.Add(time.Hour)
	assert.InDelta(t, 1.5, float64(late.Over())/unit.PascalPerPSI, 1.5)
}

func BenchmarkDriftOfABooth(b *testing.B) {
	f, r := largeShop(b), questiontest.Open(b)
	for b.Loop() {
		log, _ := f.Log("booth-7")
		booth, _ := f.Booth(r, "booth-7")
		require.Len(b, shop.DriftOf(booth, shop.Jobs(log)).Jobs, 500)
	}
}
