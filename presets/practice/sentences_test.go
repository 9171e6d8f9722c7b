package practice

import (
	"maps"
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/signs"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// says asserts that a sentence stands in every language, its figures in it.
func says(t *testing.T, id string, f calc.Figures) {
	t.Helper()
	given := map[string]bool{}
	for _, x := range f {
		require.False(t, given[x.Name], "%s: figure %s twice", id, x.Name)
		given[x.Name] = true
	}
	for _, lang := range words.Languages() {
		w, _ := words.For(lang)
		require.True(t, w.Has(id), "%s has no %s", lang, id)
		for _, name := range w.Needs(id) {
			assert.True(t, given[name], "%s: no figure %s", id, name)
		}
		for _, sys := range []unit.System{unit.US, unit.Metric} {
			text := w.Text(sys, id, f)
			for _, no := range []string{"{", "NaN", "Inf", "  "} {
				assert.NotContains(t, text, no, id)
			}
		}
	}
}

// Every idea says what it is called and what it is about, whatever job it is of.
func TestEveryIdeaIsTold(t *testing.T) {
	ideas := append(slices.Collect(maps.Values(ofCause)), Fine, Lost, TooHigh, Choked, Eased, Feeds, NoValve, Reserve, Class, Reach, Farther, Together)
	for _, j := range jobs()[:20] {
		d := j.Judge(Guess{j.Setup.Verdict, j.Setup.Set()})
		for _, of := range ideas {
			says(t, "idea-"+string(of), nil)
			says(t, "why-idea-"+string(of), d.Figures)
		}
	}
}

// Every sign that shows is told with its figures, and is one of those that bad spray is known
// by; a touchy valve shows nothing on a panel.
func TestEverySignIsTold(t *testing.T) {
	known := map[string]bool{"touchy": true}
	for _, s := range signs.Book().Signs {
		known[s.ID] = true
	}
	shown := map[string]bool{}
	for _, f := range finds() {
		for _, s := range f.Signs {
			shown[s.ID] = true
			assert.True(t, known[s.ID], s.ID)
			assert.True(t, s.ID == "mottling" || slices.Contains(seen, s.ID), s.ID)
			says(t, "sprayed-"+s.ID, s.Figures)
		}
	}
	for _, id := range []string{"orange-peel", "split", "dry-spray", "runs", "mottling", "touchy"} {
		assert.True(t, shown[id], id)
	}
	for _, id := range seen {
		says(t, seenSentence(id), nil)
	}
}

// Every fault and every reading is called something.
func TestEveryFaultAndReadingIsCalledSomething(t *testing.T) {
	part := calc.Figures{calc.TextFigure("part", "hose")}
	for _, k := range kinds {
		says(t, "fault-"+string(k), part)
		says(t, string(Cause{Kind: k}.Idea()), nil)
	}
	for _, f := range finds()[:20] {
		for _, r := range f.Readings {
			says(t, "read-"+string(r.Kind), part)
			shows, _ := f.Shown(r)
			assert.NotEmpty(t, words.English().FigureText(unit.US, f.Shows(r, "shows", shows)))
		}
	}
	says(t, "read-sound-cap", part)
}
