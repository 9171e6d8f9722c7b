package calc_test

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// comesWithin fails where what is to come after a comb is no coat that can be laid, or leads
// out of the film that will do; or where it says to stop and another coat would do better. It
// reports whether nothing was advised that brings the film in.
func comesWithin(t require.TestingT, r *calc.FilmRequest, a *calc.FilmAnswer) (out bool) {
	const bits = 1 + 1e-9
	low, high := min(r.Wants.Low, r.Dry.Value)/bits, max(r.Wants.High, r.Dry.Value)*bits
	laid := unit.Length(0)
	for _, c := range a.Laid {
		laid += c.Middle()
	}
	if a.Left > 0 {
		require.Zero(t, a.OneMore)
		require.LessOrEqual(t, len(a.Laid)+a.Left, calc.MostCoats)
		require.GreaterOrEqual(t, a.Each.Dry*bits, r.Usual.Low)
		require.LessOrEqual(t, a.Each.Dry, r.Usual.High*bits)
		require.GreaterOrEqual(t, a.Running.Total, low)
		require.LessOrEqual(t, a.Running.Total, high)
		require.InEpsilon(t, float64(laid+a.Each.Dry*unit.Length(a.Left)), float64(a.Running.Total), 1e-9)
		return false
	}
	require.InEpsilon(t, float64(laid+a.OneMore.Dry), float64(a.OneMore.Total), 1e-9)
	require.GreaterOrEqual(t, a.OneMore.Dry*bits, r.Usual.Low)
	if inside := laid >= low && laid <= high; !inside {
		// Neither one more coat nor several come inside.
		for n := unit.Length(1); n <= 20; n++ {
			require.False(t, laid+n*a.OneMore.Dry <= high/bits/bits && laid+n*r.Usual.High >= low*bits*bits && r.Fluid.From == calc.FluidUnknown, "%v more would do", n)
		}
		return true
	}
	return false
}

// Of 20,000 films as painters comb them, what is advised stays within the film that will do
// and within what a coat has; and how many no coat brings in.
func TestFilmsOfTwentyThousandCombs(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	between := func(low, high float64) unit.Length { return unit.Length(low+(high-low)*random.Float64()) * coat.Mil }
	stops, out := 0, 0
	const all = 20000
	for range all {
		r := filmRequest(func(r *calc.FilmRequest) {
			if random.IntN(2) == 0 {
				r.Fluid = calc.Fluid{}
			} else {
				r.Fluid.Rate = coat.MLPerMin(100 + 200*random.Float64())
			}
			low := between(.2, 1.5)
			n := 1 + random.IntN(3)
			r.Usual = calc.UsualCoats{Coats: n, Low: low, High: low * unit.Length(1.2+random.Float64())}
			r.Wants = calc.FilmWants{Known: true, Low: low * unit.Length(n), High: r.Usual.High * unit.Length(n)}
			r.Dry.Value = r.Wants.Low + (r.Wants.High-r.Wants.Low)*unit.Length(random.Float64())
			for range 1 + random.IntN(n) {
				wet := r.Dry.Value / unit.Length(n) / unit.Length(r.Solids.Value) * unit.Length(.6+.6*random.Float64())
				r.Combs = append(r.Combs, calc.CombReading{Wetted: wet, Next: wet * unit.Length(1+.3*random.Float64())})
			}
		})
		a := filmOf(t, r)
		if comesWithin(t, r, &a) {
			out++
		}
		if a.Left == 0 {
			stops++
		}
	}
	t.Logf("of %d films %.1f %% are done, and of these %.1f %% no coat that can be laid brings in", all, 100*float64(stops)/all, 100*float64(out)/float64(stops))
	assert.Positive(t, out)
	assert.Greater(t, stops, out)
	assert.Less(t, stops, all)
}

