package question_test

import (
	"slices"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

var bothSystems = []unit.System{unit.US, unit.Metric}

// drawText draws what someone might type into a field: a choice of its own, a number with
// any unit or none, a pair, a time, a ratio, or none of these.
func drawText(t *rapid.T, r *question.Reader, f *question.Field) string {
	quantity := rapid.StringMatching(`-?[0-9]{1,4}([.,][0-9]{1,2})?( ?(psi|bar|F|C|ft|m|mm|in|mil|um|cfm|L/min|gal|L|mL|hp|%|min|h|s|ft/s|mL/min|cSt|ft2|/L))?`)
	kinds := []*rapid.Generator[string]{
		quantity,
		rapid.Map(rapid.SliceOfN(quantity, 2, 2), func(two []string) string { return strings.Join(two, ",") }),
		rapid.StringMatching(`[0-9]{1,2}:[0-9]{1,2}(:[0-9])?|[0-9]{1,2}-[0-9]{1,2}|[1-9]? ?(hood|door|wing)|din4|iso4|4mm`),
		rapid.StringMatching(`[a-z é%+/]{0,8}`),
	}
	if ids := questiontest.IDs(r.Choices(f)); ids != nil {
		kinds = append(kinds, rapid.SampledFrom(ids), rapid.Map(rapid.SampledFrom(ids), strings.ToUpper))
	}
	return rapid.OneOf(kinds...).Draw(t, "text")
}

// What is wrong with one field of a plan by itself is what resolving all of it says of that
// field, and the other way round. Neither knows that a line has too many parts, nor that the
// supply lies above the cut-out.
func TestCheckOfAPlansFieldIsWhatResolvingSays(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		row := rapid.SampledFrom(question.Plan.Fields).Draw(t, "field")
		if row.Field == question.Stage {
			t.Skip("whether the coat has it, resolving knows")
		}
		sys := rapid.SampledFrom(bothSystems).Draw(t, "system")
		text := drawText(t, r, row.Field)
		values := r.ReadText(row.Field, text, sys)
		a := r.ReadAll(question.Plan, around(question.Plan, row.Name, false), sys).With(row.Field, values...)
		var told *question.Fault
		for _, f := range resolveFaults(r, question.Plan, a, sys) {
			if f.Field == row.Name && f.ID != "above-cut-out" && told == nil {
				told = f
			}
		}
		require.Equal(t, told, r.Check(row.Field, values, sys), "%s %q", row.Name, text)
	})
}

// What is wrong with a field of any question by itself is among what its question says of
// answers that hold it; a question also knows what goes with what.
func TestWhatCheckSaysItsQuestionSays(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		q := rapid.SampledFrom(question.Questions()).Draw(t, "question")
		row := rapid.SampledFrom(q.Fields).Draw(t, "field")
		sys := rapid.SampledFrom(bothSystems).Draw(t, "system")
		text := drawText(t, r, row.Field)
		values := r.ReadText(row.Field, text, sys)
		alone := r.Check(row.Field, values, sys)
		if alone == nil || len(values) == 0 {
			return
		}
		faults := resolveFaults(r, q, r.ReadAll(q, around(q, row.Name, false), sys).With(row.Field, values...), sys)
		same := func(f *question.Fault) bool {
			booth := q == question.Thin && row.Field == question.Temp // told as the paint's
			return f.Want() == alone.Want() && (booth || f.Field == alone.Field && f.Given == alone.Given)
		}
		require.True(t, slices.ContainsFunc(faults, same), "%s of %s %q: %v beside %v", row.Name, q.Name, text, alone, faults)
	})
}

// A field that must be answered says the same alone and among the others, whichever it is.
func TestCheckOfAnEmptyField(t *testing.T) {
	r := questiontest.Open(t)
	for _, row := range question.Plan.Fields {
		texts := questiontest.With(around(question.Plan, row.Name, false), row.Name, "")
		var told *question.Fault
		for _, f := range resolveFaults(r, question.Plan, r.ReadAll(question.Plan, texts, unit.US), unit.US) {
			if f.Field == row.Name {
				told = f
			}
		}
		require.Equal(t, told, r.Check(row.Field, nil, unit.US), row.Name)
		require.Equal(t, row.Optional() || r.Usual().Has(row.Field), told == nil, row.Name)
	}
}
