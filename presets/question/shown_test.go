package question_test

import (
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/require"
)

// What was typed is shown as it was, with what it is in the other units where those are in use;
// what nobody typed is shown in these alone.
func TestValuesAreShownInTheUnitsInUse(t *testing.T) {
	r := questiontest.Open(t)
	for _, c := range []struct {
		field      *question.Field
		text       string
		us, metric string
	}{
		{question.Temp, "75F", "75F", "75F (23.9 C)"},
		{question.Temp, "24 C", "24 C (75 F)", "24 C"},
		{question.Humidity, "45%", "45%", "45%"},
		{question.Supply, "6.2 bar", "6.2 bar (90 psi)", "6.2 bar"},
		{question.Hose, "30ft, 3/8in", "30ft, 3/8in", "30ft, 3/8in (9.1 m, 9.5 mm)"},
		{question.Hose, "25ft, 3/8in", "25ft, 3/8in", "7.6 m, 9.5 mm"}, // the shop's usual
		{question.Hose, "8m, 10mm", "8m, 10mm (26 ft, 0.394 in)", "8m, 10mm"},
		{question.Hose, "8m, 3/8in + 2m, 8mm", "8m, 3/8in (26 ft, 3/8in) + 2m, 8mm (7 ft, 0.315 in)", "8m, 3/8in (8m, 9.5 mm) + 2m, 8mm"},
		{question.Compressor, "none", "none", "none"},
		{question.Compressor, "5hp", "5hp", "5hp"},
		{question.Other, "10cfm, 50%", "10cfm, 50%", "10cfm, 50% (287 L/min, 50%)"},
		{question.Coupling, "large-bore", "large-bore coupling", "large-bore coupling"},
		{question.Panels, "3", "3", "3"},
	} {
		values := r.ReadText(c.field, c.text, unit.US)
		require.Equal(t, c.us, r.Shown(c.field, values, unit.US), c.text)
		require.Equal(t, c.metric, r.Shown(c.field, values, unit.Metric), c.text)
	}
	hose := r.ReadText(question.Hose, "30ft, 3/8in", unit.US)
	hose[0].Assumed = true
	require.Equal(t, "9.1 m, 9.5 mm", r.Shown(question.Hose, hose, unit.Metric), "nobody typed it")
}
