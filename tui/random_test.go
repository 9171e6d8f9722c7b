package tui

import (
	"slices"
	"strings"
	"testing"

	"boothset/presets"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// anyKey is a key a person, a cat or a confused terminal may send.
func anyKey() *rapid.Generator[tea.Msg] {
	var named []string
	for name := range keyTypes {
		if name != stopKey {
			named = append(named, name)
		}
	}
	// A map has no order, and a failure is to be found again.
	slices.Sort(named)
	return rapid.Custom(func(t *rapid.T) tea.Msg {
		switch rapid.IntRange(0, 12).Draw(t, "kind") {
		case 0, 1, 2, 3:
			return key("enter")
		case 4, 5:
			return key(rapid.SampledFrom(named).Draw(t, "key"))
		case 6, 7:
			return key(rapid.StringMatching(`[1-9]`).Draw(t, "digit"))
		case 8, 9:
			return key(rapid.SampledFrom([]string{"75", "24c", "45%", "90psi", "6 bar", "25,3/8", "-300C", "nan", "0x10", "1e9", "1,5", "1,500", "+", "200ft"}).Draw(t, "text"))
		case 10:
			return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(rapid.String().Draw(t, "runes") + " "), Paste: rapid.Bool().Draw(t, "paste"), Alt: rapid.Bool().Draw(t, "alt")}
		case 11:
			return key(rapid.StringMatching(`[a-pr-z?]`).Draw(t, "letter"))
		}
		return tea.WindowSizeMsg{Width: rapid.IntRange(0, 130).Draw(t, "w"), Height: rapid.IntRange(0, 50).Draw(t, "h")}
	})
}

func TestAnyKeys(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := start(t, look{size: usualSize, colour: rapid.Bool().Draw(t, "colour")})
		for _, m := range rapid.SliceOfN(anyKey(), 1, 60).Draw(t, "keys") {
			r.Update(m)
			frame := r.View()
			requireFits(t, frame, r.size)
			require.NotContains(t, frame, "NaN")
			require.NotContains(t, frame, "Inf")
			if r.done {
				return
			}
		}
		// From anywhere, escape reaches the first question, and what was typed is there.
		r.Update(resize(usualSize))
		typed := typedText(r)
		for range len(r.pages) + 2 {
			press(r, "esc")
		}
		if where(r) != "safety" {
			require.Equal(t, presets.FieldCoat, where(r))
		}
		require.Equal(t, typed, typedText(r))
	})
}

// typedText is all that is typed or picked anywhere, by page and field.
func typedText(r *root) map[string]string {
	all := map[string]string{}
	for _, p := range r.pages {
		if q, ok := p.(*question); ok {
			all[q.step.id] = q.field.String()
		}
	}
	for _, f := range r.answer.forms {
		for i := range f.boxes {
			all[f.ask.Name+" "+f.boxes[i].Name] = f.boxes[i].own()
		}
	}
	return all
}

// The same from the page of a question, where most keys are text.
func TestAnyKeysOnAForm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := open80x24(t)
		press(r, toForm...)
		for _, m := range rapid.SliceOfN(anyKey(), 1, 40).Draw(t, "keys") {
			r.Update(m)
			requireFits(t, r.View(), r.size)
			if r.done {
				return
			}
		}
		r.Update(resize(usualSize))
		typed := typedText(r)
		for range len(r.pages) + 2 {
			press(r, "esc")
		}
		require.Equal(t, presets.FieldCoat, where(r))
		require.Equal(t, typed, typedText(r))
	})
}

func FuzzFields(f *testing.F) {
	for _, s := range []string{"75", "nan", "inf", "0x10p0", "1_000", "1,5", "1,500", "25,3/8+6,1/4", "°", "\x1b]11;rgb:00/00/00\x07", "７５", "1e400"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, typed string) {
		r := open80x24(t)
		press(r, append(toAnswer[:11:11], "2", "1", "1", "1")...)
		for _, id := range []string{presets.FieldHose, presets.FieldSupply, presets.FieldAltitude, presets.FieldTemp} {
			for where(r) != id {
				press(r, "esc")
			}
			press(r, "ctrl+u")
			r.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(typed), Paste: true})
			q := r.page().(*question)
			text := q.field.String()
			requireFits(t, r.View(), r.size)
			press(r, "enter")
			requireFits(t, r.View(), r.size)
			if where(r) == id {
				require.NotEmpty(t, q.fault)
				require.Equal(t, text, q.field.String())
			} else {
				require.True(t, strings.HasPrefix(q.field.String(), strings.TrimSpace(text)) || strings.ContainsAny(text, "°,+"), "%q became %q", text, q.field.String())
			}
		}
	})
}
