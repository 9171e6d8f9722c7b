package question_test

import (
	"slices"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// sounds asserts that a reason or caution is a sentence with all its figures in.
func sounds(t require.TestingT, w *words.Words, id string, figures calc.Figures) {
	require.True(t, w.Has(id), "no sentence for %s", id)
	given := map[string]bool{}
	for _, f := range figures {
		require.False(t, given[f.Name], "%s: figure %s twice", id, f.Name)
		given[f.Name] = true
	}
	for _, name := range w.Needs(id) {
		require.True(t, given[name], "%s: no figure %s", id, name)
	}
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		text := w.Text(sys, id, figures)
		assert.NotContains(t, text, "{", id)
		assert.NotContains(t, text, "NaN", id)
		assert.NotContains(t, text, "Inf", id)
		assert.NotContains(t, text, "  ", id)
		assert.NotEqual(t, id, text)
		assert.True(t, strings.HasSuffix(text, "."), "%s: %s", id, text)
	}
}

// whole asserts that every reason and caution of an answer is a sentence, and gives their
// ids.
func whole(t require.TestingT, w *words.Words, reasons []calc.Reason, cautions []calc.Caution) map[string]bool {
	seen := map[string]bool{}
	for _, x := range reasons {
		seen[x.ID] = true
		sounds(t, w, x.ID, x.Figures)
		assert.NotEmpty(t, x.About, x.ID)
		assert.NotEmpty(t, w.Ground(x.Ground), x.ID)
	}
	require.NotEmpty(t, cautions)
	for _, x := range cautions {
		seen[x.ID] = true
		sounds(t, w, x.ID, x.Figures)
		assert.Contains(t, []calc.Level{calc.Note, calc.Warn, calc.Stop}, x.Level, x.ID)
	}
	assert.True(t, slices.ContainsFunc(cautions, func(c calc.Caution) bool { return c.Safety }), "on every answer, what protects people")
	assert.False(t, seen["safety"], "a run says the general caution, no answer does")
	return seen
}

// against asserts that what speaks against spraying, and what turns it, is a sentence each,
// and adds their ids.
func against(t require.TestingT, w *words.Words, j *calc.Judgement, seen map[string]bool) map[string]bool {
	for _, c := range j.Against {
		seen[c.ID], seen[c.Turn.ID] = true, true
		sounds(t, w, c.ID, c.Figures)
		sounds(t, w, c.Turn.ID, c.Turn.Figures)
		assert.NotEmpty(t, w.Ground(c.Ground), c.ID)
		assert.LessOrEqual(t, c.Level, j.Verdict)
	}
	return seen
}

// Whatever is asked, each reason and caution is a whole sentence, in both systems of
// units, and each reason says what it rests on.
func TestEverySentenceOfAPlanIsWhole(t *testing.T) {
	r, w := questiontest.Open(t), words.English()
	rapid.Check(t, func(t *rapid.T) {
		d := questiontest.Drawer{T: t}
		_, s := solved(t, r, d.AnyLine(r, rapid.Bool().Draw(t, "with the shop's air")))
		against(t, w, &s.Judgement, whole(t, w, s.Reasons, s.Cautions))
		for _, x := range s.Reasons {
			assert.Contains(t, []calc.Basis{calc.Published, calc.CommonPractice, calc.Computed, calc.Estimate, calc.OwnReadings}, x.Basis, x.ID)
		}
		for i := range s.Fixes {
			sounds(t, w, s.Fixes[i].Swap.Kind.String(), s.Fixes[i].Figures())
		}
	})
}

