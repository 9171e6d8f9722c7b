package presets_test

import (
	"testing"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sheetOf is what was typed, a field and its text by turns.
func sheetOf(pairs ...string) presets.Sheet {
	s := presets.Sheet{}
	for i := 0; i < len(pairs); i += 2 {
		s.Add(pairs[i], presets.Typed(pairs[i+1]))
	}
	return s
}

func filmOf(t testing.TB, c *presets.Catalogue, pairs ...string) (calc.FilmRequest, calc.FilmAnswer) {
	t.Helper()
	r, faults := c.Film(sheetOf(pairs...), unit.US)
	require.Empty(t, faults)
	a, err := calc.SolveFilm(&r)
	require.NoError(t, err)
	return r, a
}

func mixOf(t testing.TB, c *presets.Catalogue, pairs ...string) (calc.MixRequest, calc.MixAnswer) {
	t.Helper()
	r, faults := c.Mix(sheetOf(pairs...), unit.US)
	require.Empty(t, faults)
	a, err := calc.SolveMix(&r)
	require.NoError(t, err)
	return r, a
}

// Every coat of the catalogue can be laid and mixed on every gun as it stands: inside
// its own films, each coat inside what one may have, at a speed a hand can hold.
func TestEveryShippedCoatIsLaidAsItStands(t *testing.T) {
	c := shippedCatalogue(t)
	for _, x := range c.Choices(presets.FieldCoat) {
		for _, g := range c.Choices(presets.FieldGun) {
			what := x.ID + " on " + g.ID
			r, a := filmOf(t, c, "coat", x.ID, "gun", g.ID, "fluid-rate", "180")
			assert.Equal(t, coat.Inside, a.Running.State, what)
			assert.Equal(t, r.Usual.Coats, a.Coats.Value, what)
			assert.False(t, a.Stopped(), what)
			assert.Greater(t, a.Pass.Speed.FeetPerSecond(), 0.3, what)
			assert.Less(t, a.Pass.Speed.FeetPerSecond(), 3.5, what)
			for _, st := range []calc.Ground{r.Wants.Ground, r.Usual.Ground, r.Solids.Ground, r.Held.Class.Ground, r.Fan.Ground} {
				assert.NotEmpty(t, st.Basis, what)
				assert.NotEmpty(t, st.Source, what)
				assert.NotEqual(t, calc.Sheet, st.Basis, what)
			}
			_, m := mixOf(t, c, "coat", x.ID, "gun", g.ID, "area", "hood")
			assert.False(t, m.Stopped(), what)
			assert.Greater(t, m.Need.Volume.Litres(), 0.1, what)
		}
	}
}

// What the trade pages say of clear: 2.0 to 2.5 mil, failing over 3, two full wet
// coats. A sealer sheet: 15 to 35 um in one coat.
func TestShippedFilmsOfPublishedSheets(t *testing.T) {
	c := shippedCatalogue(t)
	clear, _ := filmOf(t, c, "coat", "clear")
	assert.InDelta(t, 2.0, float64(clear.Wants.Low/coat.Mil), 1e-9)
	assert.InDelta(t, 2.5, float64(clear.Wants.High/coat.Mil), 1e-9)
	assert.InDelta(t, 3.0, float64(clear.Wants.Most/coat.Mil), 1e-9)
	assert.Equal(t, 2, clear.Usual.Coats)
	assert.Equal(t, calc.Published, clear.Wants.Basis)
	assert.Equal(t, calc.Estimate, clear.Solids.Basis, "solids are from memory")
	sealer, _ := filmOf(t, c, "coat", "sealer")
	assert.InDelta(t, 15, float64(sealer.Wants.Low/coat.Micrometre), 0.5)
	assert.InDelta(t, 35, float64(sealer.Wants.High/coat.Micrometre), 1)
	assert.Equal(t, 1, sealer.Usual.Coats)
}

// What is typed from the product's sheet replaces the catalogue's and says so.
func TestTheSheetReplacesTheCatalogue(t *testing.T) {
	c := shippedCatalogue(t)
	r, a := filmOf(t, c, "coat", "clear", "film", "2.4", "solids", "50", "coats", "3", "film-limit", "2.6mil")
	for _, st := range []calc.Ground{r.Dry.Ground, r.Solids.Ground, a.Coats.Ground, r.Wants.Ground} {
		assert.Equal(t, calc.Sheet, st.Basis)
	}
	assert.InDelta(t, 2.4, float64(r.Dry.Value/coat.Mil), 1e-9)
	assert.InDelta(t, 0.5, r.Solids.Value, 1e-12)
	assert.Equal(t, 3, a.Coats.Value)
	assert.InDelta(t, 2.6, float64(r.Wants.Most/coat.Mil), 1e-9)
	assert.False(t, a.About)
	for _, reason := range a.Reasons {
		if reason.About == "film" || reason.About == "solids" {
			assert.Equal(t, "the product's sheet, as typed", words.English().Standing(reason.Ground), reason.ID)
		}
	}
	m, _ := mixOf(t, c, "coat", "clear", "gun", "reduced-pressure", "area", "4m2", "transfer", "50", "loss", "50mL", "cup-size", "1L")
	for _, st := range []calc.Ground{m.Held.Class.Ground, m.Loss.Ground, m.Cup.Ground} {
		assert.Equal(t, calc.AsTyped, st)
	}
}

// Solids of the ready mix: alone, of the ratio's parts, and with thinner on top.
func TestSolidsOfTheReadyMix(t *testing.T) {
	c := shippedCatalogue(t)
	for _, x := range []struct {
		pairs []string
		want  float64
	}{
		{[]string{"solids", "45"}, 0.45},
		{[]string{"solids", "45%", "thinner", "10"}, 0.45 / 1.1},
		{[]string{"solids", "50", "solids", "60", "ratio", "4:1:1"}, (4*0.5 + 0.6) / 6},
		{[]string{"solids", "50 + 60 + 0", "ratio", "2:1+10%"}, (2*0.5 + 0.6) / 3.3},
	} {
		r, _ := filmOf(t, c, append(x.pairs, "coat", "clear")...)
		assert.InDelta(t, x.want, r.Solids.Value, 1e-12, x.pairs)
	}
}

func TestAreasAndPrices(t *testing.T) {
	c := shippedCatalogue(t)
	const ft2 = unit.MetrePerFoot * unit.MetrePerFoot
	r, a := mixOf(t, c, "coat", "clear", "gun", "reduced-pressure", "area", "1.2m2", "area", "2 doors", "area", "3 x fender", "area", "10",
		"ratio", "4:1", "price", "$60/L", "price", "100/gal")
	require.Len(t, r.Panels, 4)
	assert.InDelta(t, 1.2, float64(r.Panels[0].Low), 1e-12)
	assert.InDelta(t, 20*ft2, float64(r.Panels[1].Low), 1e-9)
	assert.InDelta(t, 26*ft2, float64(r.Panels[1].High), 1e-9)
	assert.InDelta(t, 18*ft2, float64(r.Panels[2].Low), 1e-9)
	assert.InDelta(t, 10*ft2, float64(r.Panels[3].High), 1e-9, "bare is ft2")
	assert.False(t, r.Panels[3].Usual)
	assert.InDeltaSlice(t, []float64{60, 100 / unit.LitrePerUSGal}, r.Prices, 1e-9)
	assert.True(t, a.Priced)
	metric, faults := c.Mix(sheetOf("coat", "clear", "gun", "reduced-pressure", "area", "10", "price", "60/L"), unit.Metric)
	require.Empty(t, faults)
	assert.InDelta(t, 10, float64(metric.Panels[0].Low), 1e-12)
	assert.InDeltaSlice(t, []float64{60}, metric.Prices, 1e-12)
}

// The shop's file: a ratio and solids of its own, marked so; the rest stays what it was.
func TestShopsOwnMix(t *testing.T) {
	const toml = `
[coat.clear.mix]
solids = "48%"
ratio = "2:1"
[coat.house-clear]
name = "house clear"
basis = "common practice"
working.reduced-pressure = { start = "26psi", low = "23psi", high = "30psi" }
[gun.house]
class = "reduced-pressure"
inlet = "29psi"
flow = "11cfm"
cap = "18psi"
nearest = "5in"
farthest = "7in"
basis = "published"
valve = { conductance = 6.5, ratio = 0.3, turns = 2.0, shape = [[0, 0], [1, 1]] }
`
	c, err := presets.Load([]byte(toml), "shop.toml")
	require.NoError(t, err)
	r, a := mixOf(t, c, "coat", "clear", "gun", "house", "area", "4m2")
	assert.InDelta(t, 0.48, r.Solids.Value, 1e-12)
	assert.Equal(t, calc.OwnReadings, r.Solids.Basis)
	assert.Len(t, a.Parts, 2)
	assert.Equal(t, calc.Published, r.Wants.Basis, "the film is still the catalogue's")
	assert.InDelta(t, 0.65, r.Held.Class.Value.Transfer, 1e-12, "its class's")
	for _, item := range c.Choices(presets.FieldCoat) {
		if item.ID == "clear" {
			assert.Equal(t, calc.CommonPractice, item.Standing.Basis, "its pressures are still the catalogue's")
		}
	}
	// A coat without tables of its own must be told all of it.
	_, faults := c.Film(sheetOf("coat", "house-clear"), unit.US)
	var fields []string
	for _, f := range faults {
		fields = append(fields, f.Field)
	}
	assert.Equal(t, []string{"film", "coats", "solids"}, fields)
	_, told := filmOf(t, c, "coat", "house-clear", "film", "2", "coats", "2", "solids", "40", "gun", "house", "fluid-rate", "180", "fan", "9in", "overlap", "50")
	assert.True(t, told.Pass.Known)
	assert.Equal(t, coat.Inside, told.Running.State, "no limits are known")
}

func TestFilmAndMixFaults(t *testing.T) {
	c := shippedCatalogue(t)
	for _, x := range []struct {
		of    string
		pairs []string
		field string
		says  string
	}{
		{"film", nil, "coat", "choose epoxy-primer"},
		{"film", []string{"gun", "popgun"}, "gun", "choose high-volume"},
		{"film", []string{"film", "thick"}, "film", "type a number with"},
		{"film", []string{"film", "900mil"}, "film", "outside"},
		{"film", []string{"coats", "1.5"}, "coats", "whole number of coats, 1 to 20"},
		{"film", []string{"solids", "0"}, "solids", "outside 1 to 100%"},
		{"film", []string{"solids", "60 + 30"}, "solids", "give the mixing ratio"},
		{"film", []string{"solids", "60 + 30 + 0", "ratio", "4:1"}, "solids", "no more than the 2 parts"},
		{"film", []string{"solids", "60 + 300", "ratio", "4:1"}, "solids", "from 0 to 100%"},
		{"film", []string{"thinner", "10"}, "thinner", "give solids beside it"},
		{"film", []string{"thinner", "900", "solids", "50"}, "thinner", "0 to 200%"},
		{"film", []string{"ratio", "4", "solids", "50 + 20"}, "ratio", "4:1:1"},
		{"film", []string{"film-limit", "0"}, "film-limit", "above 0"},
		{"film", []string{"before", "-1"}, "before", "outside"},
		{"film", []string{"fluid-rate", "180"}, "gun", "needed beside fluid-rate"},
		{"film", []string{"distance", "9in"}, "gun", "needed beside distance"},
		{"film", []string{"gun-speed", "1ft/s"}, "fluid-rate", "needed beside gun-speed"},
		{"film", []string{"height", "3ft"}, "fluid-rate", "needed beside height"},
		{"film", []string{"gun", "reduced-pressure", "fluid-rate", "fast"}, "fluid-rate", "180mL/min"},
		{"film", []string{"gun", "reduced-pressure", "fluid-rate", "0"}, "fluid-rate", "180mL/min"},
		{"film", []string{"gun", "reduced-pressure", "cup-volume", "100mL"}, "cup-time", "type a number"},
		{"film", []string{"gun", "reduced-pressure", "tip", "1.3"}, "viscosity", "needed beside tip"},
		{"film", []string{"gun", "reduced-pressure", "tip", "1.3", "cup", "4mm", "seconds", "18"}, "cup", "which one"},
		{"film", []string{"gun", "reduced-pressure", "tip", "1.3", "cup", "din4", "seconds", "2"}, "seconds", "too short"},
		{"film", []string{"gun", "reduced-pressure", "fluid-rate", "180", "gun-speed", "0"}, "gun-speed", "a length a second"},
		{"film", []string{"gun", "reduced-pressure", "transfer", "99", "fluid-rate", "180"}, "transfer", "outside 10 to 90%"},
		{"film", []string{"wet", "x"}, "wet", "last wetted tooth"},
		{"film", []string{"wet", "5,4"}, "wet", "outside"},
		{"mix", nil, "gun", "needed for what lands"},
		{"mix", []string{"gun", "reduced-pressure"}, "area", "hood, door"},
		{"mix", []string{"gun", "reduced-pressure", "area", "wing"}, "area", "hood, door"},
		{"mix", []string{"gun", "reduced-pressure", "area", "99 door"}, "area", "1 to 50"},
		{"mix", []string{"gun", "reduced-pressure", "area", "0"}, "area", "above 0"},
		{"mix", []string{"gun", "reduced-pressure", "area", "4", "price", "4/L + 5/L"}, "price", "2 prices for 0 parts"},
		{"mix", []string{"gun", "reduced-pressure", "area", "4", "price", "80"}, "price", "with its volume"},
		{"mix", []string{"gun", "reduced-pressure", "area", "4", "price", "45%"}, "price", "60/L"},
		{"mix", []string{"gun", "reduced-pressure", "area", "4", "price", "45/2L"}, "price", "60/L"},
		{"mix", []string{"gun", "reduced-pressure", "area", "4", "ratio", "a:b"}, "ratio", "4:1:1"},
		{"mix", []string{"gun", "reduced-pressure", "area", "4", "cup-size", "1mL"}, "cup-size", "outside"},
		{"mix", []string{"gun", "reduced-pressure", "area", "4", "pot-life", "1s"}, "pot-life", "outside"},
	} {
		s := sheetOf(x.pairs...)
		if x.field != "coat" {
			s["coat"] = "clear"
		}
		var faults []*presets.FieldError
		if x.of == "film" {
			_, faults = c.Film(s, unit.US)
		} else {
			_, faults = c.Mix(s, unit.US)
		}
		require.NotEmpty(t, faults, x.pairs)
		assert.Equal(t, x.field, faults[0].Field, "%v: %v", x.pairs, faults[0])
		assert.Contains(t, faults[0].Want, x.says, x.pairs)
	}
}
