package calc_test

import (
	"math"
	"reflect"
	"slices"
	"testing"
	"time"

	"boothset/calc"
	"boothset/calc/air"
	"boothset/calc/coat"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// aDay is a request for a solvent coat, or a waterborne one, with panel and paint at the
// air's temperature.
func aDay(t require.TestingT, water bool, c, humidity float64) calc.DayRequest {
	s, err := coat.FindSolvent(coat.ReferenceSolvent)
	require.NoError(t, err)
	at := unit.Celsius(c)
	g, err := gun.New(gun.Stamp{Inlet: unit.PSIG(32), Flow: unit.SCFM(10), Cap: unit.PSIG(20)}, 0, gun.Valve{
		Full: line.Restriction{C: unit.DM3PerSBar(6.5), B: 0.3}, Shape: gun.Linear, Turns: 2,
	})
	require.NoError(t, err)
	return calc.DayRequest{
		Coat: calc.Coat{
			ID: "invented", Name: "invented", Waterborne: water, Solvent: s,
			Working: calc.Band{Start: unit.PSIG(26), Low: unit.PSIG(23), High: unit.PSIG(32)},
		},
		Gun: calc.Gun{Gun: g, Nearest: unit.Inches(5), Farthest: unit.Inches(6), Felt: g.FeltAt(unit.Inches(5.5), unit.PSIG(26))},
		Day: calc.Day{Air: at, Panel: at, Humidity: humidity}, Paint: at, Panels: 1,
		Instruments: calc.Instruments{Thermometer: calc.Tolerance{Within: 1}, Hygrometer: calc.Tolerance{Within: .05}},
	}
}

func solvedDay(t require.TestingT, r calc.DayRequest) calc.DayAnswer {
	a, err := calc.SolveDay(&r)
	require.NoError(t, err)
	return a
}

// The 15 C, 85 % morning with a waterborne coat: it must be warmed, and the same air at
// 25 C dries it several times as fast (1.45 % / 0.24 of the published style of index: a
// factor of about 5 by the depression of the wet bulb at 15 C/85 % and 25 C/46 %).
func TestDampMorningIsToBeWarmed(t *testing.T) {
	a := solvedDay(t, aDay(t, true, 15, .85))
	assert.Equal(t, calc.VerdictStop, a.Verdict, "2.5 C above the dew point is under ISO 8502-4's 3 C")
	assert.Equal(t, "turn-warm-air", a.Remedy.ID)
	assert.InDelta(t, 25, a.Remedy.To.C(), 1e-9)
	assert.InDelta(t, .457, a.Remedy.Humidity, .002, "saturation pressures 17.06 and 31.69 hPa: .85 x 17.06/31.69")
	depression := func(c, rh float64) float64 {
		return c - air.WetBulb(unit.Celsius(c), rh, air.SeaLevelPressure).C()
	}
	assert.InEpsilon(t, depression(25, a.Remedy.Humidity)/depression(15, .85), a.Remedy.Lift, .05, "the psychrometer's own measure of it")
	assert.Greater(t, a.Remedy.Lift, 4.0)
}

// Flux by the wet bulb's depression, from a worked table against 20 C and 50 %: rows at
// 50, 65, 75 and 85 %. Both measure the same drive, here by pressures.
func TestWaterborneDryingAgainstWetBulbDepressions(t *testing.T) {
	base := solvedDay(t, aDay(t, true, 20, .5)).Drying
	for c, row := range map[float64][]float64{
		15: {.86, .58, .41, .24}, 20: {1, .68, .47, .28}, 25: {1.14, .77, .53, .31}, 30: {1.29, .86, .59, .35}, 35: {1.43, .95, .65, .38},
	} {
		for i, rh := range []float64{.50, .65, .75, .85} {
			assert.InDelta(t, row[i], solvedDay(t, aDay(t, true, c, rh)).Drying/base, .02, "%v C, %v", c, rh)
		}
	}
}

// n-Butyl acetate: 11.0 hPa at 20 C, 20.1 at 30 C, 1.83 times as much (Antoine constants
// of a chemical-data appendix).
func TestSolventFlashOffFollowsVapourPressureOfTheFilm(t *testing.T) {
	cool, warm := solvedDay(t, aDay(t, false, 20, .5)), solvedDay(t, aDay(t, false, 30, .5))
	assert.InEpsilon(t, 1.83, warm.Drying/cool.Drying, .005)
	assert.InEpsilon(t, 1.83, cool.Flash/warm.Flash, .005)
	r := aDay(t, false, 20, .5)
	r.Panel = unit.Celsius(30)
	assert.Equal(t, warm.Flash, solvedDay(t, r).Flash, "the film is as warm as the panel, whatever the air")
	assert.InDelta(t, 1, solvedDay(t, aDay(t, false, 21, .5)).Flash, 1e-12, "the reference day")
}

func TestDewPointAndPanelMarginOfCoatingCharts(t *testing.T) {
	// 70 F and 65 %: dew point 57.7 F, least panel 62 to 63 F by a coating chart.
	r := aDay(t, false, unit.Fahrenheit(70).C(), .65)
	r.Panel = unit.Fahrenheit(62)
	a := solvedDay(t, r)
	assert.InDelta(t, 57.7, a.DewPoint.F(), .1)
	assert.Equal(t, calc.VerdictStop, a.Verdict)
	assert.Equal(t, "turn-warm-panel", a.Remedy.ID)
	assert.InDelta(t, 62+1.1+2.2+.54, a.Remedy.To.F(), .2, "5.4 F above the dew point with the hygrometer 5 % low, and half a degree for the printing")
	r.Panel = a.Remedy.To
	assert.Equal(t, calc.VerdictGo, solvedDay(t, r).Verdict)
	// 20 C and 50 %: wet bulb 13.8 C, dew point 9.3 C (psychrometrics handbook).
	b := solvedDay(t, aDay(t, false, 20, .5))
	assert.InDelta(t, 13.8, b.WetBulb.C(), .05)
	assert.InDelta(t, 9.3, b.DewPoint.C(), .05)
}

// Each limit of a day at its edge, with its verdict and what turns it: 3 C above the dew
// point, 85 %, 60 to 100 F, 0.4 of the mild day's drying, 1.7 and 2.5 times as dry; and
// within 1 C or 5 % of each of them.
func TestVerdictsAtTheirLimits(t *testing.T) {
	f := func(f float64) float64 { return unit.Fahrenheit(f).C() }
	panel := func(r calc.DayRequest, c float64) calc.DayRequest { r.Panel = unit.Celsius(c); return r }
	paint := func(r calc.DayRequest, c float64) calc.DayRequest { r.Paint = unit.Celsius(c); return r }
	for _, x := range []struct {
		name    string
		r       calc.DayRequest
		verdict calc.Verdict
		turn    string
		cause   string
	}{
		{"mild day", aDay(t, false, 22, .45), calc.VerdictGo, "", ""},
		{"62 F is warm enough", aDay(t, false, f(62), .5), calc.VerdictGo, "", ""},
		{"60 F is close", aDay(t, false, f(60), .5), calc.VerdictWatch, "turn-warm-air", "close"},
		{"under 60 F", aDay(t, false, f(59.9), .5), calc.VerdictWait, "turn-warm-air", "cold"},
		{"79 % on a warm panel", warmPanel(aDay(t, false, 22, .79)), calc.VerdictGo, "", ""},
		{"84.9 % on a warm panel", warmPanel(aDay(t, false, 22, .849)), calc.VerdictWatch, "turn-warm-air", "close"},
		{"85 % on a warm panel", warmPanel(aDay(t, false, 22, .85)), calc.VerdictStop, "turn-warm-air", "damp"},
		{"86 F", aDay(t, false, f(86), .3), calc.VerdictGo, "", ""},
		{"94 F", aDay(t, false, f(94), .3), calc.VerdictWatch, "turn-cool-air", "lands-drier"},
		{"95 F", aDay(t, false, f(95), .3), calc.VerdictWatch, "turn-cool-air", "lands-drier"},
		{"100 F", aDay(t, false, f(100), .3), calc.VerdictWatch, "turn-cool-air", "lands-drier"},
		{"over 100 F", aDay(t, false, f(100.1), .3), calc.VerdictWait, "turn-cool-air", "hot-air"},
		{"hot and damp", aDay(t, false, 38, .9), calc.VerdictStop, "turn-cooler-drier", "dew-near"},
		{"40 C and 12 %", aDay(t, false, 40, .12), calc.VerdictWait, "turn-cool-air", "hot-air"},
		{"waterborne at 35 C and 20 %", aDay(t, true, 35, .2), calc.VerdictWait, "turn-cool-air", "lands-dry"},
		{"waterborne at 28 C and 20 %", aDay(t, true, 28, .2), calc.VerdictWatch, "turn-cool-air", "lands-drier"},
		{"waterborne at 28 C and 50 %", aDay(t, true, 28, .5), calc.VerdictGo, "", ""},
		{"waterborne in damp heat", aDay(t, true, 33, .95), calc.VerdictStop, "turn-cooler-drier", "slow-water"},
		{"waterborne in saturated air", aDay(t, true, 20, 1), calc.VerdictStop, "turn-warm-air", "still-water"},
		{"cold panel", panel(aDay(t, false, 22, .3), 14), calc.VerdictWait, "turn-warm-panel", "cold-panel"},
		{"hot panel", panel(aDay(t, false, 22, .3), 45), calc.VerdictWait, "turn-cool-panel", "hot-panel"},
		{"a panel at 100 F is close", panel(aDay(t, false, 22, .3), f(100)), calc.VerdictWatch, "turn-cool-panel", "close"},
		{"cold paint", paint(aDay(t, false, 22, .3), 12), calc.VerdictWait, "turn-warm-paint", "cold-paint"},
		{"paint below the dew point", paint(aDay(t, false, 28, .6), 18), calc.VerdictWait, "turn-warm-paint", "wet-paint"},
		{"paint a little above", paint(aDay(t, false, 28, .6), 20), calc.VerdictWatch, "turn-warm-paint", "close"},
		{"cold panel and paint", panel(paint(aDay(t, false, 22, .3), 12), 12), calc.VerdictWait, "turn-warm-both", "cold-paint"},
		{"panel under the dew point", panel(aDay(t, false, 22, .6), 13), calc.VerdictStop, "turn-warm-panel", "dew-on-panel"},
		{"panel 2.9 C above", panel(aDay(t, false, 20, .5), 12.2), calc.VerdictStop, "turn-warm-panel", "dew-near"},
		{"panel 3.1 C above", panel(aDay(t, false, 24, .5), 16), calc.VerdictWatch, "turn-warm-panel", "close"},
		{"panel 5 C above", panel(aDay(t, false, 24, .5), 18), calc.VerdictGo, "", ""},
	} {
		t.Run(x.name, func(t *testing.T) {
			a := solvedDay(t, x.r)
			assert.Equal(t, x.verdict, a.Verdict)
			assert.Equal(t, x.turn, a.Remedy.ID)
			assert.Equal(t, x.verdict == calc.VerdictStop, a.Stopped())
			assert.Equal(t, a.Remedy.Sentence(), a.Turn().ID)
			var ids []string
			for _, c := range a.Against {
				ids = append(ids, c.ID)
			}
			if x.cause == "" {
				assert.Empty(t, ids)
			} else {
				assert.Contains(t, ids, x.cause)
			}
		})
	}
}

// Without an instrument's error nothing is close, and without a gun nothing is said of how
// a coat lands.
func TestWhatIsNotKnownIsNotJudged(t *testing.T) {
	r := aDay(t, false, unit.Fahrenheit(60).C(), .5)
	r.Instruments = calc.Instruments{}
	assert.Equal(t, calc.VerdictGo, solvedDay(t, r).Verdict)
	r = aDay(t, true, 35, .2)
	r.Coat.Working, r.Gun = calc.Band{}, calc.Gun{}
	a := solvedDay(t, r)
	assert.False(t, a.InFlight.Known)
	assert.Equal(t, calc.VerdictGo, a.Verdict)
}

// Two coats on a panel take 3 min each and 10 min between them on a mild day (21 C): a mix
// that lasts 16 does, one of 15 does not, and the sheet's life that is advised does.
func TestAPotLifeShorterThanTheCoatsNeed(t *testing.T) {
	r := aDay(t, false, 21, .5)
	r.Coats = 2
	life := func(at time.Duration) calc.DayAnswer {
		r.PotLife, r.PotLifeAt = time.Duration(float64(at)*math.Pow(2, .1)), calc.SheetTemp // the sheet's is at 20 C
		return solvedDay(t, r)
	}
	assert.Equal(t, calc.VerdictGo, life(16*time.Minute+2*time.Second).Verdict)
	a := life(15 * time.Minute)
	assert.Equal(t, "wait:pot-life-short", judged(a.Judgement))
	assert.Equal(t, "turn-portions", a.Turn().ID)
	assert.Equal(t, "sheet", a.Turn().Figures[0].Name)
	r.PotLife = time.Duration(a.Turn().Figures[0].Value * float64(time.Second))
	assert.Equal(t, calc.VerdictGo, solvedDay(t, r).Verdict)
	r.Panels = 3
	assert.Equal(t, "wait:pot-life-short", judged(solvedDay(t, r).Judgement), "more panels take longer")
	r.Coats = 0
	assert.Equal(t, calc.VerdictGo, solvedDay(t, r).Verdict, "it is not known how many coats")
}

func with(r calc.DayRequest, change func(*calc.DayRequest)) calc.DayRequest {
	change(&r)
	return r
}

// warmPanel puts the panel well above the air, so that it is not what stands against
// spraying.
func warmPanel(r calc.DayRequest) calc.DayRequest {
	r.Panel = r.Air + 5
	return r
}

// One sealer's sheet: fast below 18 C, standard 18 to 25, slow above.
func TestGradeBandsOfASealerSheet(t *testing.T) {
	for c, want := range map[float64]calc.Grade{17.9: calc.GradeFast, 18: calc.GradeStandard, 25: calc.GradeStandard, 25.1: calc.GradeSlow, 32: calc.GradeSlow, 32.1: calc.GradeSlowest} {
		assert.Equal(t, want, calc.GradeFor(unit.Celsius(c), unit.Celsius(c), 3), "%v C", c)
	}
	at := unit.Celsius
	assert.Equal(t, calc.GradeStandard, calc.GradeFor(at(15), at(15), 4), "more than three panels: half a band slower")
	assert.Equal(t, calc.GradeSlow, calc.GradeFor(at(22), at(22), 4))
	assert.Equal(t, calc.GradeFast, calc.GradeFor(at(20), at(14), 1), "booth and panel both count")
}

// Two hours at 20 C are one at 30 C and four at 10 C (makers' page; US federal guide
// specification: half for every 10 C).
func TestPotLifeOfTheDay(t *testing.T) {
	r := aDay(t, false, 30, .4)
	r.PotLifeAt = calc.SheetTemp
	r.PotLife, r.Started, r.HasStarted = 2*time.Hour, calc.Clock(23*time.Hour+30*time.Minute), true
	p := solvedDay(t, r).PotLife
	assert.True(t, p.Known)
	assert.Equal(t, time.Hour, p.Life)
	assert.Equal(t, 40*time.Minute, p.Safe, "products that lose two thirds")
	assert.Equal(t, p.Safe, p.LastFill, "three quarters would be later")
	assert.Equal(t, calc.Clock(24*time.Hour+30*time.Minute), p.Ends, "past midnight")

	r = aDay(t, false, 10, .4)
	r.PotLife, r.PotLifeAt, r.Paint = 2*time.Hour, calc.SheetTemp, unit.Celsius(20)
	p = solvedDay(t, r).PotLife
	assert.Equal(t, 2*time.Hour, p.Life, "the warmer of paint and booth counts")
	r.Paint = unit.Celsius(10)
	assert.Equal(t, 4*time.Hour, solvedDay(t, r).PotLife.Life)

	r = aDay(t, false, 2, .4)
	r.PotLife, r.PotLifeAt = 2*time.Hour, calc.SheetTemp
	a := solvedDay(t, r)
	assert.False(t, a.PotLife.Known, "the rule does not reach there")
	assert.Contains(t, cautionIDs(a.Cautions), "pot-life-outside")
	assert.False(t, solvedDay(t, aDay(t, false, 20, .4)).PotLife.Known, "none was given")
}

func TestWhatADayRefuses(t *testing.T) {
	for field, change := range map[string]func(*calc.DayRequest){
		"temp":     func(r *calc.DayRequest) { r.Air = unit.Celsius(61) },
		"humidity": func(r *calc.DayRequest) { r.Humidity = math.NaN() },
		"panel":    func(r *calc.DayRequest) { r.Panel = unit.Celsius(-11) },
		"paint":    func(r *calc.DayRequest) { r.Paint = unit.Celsius(80) },
		"altitude": func(r *calc.DayRequest) { r.Altitude = 6000 },
		"panels":   func(r *calc.DayRequest) { r.Panels = 0 },
		"pot-life": func(r *calc.DayRequest) { r.PotLife = time.Second },
		"started":  func(r *calc.DayRequest) { r.HasStarted, r.Started = true, calc.Clock(24*time.Hour) },
	} {
		r := with(aDay(t, false, 20, .5), change)
		_, err := calc.SolveDay(&r)
		var p *calc.Problem
		require.ErrorAs(t, err, &p, field)
		assert.Equal(t, field, p.Field)
		assert.True(t, words.English().Has(p.ID), p.ID)
	}
}

func drawDay(t *rapid.T) calc.DayRequest {
	temps := rapid.Map(rapid.Float64Range(-10, 60), unit.Celsius)
	r := aDay(t, rapid.Bool().Draw(t, "water"), 20, rapid.Float64Range(.01, 1).Draw(t, "humidity"))
	r.Air, r.Panel, r.Paint = temps.Draw(t, "air"), temps.Draw(t, "panel"), temps.Draw(t, "paint")
	r.Altitude = unit.Length(rapid.Float64Range(-430, 5000).Draw(t, "altitude"))
	r.Coat.Hardener = rapid.SampledFrom(calc.Hardeners()).Draw(t, "hardener")
	r.Panels = rapid.IntRange(1, calc.MostPanels).Draw(t, "panels")
	if rapid.Bool().Draw(t, "with a pot life") {
		r.PotLifeAt = calc.SheetTemp
		r.PotLife = time.Duration(rapid.Int64Range(int64(time.Minute), int64(7*24*time.Hour)).Draw(t, "pot life"))
		r.HasStarted = rapid.Bool().Draw(t, "started")
		r.Started = calc.Clock(rapid.Int64Range(0, int64(24*time.Hour)-1).Draw(t, "at"))
	}
	return r
}

// A day that does not go is turned by the one thing advised, as printed, one to watch to go
// and another to watch at the most; a day that goes wants none.
func TestWhatIsAdvisedTurnsTheDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawDay(t)
		a := solvedDay(t, r)
		require.Equal(t, a.Verdict == calc.VerdictGo, a.Remedy.ID == "")
		require.GreaterOrEqual(t, a.Remedy.By, unit.TempDiff(0))
		// As printed, to a whole degree Fahrenheit.
		to := unit.Fahrenheit(math.Round(a.Remedy.To.F()))
		all := func(t unit.Temp) {
			r.Humidity = max(air.Reheated(r.Air, r.Humidity, t), .01)
			r.Air, r.Panel, r.Paint = t, max(r.Panel, t), max(r.Paint, t)
		}
		switch a.Remedy.ID {
		case "":
		case "turn-warm-panel":
			r.Panel = to
		case "turn-warm-paint":
			r.Paint = to
		case "turn-warm-both":
			r.Panel, r.Paint = max(r.Panel, to), max(r.Paint, to)
		case "turn-cool-panel":
			r.Panel = to
		case "turn-warm-air":
			require.LessOrEqual(t, a.Remedy.Least, a.Remedy.To)
			all(unit.Fahrenheit(math.Round(a.Remedy.Least.F())))
		case "turn-cool-air":
			all(to)
			r.Panel, r.Paint = to, max(to, 0)
		case "turn-drier", "turn-cooler-drier":
			r.Air, r.Panel, r.Paint, r.Humidity = a.Remedy.To, a.Remedy.To, a.Remedy.To, a.Remedy.Humidity-1e-6
		default:
			require.Fail(t, "unknown", a.Remedy.ID)
		}
		want := calc.VerdictGo
		if a.Verdict > calc.VerdictWatch {
			want = calc.VerdictWatch // in warm air, for how dry it lands
		}
		require.LessOrEqual(t, solvedDay(t, r).Verdict, want, "after %+v", a.Remedy)
	})
}