// drawFilm is any request that a film may be asked with.
func drawFilm(t *rapid.T) *calc.FilmRequest {
	f := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	return filmRequest(func(r *calc.FilmRequest) {
		r.Solids.Value = f("solids", 0.01, 1)
		r.Dry.Value = unit.Length(f("dry", 2, 2000)) * coat.Micrometre
		r.Coats.Value = rapid.IntRange(0, 20).Draw(t, "coats")
		r.Before = unit.Length(f("before", 0, 10000)) * coat.Micrometre
		r.Held.Class.Value.Transfer = f("transfer", 0.1, 0.9)
		r.Held.Pressure = unit.PSIG(f("pressure", 1, 150))
		r.Held.Distance = unit.Inches(f("distance", 2, 30))
		r.Held.Typed = rapid.Bool().Draw(t, "typed")
		r.Fluid.Rate = coat.MLPerMin(f("rate", 5, 1500))
		r.Fan.Value = unit.MM(f("fan", 10, 600))
		r.Overlap.Value = f("overlap", 0, 0.9)
		if rapid.Bool().Draw(t, "hand") {
			r.GunSpeed = unit.Speed(f("gun speed", 0.05, 3))
		}
		for range rapid.IntRange(0, 3).Draw(t, "combs") {
			wet := unit.Length(f("wet", 1, 1900)) * coat.Micrometre
			r.Combs = append(r.Combs, calc.CombReading{Wetted: wet, Next: wet + unit.Length(f("more", 0, 100))*coat.Micrometre})
		}
	})
}

// Whatever is asked, no figure of the answer is undefined or infinite.
func TestFilmsAreFinite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, err := calc.SolveFilm(drawFilm(t))
		var p *calc.Problem
		if err != nil {
			require.ErrorAs(t, err, &p)
			require.Equal(t, "gun-speed", p.Field, "nothing else can go wrong in these ranges: %s", why(p))
			return
		}
		finite(t, reflect.ValueOf(a), "film")
	})
}

// finite asserts that every number in v is one.
func finite(t require.TestingT, v reflect.Value, path string) {
	switch v.Kind() {
	case reflect.Float64:
		require.False(t, math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0), path)
	case reflect.Struct:
		for i := range v.NumField() {
			finite(t, v.Field(i), path+"."+v.Type().Field(i).Name)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			finite(t, v.Index(i), path)
		}
	}
}

// More fluid or more landing wants a faster hand, a thicker film or more overlap's
// narrower step a slower or faster one; wet is never thinner than dry.
func TestFilmsMoveTheRightWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawFilm(t)
		r.GunSpeed, r.Combs, r.Coats.Value = 0, nil, 2
		r.Dry.Value = unit.Length(rapid.Float64Range(4, 1000).Draw(t, "film")) * coat.Micrometre
		a := filmOf(t, r)
		assert.GreaterOrEqual(t, a.Each.Wet, a.Each.Dry)
		changed := func(change func(*calc.FilmRequest)) calc.FilmAnswer {
			c := *r
			change(&c)
			return filmOf(t, &c)
		}
		thicker := changed(func(r *calc.FilmRequest) { r.Dry.Value *= 1.5 })
		assert.Less(t, thicker.Pass.Speed, a.Pass.Speed)
		farther := changed(func(r *calc.FilmRequest) { r.Held.Distance = min(r.Held.Distance*1.2, unit.Inches(30)) })
		assert.LessOrEqual(t, farther.Pass.Speed, a.Pass.Speed)
		more := changed(func(r *calc.FilmRequest) { r.Fluid.Rate = min(r.Fluid.Rate*1.01, coat.MLPerMin(1500)) })
		assert.GreaterOrEqual(t, more.Pass.Speed, a.Pass.Speed)
		closer := changed(func(r *calc.FilmRequest) { r.Overlap.Value *= 0.5 })
		assert.GreaterOrEqual(t, closer.Pass.Step, a.Pass.Step)
		assert.LessOrEqual(t, closer.Pass.Speed, a.Pass.Speed)
	})
}

// The cup that gave the rate, held for longer, gives it again.
func TestTimedCupIsItsRate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ml := rapid.Float64Range(50, 400).Draw(t, "mL")
		s := rapid.Float64Range(20, 60).Draw(t, "s")
		a := filmOf(t, filmRequest(func(r *calc.FilmRequest) {
			r.Fluid = calc.Fluid{From: calc.FluidTimed, CupVolume: unit.Litres(ml / 1000), CupTime: unit.Seconds(s)}
		}))
		assert.InEpsilon(t, ml/s*60, a.Pass.Rate.Value.MLPerMin(), 1e-6)
	})
}
