package question_test

import (
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// eachRow does something with every row of every question.
func eachRow(do func(q *question.Question, row question.Row)) {
	for _, q := range question.Questions() {
		for _, row := range q.Fields {
			do(q, row)
		}
	}
}

// Every row has its sentences in every language: what it is called and what it takes; of
// those that the assistant asks for, the question and why it is asked, what an empty answer
// means where it may be left empty, and how it is written where a unit does not say it.
func TestEveryRowHasItsSentencesInEveryLanguage(t *testing.T) {
	for _, lang := range words.Languages() {
		w, ok := words.For(lang)
		require.True(t, ok)
		has := func(id, what string) { assert.True(t, w.Has(id), "%s.toml has no %s: %s", lang, id, what) }
		eachRow(func(_ *question.Question, row question.Row) {
			has(row.Sentence(question.SayLabel), "its name")
			has(row.Usage(), "what it takes")
			assert.Contains(t, w.Say(row.Usage()), "`", "%s in %s: the value's name stands in back quotes", row.Usage(), lang)
			for _, id := range []string{row.Want, row.Missing} {
				if id != "" {
					has(id, "what would do")
				}
			}
			if row.Part == "" {
				return
			}
			has(row.Part.Sentence(), "the part of the job it is asked in")
			if row.Part == question.PartSheet {
				return // its page says what each takes
			}
			has(row.Sentence(question.SayAsk), "the question")
			has(row.Sentence(question.SayWhy), "why it is asked")
			if row.Optional() {
				has(row.Sentence(question.SayEmpty), "what an empty answer means")
			}
			if row.Pair() {
				has(row.Sentence(question.SayForm), "how it is written")
				has(row.Sentence(question.SayFirst), "what its first quantity is called")
				has(row.Sentence(question.SaySecond), "what its second quantity is called")
			}
			for _, id := range row.Options {
				if row.Listed() {
					has("choice-"+row.Name+"-"+id, "what is chosen")
				}
			}
		})
	}
}

// A use names nothing but what a reader gives.
func TestEveryUseHasItsFigures(t *testing.T) {
	r := questiontest.Open(t)
	eachRow(func(_ *question.Question, row question.Row) {
		for _, sys := range []unit.System{unit.US, unit.Metric} {
			assert.NotContains(t, r.Words().Text(sys, row.Usage(), r.UsageFigures(row, sys)), "{", row.Usage())
		}
	})
}

// A name is that of one thing, wherever it is asked for: it is read in the same way, and it
// is a name that flags and requests can have.
func TestANameIsOneField(t *testing.T) {
	seen := map[string]question.Row{}
	eachRow(func(q *question.Question, row question.Row) {
		assert.Regexp(t, `^[a-z]+(-[a-z]+)*$`, row.Name)
		assert.Equal(t, strings.ReplaceAll(row.Name, "-", "_"), row.Key())
		got, ok := q.Field(row.Name)
		require.True(t, ok)
		assert.Equal(t, row.Field, got.Field, "%s has %s once", q.Name, row.Name)
		if first, ok := seen[row.Name]; ok {
			assert.Equal(t, [3]any{first.Of, first.Entries, first.Repeats}, [3]any{row.Of, row.Entries, row.Repeats}, row.Name)
			return
		}
		seen[row.Name] = row
	})
	assert.Greater(t, len(seen), 50)
}

// Where counting begins in an empty field is something that the field takes, and a step is
// one that its quantity is written with.
func TestBeginsAndSteps(t *testing.T) {
	r := questiontest.Open(t)
	eachRow(func(_ *question.Question, row question.Row) {
		for _, sys := range []unit.System{unit.US, unit.Metric} {
			if row.Begin[sys] != "" {
				assert.Nil(t, r.Check(row.Field, r.ReadText(row.Field, row.Begin[sys], unit.Named), sys), "%s begins at %s", row.Name, row.Begin[sys])
			}
			for piece, q := range row.Of {
				if q == nil {
					assert.Zero(t, row.Step[piece][sys], row.Name)
					continue
				}
				if size := row.Step[piece][sys]; size != 0 {
					_, plain := unit.Decimals(size)
					assert.True(t, plain, "%s: %v", row.Name, size)
				}
			}
		}
	})
}
