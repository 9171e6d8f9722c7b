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

func drawMixture(t *rapid.T) calc.ThinRequest {
	cup := rapid.SampledFrom(coat.Cups())
	r := aMix(t, rapid.Float64Range(5, 150).Draw(t, "seconds"), rapid.Float64Range(-10, 60).Draw(t, "paint"))
	r.Reading.Cup = cup.Draw(t, "cup")
	s := &r.Sheet.Value
	if rapid.Bool().Draw(t, "same cup") {
		s.Cup = r.Reading.Cup
	} else {
		s.Cup = cup.Draw(t, "sheet's cup")
	}
	s.Low = rapid.Float64Range(5, 100).Draw(t, "low")
	s.High = s.Low * rapid.Float64Range(1.02, 1.5).Draw(t, "wide")
	s.Aim = (s.Low + s.High) / 2
	s.At = unit.Celsius(rapid.Float64Range(10, 30).Draw(t, "sheet's temperature"))
	r.Warmest.Value = unit.Celsius(rapid.Float64Range(0, 40).Draw(t, "limit"))
	r.MostThinner.Value = rapid.Float64Range(0, .5).Draw(t, "most")
	r.Waterborne = rapid.Bool().Draw(t, "waterborne")
	return r
}

// bearsOut fails where an answer advises what its own figures refute: a course that ends out
// of the range, works what it says wrongly, or has a step that no cup can tell.
func bearsOut(t require.TestingT, r *calc.ThinRequest, a *calc.ThinAnswer) {
	const bits = 1 + 1e-6
	low, high := float64(a.Wanted.Low.Nu)/bits, float64(a.Wanted.High.Nu)*bits
	off := func(seconds float64) float64 { return max(1, .074*seconds) }
	told := func(one, two float64) {
		require.GreaterOrEqual(t, math.Abs(one-two)*bits, off(min(one, two)))
	}
	course := func(c *calc.Course) {
		require.LessOrEqual(t, c.Add, r.MostThinner.Value*bits)
		require.Equal(t, math.Round(1000*c.Add)/1000, c.Add, "as it is printed")
		require.LessOrEqual(t, float64(c.To), max(float64(r.Reading.At), float64(r.Warmest.Value))*bits)
		warmed := math.Log(float64(a.Nu.Nu)) - float64(a.Slope.Typical)*float64(c.To-r.Reading.At)
		require.InEpsilon(t, math.Exp(warmed), float64(c.Warmed.Nu), 1e-9, "warmth alone")
		thinner := .83e-6
		if r.Waterborne {
			thinner = 1.004e-6
		}
		x := c.Add / (1 + c.Add)
		require.InEpsilon(t, math.Exp((1-x)*warmed+x*math.Log(thinner)), float64(c.Reached.Nu), 1e-9, "and thinner")
	}
	advised := func(c *calc.Course) {
		course(c)
		require.GreaterOrEqual(t, float64(c.Reached.Nu), low)
		require.LessOrEqual(t, float64(c.Reached.Nu), high)
		if c.To != r.Reading.At {
			told(r.Reading.Seconds, c.Warmed.Seconds)
		}
		if c.Add > 0 {
			told(c.Warmed.Seconds, c.Reached.Seconds)
		}
	}
	course(&a.Course)
	now := float64(a.Nu.Nu)
	switch a.Remedy {
	case calc.RemedyNone:
		require.Zero(t, a.Add)
		require.Equal(t, r.Reading.At, a.To)
		if now > high {
			require.Less(t, r.Reading.Seconds-a.Wanted.High.Seconds, off(r.Reading.Seconds))
		}
		if now < low {
			require.Less(t, a.Wanted.Low.Seconds-r.Reading.Seconds, off(a.Wanted.Low.Seconds))
		}
	case calc.RemedyCool:
		require.Less(t, a.To, r.Reading.At)
		require.GreaterOrEqual(t, a.To, r.Sheet.Value.At)
		require.Zero(t, a.Add)
		advised(&a.Course)
	case calc.RemedyWarm:
		require.Greater(t, a.To, r.Reading.At)
		require.Zero(t, a.Add)
		advised(&a.Course)
	case calc.RemedyThin:
		require.Equal(t, r.Reading.At, a.To)
		require.Positive(t, a.Add)
		advised(&a.Course)
	case calc.RemedyWarmThin:
		require.Greater(t, a.To, r.Reading.At)
		require.Positive(t, a.Add)
		advised(&a.Course)
	case calc.RemedyCannot:
		require.Greater(t, float64(a.Reached.Nu)*bits, float64(a.Wanted.High.Nu))
		require.True(t, a.Stopped())
	case calc.RemedyUnthinned:
		require.Less(t, a.Corrected.Nu, a.Wanted.Low.Nu)
		require.True(t, a.Stopped())
	default:
		require.Fail(t, "no such remedy", a.Remedy)
	}
	if a.Instead.Add > 0 {
		require.Equal(t, calc.RemedyWarm, a.Remedy)
		require.LessOrEqual(t, a.Instead.To, a.To)
		advised(&a.Instead)
	}
}

