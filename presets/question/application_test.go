package question_test

import (
	"testing"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every coat of the catalogue can be laid and mixed on every gun as it stands: inside
// its own films, each coat inside what one may have, at a speed a hand can hold.
func TestEveryShippedCoatIsLaidAsItStands(t *testing.T) {
	r := questiontest.Open(t)
	for _, x := range r.Choices(question.Coat) {
		for _, g := range r.Choices(question.Gun) {
			what := x.ID + " on " + g.ID
			q, a := film(t, r, questiontest.Texts("coat", x.ID, "gun", g.ID, "fluid-rate", "180"))
			assert.Equal(t, coat.Inside, a.Running.State, what)
			assert.Equal(t, q.Usual.Coats, a.Coats.Value, what)
			assert.False(t, a.Stopped(), what)
			assert.Greater(t, a.Pass.Speed.FeetPerSecond(), 0.3, what)
			assert.Less(t, a.Pass.Speed.FeetPerSecond(), 3.5, what)
			for _, st := range []calc.Ground{q.Wants.Ground, q.Usual.Ground, q.Solids.Ground, q.Held.Class.Ground, q.Fan.Ground} {
				assert.NotEmpty(t, st.Basis, what)
				assert.NotEmpty(t, st.Source, what)
				assert.NotEqual(t, calc.Sheet, st.Basis, what)
			}
			_, m := mix(t, r, questiontest.Texts("coat", x.ID, "gun", g.ID, "area", "hood"))
			assert.False(t, m.Stopped(), what)
			assert.Greater(t, m.Need.Volume.Litres(), 0.1, what)
		}
	}
}

// What the trade pages say of clear: 2.0 to 2.5 mil, failing over 3, two full wet
// coats. A sealer sheet: 15 to 35 um in one coat.
func TestShippedFilmsOfPublishedSheets(t *testing.T) {
	r := questiontest.Open(t)
	clear, _ := film(t, r, questiontest.Texts("coat", "clear"))
	assert.InDelta(t, 2.0, float64(clear.Wants.Low/coat.Mil), 1e-9)
	assert.InDelta(t, 2.5, float64(clear.Wants.High/coat.Mil), 1e-9)
	assert.InDelta(t, 3.0, float64(clear.Wants.Most/coat.Mil), 1e-9)
	assert.Equal(t, 2, clear.Usual.Coats)
	assert.Equal(t, calc.Published, clear.Wants.Basis)
	assert.Equal(t, calc.Estimate, clear.Solids.Basis, "solids are from memory")
	sealer, _ := film(t, r, questiontest.Texts("coat", "sealer"))
	assert.InDelta(t, 15, float64(sealer.Wants.Low/coat.Micrometre), 0.5)
	assert.InDelta(t, 35, float64(sealer.Wants.High/coat.Micrometre), 1)
	assert.Equal(t, 1, sealer.Usual.Coats)
}

// What is typed from the product's sheet replaces the catalogue's and says so.
func TestTheSheetReplacesTheCatalogue(t *testing.T) {
	r := questiontest.Open(t)
	q, a := film(t, r, questiontest.Texts("coat", "clear", "film", "2.4", "solids", "50", "coats", "3", "film-limit", "2.6mil"))
	for _, st := range []calc.Ground{q.Dry.Ground, q.Solids.Ground, a.Coats.Ground, q.Wants.Ground} {
		assert.Equal(t, calc.Sheet, st.Basis)
	}
	assert.InDelta(t, 2.4, float64(q.Dry.Value/coat.Mil), 1e-9)
	assert.InDelta(t, 0.5, q.Solids.Value, 1e-12)
	assert.Equal(t, 3, a.Coats.Value)
	assert.InDelta(t, 2.6, float64(q.Wants.Most/coat.Mil), 1e-9)
	assert.False(t, a.About)
	for _, reason := range a.Reasons {
		if reason.About == "film" || reason.About == "solids" {
			assert.Equal(t, "the product's sheet, as typed", words.English().Ground(reason.Ground), reason.ID)
		}
	}
	m, _ := mix(t, r, questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "area", "4m2", "transfer", "50", "loss", "50mL", "cup-size", "1L"))
	for _, st := range []calc.Ground{m.Held.Class.Ground, m.Loss.Ground, m.Cup.Ground} {
		assert.Equal(t, calc.AsTyped, st)
	}
}

