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

// Grounds of the invented coat and gun of these tests.
var (
	sheet    = calc.Ground{Basis: calc.Sheet}
	estimate = calc.Ground{Basis: calc.Estimate, Source: "invented"}
)

// application is a clear of 55 um in two coats at 45 % solids, on a gun that lands 65 %.
func application() calc.Application {
	p, d := unit.PSIG(26), unit.Inches(5.5)
	return calc.Application{
		CoatID: "clear", Coat: "clear", GunID: "trade", Gun: "reduced-pressure", Hardener: calc.Isocyanate,
		Solids: calc.Stated[float64]{Value: 0.45, Ground: sheet},
		Dry:    calc.Stated[unit.Length]{Value: 55 * coat.Micrometre, Ground: sheet},
		Wants:  calc.FilmWants{Known: true, Low: 2 * coat.Mil, High: 2.5 * coat.Mil, Most: 3 * coat.Mil, Ground: estimate},
		Usual:  calc.UsualCoats{Coats: 2, Low: 1 * coat.Mil, High: 1.2 * coat.Mil, Ground: estimate},
		Held: calc.Holding{
			Known: true, Pressure: p, Distance: d, Choked: 0.9,
			Class: calc.Stated[coat.GunTransfer]{Value: coat.GunTransfer{Transfer: 0.65, Pressure: p, Distance: d}, Ground: estimate},
		},
	}
}

func filmRequest(change ...func(*calc.FilmRequest)) *calc.FilmRequest {
	r := &calc.FilmRequest{
		Application: application(),
		Fluid:       calc.Fluid{From: calc.FluidGiven, Rate: coat.MLPerMin(180)},
		Fan:         calc.Stated[unit.Length]{Value: unit.MM(250), Ground: estimate},
		Overlap:     calc.Stated[float64]{Value: 0.5, Ground: estimate},
	}
	for _, c := range change {
		c(r)
	}
	return r
}

func filmOf(t require.TestingT, r *calc.FilmRequest) calc.FilmAnswer {
	a, err := calc.SolveFilm(r)
	require.NoError(t, err)
	return a
}

func mil(l unit.Length) float64    { return float64(l / coat.Mil) }
func micron(l unit.Length) float64 { return float64(l / coat.Micrometre) }

func cautionIDs(all []calc.Caution) (ids []string) {
	for _, c := range all {
		ids = append(ids, c.ID)
	}
	return ids
}

func reasonIDs(all []calc.Reason) (ids []string) {
	for _, r := range all {
		ids = append(ids, r.ID)
	}
	return ids
}

// By arithmetic apart from this package: clear of 2.2 mil at 45 % is 4.9 mil wet in
// all, about 2.4 mil a coat in two.
func TestClearByHand(t *testing.T) {
	a := filmOf(t, filmRequest(func(r *calc.FilmRequest) { r.Dry.Value = 2.2 * coat.Mil }))
	assert.Equal(t, 2, a.Coats.Value)
	assert.InDelta(t, 2.44, mil(a.Each.Wet), 0.005)
	assert.InDelta(t, 4.89, 2*mil(a.Each.Wet), 0.005)
	assert.InDelta(t, 1.1, mil(a.Each.Dry), 1e-9)
	assert.InDelta(t, 2.2, mil(a.Running.Total), 1e-9)
	assert.Equal(t, coat.Inside, a.Running.State)
	assert.False(t, a.Stopped())
}

