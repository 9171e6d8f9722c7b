package question_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// drawAnswers draws answers to some fields of a question, good ones and others.
func drawAnswers(t *rapid.T, r *question.Reader, q *question.Question, sys unit.System) (a question.Answers) {
	for _, row := range q.Fields {
		if !rapid.Bool().Draw(t, "with "+row.Name) {
			continue
		}
		n := 1
		if row.Repeats {
			n = rapid.IntRange(1, 3).Draw(t, "values")
		}
		var values []question.Value
		for range n {
			text := drawText(t, r, row.Field)
			if strings.TrimSpace(text) == "" {
				continue // a blank is something until its units are named, then nothing
			}
			values = append(values, r.ReadText(row.Field, text, sys)...)
		}
		a = a.With(row.Field, values...)
	}
	return a
}

// completed is answers with their units named.
func completed(r *question.Reader, q *question.Question, a question.Answers, sys unit.System) question.Answers {
	for _, row := range q.Fields {
		a = a.With(row.Field, r.Completed(row.Field, a.Get(row.Field), sys)...)
	}
	return a
}

// Answers are what their texts are read as; once their units are named, in either system.
func TestTextsReadBackAsTheAnswers(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		q := rapid.SampledFrom(question.Questions()).Draw(t, "question")
		sys := rapid.SampledFrom(bothSystems).Draw(t, "system")
		a := drawAnswers(t, r, q, sys)
		require.Equal(t, a.Texts(), r.ReadAll(q, a.Texts(), sys).Texts())
		for _, row := range q.Fields {
			sameValues(t, row.Field, a.Get(row.Field), r.ReadAll(q, a.Texts(), sys).Get(row.Field))
		}
		whole := completed(r, q, a, sys)
		for _, in := range bothSystems {
			back := r.ReadAll(q, whole.Texts(), in)
			for _, row := range q.Fields {
				sameValues(t, row.Field, a.Get(row.Field), back.Get(row.Field))
			}
			for _, row := range q.Fields {
				for _, v := range back.Get(row.Field) {
					named := question.TextOf(r.Completed(row.Field, []question.Value{v}, in))
					require.True(t, named == v.Text || v.Fault != nil || r.Read(row.Field, named, in).SI == v.SI, "%s %q is %q", row.Name, v.Text, named)
				}
			}
		}
	})
}

// sameValues asserts that values mean the same, of those that mean something.
func sameValues(t *rapid.T, f *question.Field, want, got []question.Value) {
	require.Len(t, got, len(want), f.Name)
	for i := range want {
		if want[i].Fault != nil {
			continue
		}
		require.Nil(t, got[i].Fault, "%s %q and %q", f.Name, want[i].Text, got[i].Text)
		require.Equal(t, want[i].ID, got[i].ID, f.Name)
		require.Equal(t, want[i].Ratio, got[i].Ratio, f.Name)
		for n, si := range want[i].SI {
			require.InDelta(t, si, got[i].SI[n], 1e-12*math.Abs(si), "%s %q and %q", f.Name, want[i].Text, got[i].Text)
		}
	}
}

// Answers are values: what is made of them leaves them as they were, whatever is made next.
func TestAnswersAreNotChanged(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		sys := unit.US
		a, b := drawAnswers(t, r, question.Plan, sys), drawAnswers(t, r, question.Plan, sys)
		before, other := a.Texts(), b.Texts()
		row := rapid.SampledFrom(question.Plan.Fields).Draw(t, "field")
		values := r.ReadText(row.Field, drawText(t, r, row.Field), sys)
		made := []question.Answers{
			a.With(row.Field, values...), a.With(row.Field), a.Or(b), a.Or(a), a.Of(question.Day), a.Or(b).With(row.Field, values...),
			a.With(row.Field, values...).Or(b),
		}
		if len(values) > 0 {
			made = append(made, a.WithValue(row.Field, 0, values[0]), a.WithValue(row.Field, 99, values[0]), made[0].WithValue(row.Field, 0, values[0]))
		}
		for _, m := range made {
			m.With(question.Coat, question.Value{Text: "changed"}).WithValue(question.Gun, 0, question.Value{Text: "changed"})
		}
		require.Equal(t, before, a.Texts())
		require.Equal(t, other, b.Texts())
		require.Equal(t, made[0].Get(row.Field), values[:len(values):len(values)])
	})
}

