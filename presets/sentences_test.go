package presets_test

import (
	"regexp"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/spread"
	"boothset/calc/unit"
	"boothset/presets"
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

// Whatever is asked, each reason and caution is a whole sentence, in both systems of
// units, and each reason says what it rests on.
func TestEverySentenceOfEveryAnswerIsWhole(t *testing.T) {
	c, w := shippedCatalogue(t), words.English()
	rapid.Check(t, func(t *rapid.T) {
		a := drawAnswers(t, c)
		if rapid.Bool().Draw(t, "with the shop's air") {
			drawShop(t, &a)
		}
		_, s := solved(t, c, a)
		for _, r := range s.Reasons {
			sounds(t, w, r.ID, r.Figures)
			assert.NotEmpty(t, r.About, r.ID)
			assert.NotEmpty(t, w.Standing(r.Ground), r.ID)
			assert.Contains(t, []calc.Basis{calc.Published, calc.CommonPractice, calc.Computed, calc.Estimate, calc.OwnReadings}, r.Basis, r.ID)
		}
		for i := range s.Fixes {
			sounds(t, w, s.Fixes[i].Swap.Kind.String(), s.Fixes[i].Figures())
		}
		for _, k := range s.Cautions {
			sounds(t, w, k.ID, k.Figures)
			assert.Contains(t, []calc.Level{calc.Note, calc.Warn, calc.Stop}, k.Level, k.ID)
		}
	})
}

// How sure an answer is, in whole sentences.
func TestEverySentenceOfHowSureIsWhole(t *testing.T) {
	c, w := shippedCatalogue(t), words.English()
	for _, gun := range []string{"reduced-pressure", "high-volume-low-pressure"} {
		for _, gauge := range []presets.Typed{"handle", "foot", "none"} {
			a := mildDay("clear", gun)
			a.Gauge = gauge
			r, s := solved(t, c, a)
			sure := spread.Of(r, s)
			for _, sys := range []unit.System{unit.US, unit.Metric} {
				all := w.Spread(sys, sure)
				require.Len(t, all, 2)
				for _, text := range all {
					assert.NotContains(t, text, "{")
					assert.NotRegexp(t, `\b(cause|measure)-`, text)
					assert.True(t, strings.HasSuffix(text, "."), text)
				}
			}
		}
	}
}

// The answers that bring up each reason and caution of the main job at least once.
func TestWhatBringsUpEachSentence(t *testing.T) {
	c := shippedCatalogue(t)
	day := func(change func(*presets.Answers)) presets.Answers {
		a := mildDay("clear", "reduced-pressure")
		change(&a)
		return a
	}
	for _, x := range []struct {
		name    string
		answers presets.Answers
		has     []string
		not     []string
	}{
		{"mild day, usual line", day(func(*presets.Answers) {}),
			[]string{"gun-start", "gun-flow", "weather-mild", "weather-dew", "wall-set", "wall-static", "valve-opening", "valve-floor", "distance-jet", "line-bottleneck", "safety", "isocyanate", "local-gun-rules"},
			[]string{"panel-near-dew", "panel-tight", "supply-short", "no-regulator", "valve-choked", "line-couplings", "cap-near-limit", "now-valve"}},
		{"hot and dry", day(func(a *presets.Answers) { a.Temp, a.Humidity = "40C", "12" }), []string{"weather-hot"}, []string{"weather-mild"}},
		{"cold", day(func(a *presets.Answers) { a.Temp = "10C" }), []string{"weather-slow", "cold"}, []string{"weather-mild"}},
		{"panel at the dew point", day(func(a *presets.Answers) { a.Panel = "50F" }), []string{"panel-near-dew"}, []string{"panel-tight"}},
		{"panel a little above", day(func(a *presets.Answers) { a.Panel = "57F" }), []string{"panel-tight"}, []string{"panel-near-dew"}},
		{"supply too low for the line", day(func(a *presets.Answers) { a.Supply = "28psi" }), []string{"supply-short", "wall-short", "line-limit", "valve-open-wide"}, []string{"wall-set", "supply-below-target", "wall-static"}},
		{"supply below the gun's pressure", day(func(a *presets.Answers) { a.Supply = "20psi" }), []string{"supply-below-target", "wall-short"}, []string{"supply-short"}},
		{"supply just enough", day(func(a *presets.Answers) { a.Supply = "31psi" }), []string{"little-reserve"}, []string{"supply-short"}},
		{"no regulator", day(func(a *presets.Answers) { a.Regulator = "none" }), []string{"wall-none", "no-regulator", "valve-below-floor"}, []string{"wall-set", "wall-static", "valve-low"}},
		{"no regulator and a high supply", day(func(a *presets.Answers) { a.Regulator, a.Supply = "none", "150psi" }), []string{"valve-choked"}, nil},
		{"a coarse gauge", day(func(a *presets.Answers) { a.Mark = "20psi" }), []string{"valve-low", "valve-below-floor"}, nil},
		{"regulator at the foot", day(func(a *presets.Answers) { a.RegulatorAt = "gun" }), []string{"wall-foot"}, []string{"wall-set"}},
		{"gauge at the foot", day(func(a *presets.Answers) { a.Gauge = "foot" }), []string{"gauge-foot"}, []string{"gauge-none"}},
		{"no gauge", day(func(a *presets.Answers) { a.Gauge = "none" }), []string{"gauge-none"}, []string{"gauge-foot"}},
		{"slim couplings", day(func(a *presets.Answers) { a.Coupling = "slim" }), []string{"line-couplings"}, nil},
		{"wall at 70 psi", day(func(a *presets.Answers) { a.Wall = "70psi" }), []string{"now-valve", "now-over-stamp"}, []string{"now-choked", "now-above-supply"}},
		{"wall at 140 psi", day(func(a *presets.Answers) { a.Wall = "140psi" }), []string{"now-choked", "now-above-supply"}, []string{"now-valve"}},
		{"wall at 20 psi", day(func(a *presets.Answers) { a.Wall = "20psi" }), []string{"now-too-low"}, []string{"now-over-stamp"}},
		{"metallic base is held farther", mildDay("metallic-base", "reduced-pressure"), []string{"distance-coat"}, []string{"isocyanate"}},
		{"old gun is held at its nearest", mildDay("metallic-base", "high-pressure"), []string{"distance-held-near"}, []string{"distance-jet"}},
		{"hvlp at 10,000 ft is held by its cap", func() presets.Answers {
			a := mildDay("clear", "high-volume-low-pressure")
			a.Altitude = "10000ft"
			return a
		}(), []string{"gun-held-by-stamp", "cap-near-limit"}, []string{"local-gun-rules"}},
	} {
		t.Run(x.name, func(t *testing.T) {
			_, s := solved(t, c, x.answers)
			var got []string
			for _, r := range s.Reasons {
				got = append(got, r.ID)
			}
			for _, k := range s.Cautions {
				got = append(got, k.ID)
			}
			for _, id := range x.has {
				assert.Contains(t, got, id)
			}
			for _, id := range x.not {
				assert.NotContains(t, got, id)
			}
			assert.Contains(t, got, "safety", "on every answer")
		})
	}
}

// No sentence speaks of a name of the program: every word in one is the trade's.
func TestSentencesAreForThePainter(t *testing.T) {
	program := regexp.MustCompile(`[a-z]+_[a-z]|[a-z][A-Z]|%[a-z]|\bnull\b|\bnil\b`)
	units := regexp.MustCompile(`\b\d*(mL|kPa|cSt)\b`)
	w := words.English()
	for _, id := range w.IDs() {
		text := w.Text(unit.US, id, nil)
		for _, name := range w.Needs(id) {
			text = strings.ReplaceAll(text, "{"+name+"}", "")
		}
		assert.Empty(t, program.FindString(units.ReplaceAllString(text, "")), "%s: %s", id, text)
	}
}
