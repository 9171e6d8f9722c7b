package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"boothset/calc"
	"boothset/presets"
	"boothset/presets/words"
	"boothset/tui/draw"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

// test is what a test and a property have in common.
type test interface {
	require.TestingT
	Helper()
}

// look is how a test's assistant is shown.
type look struct {
	size   size
	colour bool
	ascii  bool
	shop   string // a shop's own TOML
}

// mono is the usual window without colour.
var mono = look{size: size{80, 24}}

func open80x24(t test) *root { return start(t, mono) }

// shipped is the catalogue without a shop's own, read once.
var shipped = sync.OnceValues(func() (*presets.Catalogue, error) { return presets.Load(nil, "") })

// known holds what has been propagated, which takes as long as all the rest: the tests
// ask for the same few answers over and over.
var known = map[string]*calc.Spread{}

func knownSpread(r *calc.Request, s *calc.Setup) *calc.Spread {
	id := fmt.Sprintf("%+v", *r)
	if _, ok := known[id]; !ok {
		known[id] = calc.Propagate(r, s)
	}
	return known[id]
}

func start(t test, l look) *root {
	t.Helper()
	c, err := shipped()
	if l.shop != "" {
		c, err = presets.Load([]byte(l.shop), "shop.toml")
	}
	require.NoError(t, err)
	env := map[string]string{"LANG": "en_US.UTF-8", "NO_COLOR": "1"}
	if l.colour {
		delete(env, "NO_COLOR")
	}
	if l.ascii {
		env["LANG"] = "C"
	}
	s := newSession(c, words.English(), c.System(), func(name string) string { return env[name] })
	s.sure = knownSpread
	r := newRoot(s, []Question{invented(c)})
	r.Update(tea.WindowSizeMsg{Width: l.size.w, Height: l.size.h})
	return r
}

var keyTypes = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "esc": tea.KeyEsc, "up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight,
	"home": tea.KeyHome, "end": tea.KeyEnd, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "backspace": tea.KeyBackspace,
	"delete": tea.KeyDelete, "shift+tab": tea.KeyShiftTab, "shift+left": tea.KeyShiftLeft, "shift+right": tea.KeyShiftRight,
	"tab": tea.KeyTab, "ctrl+c": tea.KeyCtrlC, "ctrl+u": tea.KeyCtrlU, "f1": tea.KeyF1,
}

// key is a key by the library's name of it; what is no name is typed.
func key(name string) tea.KeyMsg {
	if t, ok := keyTypes[name]; ok {
		return tea.KeyMsg{Type: t}
	}
	if name == " " {
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune(name)}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// press sends keys one after the other; text is typed as one burst.
func press(r *root, keys ...string) {
	for _, k := range keys {
		r.Update(key(k))
	}
}

// The keys of a job from the safety page to the answer: clear, a reduced-pressure gun,
// 75 F, 45 %, 90 psi, the rest as the shop has it and its supply not checked.
var toAnswer = []string{"enter", "8", "2", "75", "enter", "45", "enter", "enter", "enter", "90", "enter", "1", "enter", "enter"}

// The same, with the supply gone through: a small compressor and another gun on it.
var toSupply = append(toAnswer[:13:13], "2", "12", "enter", "60", "enter", "enter", "enter", "100,3/4", "enter", "10,50", "enter", "enter", "enter", "enter")

// where is the step that shows, or the page.
func where(r *root) string {
	switch p := r.page().(type) {
	case *question:
		return p.step.id
	case *safety:
		return "safety"
	case *answer:
		return "answer"
	case *form:
		return p.ask.Name
	case *keysPage:
		return "keys"
	}
	return "?"
}

// requireFits holds what every frame keeps to: no row wider than the window, no more
// rows than it has.
func requireFits(t test, frame string, l size) {
	t.Helper()
	rows := strings.Split(frame, "\n")
	require.LessOrEqual(t, len(rows), l.h, "rows\n%s", frame)
	for i, row := range rows {
		require.LessOrEqual(t, ansi.StringWidth(row), l.w, "row %d: %q", i, row)
	}
}

// golden compares a frame with the one a person has looked at. UPDATE_GOLDEN=1 writes it.
func golden(t *testing.T, name, frame string) {
	t.Helper()
	file := filepath.Join("testdata", name+".txt")
	if os.Getenv("UPDATE_GOLDEN") != "" {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, []byte(frame+"\n"), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err, "UPDATE_GOLDEN=1 writes it")
	require.Equal(t, string(want), frame+"\n")
}

// onlyGlyphs are the characters beyond ASCII that a frame may hold.
var onlyGlyphs = string([]rune{draw.Blocks.Full, draw.Blocks.Upper, draw.Blocks.Lower, draw.Blocks.Rule, draw.Blocks.Between, draw.Blocks.Cursor})

func resize(l size) tea.WindowSizeMsg { return tea.WindowSizeMsg{Width: l.w, Height: l.h} }