func TestWarmerNeverDriesSlower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawDay(t)
		before := solvedDay(t, r)
		t2 := unit.Celsius(rapid.Float64Range(r.Air.C(), 60).Draw(t, "warmer"))
		r.Humidity = air.Reheated(r.Air, r.Humidity, t2)
		r.Air, r.Panel = t2, max(r.Panel, t2)
		if r.Humidity < .01 {
			return // drier than a request may hold
		}
		after := solvedDay(t, r)
		require.GreaterOrEqual(t, after.Drying, before.Drying*(1-1e-9)-1e-12)
		require.LessOrEqual(t, after.Flash, before.Flash*(1+1e-9))
	})
}

func TestSlowerJobsNeverTakeFasterGrades(t *testing.T) {
	rank := map[calc.Grade]int{calc.GradeFast: 0, calc.GradeStandard: 1, calc.GradeSlow: 2, calc.GradeSlowest: 3}
	temps := rapid.Map(rapid.Float64Range(-10, 60), unit.Celsius)
	rapid.Check(t, func(t *rapid.T) {
		booth, panel, n := temps.Draw(t, "booth"), temps.Draw(t, "panel"), rapid.IntRange(1, 20).Draw(t, "panels")
		g := rank[calc.GradeFor(booth, panel, n)]
		require.GreaterOrEqual(t, rank[calc.GradeFor(booth+1, panel, n)], g)
		require.GreaterOrEqual(t, rank[calc.GradeFor(booth, panel+1, n)], g)
		require.GreaterOrEqual(t, rank[calc.GradeFor(booth, panel, n+1)], g)
	})
}

func TestADayIsAnsweredInFiniteFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := solvedDay(t, drawDay(t))
		finite(t, reflect.ValueOf(a), "day")
		require.GreaterOrEqual(t, a.Flash, 1/coat.SolventDrive(aDay(t, false, 20, .5).Coat.Solvent, unit.Celsius(60), coat.ReferencePressure)*.5)
		require.LessOrEqual(t, a.Flash, coat.LongestFlash)
		p := a.PotLife
		require.True(t, !p.Known || p.LastFill <= p.Safe && p.Ends >= p.FillBy)
	})
}

// A day that was not read is watched, whatever else it is: it is to be read before anything.
func TestAnAssumedDayIsWatched(t *testing.T) {
	for _, c := range []struct {
		day  calc.DayRequest
		want calc.Verdict
	}{
		{aDay(t, false, 22, .5), calc.VerdictWatch},
		{aDay(t, false, 34.4, .3), calc.VerdictWatch}, // lands drier
		{aDay(t, false, 10, .5), calc.VerdictWait},    // too cold
		{aDay(t, false, 22, .9), calc.VerdictStop},    // too damp
	} {
		read := solvedDay(t, c.day)
		c.day.Assumed = true
		a := solvedDay(t, c.day)
		require.Equal(t, c.want, a.Verdict)
		at := slices.IndexFunc(a.Against, func(c calc.Cause) bool { return c.ID == "day-assumed" })
		require.GreaterOrEqual(t, at, 0)
		require.Equal(t, "turn-read", a.Against[at].Turn.ID)
		if c.want == calc.VerdictWatch {
			require.Zero(t, at, "it comes before what else is to be watched")
		}
		require.Equal(t, append([]calc.Cause{}, read.Against...), slices.Delete(slices.Clone(a.Against), at, at+1), "all else is as on a day that was read")
		require.Equal(t, read.Remedy, a.Remedy)
	}
}

// A stage's times go with flash-off by the one rule: twice as slow, twice as long; what the
// stage does not say, and a film that does not dry, has none.
func TestWaitsGoWithFlashOff(t *testing.T) {
	r := aDay(t, false, 21, 0.5)
	r.Coat.Stage.Flash = calc.Between[time.Duration]{Low: 5 * time.Minute, Usual: 8 * time.Minute, High: 15 * time.Minute, Ground: calc.Ground{Basis: calc.CommonPractice}}
	for _, c := range []float64{12, 21, 32} {
		r.Air, r.Panel = unit.Celsius(c), unit.Celsius(c)
		a := solvedDay(t, r)
		flash, recoat := a.Waits(&r)
		require.True(t, flash.Known())
		assert.InDelta(t, 8*a.Flash, flash.Usual.Minutes(), 1e-6)
		assert.InDelta(t, 5*a.Flash, flash.Low.Minutes(), 1e-6)
		assert.InDelta(t, 15*a.Flash, flash.High.Minutes(), 1e-6)
		assert.False(t, recoat.Known(), "the stage has none")
	}
	a := calc.DayAnswer{Flash: coat.LongestFlash}
	flash, _ := a.Waits(&r)
	assert.False(t, flash.Known())
}
