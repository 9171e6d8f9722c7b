package tui

import (
	"strconv"

	"github.com/charmbracelet/bubbles/key"
)

// The key map: every key the assistant knows, by what it is for. What a key does is said
// by the page that binds it; its own name is a sentence under the id that stands behind
// WithHelp.
var (
	stopKeys  = chord("key-stop", "ctrl+c", "ctrl+\\")
	pauseKeys = chord("key-pause", "ctrl+z")
	helpKeys  = chord("key-help", "?", "f1")

	takeKeys   = chord("key-enter", "enter")
	nextKeys   = chord("key-enter", "enter", "down", "tab")
	onKeys     = chord("key-enter", "enter", " ")
	firstKeys  = chord("key-enter", "enter", "tab")
	backKeys   = chord("key-esc", "esc", "backspace")
	listBack   = chord("key-esc", "esc", "left", "backspace", "shift+tab")
	typedBack  = chord("key-esc", "esc", "shift+tab")
	escKeys    = chord("key-esc", "esc")
	closeKeys  = chord("key-esc", "esc", "enter", "left", "backspace", "?", "f1")
	chooseKeys = chord("key-up-down", "up", "down", "k", "j")
	walkKeys   = chord("key-up-down", "up", "down", "k", "j")
	stepKeys   = chord("key-up-down", "up", "down")
	fieldKeys  = chord("key-up-down", "up", "down", "tab", "shift+tab")
	readKeys   = chord("key-equals", "=")
	unsureKeys = chord("key-f2", "f2", "!")
	beforeKeys = chord("key-up", "up", "shift+tab")
	lastKeys   = chord("key-left", "shift+tab", "left")
	nudgeKeys  = chord("key-left-right", "left", "right")
	farKeys    = chord("key-shift-left-right", "shift+left", "shift+right")
	clearKeys  = chord("key-clear", "ctrl+u")
	answerKeys = chord("key-page-down", "pgdown")

	scrollKeys    = chord("key-up-down", "up", "down", "k", "j")
	pageKeys      = chord("key-pages", "pgup", "pgdown", " ")
	homeKeys      = chord("key-home-end", "home", "end")
	screenfulKeys = chord("key-pages", "pgup", "pgdown")

	unitsKeys = chord("key-u", "u")
	stageKeys = chord("key-s", "s")
	againKeys = chord("key-n", "n")
	quitKeys  = chord("key-q", "q")
	writeKeys = chord("key-w", "w")
	nameKeys  = chord("key-w", "w")
	copyKeys  = chord("key-y", "y")
)

// chord is keys that do the same, and the id of what a person calls them.
func chord(name string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, ""))
}

// digit is the key of a digit. It is called by itself.
func digit(d string) key.Binding { return key.NewBinding(key.WithKeys(d), key.WithHelp(d, "")) }

// digits is the keys of the first nine entries of a list. They are called by themselves.
func digits(n int) key.Binding {
	var keys []string
	for i := range min(n, 9) {
		keys = append(keys, strconv.Itoa(i+1))
	}
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(fromTo(keys), ""))
}
