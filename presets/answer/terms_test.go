package answer_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// viewsAndPages is where terms are explained: the views of the answer, and the coat's own pages,
// of which the day's has the name of a view.
var viewsAndPages = []string{"set", "look", "line", "day", "sure", "why", question.Thin.Name, question.Film.Name, question.Mix.Name, "agreed", "outcome"}

// allTerms is every term of a view or a page.
func allTerms(t *testing.T) []string {
	t.Helper()
	all := map[string]bool{}
	for _, view := range viewsAndPages {
		require.NotEmpty(t, answer.Terms(view), view)
		for _, term := range answer.Terms(view) {
			all[term] = true
		}
	}
	return slices.Sorted(maps.Keys(all))
}

func TestEachViewHasItsTermsOnce(t *testing.T) {
	for _, view := range viewsAndPages {
		seen := map[string]bool{}
		for _, term := range answer.Terms(view) {
			assert.False(t, seen[term], "%s has %s twice", view, term)
			seen[term] = true
		}
	}
	assert.Contains(t, viewsAndPages, question.Day.Name)
	assert.Empty(t, answer.Terms("no such view"))
	answer.Terms("set")[0] = "changed"
	assert.NotEqual(t, "changed", answer.Terms("set")[0], "a list is the caller's own")
}

// Each term has its name and two short sentences in each language, and no sentence explains one
// that no view has.
func TestEachTermIsExplained(t *testing.T) {
	terms := allTerms(t)
	for _, lang := range words.Languages() {
		w, _ := words.For(lang)
		for _, term := range terms {
			require.True(t, w.Has("term-"+term) && w.Has("explain-"+term), "%s of %s", term, lang)
			title, meaning := answer.Explain(w, term)
			assert.NotEmpty(t, title)
			assert.Equal(t, 1, strings.Count(meaning, ". "), "two sentences: %s", meaning)
			assert.True(t, strings.HasSuffix(meaning, "."), meaning)
			assert.Empty(t, w.Needs("explain-"+term), "a page without an answer has no figures")
			assert.LessOrEqual(t, len(meaning), 220, "short: %s", meaning)
		}
		for _, id := range w.IDs() {
			for _, start := range []string{"term-", "explain-", "here-"} {
				if term, found := strings.CutPrefix(id, start); found {
					assert.Contains(t, terms, term, "%s of %s", id, lang)
				}
			}
		}
	}
}

// What a term comes to is told with the plan's own figures, in every language and both systems;
// where the job is stopped nothing is told of what would be set.
func TestWhatATermComesTo(t *testing.T) {
	r := questiontest.Open(t)
	for name, c := range map[string]struct {
		given   []string
		stopped bool
		told    []string
	}{
		"as usual":            {nil, false, []string{"cap-pressure", "dew-point", "inlet-valve", "likely-range", "passages", "push", "rating", "supply", "to-spare", "wall-regulator"}},
		"at the gun's inlet":  {[]string{"regulator-at", "gun"}, false, []string{"cap-pressure", "dew-point", "inlet-valve", "likely-range", "passages", "push", "rating", "supply", "to-spare"}},
		"too damp to spray":   {[]string{"humidity", "99"}, true, []string{"dew-point", "rating", "supply"}},
		"too little to spray": {[]string{"supply", "20psi"}, true, []string{"dew-point", "rating", "supply"}},
	} {
		texts := questiontest.MildDay("clear", "reduced-pressure")
		for i := 0; i < len(c.given); i += 2 {
			texts = questiontest.With(texts, c.given[i], c.given[i+1])
		}
		p, err := answer.AskPlan(r, r.ReadAll(question.Plan, texts, unit.US), unit.US)
		require.NoError(t, err, name)
		p.Sure()
		require.Equal(t, c.stopped, p.Stopped(), name)
		for _, lang := range words.Languages() {
			w, _ := words.For(lang)
			for _, sys := range []unit.System{unit.US, unit.Metric} {
				var told []string
				for _, term := range allTerms(t) {
					text := p.Here(w, sys, term)
					assert.NotContains(t, text, "{", "%s of %s", term, lang)
					if text != "" {
						told = append(told, term)
					}
				}
				assert.Equal(t, c.told, told, "%s, %s", name, lang)
			}
		}
		if name == "as usual" {
			w := words.English()
			assert.Equal(t, "Here: 31.0 psi with the trigger pulled, 33 psi with the trigger released.", p.Here(w, unit.US, "wall-regulator"))
			assert.Equal(t, "Here: 1.1 psi.", p.Here(w, unit.US, "to-spare"))
			assert.Equal(t, "Here: closed 3/8 turn, 81% open.", p.Here(w, unit.US, "inlet-valve"))
			assert.Equal(t, "This gun: 32.0 psi, 10.0 cfm.", p.Here(w, unit.US, "rating"))
		}
	}
}
