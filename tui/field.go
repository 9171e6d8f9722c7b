package tui

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
)

// longestText is the longest that can be typed; a line of several hoses fits.
const longestText = 60

// field is one line of typed text with a cursor that stands still.
type field struct {
	text []rune
	at   int // the cursor stands before this rune
}

func (f *field) String() string { return string(f.text) }

func (f *field) set(text string) {
	f.text = []rune(text)
	f.at = len(f.text)
}

// insert puts runes at the cursor, as many as there is room for.
func (f *field) insert(runes []rune) {
	runes = runes[:min(len(runes), max(longestText-len(f.text), 0))]
	f.text = slices.Insert(f.text, f.at, runes...)
	f.at += len(runes)
}

// edit takes a key that moves the cursor or deletes.
func (f *field) edit(k tea.KeyMsg) {
	switch k.String() {
	case "left", "ctrl+b":
		f.at = max(f.at-1, 0)
	case "right", "ctrl+f":
		f.at = min(f.at+1, len(f.text))
	case "home", "ctrl+a":
		f.at = 0
	case "end", "ctrl+e":
		f.at = len(f.text)
	case "backspace", "ctrl+h":
		if f.at > 0 {
			f.at--
			f.text = slices.Delete(f.text, f.at, f.at+1)
		}
	case "delete", "ctrl+d":
		if f.at < len(f.text) {
			f.text = slices.Delete(f.text, f.at, f.at+1)
		}
	}
}

// row is the text with the cursor in it, cut at the front where it is longer than w.
func (f *field) row(cursor rune, w int) string {
	var b strings.Builder
	b.WriteString(string(f.text[:f.at]))
	b.WriteRune(cursor)
	b.WriteString(string(f.text[f.at:]))
	return tail(b.String(), w)
}
