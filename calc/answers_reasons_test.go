package calc_test

import (
	"strings"
	"testing"
	"time"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// said is what an answer gives as its reasons but for those of its verdict, and cautions, in
// their order, a caution with the first letter of its level.
func said(reasons []calc.Reason, cautions []calc.Caution) string {
	var s []string
	for _, r := range reasons {
		if r.About != "verdict" {
			s = append(s, r.ID)
		}
	}
	for _, c := range cautions {
		if c.Safety {
			continue // what protects people goes by the hardener: see safety_test.go
		}
		s = append(s, string(c.Level[0])+":"+c.ID)
	}
	return strings.Join(s, " ")
}

// judged is what speaks against spraying, each with its verdict.
func judged(j calc.Judgement) string {
	var s []string
	for _, c := range j.Against {
		s = append(s, c.Level.String()+":"+c.ID)
	}
	return strings.Join(s, " ")
}

// Each limit that a day runs into speaks against it, and nothing else does.
func TestWhatADaySays(t *testing.T) {
	mild := aDay(t, false, 22, 0.45)
	set := func(r calc.DayRequest, change func(*calc.DayRequest)) calc.DayRequest { return with(r, change) }
	both := func(c float64) func(*calc.DayRequest) {
		return func(r *calc.DayRequest) { r.Panel, r.Paint = unit.Celsius(c), unit.Celsius(c) }
	}
	for _, c := range []struct {
		name    string
		r       calc.DayRequest
		remedy  string
		against string
		says    string
	}{
		{"mild", mild, "", "", "day-air day-dries-solvent day-grade"},
		{"waterborne", aDay(t, true, 22, 0.45), "", "", "day-air day-dries-water day-grade-water"},
		{"hardener and a large job", set(mild, func(r *calc.DayRequest) {
			r.Coat.Hardener, r.PotLife, r.PotLifeAt, r.Panels = calc.Isocyanate, 4*time.Hour, calc.SheetTemp, 5
		}), "", "",
			"day-air day-dries-solvent day-grade-hardener day-grade-large pot-life"},
		{"three panels are few", set(mild, func(r *calc.DayRequest) { r.Panels = 3 }), "", "", "day-air day-dries-solvent day-grade"},
		{"mixed at a known time", set(mild, func(r *calc.DayRequest) { r.PotLife, r.PotLifeAt, r.HasStarted = 4*time.Hour, calc.SheetTemp, true }), "", "",
			"day-air day-dries-solvent day-grade pot-life-ends"},
		{"too hot for the rule of pot lives", set(mild, func(r *calc.DayRequest) {
			r.PotLife, r.PotLifeAt, r.Paint = 4*time.Hour, calc.SheetTemp, unit.Celsius(45)
		}), "", "",
			"day-air day-dries-solvent day-grade w:pot-life-outside"},
		{"cold", aDay(t, false, 12, 0.5), "turn-warm-air", "wait:cold", "day-air day-dries-solvent day-grade"},
		{"cold, panel and paint colder", set(aDay(t, false, 12, 0.3), both(11)), "turn-warm-air",
			"wait:cold wait:cold-panel wait:cold-paint", "day-air day-dries-solvent day-grade"},
		{"cold, panel and paint less so", set(aDay(t, false, 12, 0.3), both(13)), "turn-warm-air", "wait:cold", "day-air day-dries-solvent day-grade"},
		{"hot", aDay(t, false, 38, 0.3), "turn-cool-air", "wait:hot-air watch:lands-drier", "day-air day-dries-solvent day-grade"},
		{"a hot panel", set(mild, func(r *calc.DayRequest) { r.Panel = unit.Celsius(40) }), "turn-cool-panel", "wait:hot-panel", "day-air day-dries-solvent day-grade"},
		{"damp, on a warm panel", warmPanel(aDay(t, false, 22, 0.9)), "turn-warm-air", "stop:damp", "day-air day-dries-solvent day-grade"},
		{"waterborne in moist air", warmPanel(aDay(t, true, 22, 0.8)), "turn-warm-air-water", "wait:slow-water", "day-air day-dries-water day-grade-water"},
		{"waterborne a little under 0.4 of the reference day", warmPanel(aDay(t, true, 21, 0.787)), "turn-warm-air-water", "wait:slow-water",
			"day-air day-dries-water day-grade-water"},
		{"waterborne a little over", warmPanel(aDay(t, true, 21, 0.785)), "turn-warm-air-water", "watch:close", "day-air day-dries-water day-grade-water"},
		{"waterborne, well over", warmPanel(aDay(t, true, 21, 0.7)), "", "", "day-air day-dries-water day-warmer day-grade-water"},
		{"waterborne in fog", warmPanel(aDay(t, true, 22, 1)), "turn-warm-air", "stop:damp wait:still-water", "day-air day-dries-not day-grade-water"},
		{"waterborne in dry heat", aDay(t, true, 35, 0.2), "turn-cool-air", "wait:lands-dry", "day-air day-dries-water day-grade-water"},
		{"paint under the dew point", set(aDay(t, false, 28, 0.6), func(r *calc.DayRequest) { r.Paint = unit.Celsius(18) }), "turn-warm-paint", "wait:wet-paint",
			"day-air day-dries-solvent day-grade"},
		{"a panel under the dew point", set(aDay(t, false, 22, 0.6), func(r *calc.DayRequest) { r.Panel = unit.Celsius(13) }), "turn-warm-panel",
			"stop:dew-on-panel wait:cold-panel", "day-air day-dries-solvent day-grade"},
	} {
		a := solvedDay(t, c.r)
		for _, why := range a.Reasons {
			if why.About == "flash-off" {
				assert.Equal(t, c.r.Coat.Waterborne, why.Source == "source-drying-water", c.name)
			}
		}
		assert.Equal(t, c.says, said(a.Reasons, a.Cautions), c.name)
		assert.Equal(t, c.against, judged(a.Judgement), c.name)
		assert.Equal(t, c.remedy, a.Remedy.Sentence(), c.name)
	}
}

func TestWhatAFilmSays(t *testing.T) {
	const film = "film-wants film-typed film-coats film-solids "
	const pass = "rate-given film-speed-between film-fan-overlap"
	for _, c := range []struct {
		name   string
		change func(*calc.FilmRequest)
		says   string
	}{
		{"as it comes", func(*calc.FilmRequest) {}, film + "transfer-usual " + pass + ""},
		{"one coat of the family's own film, on a gun as typed", func(r *calc.FilmRequest) {
			r.Dry.Ground, r.Overlap.Ground, r.Held.Typed, r.Coats.Value = r.Wants.Ground, sheet, true, 1
		}, "film-wants film-solids transfer-typed rate-given film-speed film-fan film-overlap w:film-heavy-coat w:film-hand-slow"},
		{"a panel's height, the hand's speed and old paint", func(r *calc.FilmRequest) { r.Height, r.GunSpeed, r.Before = 1, 0.3, 4*coat.Mil },
			film + "transfer-usual " + pass + " film-passes film-at-speed film-whole w:film-under"},
		{"a family that is not known, held farther off", func(r *calc.FilmRequest) { r.Wants, r.Held.Distance = calc.FilmWants{}, unit.Inches(8) },
			"film-typed film-coats film-solids transfer-class " + pass + ""},
		{"harder than the class's own pressure", func(r *calc.FilmRequest) { r.Held.Pressure = unit.PSIG(30) },
			film + "transfer-class " + pass + ""},
		{"a rate that is not known", func(r *calc.FilmRequest) { r.Fluid = calc.Fluid{} }, film + "rate-unknown"},
		{"a gun that is not known", func(r *calc.FilmRequest) { r.Held.Known = false }, film + "rate-given"},
		{"a tip", func(r *calc.FilmRequest) {
			r.Fluid = calc.Fluid{From: calc.FluidTip, Tip: unit.MM(1.3), Viscosity: unit.MM2PerS(57)}
		}, film + "transfer-usual rate-tip film-speed-between film-fan-overlap"},
		{"two combs", func(r *calc.FilmRequest) {
			r.Combs = []calc.CombReading{{Wetted: 2 * coat.Mil, Next: 3 * coat.Mil}, {Wetted: 2 * coat.Mil, Next: 2 * coat.Mil}}
		}, film + "transfer-usual film-comb-between film-comb rate-given film-fan-overlap n:film-stop-here n:film-comb-low"},
	} {
		a := filmOf(t, filmRequest(c.change))
		assert.Equal(t, c.says, said(a.Reasons, a.Cautions), c.name)
	}
}

func TestWhatAMixSays(t *testing.T) {
	const film = "film-wants film-typed film-coats film-solids "
	for _, c := range []struct {
		name   string
		change func(*calc.MixRequest)
		says   string
	}{
		{"as it comes", func(*calc.MixRequest) {},
			"mix-area " + film + "transfer-usual mix-volume mix-between mix-cup wrong-farther wrong-choked n:mix-pot-life"},
		{"a gun as typed", func(r *calc.MixRequest) { r.Held.Typed = true },
			"mix-area " + film + "transfer-typed mix-volume mix-cup wrong-farther wrong-choked n:mix-pot-life"},
		{"usual areas", func(r *calc.MixRequest) { r.Panels[0].High = 5 },
			"mix-area-usual " + film + "transfer-usual mix-volume mix-between mix-cup wrong-farther wrong-choked w:mix-areas-usual n:mix-pot-life"},
		{"a ratio, a price, a pot life and a loss of its own", func(r *calc.MixRequest) {
			r.Ratio.Value, r.Prices, r.PotLife, r.PotLifeAt, r.Loss.Ground = coat.Ratio{Parts: []float64{4, 1}}, []float64{60}, time.Hour, calc.SheetTemp, sheet
		}, "mix-area " + film + "transfer-usual mix-volume mix-between mix-cup mix-loss mix-ratio mix-life mix-cost wrong-farther-cost wrong-choked-cost " +
			"n:mix-pot-life-known"},
		{"more than fits its pot life", func(r *calc.MixRequest) {
			r.PotLife, r.PotLifeAt, r.Rate = time.Minute, calc.SheetTemp, coat.MLPerMin(100)
		},
			"mix-area " + film + "transfer-usual mix-volume mix-between mix-cup mix-life wrong-farther wrong-choked w:mix-past-pot-life-coat"},
		{"as far off as a gun is held", func(r *calc.MixRequest) { r.Held.Distance = unit.Inches(30) },
			"mix-area " + film + "transfer-class mix-volume mix-between mix-cup n:mix-pot-life"},
	} {
		a := mixOf(t, mixRequest(c.change))
		assert.Equal(t, a.Batches > 0, c.name == "more than fits its pot life", "only with a rate and a pot life: %s", c.name)
		assert.Equal(t, c.says, said(a.Reasons, a.Cautions), c.name)
	}
}

func TestWhatThinningSays(t *testing.T) {
	iso := aMix(t, 44, 20)
	iso.Reading.Cup, iso.Waterborne = aCup(t, "iso4"), true
	warmer := aMix(t, 20, 20)
	warmer.Warmest.Value = unit.Celsius(30)
	// Cold and a little thick: once at the sheet's 20 C, less thinner or a little more warmth.
	less := aMix(t, 27, 10)
	less.Warmest.Value = unit.Celsius(30)
	zahn := aMix(t, 30, 20)
	zahn.Reading.Cup = aCup(t, "zahn2")
	zahn.Sheet.Value = calc.SheetSeconds{Cup: zahn.Reading.Cup, Low: 25, Aim: 30, High: 35, At: calc.SheetTemp}
	for _, c := range []struct {
		name   string
		r      calc.ThinRequest
		advice string
		says   string
	}{
		{"in the sheet's range", aMix(t, 17, 20), "as-it-is", "thin-reading-about thin-wanted"},
		{"cold alone", aMix(t, 23, 10), "warm-only-cold", "thin-reading-about thin-wanted thin-corrected-band thin-warm thin-warmest"},
		{"a little thick", aMix(t, 19, 20), "warm-or-thin", "thin-reading-about thin-wanted thin-warm thin-warmest thin-instead thin-halves thin-most"},
		{"thicker", aMix(t, 22, 20), "warm-and-thin", "thin-reading-about thin-wanted thin-warm thin-warmest thin-thinner thin-halves thin-most"},
		{"as warm as may be", aMix(t, 19, 26), "thin", "thin-reading-about thin-wanted thin-corrected-band thin-thinner thin-halves thin-most"},
		{"far too thick", aMix(t, 40, 20), "cannot", "thin-reading thin-wanted thin-warm thin-warmest thin-thinner thin-most s:thin-cannot"},
		{"thinned too far", aMix(t, 14, 18), "add-unthinned", "thin-reading-about thin-wanted thin-corrected-band s:thin-over"},
		{"thick, but hot", aMix(t, 17, 32), "as-it-is", "thin-reading-about thin-wanted thin-corrected-band w:thin-only-warm"},
		{"timed twice", with3(aMix(t, 24, 10)), "warm-only-cold", "thin-reading-about thin-wanted thin-corrected thin-warm thin-warmest"},
		{"read in another cup", iso, "as-it-is", "thin-reading thin-wanted-cup w:thin-stirred"},
		{"warmth or thinner", warmer, "warm-or-thin", "thin-reading-about thin-wanted thin-warm thin-warmest thin-instead thin-halves thin-most"},
		{"warmth or less thinner", less, "warm-or-less", "thin-reading thin-wanted thin-corrected-band thin-warm thin-warmest thin-instead thin-halves thin-most"},
		{"a Zahn cup", zahn, "as-it-is", "thin-reading thin-wanted n:thin-zahn"},
	} {
		a := thinned(t, c.r)
		assert.Equal(t, "advice-"+c.advice, a.Sentence(&c.r), c.name)
		ground := calc.Published // the cup's standard, inside its seconds
		if a.Nu.About {
			ground = calc.Estimate
		}
		assert.Equal(t, ground, a.Reasons[0].Basis, c.name)
		assert.Equal(t, c.says, said(a.Reasons, a.Cautions), c.name)
		for _, f := range a.Figures(&c.r) {
			switch f.Name {
			case "warmer":
				assert.InDelta(t, float64(a.To-c.r.Reading.At), f.Value, 1e-9)
			case "insteadAdd":
				assert.Equal(t, a.Instead.Add, f.Value)
			}
		}
	}
}

// Two batches are more than one: 1.12 L at 100 mL/min takes 11.2 min of the trigger, of the 8
// min that are safe.
func TestTwoBatches(t *testing.T) {
	a := mixOf(t, mixRequest(func(r *calc.MixRequest) {
		r.Panels[0].Low, r.Panels[0].High = 6, 6
		r.PotLife, r.PotLifeAt, r.Rate = 8*time.Minute, calc.SheetTemp, coat.MLPerMin(100)
	}))
	assert.Equal(t, 2, a.Batches)
	assert.Contains(t, cautionIDs(a.Cautions), "mix-past-pot-life")
}

// A chart's limits in air of 22 C and a panel kept 13 C warmer are the day's own: damp from
// 85 % on, within the hygrometer's 5 % of it from 80 %, and no air too damp for the panel.
func TestLimitsOfAWarmPanel(t *testing.T) {
	r := aDay(t, false, 22, 0.5)
	r.Panel = unit.Celsius(35)
	l := calc.NewChart(&r).Limits(r.Air)
	assert.InDelta(t, 0.8, l.Watch, 1e-9)
	assert.InDelta(t, 0.85, l.Stop, 1e-9)
	assert.Equal(t, 1.0, l.Dew)
	assert.Zero(t, l.DryWatch, "a solvent coat at 22 C")
}

// How many coats: the family's own number where its film fits, else as few as keep each at
// or under what one may have; always what was asked for.
func TestHowManyCoats(t *testing.T) {
	for _, c := range []struct {
		mils  float64
		asked int
		coats int
	}{{2.0, 0, 2}, {2.2, 0, 2}, {2.4, 0, 2}, {1.99, 0, 2}, {1.1, 0, 1}, {2.41, 0, 3}, {3.6, 0, 3}, {2.2, 3, 3}} {
		a := filmOf(t, filmRequest(func(r *calc.FilmRequest) {
			r.Dry.Value, r.Coats.Value, r.Wants = unit.Length(c.mils)*coat.Mil, c.asked, calc.FilmWants{}
		}))
		require.Equal(t, c.coats, a.Coats.Value, "%v mil", c.mils)
		assert.InEpsilon(t, c.mils/float64(c.coats), mil(a.Each.Dry), 1e-9)
		own := c.asked == 0 && c.mils >= 2 && c.mils <= 2.4
		assert.Equal(t, own, a.Coats.Source == "invented", "%v mil are the family's own", c.mils)
	}
}
