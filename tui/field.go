package tui

import (
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
)

// longestText is the longest that can be typed; a line of several hoses fits.
const longestText = 60

// field is one line of typed text. The library edits it; the row is drawn here, with a
// cursor that stands still and exactly as wide as there is room, which the library's own
// view is not.
type field struct {
	in   textinput.Model
	made bool
}

func (f *field) input() *textinput.Model {
	if !f.made {
		f.in, f.made = textinput.New(), true
		f.in.CharLimit = longestText
		f.in.Focus() // what it gives is the blinking, which is not wanted
	}
	return &f.in
}

func (f *field) String() string { return f.in.Value() }

func (f *field) set(text string) {
	f.input().SetValue(text)
	f.in.CursorEnd()
}

// at is the rune that the cursor stands before.
func (f *field) at() int { return f.in.Position() }

// to puts the cursor before a rune.
func (f *field) to(at int) { f.input().SetCursor(at) }

// insert puts runes at the cursor, as many as there is room for.
func (f *field) insert(runes []rune) {
	f.in, _ = f.input().Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: runes})
}

// edit takes a key that moves the cursor or deletes; what types is for insert alone.
func (f *field) edit(k tea.KeyMsg) {
	if k.Type != tea.KeyRunes && k.Type != tea.KeySpace {
		f.in, _ = f.input().Update(k)
	}
}

// row is the text with the cursor in it, cut at the front where it is longer than w.
func (f *field) row(cursor rune, w int) string {
	text, at := []rune(f.in.Value()), f.in.Position()
	return tail(string(text[:at])+string(cursor)+string(text[at:]), w)
}
