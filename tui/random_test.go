package tui

import (
	"slices"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/presets/question"
	"boothset/presets/words"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// anyKey is a key a person, a cat or a confused terminal may send.
func anyKey() *rapid.Generator[tea.Msg] {
	var names []string
	for name := range keyTypes {
		if !slices.Contains(stopKeys.Keys(), name) {
			names = append(names, name)
		}
	}
	// A map has no order, and a failure is to be found again.
	slices.Sort(names)
	return rapid.Custom(func(t *rapid.T) tea.Msg {
		switch rapid.IntRange(0, 12).Draw(t, "kind") {
		case 0, 1, 2, 3:
			return keyOf("enter")
		case 4, 5:
			return keyOf(rapid.SampledFrom(names).Draw(t, "key"))
		case 6, 7:
			return keyOf(rapid.StringMatching(`[1-9]`).Draw(t, "digit"))
		case 8, 9:
			return keyOf(rapid.SampledFrom([]string{"75", "24c", "45%", "90psi", "6 bar", "25,3/8", "-300C", "nan", "0x10", "1e9", "1,5", "1,500", "+", "200ft"}).Draw(t, "text"))
		case 10:
			return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(rapid.String().Draw(t, "runes") + " "), Paste: rapid.Bool().Draw(t, "paste"), Alt: rapid.Bool().Draw(t, "alt")}
		case 11:
			return keyOf(rapid.StringMatching(`[a-pr-z?]`).Draw(t, "letter"))
		}
		return tea.WindowSizeMsg{Width: rapid.IntRange(0, 300).Draw(t, "w"), Height: rapid.IntRange(0, 100).Draw(t, "h")}
	})
}

// anyLook is any window, language, units and set of glyphs.
func anyLook(t *rapid.T) look {
	return look{
		size: anySize(t), colour: rapid.Bool().Draw(t, "colour"), ascii: rapid.Bool().Draw(t, "ascii"),
		lang: rapid.SampledFrom(words.Languages()).Draw(t, "lang"), metric: rapid.Bool().Draw(t, "metric"),
	}
}

// anySize is a window that is drawn in.
func anySize(t *rapid.T) size {
	return size{rapid.IntRange(leastWidth, 300).Draw(t, "w"), rapid.IntRange(leastHeight, 100).Draw(t, "h")}
}

// anyStart is the keys to somewhere.
func anyStart(t *rapid.T) []string {
	return rapid.SampledFrom([][]string{nil, toAnswer, toSupply, toForm, toMix, toDew, toShort, toStarved, toRead}).Draw(t, "start")
}

// At any window and after any keys a frame fits it and has no figure that is none;
// drawing it changes nothing, and from anywhere esc alone reaches the first question with
// all that was typed still there.
func TestAnyKeys(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		l := anyLook(t)
		r, blind := start(t, l), start(t, l) // the second is drawn but at the end
		keys := anyStart(t)
		press(r, keys...)
		press(blind, keys...)
		for _, m := range rapid.SliceOfN(anyKey(), 1, 30).Draw(t, "keys") {
			r.Update(m)
			blind.Update(m)
			requireWhole(t, r)
			if r.done {
				return
			}
		}
		require.Equal(t, r.View(), blind.View(), "drawn once")
		r.Update(resize(usualSize))
		typed := typedText(r)
		for range len(r.pages) + 3 {
			if where(r) == question.Coat.Name {
				break
			}
			press(r, "esc")
		}
		if where(r) != "safety" { // nothing lies before it
			require.Equal(t, question.Coat.Name, where(r))
		}
		require.Equal(t, typed, typedText(r))
	})
}

// typedText is all that is typed or picked anywhere, by page and field.
func typedText(r *root) map[string]string {
	all := map[string]string{}
	for _, p := range r.pages {
		if q, ok := p.(*stepPage); ok {
			all[q.step.id] = q.field.String()
		}
		if g, ok := p.(*groupPage); ok {
			for _, b := range slices.Concat(g.all, g.away) {
				all[b.Name] = b.own() + r.s.answers.Text(b.Field)
			}
		}
	}
	for _, f := range r.bench.forms {
		for i := range f.all {
			all[f.asks.Name+" "+f.all[i].Name] = f.all[i].own()
		}
	}
	return all
}

// moves is walks and tries at the answer, none of which keeps anything.
func moves() *rapid.Generator[[]string] {
	return rapid.SliceOfN(rapid.SampledFrom([]string{"up", "down", "up", "down", "left", "right", "left", "right", "shift+left", "shift+right", "1", "2", "3", "4", "5", "6", "u", "pgdown"}), 1, 15)
}