// ofUsualLine is the fields that say the usual line.
var ofUsualLine = []*question.Field{question.Regulator, question.RegulatorAt, question.Filter, question.Hose, question.Coupling}

// With sets one field and no other; Or takes what the first does not have, and all of a
// field or none.
func TestWithAndOr(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawAnswers(t, r, question.Plan, unit.US), drawAnswers(t, r, question.Plan, unit.US)
		row := rapid.SampledFrom(question.Plan.Fields).Draw(t, "field")
		values := r.ReadText(row.Field, drawText(t, r, row.Field), unit.US)
		with, both := a.With(row.Field, values...), a.Or(b)
		whole := question.Whole(a) || !a.Has(question.Line) && question.Whole(b)
		for _, other := range question.Plan.Fields {
			if other.Field == row.Field {
				require.Equal(t, len(values), len(with.Get(row.Field)))
				require.Equal(t, len(values) > 0, with.Has(row.Field))
			} else {
				require.Equal(t, a.Get(other.Field), with.Get(other.Field))
			}
			switch {
			case a.Has(other.Field):
				require.Equal(t, a.Get(other.Field), both.Get(other.Field))
			case whole && slices.Contains(ofUsualLine, other.Field):
				require.Empty(t, both.Get(other.Field), "a list of all parts leaves the usual line out")
			default:
				require.Equal(t, b.Get(other.Field), both.Get(other.Field))
			}
			require.Equal(t, question.Day.Has(other.Field) && a.Has(other.Field), a.Of(question.Day).Has(other.Field))
		}
		require.Equal(t, a.Texts(), a.With(row.Field, a.Get(row.Field)...).Texts())
		require.Equal(t, a.Texts(), a.Or(question.Answers{}).Texts())
		if !question.Whole(a) {
			require.Equal(t, a.Texts(), question.Answers{}.Or(a).Texts())
		}
		require.Equal(t, len(a.Texts()) == 0, a.Empty())
	})
}

func TestOneValueOfSeveral(t *testing.T) {
	r := questiontest.Open(t)
	a := r.ReadAll(question.Plan, questiontest.Texts("hose", "25ft,3/8in + 6ft,5/16in", "gun", "HVLP"), unit.US)
	assert.Equal(t, "25ft,3/8in + 6ft,5/16in", a.Text(question.Hose))
	assert.Equal(t, "high-volume-low-pressure", a.ID(question.Gun))
	assert.Equal(t, "HVLP", a.Text(question.Gun), "as it was typed")
	other := r.Read(question.Hose, "3ft,1/4in", unit.US)
	assert.Equal(t, "25ft,3/8in + 3ft,1/4in", a.WithValue(question.Hose, 1, other).Text(question.Hose))
	assert.Equal(t, "25ft,3/8in + 6ft,5/16in + 3ft,1/4in", a.WithValue(question.Hose, 2, other).Text(question.Hose))
	_, ok := a.One(question.Coat)
	assert.False(t, ok)
	one, ok := a.One(question.Hose)
	assert.True(t, ok)
	assert.InDelta(t, 25, unit.Length(one.SI[0]).Feet(), 1e-9)
	assert.Empty(t, a.Text(question.Coat))
	assert.Equal(t, question.Texts{"hose": {"25ft,3/8in", "6ft,5/16in"}, "gun": {"HVLP"}}, a.Texts())
}

// A value that was begun and not given is a fault where there may be several, and none
// where there is one: an empty text is no answer.
func TestEmptyTexts(t *testing.T) {
	r := questiontest.Open(t)
	a := r.ReadAll(question.Plan, question.Texts{"coat": {""}, "hose": {"25ft,3/8in", ""}, "wind": {"none"}}, unit.US)
	assert.False(t, a.Has(question.Coat))
	hoses := a.Get(question.Hose)
	if assert.Len(t, hoses, 2) {
		assert.Nil(t, hoses[0].Fault)
		assert.NotNil(t, hoses[1].Fault)
	}
	assert.Empty(t, r.ReadText(question.Hose, " + ", unit.US))
	blank := r.ReadText(question.Coat, " ", unit.US)
	if assert.Len(t, blank, 1, "a blank is something") {
		assert.NotNil(t, blank[0].Fault)
	}
	assert.False(t, slices.ContainsFunc(hoses, func(v question.Value) bool { return v.Text == "none" }), "what is no field is passed over")
}
