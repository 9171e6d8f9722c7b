package question_test

import (
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAreasAndPrices(t *testing.T) {
	r := questiontest.Open(t)
	const ft2 = unit.MetrePerFoot * unit.MetrePerFoot
	q, a := mix(t, r, questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "area", "1.2m2", "area", "2 doors", "area", "3 x fender", "area", "10",
		"ratio", "4:1", "price", "$60/L", "price", "100/gal"))
	require.Len(t, q.Panels, 4)
	assert.InDelta(t, 1.2, float64(q.Panels[0].Low), 1e-12)
	assert.InDelta(t, 20*ft2, float64(q.Panels[1].Low), 1e-9)
	assert.InDelta(t, 26*ft2, float64(q.Panels[1].High), 1e-9)
	assert.InDelta(t, 18*ft2, float64(q.Panels[2].Low), 1e-9)
	assert.InDelta(t, 10*ft2, float64(q.Panels[3].High), 1e-9, "bare is ft2")
	assert.False(t, q.Panels[3].Usual)
	assert.InDeltaSlice(t, []float64{60, 100 / unit.LitrePerUSGal}, q.Prices, 1e-9)
	assert.True(t, a.Priced)
	metric, faults := r.Mix(r.ReadAll(question.Mix, questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "area", "10", "price", "60/L"), unit.Metric), unit.Metric)
	require.Empty(t, faults)
	assert.InDelta(t, 10, float64(metric.Panels[0].Low), 1e-12)
	assert.InDeltaSlice(t, []float64{60}, metric.Prices, 1e-12)
}

func TestFilmAndMixFaults(t *testing.T) {
	r := questiontest.Open(t)
	for _, x := range []struct {
		of    *question.Question
		pairs []string
		field string
		says  string
	}{
		{question.Film, nil, "coat", "choose epoxy-primer"},
		{question.Film, []string{"gun", "popgun"}, "gun", "choose high-volume"},
		{question.Film, []string{"film", "thick"}, "film", "type a number with"},
		{question.Film, []string{"film", "900mil"}, "film", "outside"},
		{question.Film, []string{"coats", "1.5"}, "coats", "whole number of coats, 1 to 20"},
		{question.Film, []string{"solids", "0"}, "solids", "outside 1 to 100%"},
		{question.Film, []string{"solids", "60 + 30"}, "solids", "give the mixing ratio"},
		{question.Film, []string{"solids", "60 + 30 + 0", "ratio", "4:1"}, "solids", "no more than the 2 parts"},
		{question.Film, []string{"solids", "60 + 300", "ratio", "4:1"}, "solids", "from 0 to 100%"},
		{question.Film, []string{"thinner", "10"}, "thinner", "give solids beside it"},
		{question.Film, []string{"thinner", "900", "solids", "50"}, "thinner", "0 to 200%"},
		{question.Film, []string{"ratio", "4", "solids", "50 + 20"}, "ratio", "4:1:1"},
		{question.Film, []string{"film-limit", "0"}, "film-limit", "above 0"},
		{question.Film, []string{"before", "-1"}, "before", "outside"},
		{question.Film, []string{"fluid-rate", "180"}, "gun", "needed beside fluid-rate"},
		{question.Film, []string{"distance", "9in"}, "gun", "needed beside distance"},
		{question.Film, []string{"gun-speed", "1ft/s"}, "fluid-rate", "needed beside gun-speed"},
		{question.Film, []string{"height", "3ft"}, "fluid-rate", "needed beside height"},
		{question.Film, []string{"gun", "reduced-pressure", "fluid-rate", "fast"}, "fluid-rate", "180mL/min"},
		{question.Film, []string{"gun", "reduced-pressure", "fluid-rate", "0"}, "fluid-rate", "180mL/min"},
		{question.Film, []string{"gun", "reduced-pressure", "cup-volume", "100mL"}, "cup-time", "type a number"},
		{question.Film, []string{"gun", "reduced-pressure", "tip", "1.3"}, "viscosity", "needed beside tip"},
		{question.Film, []string{"gun", "reduced-pressure", "tip", "1.3", "cup", "4mm", "seconds", "18"}, "cup", "which one"},
		{question.Film, []string{"gun", "reduced-pressure", "tip", "1.3", "cup", "din4", "seconds", "2"}, "seconds", "too short"},
		{question.Film, []string{"gun", "reduced-pressure", "fluid-rate", "180", "gun-speed", "0"}, "gun-speed", "a length a second"},
		{question.Film, []string{"gun", "reduced-pressure", "transfer", "99", "fluid-rate", "180"}, "transfer", "outside 10 to 90%"},
		{question.Film, []string{"wet", "x"}, "wet", "last wet tooth"},
		{question.Film, []string{"wet", "5,4"}, "wet", "outside"},
		{question.Mix, nil, "gun", "needed for how much paint lands"},
		{question.Mix, []string{"gun", "reduced-pressure"}, "area", "hood, door"},
		{question.Mix, []string{"gun", "reduced-pressure", "area", "wing"}, "area", "hood, door"},
		{question.Mix, []string{"gun", "reduced-pressure", "area", "99 door"}, "area", "1 to 50"},
		{question.Mix, []string{"gun", "reduced-pressure", "area", "0"}, "area", "above 0"},
		{question.Mix, []string{"gun", "reduced-pressure", "area", "4", "price", "4/L + 5/L"}, "price", "2 prices for 0 parts"},
		{question.Mix, []string{"gun", "reduced-pressure", "area", "4", "price", "80"}, "price", "with its volume"},
		{question.Mix, []string{"gun", "reduced-pressure", "area", "4", "price", "45%"}, "price", "60/L"},
		{question.Mix, []string{"gun", "reduced-pressure", "area", "4", "price", "45/2L"}, "price", "60/L"},
		{question.Mix, []string{"gun", "reduced-pressure", "area", "4", "ratio", "a:b"}, "ratio", "4:1:1"},
		{question.Mix, []string{"gun", "reduced-pressure", "area", "4", "cup-size", "1mL"}, "cup-size", "outside"},
		{question.Mix, []string{"gun", "reduced-pressure", "area", "4", "pot-life", "1s"}, "pot-life", "outside"},
	} {
		texts := questiontest.Texts(x.pairs...)
		if x.field != "coat" {
			texts["coat"] = []string{"clear"}
		}
		a := r.ReadAll(x.of, texts, unit.US)
		var faults []*question.Fault
		if x.of == question.Film {
			_, faults = r.Film(a, unit.US)
		} else {
			_, faults = r.Mix(a, unit.US)
		}
		require.NotEmpty(t, faults, x.pairs)
		assert.Equal(t, x.field, faults[0].Field, "%v: %v", x.pairs, faults[0])
		assert.Contains(t, faults[0].Want(), x.says, x.pairs)
	}
}