// What is tried and put back leaves the frame as it was, and nothing is committed
// before enter.
func TestWhatIsTriedIsPutBackWhole(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		r := start(t, anyLook(t))
		press(r, rapid.SampledFrom([][]string{toAnswer, toSupply, toDew, toShort, toStarved, toRead}).Draw(t, "start")...)
		input, frame, answers := r.bench.input, r.View(), r.s.answers
		metric := r.s.sys
		for _, k := range moves().Draw(t, "moves") {
			press(r, k)
			requireFits(t, r.View(), r.size)
		}
		if r.s.sys != metric {
			press(r, "u")
		}
		require.Equal(t, answers, r.s.answers)
		if r.bench.changed() {
			press(r, "esc")
		}
		r.bench.input = input
		openView(r, 0)
		require.Equal(t, "bench", where(r))
		require.Equal(t, frame, r.View())
	})
}

// A step and the step back show the frame before them.
func TestAStepAndTheStepBackShowTheSame(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		r := start(t, anyLook(t))
		press(r, rapid.SampledFrom([][]string{toAnswer, toSupply, toDew, toShort, toStarved, toRead}).Draw(t, "start")...)
		for _, k := range moves().Draw(t, "moves") {
			press(r, k)
		}
		pair := rapid.SampledFrom([][2]string{{"left", "right"}, {"right", "left"}, {"shift+left", "shift+right"}, {"shift+right", "shift+left"}}).Draw(t, "pair")
		in := r.bench.inputs()[r.bench.input]
		before, frame := r.bench.tried.answers, r.View()
		press(r, pair[0])
		if before.Text(in.Field) == r.bench.tried.answers.Text(in.Field) {
			return // at an end
		}
		require.NotEqual(t, frame, r.View(), "it shows")
		press(r, pair[1])
		require.Equal(t, frame, r.View(), "%v", in)
	})
}

// What is kept is the answer to what it says.
func TestWhatIsKeptIsSolved(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		r := start(t, anyLook(t))
		press(r, rapid.SampledFrom([][]string{toAnswer, toSupply, toDew, toShort, toStarved, toRead}).Draw(t, "start")...)
		for _, k := range moves().Draw(t, "moves") {
			press(r, k)
		}
		if !r.bench.changed() {
			return
		}
		tried := r.View()
		press(r, "enter")
		got := r.result()
		require.NotNil(t, got.Plan)
		require.NotEqual(t, tried, r.View())
		want, faults := r.s.reader.Plan(r.s.counting(r.s.answers), r.s.sys)
		require.Empty(t, faults)
		require.Equal(t, want, got.Plan.Request)
		solved, err := calc.Solve(want)
		require.NoError(t, err)
		require.Equal(t, solved, got.Plan.Setup)
	})
}

func FuzzFields(f *testing.F) {
	for _, s := range []string{"75", "nan", "inf", "0x10p0", "1_000", "1,5", "1,500", "25,3/8+6,1/4", "°", "\x1b]11;rgb:00/00/00\x07", "７５", "1e400"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, typed string) {
		r := open80x24(t)
		press(r, then(atLine, "2", "1", "1", "1")...)
		for _, id := range []string{question.Hose.Name, question.Supply.Name, question.Altitude.Name, question.Temp.Name} {
			seek(r, id)
			press(r, "ctrl+u")
			r.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(typed), Paste: true})
			text := fieldText(r)
			requireFits(t, r.View(), r.size)
			press(r, "enter")
			requireFits(t, r.View(), r.size)
			if where(r) == id {
				require.NotEmpty(t, faultText(r))
				require.Equal(t, text, fieldText(r))
				continue
			}
			f, _ := question.Plan.Field(id)
			took := r.s.answers.Text(f.Field)
			require.True(t, strings.HasPrefix(took, strings.TrimSpace(text)) || strings.ContainsAny(text, "°,+"), "%q became %q", text, took)
		}
	})
}

// seek goes back to the question about a field.
func seek(r *root, id string) {
	for {
		p := r.page().(asking)
		if g, ok := p.(*groupPage); ok && g.asks(id) {
			for where(r) != id {
				press(r, map[bool]string{true: "up", false: "down"}[g.place(id) < g.at])
			}
		}
		if where(r) == id {
			return
		}
		press(r, "esc")
	}
}