// A film-thickness bulletin: 8 mil wet at 35 % solids leaves 2.8 mil, and with 10 % of
// thinner added 2.55 by arithmetic. Two epoxy primer sheets: 47 to 65 um wet at 37 %
// leave 18 to 25 um, 94 to 118 um at 53 % leave 50 to 62 um.
func TestCombsOfPublishedFilms(t *testing.T) {
	for _, c := range []struct {
		name         string
		solids       float64
		wet, next    unit.Length
		low, high    float64 // um
		withinMicron float64
	}{
		{"bulletin", 0.35, 8 * coat.Mil, 8 * coat.Mil, 2.8 * 25.4, 2.8 * 25.4, 0.001},
		{"bulletin with a tenth of thinner", 0.35 / 1.1, 8 * coat.Mil, 8 * coat.Mil, 2.55 * 25.4, 2.55 * 25.4, 0.2},
		{"epoxy at 37 %", 0.37, 47 * coat.Micrometre, 65 * coat.Micrometre, 18, 25, 1},
		{"epoxy at 53 %", 0.53, 94 * coat.Micrometre, 118 * coat.Micrometre, 50, 62, 1},
	} {
		a := filmOf(t, filmRequest(func(r *calc.FilmRequest) {
			r.Solids.Value = c.solids
			r.Combs = []calc.CombReading{{Wetted: c.wet, Next: c.next}}
		}))
		require.Len(t, a.Laid, 1, c.name)
		assert.InDelta(t, c.low, micron(a.Laid[0].Low), c.withinMicron, c.name)
		assert.InDelta(t, c.high, micron(a.Laid[0].High), c.withinMicron, c.name)
	}
}

// By hand: 180 mL/min is 3e-6 m3/s; 65 % of it over steps of 125 mm leaves 15.6e-6 m2/s,
// which at 27.5/0.45 = 61.1 um wet is 0.2553 m/s.
func TestGunSpeedByHand(t *testing.T) {
	a := filmOf(t, filmRequest(func(r *calc.FilmRequest) { r.Height = 1 }))
	p := a.Pass
	require.True(t, p.Known)
	assert.InDelta(t, 0.2553, float64(p.Speed), 1e-4)
	assert.InDelta(t, 125, p.Step.MM(), 1e-9)
	assert.Equal(t, 7, p.Passes, "250 mm and six steps of 125")
	assert.InEpsilon(t, 0.75, float64(p.Low/p.Speed), 1e-9, "transfer may be a quarter less")
	assert.InEpsilon(t, 1.25, float64(p.High/p.Speed), 1e-9)
	assert.Zero(t, a.AtSpeed)

	at := filmOf(t, filmRequest(func(r *calc.FilmRequest) { r.GunSpeed = 2 * p.Speed }))
	assert.InDelta(t, micron(a.Each.Wet)/2, micron(at.AtSpeed.Wet), 1e-9, "twice as fast leaves half")
	assert.InDelta(t, 27.5, micron(at.Running.Total), 1e-9)
	assert.Contains(t, cautionIDs(at.Cautions), "film-under")
}

func TestFluidRateIsTakenAsItIsKnown(t *testing.T) {
	timed := filmOf(t, filmRequest(func(r *calc.FilmRequest) {
		r.Fluid = calc.Fluid{From: calc.FluidTimed, CupVolume: unit.Litres(0.09), CupTime: 30}
	}))
	assert.InDelta(t, 180, timed.Pass.Rate.Value.MLPerMin(), 1e-9)
	assert.Contains(t, reasonIDs(timed.Reasons), "rate-timed")
	tip := filmOf(t, filmRequest(func(r *calc.FilmRequest) {
		r.Fluid = calc.Fluid{From: calc.FluidTip, Tip: unit.MM(1.3), Viscosity: unit.MM2PerS(57)}
	}))
	assert.True(t, tip.Pass.Rate.Estimate)
	assert.InEpsilon(t, 0.6*0.75, float64(tip.Pass.Low/tip.Pass.Speed), 1e-9, "rate and transfer both low")
	assert.Contains(t, reasonIDs(tip.Reasons), "rate-tip")
	none := filmOf(t, filmRequest(func(r *calc.FilmRequest) { r.Fluid = calc.Fluid{} }))
	assert.False(t, none.Pass.Known)
	assert.Contains(t, reasonIDs(none.Reasons), "rate-unknown")
}