// Whatever is asked, it is refused with a field, or answered by what its own figures bear
// out.
func TestThinningAdvisesWhatItsFiguresBearOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawMixture(t)
		a, err := calc.SolveThin(&r)
		if err != nil {
			var p *calc.Problem
			require.ErrorAs(t, err, &p)
			require.NotEmpty(t, p.Field)
			return
		}
		finite(t, reflect.ValueOf(a), "thin")
		bearsOut(t, &r, &a)
	})
}

// The same of 20,000 mixes as a shop has them, and how many of them no advice is given for.
func TestThinningOfTwentyThousandMixes(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	between := func(low, high float64) float64 { return low + (high-low)*random.Float64() }
	cups := []coat.Cup{aCup(t, "zahn2"), aCup(t, "iso4"), aCup(t, "din4"), aCup(t, "ford4")}
	remedies := map[calc.Remedy]int{}
	const all = 20000
	for answered := 0; answered < all; {
		r := aMix(t, 0, between(5, 38))
		r.Reading.Cup = cups[random.IntN(len(cups))]
		aim := unit.MM2PerS(between(34, 120))
		wanted, err := r.Reading.Cup.Seconds(aim)
		require.NoError(t, err)
		half := between(.5, .25*wanted.Seconds)
		r = sheeted(r, wanted.Seconds-half, wanted.Seconds+half)
		r.Sheet.Value.Cup = r.Reading.Cup
		r.Reading.Seconds = wanted.Seconds * between(.7, 2)
		r.MostThinner.Value, r.Warmest.Value = between(0, .2), unit.Celsius(between(20, 30))
		r.Waterborne = random.IntN(4) == 0
		a, err := calc.SolveThin(&r)
		if err != nil {
			continue // a cup that cannot tell
		}
		answered++
		bearsOut(t, &r, &a)
		remedies[a.Remedy]++
	}
	none := remedies[calc.RemedyCannot] + remedies[calc.RemedyUnthinned]
	t.Logf("of %d mixes %.1f %% are given no advice but to mix them anew: %v", all, 100*float64(none)/all, remedies)
	for _, x := range []calc.Remedy{calc.RemedyNone, calc.RemedyCool, calc.RemedyWarm, calc.RemedyThin, calc.RemedyWarmThin, calc.RemedyCannot, calc.RemedyUnthinned} {
		assert.Positive(t, remedies[x], x)
	}
}

// More allowed, in heat or in thinner, never makes a mix that can be brought there one
// that cannot.
func TestMoreAllowedNeverHurts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawMixture(t)
		a, err := calc.SolveThin(&r)
		if err != nil || a.Stopped() {
			return
		}
		r.MostThinner.Value *= 1.5
		r.Warmest.Value += 5
		b, err := calc.SolveThin(&r)
		require.NoError(t, err)
		require.False(t, b.Stopped())
	})
}
