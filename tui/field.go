package tui

import (
	"slices"
	"sync"
	"unicode"

	bind "github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// longestText is the longest that can be typed; a line of several hoses fits.
const longestText = 60

// field is one line of typed text with a cursor that stands still. The library's own text
// input looks for clipboard programs at every start and is copied whole, ten kilobytes, at
// every key.
type field struct {
	text    []rune
	cursor  int  // the rune that it stands before
	touched bool // it was typed in since it was set
}

func (f *field) String() string { return string(f.text) }

func (f *field) set(text string) {
	f.text, f.cursor = nil, 0
	f.insert([]rune(text))
	f.touched = false
}

// at is the rune that the cursor stands before.
func (f *field) at() int { return f.cursor }

// to puts the cursor before a rune.
func (f *field) to(at int) { f.cursor = min(max(at, 0), len(f.text)) }

// insert puts runes at the cursor, as many as there is room for.
func (f *field) insert(runes []rune) {
	room := longestText - len(f.text)
	runes = runes[:min(len(runes), room)]
	f.text = slices.Insert(f.text, f.cursor, runes...)
	f.cursor += len(runes)
	f.touched = true
}

// lineEdit is what some keys do to a field.
type lineEdit struct {
	on bind.Binding
	do func(f *field)
}

// lineEdits are the keys that move the cursor or delete, the usual ones of a line editor.
var lineEdits = sync.OnceValue(func() []lineEdit {
	return []lineEdit{
		{on("left", "ctrl+b"), func(f *field) { f.cursor = max(f.cursor-1, 0) }},
		{on("right", "ctrl+f"), func(f *field) { f.cursor = min(f.cursor+1, len(f.text)) }},
		{on("home", "ctrl+a"), func(f *field) { f.cursor = 0 }},
		{on("end", "ctrl+e"), func(f *field) { f.cursor = len(f.text) }},
		{on("ctrl+left", "alt+left", "alt+b"), func(f *field) { f.cursor = f.wordBefore() }},
		{on("ctrl+right", "alt+right", "alt+f"), func(f *field) { f.cursor = f.wordAfter() }},
		{on("backspace", "ctrl+h"), func(f *field) { f.cut(f.cursor-1, f.cursor) }},
		{on("delete", "ctrl+d"), func(f *field) { f.cut(f.cursor, f.cursor+1) }},
		{on("ctrl+w", "alt+backspace"), func(f *field) { f.cut(f.wordBefore(), f.cursor) }},
		{on("alt+d", "alt+delete"), func(f *field) { f.cut(f.cursor, f.wordAfter()) }},
		{on("ctrl+u"), func(f *field) { f.cut(0, f.cursor) }},
		{on("ctrl+k"), func(f *field) { f.cut(f.cursor, len(f.text)) }},
	}
})

func on(keys ...string) bind.Binding { return bind.NewBinding(bind.WithKeys(keys...)) }

// edit takes a key that moves the cursor or deletes; what types is for insert alone.
func (f *field) edit(k tea.KeyMsg) {
	for _, e := range lineEdits() {
		if bind.Matches(k, e.on) {
			e.do(f)
			return
		}
	}
}

// cut takes out the runes from one place to another, as far as there are any.
func (f *field) cut(from, to int) {
	from, to = max(from, 0), min(to, len(f.text))
	f.text = slices.Delete(f.text, from, to)
	f.cursor = from
	f.touched = true
}

// wordBefore is where the word before the cursor begins.
func (f *field) wordBefore() int {
	at := f.cursor
	for at > 0 && unicode.IsSpace(f.text[at-1]) {
		at--
	}
	for at > 0 && !unicode.IsSpace(f.text[at-1]) {
		at--
	}
	return at
}

// wordAfter is where the word behind the cursor ends.
func (f *field) wordAfter() int {
	at := f.cursor
	for at < len(f.text) && unicode.IsSpace(f.text[at]) {
		at++
	}
	for at < len(f.text) && !unicode.IsSpace(f.text[at]) {
		at++
	}
	return at
}

// row is the text with the cursor in it, cut at the front where it is longer than w.
func (f *field) row(cursor rune, w int) string {
	return tail(string(f.text[:f.cursor])+string(cursor)+string(f.text[f.cursor:]), w)
}
