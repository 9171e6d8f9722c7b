package calc_test

import (
	"math"
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func aCup(t require.TestingT, id string) coat.Cup {
	c, err := coat.FindCup(id)
	require.NoError(t, err)
	return c
}

// aMix is a solvent mix timed at c C against 16 to 18 s at 20 C in the same DIN cup, with
// 10 % thinner and 25 C allowed.
func aMix(t require.TestingT, seconds, c float64) calc.ThinRequest {
	din := aCup(t, "din4")
	return calc.ThinRequest{
		CoatID: "invented", Coat: "invented",
		Reading:     calc.Reading{Cup: din, Seconds: seconds, At: unit.Celsius(c)},
		Sheet:       calc.Stated[calc.SheetSeconds]{Value: calc.SheetSeconds{Cup: din, Low: 16, Aim: 17, High: 18, At: calc.SheetTemp}},
		MostThinner: calc.Stated[float64]{Value: .10}, Warmest: calc.Stated[unit.Temp]{Value: unit.Celsius(25)},
	}
}

func thinned(t require.TestingT, r calc.ThinRequest) calc.ThinAnswer {
	a, err := calc.SolveThin(&r)
	require.NoError(t, err)
	return a
}

// 18 s in the DIN cup at 20 C, worked by hand for 3, 5 and 8 % a degree: what it reads
// at other temperatures, brought back to 20 C.
func TestReadingIsBroughtToTheSheetsTemperature(t *testing.T) {
	for c, seconds := range map[float64]float64{10: 24.6, 15: 20.8, 25: 15.9, 30: 14.4, 35: 13.3} {
		a := thinned(t, aMix(t, seconds, c))
		assert.InDelta(t, 18, a.Corrected.Seconds, .12, "%v C", c)
		assert.Less(t, a.Corrected.Low, a.Corrected.Seconds)
		assert.Greater(t, a.Corrected.High, a.Corrected.Seconds)
		assert.False(t, a.Slope.Fitted)
	}
	assert.InDelta(t, 18, thinned(t, with3(aMix(t, 21.5, 10))).Corrected.Seconds, .1, "3 % a degree, from two readings")
}

// with3 gives a mix a second reading, at 20 C, that is 3 % a degree from the first.
func with3(r calc.ThinRequest) calc.ThinRequest {
	r.HasSecond = true
	r.Second = calc.Reading{Cup: r.Reading.Cup, Seconds: 18, At: unit.Celsius(20)}
	return r
}

// sheeted gives a mix another range of its sheet.
func sheeted(r calc.ThinRequest, low, high float64) calc.ThinRequest {
	s := &r.Sheet.Value
	s.Low, s.Aim, s.High = low, (low+high)/2, high
	return r
}

// Oil standards' own values fit their slopes: 20.72 mm2/s at 20 C and 16.92 at 25 C are
// 4.05 % a degree (a public table of calibration oils).
func TestTwoReadingsFitTheSlopeOfACalibrationOil(t *testing.T) {
	cup := aCup(t, "ford2")
	seconds := func(nu float64) float64 {
		e, err := cup.Seconds(unit.MM2PerS(nu))
		require.NoError(t, err)
		return e.Seconds
	}
	r := aMix(t, 0, 0)
	r.Reading = calc.Reading{Cup: cup, Seconds: seconds(20.72), At: unit.Celsius(20)}
	r.Second = calc.Reading{Cup: cup, Seconds: seconds(16.92), At: unit.Celsius(25)}
	r.HasSecond = true
	r.Sheet.Value = calc.SheetSeconds{Cup: cup, Low: 31, Aim: 32, High: 33, At: calc.SheetTemp}
	a := thinned(t, r)
	assert.True(t, a.Slope.Fitted)
	assert.InDelta(t, .0405, float64(a.Slope.Typical), .0001)
	assert.Equal(t, calc.RemedyNone, a.Remedy)
}

func TestRemedies(t *testing.T) {
	for _, x := range []struct {
		name     string
		mix      calc.ThinRequest
		remedy   calc.Remedy
		says     string
		onlyCold bool
	}{
		{"in the range", aMix(t, 17, 20), calc.RemedyNone, "", false},
		{"at its upper end", aMix(t, 18, 20), calc.RemedyNone, "", false},
		{"at its lower end", aMix(t, 16, 20), calc.RemedyNone, "", false},
		{"right, but cold", aMix(t, 23, 10), calc.RemedyWarm, "thin-warming", true},
		{"thick by less than a reading tells", sheeted(aMix(t, 18.4, 20), 17.5, 18), calc.RemedyNone, "", false},
		{"a little thick", aMix(t, 19, 20), calc.RemedyWarm, "thin-warming", false},
		{"thicker", aMix(t, 22, 20), calc.RemedyWarmThin, "thin-warming", false},
		{"thick and as warm as may be", aMix(t, 19, 26), calc.RemedyThin, "", false},
		{"far too thick", aMix(t, 40, 20), calc.RemedyCannot, "thin-cannot", false},
		{"thinned too far", aMix(t, 14, 18), calc.RemedyUnthinned, "thin-over", false},
		{"right, but hot", aMix(t, 14, 32), calc.RemedyCool, "", false},
		{"thick, but hot", aMix(t, 17, 32), calc.RemedyNone, "thin-only-warm", false},
	} {
		t.Run(x.name, func(t *testing.T) {
			a := thinned(t, x.mix)
			assert.Equal(t, x.remedy, a.Remedy)
			assert.Equal(t, x.onlyCold, a.OnlyCold)
			assert.Equal(t, x.remedy == calc.RemedyCannot || x.remedy == calc.RemedyUnthinned, a.Stopped())
			ids := cautionIDs(a.Cautions)
			assert.Equal(t, a.To > x.mix.Reading.At, slices.Contains(ids, "thin-warming"))
			if x.says != "" {
				assert.Contains(t, ids, x.says)
			}
		})
	}
}

// Worked by hand with logarithmic mixing: 20 s in the DIN cup are 68.8 mm2/s, 17 s are
// 51.1, the thinner 0.83: ln(68.8/51.1)/ln(51.1/0.83) = 7.2 % of the mix, 7 % in whole
// percent, which leave 68.8 (0.83/68.8)^(0.07/1.07) = 51.6 mm2/s, 17.1 s; and warming does
// it at 20 C + ln(68.8/51.1)/0.05 = 26 C.
func TestWarmItOrAddSoMuchByHand(t *testing.T) {
	r := aMix(t, 20, 20)
	r.Warmest.Value = unit.Celsius(30)
	a := thinned(t, r)
	assert.Equal(t, calc.RemedyWarm, a.Remedy)
	assert.InDelta(t, 25.95, a.To.C(), .02)
	assert.InDelta(t, 17, a.Reached.Seconds, 1e-6)
	assert.Equal(t, .07, a.Instead.Add)
	assert.Equal(t, unit.Celsius(20), a.Instead.To)
	assert.InDelta(t, 17.08, a.Instead.Reached.Seconds, .01)
	r.MostThinner.Value = .05
	assert.InDelta(t, .05, thinned(t, r).Instead.Add, 1e-12, "no more than the coat takes; 17.8 s is in the range")
	r.MostThinner.Value = .03
	assert.Zero(t, thinned(t, r).Instead.Add, "3 % leaves it at 18.6 s, out of the range")
	r.Warmest.Value, r.MostThinner.Value = unit.Celsius(20), .05
	a = thinned(t, r)
	assert.Equal(t, calc.RemedyThin, a.Remedy)
	assert.InDelta(t, .05, a.Add, 1e-12)
	assert.InDelta(t, 17.77, a.Reached.Seconds, .01)
	assert.Equal(t, 20.0, a.Warmed.Seconds, "it is not warmed")
}

// Each step is told by what it does alone. By hand: 22 s in the DIN cup at 20 C are 80.0
// mm2/s, at 25 C 80.0 exp(-0.25) = 62.3, which are 18.9 s; thinner takes the rest.
func TestWarmthIsNotCreditedWithTheThinnersShare(t *testing.T) {
	a := thinned(t, aMix(t, 22, 20))
	assert.Equal(t, calc.RemedyWarmThin, a.Remedy)
	assert.InDelta(t, 18.9, a.Warmed.Seconds, .05)
	assert.InDelta(t, 17, a.Reached.Seconds, .2)
}

// In the ISO cup 44 to 46 s are wanted: 49 s may be off by 3.6 s, so neither warming nor
// thinner by 4 s is split into steps that no cup can tell.
func TestNoStepThatACupCannotTell(t *testing.T) {
	r := sheeted(aMix(t, 49, 24), 44, 46)
	r.Reading.Cup, r.Sheet.Value.Cup = aCup(t, "iso4"), aCup(t, "iso4")
	a := thinned(t, r)
	assert.Equal(t, calc.RemedyThin, a.Remedy, "warming to 25 C alone would be 2 s")
	r.Reading.Seconds = 47
	a = thinned(t, r)
	assert.Equal(t, calc.RemedyNone, a.Remedy)
	assert.Equal(t, "advice-near-enough", a.Sentence(&r))
	r.Reading.Seconds, r.MostThinner.Value, r.Warmest.Value = 50.5, .02, unit.Celsius(25.3)
	a = thinned(t, r)
	assert.Equal(t, calc.RemedyCannot, a.Remedy, "47.4 s by warmth, 46.6 s by thinner")
	assert.Zero(t, a.Add)
	assert.Contains(t, cautionIDs(a.Cautions), "thin-cannot-warm")
}

// Hot and thin, it cools towards the middle of the range and never below the sheet's
// temperature. By hand: 14 s in the DIN cup are 31.7 mm2/s, 17 s are 51.1: 32 C -
// ln(51.1/31.7)/0.05 = 22.4 C.
func TestWhatIsOnlyWarmCools(t *testing.T) {
	r := aMix(t, 14, 32)
	a := thinned(t, r)
	assert.Equal(t, calc.RemedyCool, a.Remedy)
	assert.InDelta(t, 22.4, a.To.C(), .1)
	assert.InDelta(t, 17, a.Reached.Seconds, 1e-6)
	r.Reading.At = unit.Celsius(29)
	a = thinned(t, r)
	assert.Equal(t, calc.SheetTemp, a.To)
	assert.InDelta(t, 16.8, a.Reached.Seconds, .1)
	r.Reading.At = unit.Celsius(22)
	assert.Equal(t, calc.RemedyUnthinned, thinned(t, r).Remedy, "at the sheet's temperature it is too thin as well")
}

// "18 s in a 4 mm cup": 57 mm2/s in the DIN cup, 45 s in the ISO one.
func TestSheetInOneCupReadInAnother(t *testing.T) {
	r := aMix(t, 44, 20)
	r.Reading.Cup = aCup(t, "iso4")
	a := thinned(t, r)
	assert.True(t, a.About, "the DIN cup's equation is followed below its 25 s")
	assert.InDelta(t, 45, a.Wanted.High.Seconds, .1)
	assert.InDelta(t, 36.7, a.Wanted.Low.Seconds, .1)
	assert.Equal(t, calc.RemedyNone, a.Remedy)
	assert.False(t, a.Nu.About, "the reading itself is inside the ISO cup's range")

	same := aMix(t, 17, 20)
	assert.Equal(t, 18.0, thinned(t, same).Wanted.High.Seconds, "in the same cup they are the sheet's own")
}

func TestWaterborneIsThinnedWithWaterAndDoubted(t *testing.T) {
	r := aMix(t, 20, 25)
	solvent := thinned(t, r)
	r.Waterborne = true
	a := thinned(t, r)
	assert.Equal(t, calc.RemedyThin, a.Remedy)
	assert.Greater(t, a.Add, solvent.Add, "water is the thicker of the two")
	assert.Contains(t, cautionIDs(a.Cautions), "thin-stirred")
	r.Reading.Cup, r.Sheet.Value.Cup = aCup(t, "zahn2"), aCup(t, "zahn2")
	r.Reading.Seconds, r.Sheet.Value.Low, r.Sheet.Value.Aim, r.Sheet.Value.High = 30, 25, 30, 35
	assert.Contains(t, cautionIDs(thinned(t, r).Cautions), "thin-zahn", "D4212 keeps them from settling anything")
}

// The seconds at a temperature meet the answer's own where it has them, and fall as the mix
// warms or takes thinner.
func TestReadAtIsTheAnswersOwnCourse(t *testing.T) {
	r := sheeted(aMix(t, 28, 12), 16, 18)
	a := thinned(t, r)
	before := a
	same := func(want calc.Read, at unit.Temp, add float64) {
		t.Helper()
		got, err := a.ReadAt(&r, at, add)
		require.NoError(t, err)
		assert.InDelta(t, want.Seconds, got.Seconds, 1e-9)
		assert.InDelta(t, want.Nu.MM2PerS(), got.Nu.MM2PerS(), 1e-9)
	}
	require.Equal(t, calc.RemedyWarmThin, a.Remedy)
	same(calc.Read{Nu: a.Nu.Nu, Seconds: 28}, r.Reading.At, 0)
	same(calc.Read{Nu: a.Corrected.Nu, Seconds: a.Corrected.Seconds}, r.Sheet.Value.At, 0)
	same(a.Warmed, a.To, 0)
	same(a.Reached, a.To, a.Add)
	last := math.Inf(1)
	for c := 5.0; c <= 35; c++ {
		plain, err := a.ReadAt(&r, unit.Celsius(c), 0)
		require.NoError(t, err)
		assert.Less(t, plain.Seconds, last)
		last = plain.Seconds
	}
	_, err := a.ReadAt(&r, unit.Celsius(70), 0)
	require.Error(t, err)
	assert.Equal(t, before, a)
}

func TestWhatThinningRefuses(t *testing.T) {
	for _, x := range []struct {
		field, says string
		change      func(*calc.ThinRequest)
	}{
		{"seconds", "use the", func(r *calc.ThinRequest) { r.Reading.Seconds = 5 }},
		{"seconds", "too long", func(r *calc.ThinRequest) { r.Reading.Seconds = 400 }},
		{"seconds", "1 to 1000", func(r *calc.ThinRequest) { r.Reading.Seconds = math.NaN() }},
		{"seconds", "brought to the sheet's 68 F", func(r *calc.ThinRequest) { r.Reading.Seconds, r.Reading.At = 13.5, unit.Celsius(15) }},
		{"paint", "outside", func(r *calc.ThinRequest) { r.Reading.At = unit.Celsius(70) }},
		{"sheet-seconds", "use the", func(r *calc.ThinRequest) { r.Sheet.Value.Low = 2 }},
		{"sheet-seconds", "lower figure first", func(r *calc.ThinRequest) { r.Sheet.Value.Low = 19 }},
		{"sheet-temp", "outside", func(r *calc.ThinRequest) { r.Sheet.Value.At = unit.Celsius(-20) }},
		{"max-thinner", "outside", func(r *calc.ThinRequest) { r.MostThinner.Value = 1.5 }},
		{"warm-limit", "outside", func(r *calc.ThinRequest) { r.Warmest.Value = unit.Celsius(80) }},
		{"second-temp", "outside", func(r *calc.ThinRequest) { *r = with3(*r); r.Second.At = unit.Celsius(99) }},
		{"second-seconds", "apart", func(r *calc.ThinRequest) { *r = with3(*r); r.Second.At = r.Reading.At }},
		{"second-seconds", "use the", func(r *calc.ThinRequest) { *r = with3(*r); r.Second.Seconds = 3 }},
		{"cup", "use the", func(r *calc.ThinRequest) {
			r.Reading = calc.Reading{Cup: aCup(t, "zahn5"), Seconds: 30, At: unit.Celsius(20)}
		}},
	} {
		r := aMix(t, 17, 15)
		x.change(&r)
		_, err := calc.SolveThin(&r)
		var p *calc.Problem
		require.ErrorAs(t, err, &p, x.field)
		assert.Equal(t, x.field, p.Field)
		assert.Contains(t, why(p), x.says)
	}
}