func TestCoatsStillToCome(t *testing.T) {
	comb := func(teeth ...float64) func(*calc.FilmRequest) {
		return func(r *calc.FilmRequest) {
			r.Dry.Value = 2.2 * coat.Mil
			for _, m := range teeth {
				r.Combs = append(r.Combs, calc.CombReading{Wetted: unit.Length(m) * coat.Mil, Next: unit.Length(m) * coat.Mil})
			}
		}
	}
	one := filmOf(t, filmRequest(comb(2.4)))
	assert.Equal(t, 1, one.Left)
	assert.InDelta(t, 2.2-1.08, mil(one.Each.Dry), 1e-9, "what 2.4 mil wet left to do")
	assert.InDelta(t, 2.2, mil(one.Running.Total), 1e-9)
	thin := filmOf(t, filmRequest(comb(2)))
	assert.Equal(t, 1, thin.Left)
	assert.InDelta(t, 1.2, mil(thin.Each.Dry), 1e-9, "the most that a coat may have")
	assert.InDelta(t, 2.1, mil(thin.Running.Total), 1e-9)
	two := filmOf(t, filmRequest(comb(2, 2)))
	assert.Zero(t, two.Left, "1.8 mil is too little, and with the 1.0 mil of another coat too much")
	assert.InDelta(t, 1.0, mil(two.OneMore.Dry), 1e-9)
	assert.InDelta(t, 2.8, mil(two.OneMore.Total), 1e-9)
	assert.InDelta(t, 1.8, mil(two.Running.Total), 1e-9)
	assert.Contains(t, cautionIDs(two.Cautions), "film-under")
	assert.Contains(t, cautionIDs(two.Cautions), "film-stop-here")
	third := filmOf(t, filmRequest(comb(1.5, 1.5)))
	assert.Equal(t, 1, third.Left, "1.35 mil of two coats leaves room for a third")
	assert.InDelta(t, 2.35, mil(third.Running.Total), 1e-9)
	near := filmOf(t, filmRequest(comb(4.5)))
	assert.Zero(t, near.Left, "2.0 mil of one coat will do")
	assert.InDelta(t, 3.0, mil(near.OneMore.Total), .03)
	thick := filmOf(t, filmRequest(comb(5.5)))
	assert.Zero(t, thick.Left, "one coat was all of it")
	assert.Equal(t, coat.Inside, thick.Running.State)
	over := filmOf(t, filmRequest(comb(4, 3)))
	assert.True(t, over.Stopped(), "3.15 mil of clear is past 3")
}

func TestWhatBringsUpEachFilmCaution(t *testing.T) {
	for _, c := range []struct {
		id     string
		level  calc.Level
		change func(*calc.FilmRequest)
	}{
		{"film-past-most", calc.Stop, func(r *calc.FilmRequest) { r.Dry.Value = 3.1 * coat.Mil }},
		{"film-over", calc.Warn, func(r *calc.FilmRequest) { r.Dry.Value = 2.8 * coat.Mil }},
		{"film-under", calc.Warn, func(r *calc.FilmRequest) { r.Dry.Value = 1.5 * coat.Mil }},
		{"film-whole-near", calc.Warn, func(r *calc.FilmRequest) { r.Before = 9 * coat.Mil }},
		{"film-whole-over", calc.Stop, func(r *calc.FilmRequest) { r.Before = 11 * coat.Mil }},
		{"film-heavy-coat", calc.Warn, func(r *calc.FilmRequest) { r.Coats.Value = 1 }},
		{"film-heavy-speed", calc.Warn, func(r *calc.FilmRequest) { r.GunSpeed = 0.15 }},
		{"film-hand-slow", calc.Warn, func(r *calc.FilmRequest) { r.Fluid.Rate = coat.MLPerMin(80) }},
		{"film-hand-fast", calc.Warn, func(r *calc.FilmRequest) { r.Fluid.Rate = coat.MLPerMin(900) }},
		{"film-no-hand-slow", calc.Stop, func(r *calc.FilmRequest) { r.Fluid.Rate = coat.MLPerMin(20) }},
		{"film-no-hand-fast", calc.Stop, func(r *calc.FilmRequest) { r.Fluid.Rate, r.Dry.Value = coat.MLPerMin(1400), 10*coat.Micrometre }},
		{"film-stop-here", calc.Note, func(r *calc.FilmRequest) {
			r.Combs = []calc.CombReading{{Wetted: 5 * coat.Mil, Next: 5 * coat.Mil}}
		}},
		{"film-comb-low", calc.Note, func(r *calc.FilmRequest) {
			r.Combs = []calc.CombReading{{Wetted: 2 * coat.Mil, Next: 2 * coat.Mil}}
		}},
	} {
		calm := filmOf(t, filmRequest())
		assert.NotContains(t, cautionIDs(calm.Cautions), c.id)
		a := filmOf(t, filmRequest(c.change))
		i := slices.IndexFunc(a.Cautions, func(x calc.Caution) bool { return x.ID == c.id })
		require.GreaterOrEqual(t, i, 0, "%s not in %v", c.id, cautionIDs(a.Cautions))
		assert.Equal(t, c.level, a.Cautions[i].Level, c.id)
		if c.level == calc.Stop {
			assert.True(t, a.Stopped(), c.id)
		}
		assert.Contains(t, cautionIDs(a.Cautions), "isocyanate")
	}
}