// What is just inside each range is taken and worked.
func TestEdgesOfWhatCanBeTyped(t *testing.T) {
	r := questiontest.Open(t)
	worked := func(q *question.Question, base question.Texts, all map[string][]string) {
		for field, edges := range all {
			for _, e := range edges {
				_, err := ask(r, q, questiontest.With(base, field, e), unit.US)
				assert.NoError(t, err, "%s %s", field, e)
			}
		}
	}
	worked(question.Film, questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "fluid-rate", "180", "solids", "45"), map[string][]string{
		"solids": {"1", "100"}, "film": {"2um", "2000um"}, "coats": {"1", "20"}, "before": {"0", "10000um"}, "thinner": {"0", "200"},
		"transfer": {"10", "90"}, "pressure": {"1psi", "150psi"}, "distance": {"2in", "30in"}, "fluid-rate": {"5", "1500"}, "fan": {"10mm", "600mm"},
		"overlap": {"0", "90"}, "gun-speed": {"0.05m/s", "3m/s"}, "height": {"0.01m", "10m"}, "wet": {"1um", "2000um,2000um"},
	})
	worked(question.Mix, questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "area", "2m2", "pot-life", "2h", "fluid-rate", "180"), map[string][]string{
		"area": {"0.001m2", "1000m2"}, "cup-size": {"60mL", "5L"}, "loss": {"0", "5L"}, "temp": {"5C", "40C"}, "pot-life": {"60s", "168h"}, "price": {"0/L", "100000/L"},
		"distance": {"2in", "30in"}, "transfer": {"10", "90"},
	})
}

// A ratio typed without colons is what it is with them, or is refused.
func TestRatioWithoutColons(t *testing.T) {
	r := questiontest.Open(t)
	parts := func(text string) []float64 {
		q, faults := r.Mix(r.ReadAll(question.Mix, questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "area", "2m2", "ratio", text), unit.US), unit.US)
		if len(faults) > 0 {
			require.Equal(t, "ratio", faults[0].Field)
			require.Equal(t, text, faults[0].Given)
			return nil
		}
		return q.Ratio.Value.Parts
	}
	for text, want := range map[string]string{
		"4 1 1": "4:1:1", "4/1/1": "4:1:1", "4.1.1": "4:1:1", " 2  1 ": "2:1", "4 / 1": "4:1", "2 1+10%": "2:1+10%", "2/1 + 10%": "2:1+10%", "100.50.30": "100:50:30", "2.5 1": "2.5:1",
	} {
		require.NotNil(t, parts(want))
		assert.Equal(t, parts(want), parts(text), text)
	}
	for _, text := range []string{"4.1", "411", "4", "10", "1 1/2", "4..1", "4.1.1.", "4 1:1", "10 5%", "/", "4//1"} {
		assert.Nil(t, parts(text), text)
	}
}