// Solids of the ready mix: alone, of the ratio's parts, and with thinner on top.
func TestSolidsOfTheReadyMix(t *testing.T) {
	r := questiontest.Open(t)
	for _, x := range []struct {
		pairs []string
		want  float64
	}{
		{[]string{"solids", "45"}, 0.45},
		{[]string{"solids", "45%", "thinner", "10"}, 0.45 / 1.1},
		{[]string{"solids", "50", "solids", "60", "ratio", "4:1:1"}, (4*0.5 + 0.6) / 6},
		{[]string{"solids", "50 + 60 + 0", "ratio", "2:1+10%"}, (2*0.5 + 0.6) / 3.3},
	} {
		q, _ := film(t, r, questiontest.Texts(append(x.pairs, "coat", "clear")...))
		assert.InDelta(t, x.want, q.Solids.Value, 1e-12, x.pairs)
	}
}

// The shop's file: a ratio and solids of its own, marked so; the rest stays what it was.
func TestShopsOwnMix(t *testing.T) {
	r := questiontest.Shop(t, `
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
valve = { conductance = 6.5, ratio = 0.3, turns = 2.0, shape = 1.0 }
`)
	q, a := mix(t, r, questiontest.Texts("coat", "clear", "gun", "house", "area", "4m2"))
	assert.InDelta(t, 0.48, q.Solids.Value, 1e-12)
	assert.Equal(t, calc.OwnReadings, q.Solids.Basis)
	assert.Len(t, a.Parts, 2)
	assert.Equal(t, calc.Published, q.Wants.Basis, "the film is still the catalogue's")
	assert.InDelta(t, 0.65, q.Held.Class.Value.Transfer, 1e-12, "its class's")
	for _, item := range r.Choices(question.Coat) {
		if item.ID == "clear" {
			assert.Equal(t, calc.CommonPractice, item.Ground.Basis, "its pressures are still the catalogue's")
		}
	}
	// A coat without tables of its own must be told all of it.
	_, faults := r.Film(r.ReadAll(question.Film, questiontest.Texts("coat", "house-clear"), unit.US), unit.US)
	var fields []string
	for _, f := range faults {
		fields = append(fields, f.Field)
	}
	assert.Equal(t, []string{"film", "coats", "solids"}, fields)
	_, typed := film(t, r, questiontest.Texts("coat", "house-clear", "film", "2", "coats", "2", "solids", "40", "gun", "house", "fluid-rate", "180", "fan", "9in", "overlap", "50"))
	assert.True(t, typed.Pass.Known)
	assert.Equal(t, coat.Inside, typed.Running.State, "no limits are known")
}

// A gun whose class does not say what it transfers lands nothing that can be told.
func TestAGunWithoutATransferTable(t *testing.T) {
	r := questiontest.Shop(t, `
[gun.marsh-mini]
class = "marsh-mini"
inlet = "20psi"
flow = "3cfm"
cap = "14psi"
nearest = "4in"
farthest = "6in"
felt = { distance = "5in", pressure = "16psi", basis = "estimate", source = "invented" }
valve = { conductance = 3.0, ratio = 0.3, turns = 2.0, shape = 1.0 }
[coat.clear]
working.marsh-mini = { start = "16psi", low = "14psi", high = "19psi" }
`)
	_, err := ask(r, question.Mix, questiontest.Texts("coat", "clear", "gun", "marsh-mini", "area", "2m2"), unit.US)
	var fault *question.Fault
	require.ErrorAs(t, err, &fault)
	assert.Equal(t, "gun", fault.Field)
	assert.Contains(t, fault.Want(), "give it a transfer table in the shop's file")
}