// The answers that bring up each reason and caution of the main job at least once.
func TestWhatBringsUpEachSentenceOfAPlan(t *testing.T) {
	r := questiontest.Open(t)
	day := func(pairs ...string) question.Texts {
		texts := questiontest.MildDay("clear", "reduced-pressure")
		for name, all := range questiontest.Texts(pairs...) {
			texts[name] = all
		}
		return texts
	}
	for _, x := range []struct {
		name  string
		texts question.Texts
		has   []string
		not   []string
	}{
		{"mild day, usual line", day(),
			[]string{"gun-start", "gun-flow", "weather-mild", "weather-dew", "wall-set", "wall-static", "valve-opening", "valve-floor", "distance-jet", "distance-class", "line-bottleneck", "isocyanate", "booth-clear", "breathing-air", "booth-air", "local-gun-rules"},
			[]string{"dew-near", "close", "supply-short", "no-regulator", "valve-choked", "line-couplings", "cap-near-limit", "now-valve"}},
		{"hot and dry", day("temp", "40C", "humidity", "12"), []string{"weather-hot", "hot-air", "lands-dry", "turn-cool-air"}, []string{"weather-mild"}},
		{"cold", day("temp", "10C"), []string{"weather-slow", "cold", "turn-warm-air"}, []string{"weather-mild"}},
		{"panel at the dew point", day("panel", "50F"), []string{"dew-near", "cold-panel", "turn-warm-panel"}, []string{"close", "wall-set"}},
		{"panel close to the cold", day("panel", "61F"), []string{"close", "turn-warm-panel"}, []string{"dew-near"}},
		{"supply too low for the line", day("supply", "28psi"), []string{"supply-short", "wall-short", "line-limit", "valve-open-wide"}, []string{"wall-set", "supply-below-target", "wall-static"}},
		{"supply below the gun's pressure", day("supply", "20psi"), []string{"supply-below-target", "line-limit", "turn-more-supply"}, []string{"supply-short", "wall-short"}},
		{"supply just enough", day("supply", "31psi"), []string{"little-reserve"}, []string{"supply-short"}},
		{"no regulator", day("regulator", "none"), []string{"wall-none", "no-regulator", "turn-regulator", "valve-below-floor"}, []string{"wall-set", "wall-static", "valve-low"}},
		{"no regulator and a high supply", day("regulator", "none", "supply", "150psi"), []string{"valve-choked"}, nil},
		{"a coarse gauge", day("mark", "20psi"), []string{"valve-low", "valve-below-floor"}, nil},
		{"regulator at the foot", day("regulator-at", "gun"), []string{"wall-foot"}, []string{"wall-set"}},
		{"gauge at the foot", day("gauge", "foot"), []string{"gauge-foot"}, []string{"gauge-none"}},
		{"no gauge", day("gauge", "none"), []string{"gauge-none"}, []string{"gauge-foot"}},
		{"slim couplings", day("coupling", "slim"), []string{"line-couplings"}, nil},
		{"a hose that is far too thin", day("hose", "25ft,1/4in", "gun", "high-volume-low-pressure", "supply", "150psi"), []string{"wall-high", "turn-mend"}, nil},
		{"a line that no one part mends", day("hose", "60ft,1/4in", "hose", "60ft,1/4in", "coupling", "slim", "filter", "clogged", "supply", "300psi"), []string{"wall-high", "turn-mend-part"}, nil},
		{"wall at 70 psi", day("wall", "70psi"), []string{"now-valve", "now-over-stamp", "first-down"}, []string{"now-choked", "now-above-supply"}},
		{"wall at 140 psi", day("wall", "140psi"), []string{"now-choked", "now-above-supply"}, []string{"now-valve"}},
		{"wall at 20 psi", day("wall", "20psi"), []string{"now-too-low", "first-up"}, []string{"now-over-stamp"}},
		{"epoxy", questiontest.MildDay("epoxy-primer", "reduced-pressure"), []string{"amine"}, []string{"isocyanate"}},
		{"a surfacer under a lamp", questiontest.With(questiontest.MildDay("surfacer", "reduced-pressure"), "hardener", "acrylate"), []string{"acrylate"}, []string{"isocyanate"}},
		{"a one-part base", questiontest.With(questiontest.MildDay("metallic-base", "reduced-pressure"), "hardener", "none"), []string{"booth-clear"}, []string{"isocyanate-unknown", "breathing-air"}},
		{"metallic base is held farther", questiontest.MildDay("metallic-base", "reduced-pressure"), []string{"distance-coat", "distance-held-far", "isocyanate-unknown"}, []string{"isocyanate", "distance-jet"}},
		{"old gun is held inside its distances", questiontest.MildDay("metallic-base", "high-pressure"), []string{"distance-jet"}, []string{"distance-held-near", "distance-held-far"}},
		{"hvlp at 10,000 ft is held by its cap", questiontest.With(questiontest.MildDay("clear", "high-volume-low-pressure"), "altitude", "10000ft"),
			[]string{"gun-held-by-stamp", "cap-near-limit"}, []string{"local-gun-rules"}},
	} {
		t.Run(x.name, func(t *testing.T) {
			_, s := solved(t, r, x.texts)
			got := against(t, words.English(), &s.Judgement, whole(t, words.English(), s.Reasons, s.Cautions))
			got[s.First.ID] = true
			for _, id := range x.has {
				assert.True(t, got[id], id)
			}
			for _, id := range x.not {
				assert.False(t, got[id], id)
			}
		})
	}
}
