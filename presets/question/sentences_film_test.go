package question_test

import (
	"maps"
	"testing"

	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Whatever sensible is typed, each reason and caution is a whole sentence that says
// what it rests on, in both systems of units.
func TestEverySentenceOfFilmAndMixIsWhole(t *testing.T) {
	r, w := questiontest.Open(t), words.English()
	optional := map[string][]string{
		"film": {"1.5mil", "2.4mil", "4mil"}, "coats": {"1", "4"}, "solids": {"40"}, "before": {"4mil", "9mil", "14mil"}, "film-limit": {"3mil"},
		"transfer": {"50"}, "pressure": {"22psi"}, "distance": {"9in", "30in"}, "fan": {"8in"}, "overlap": {"40"}, "gun-speed": {"0.5ft/s", "3ft/s"},
		"height": {"3ft"}, "wet": {"3mil", "3mil,4mil + 2mil"}, "fluid-rate": {"20", "180", "1400"}, "ratio": {"4:1:1"}, "price": {"60/L"},
		"cup-size": {"1L"}, "loss": {"100mL"}, "pot-life": {"5min", "4h"}, "area": {"4m2", "hood", "900ft2 + 2 door"},
	}
	seen := map[string]bool{}
	rapid.Check(t, func(t *rapid.T) {
		d := questiontest.Drawer{T: t}
		texts := questiontest.Texts("coat", d.Choice(r, question.Coat), "gun", d.Choice(r, question.Gun), "area", "2 hood", "fluid-rate", "180")
		for _, q := range []*question.Question{question.Film, question.Mix} {
			for _, f := range q.Fields {
				if choices := optional[f.Name]; choices != nil && rapid.Bool().Draw(t, "with "+f.Name) {
					texts[f.Name] = []string{rapid.SampledFrom(choices).Draw(t, f.Name)}
				}
			}
		}
		_, f := film(t, r, texts)
		maps.Copy(seen, whole(t, w, f.Reasons, f.Cautions))
		_, m := mix(t, r, texts)
		maps.Copy(seen, whole(t, w, m.Reasons, m.Cautions))
	})
	for _, id := range []string{"film-wants", "film-coats", "transfer-class", "transfer-typed", "film-speed", "film-speed-between", "film-passes", "film-comb", "mix-volume", "wrong-choked-cost", "film-whole-over"} {
		assert.True(t, seen[id], "%s never came up", id)
	}
}