func TestProblemsOfAFilmNameTheirField(t *testing.T) {
	for _, c := range []struct {
		field, why string
		change     func(*calc.FilmRequest)
	}{
		{"solids", "0% is outside 1 to 100%", func(r *calc.FilmRequest) { r.Solids.Value = 0 }},
		{"film", "400 mil is outside", func(r *calc.FilmRequest) { r.Dry.Value = 400 * coat.Mil }},
		{"coats", "21 is outside 1 to 20", func(r *calc.FilmRequest) { r.Coats.Value = 21 }},
		{"before", "", func(r *calc.FilmRequest) { r.Before = -1 }},
		{"fluid-rate", "0.5 mL/min", func(r *calc.FilmRequest) { r.Fluid.Rate = coat.MLPerMin(0.5) }},
		{"cup-time", "", func(r *calc.FilmRequest) {
			r.Fluid = calc.Fluid{From: calc.FluidTimed, CupVolume: unit.Litres(0.1)}
		}},
		{"cup-time", "6000 mL/min", func(r *calc.FilmRequest) {
			r.Fluid = calc.Fluid{From: calc.FluidTimed, CupVolume: unit.Litres(0.1), CupTime: 1}
		}},
		{"viscosity", "", func(r *calc.FilmRequest) { r.Fluid = calc.Fluid{From: calc.FluidTip, Tip: unit.MM(1.3)} }},
		{"fan", "", func(r *calc.FilmRequest) { r.Fan.Value = 2 }},
		{"overlap", "", func(r *calc.FilmRequest) { r.Overlap.Value = 1 }},
		{"gun-speed", "", func(r *calc.FilmRequest) { r.GunSpeed = 9 }},
		{"gun-speed", "so slow a gun", func(r *calc.FilmRequest) {
			r.GunSpeed, r.Fluid.Rate, r.Solids.Value, r.Fan.Value = 0.05, coat.MLPerMin(1500), 1, unit.MM(10)
		}},
		{"wet", "", func(r *calc.FilmRequest) { r.Combs = []calc.CombReading{{Wetted: coat.Mil, Next: coat.Micrometre}} }},
		{"wet", "more readings", func(r *calc.FilmRequest) { r.Combs = make([]calc.CombReading, 21) }},
		{"transfer", "", func(r *calc.FilmRequest) { r.Held.Class.Value.Transfer = 0.95 }},
		{"distance", "", func(r *calc.FilmRequest) { r.Held.Distance = 1 }},
		{"solids", "", func(r *calc.FilmRequest) { r.Solids.Value = math.NaN() }},
	} {
		_, err := calc.SolveFilm(filmRequest(c.change))
		var p *calc.Problem
		require.ErrorAs(t, err, &p, c.field)
		assert.Equal(t, c.field, p.Field, why(p))
		assert.Contains(t, why(p), c.why)
		assert.NotContains(t, why(p), "e+")
	}
}
