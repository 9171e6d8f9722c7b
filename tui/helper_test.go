package tui

import (
	"fmt"
	"strings"
	"sync"
	"time"

	"boothset/calc"
	"boothset/calc/spread"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

// test is what a test and a property have in common.
type test interface {
	require.TestingT
	Helper()
}

// look is how a test's assistant is shown. What is empty is usual.
type look struct {
	size   size
	colour bool
	ascii  bool
	shop   string // a shop's own TOML
	lang   string // "en" or "es"
	metric bool
	folder string // the shop's folder; none where it is empty
}

// usualSize is the window of most terminals.
var usualSize = size{80, 24}

// theSizes is the windows that every page is looked at in.
var theSizes = []size{{40, 12}, {60, 20}, usualSize, {120, 40}}

func open80x24(t test) *root { return start(t, look{}) }

// testDay is when every test takes place.
var testDay = time.Date(2025, time.March, 14, 9, 26, 0, 0, time.UTC)

func (l look) language() string {
	if l.lang == "" {
		return "en"
	}
	return l.lang
}

func (l look) system() unit.System {
	if l.metric {
		return unit.Metric
	}
	return unit.US
}

// readers is the reader of each language and shop, made once.
var readers = struct {
	sync.Mutex
	known map[[2]string]*question.Reader
}{known: map[[2]string]*question.Reader{}}

func readerOf(t test, l look) *question.Reader {
	t.Helper()
	readers.Lock()
	defer readers.Unlock()
	id := [2]string{l.language(), l.shop}
	if r := readers.known[id]; r != nil {
		return r
	}
	w, ok := words.At(l.language())
	require.True(t, ok, l.lang)
	c, err := catalogue.LoadIn(w, words.Locale{Lang: l.language()}, []byte(l.shop), "shop.toml")
	require.NoError(t, err)
	r, err := question.New(c)
	require.NoError(t, err)
	readers.known[id] = r
	return r
}

// spreads holds the spreads worked out, which take as long as all the rest: the tests
// ask for the same few answers over and over.
var spreads = struct {
	sync.Mutex
	known map[string]*spread.Spread
}{known: map[string]*spread.Spread{}}

func knownSpread(r *calc.Request, s *calc.Setup) *spread.Spread {
	id := fmt.Sprintf("%+v", *r)
	spreads.Lock()
	p, ok := spreads.known[id]
	spreads.Unlock()
	if !ok {
		p = spread.Of(r, s)
		spreads.Lock()
		spreads.known[id] = p
		spreads.Unlock()
	}
	return p
}

// options is a test's assistant as Run and Plain take it: nothing is kept.
func (l look) options(t test) Options {
	t.Helper()
	r := readerOf(t, l)
	env, colours := map[string]string{"LANG": "en_US.UTF-8"}, None
	if l.colour {
		colours = Dark
	}
	if l.ascii {
		env["LANG"] = "C"
	}
	sys := l.system()
	if l.shop != "" && !l.metric {
		sys = r.System()
	}
	return Options{Reader: r, Words: r.Words(), System: sys, Colours: colours, Getenv: func(name string) string { return env[name] }, Shop: l.folder}
}

// start is an assistant before its first key, on testDay and with nothing kept.
func start(t test, l look) *root {
	t.Helper()
	o := l.options(t)
	s := newSession(o.Reader, o.Words, o.System, o.Colours, o.Getenv)
	s.desk.where = o.Shop
	s.sure = knownSpread
	s.now = func() time.Time { return testDay }
	s.writeNew = func(name string, _ []byte) (string, error) { return "/booth/" + name + ".txt", nil }
	if l.folder == inventedShop { // it is part of the source
		s.inFolder = func(string, func(*shop.Folder) (string, error)) (string, error) { return "", nil }
	}
	r := newRoot(s)
	if l.size == (size{}) {
		l.size = usualSize
	}
	r.Update(resize(l.size))
	return r
}

var keyTypes = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "esc": tea.KeyEsc, "up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight,
	"home": tea.KeyHome, "end": tea.KeyEnd, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown, "backspace": tea.KeyBackspace,
	"delete": tea.KeyDelete, "shift+tab": tea.KeyShiftTab, "shift+left": tea.KeyShiftLeft, "shift+right": tea.KeyShiftRight,
	"tab": tea.KeyTab, "f2": tea.KeyF2, "ctrl+c": tea.KeyCtrlC, "ctrl+\\": tea.KeyCtrlBackslash, "ctrl+z": tea.KeyCtrlZ, "ctrl+u": tea.KeyCtrlU, "f1": tea.KeyF1,
}

// keyOf is a key by the library's name of it; what is no name is typed.
func keyOf(name string) tea.KeyMsg {
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
		r.Update(keyOf(k))
	}
}

// then is keys and what follows them, in a slice of their own.
func then(keys []string, more ...string) []string {
	return append(keys[:len(keys):len(keys)], more...)
}

// The keys of a job from the safety page to the answer: clear, a reduced-pressure gun,
// 75 F, 45 %, 90 psi, the rest as the shop has it and its supply not checked. The units
// are named, so that they mean the same in both systems.
var toAnswer = []string{"enter", "8", "2", "75F", "enter", "45", "enter", "enter", "90psi", "enter", "enter", "enter"}

// The first keys of toAnswer, by where they lead.
var (
	atCoat     = toAnswer[:1]
	atGun      = toAnswer[:2]
	atTemp     = toAnswer[:3]
	atHumidity = toAnswer[:5]
	atPanel    = toAnswer[:7]
	atAltitude = then(atPanel, "down")
	atSupply   = toAnswer[:8]
	atLine     = toAnswer[:10]
	atWallNow  = then(atLine, "down")
	atCheck    = then(atLine, "down", "down")
	atSheet    = toAnswer[:11]
)

// The same, with the supply gone through: a small compressor and another gun on it.
var (
	atCompressor = then(atCheck, "2")
	toSupply     = then(atCompressor, "12cfm", "enter", "60gal", "enter", "enter", "enter", "100ft,3/4in", "enter", "10cfm,50", "enter", "enter", "enter", "enter", "enter", "enter", "enter")
)

// The same to a panel below the dew point, and on a supply too low for the gun.
var (
	toDew   = then(atHumidity, "97", "enter", "72F", "enter", "enter", "90psi", "enter", "enter", "enter")
	toShort = then(atSupply, "28psi", "enter", "enter", "enter")
	// toStarved is one whose supply leaves the gun under the coat's band.
	toStarved = then(atSupply, "22psi", "enter", "enter", "enter")
)

// toRead is the same with the wall found at 70 psi.
var toRead = then(atWallNow, "70psi", "enter", "enter", "enter")

// where is the step that shows, or the page.
func where(r *root) string {
	switch p := r.page().(type) {
	case *stepPage:
		return p.step.id
	case *groupPage:
		if p.step.id == stepSheet {
			return stepSheet
		}
		return p.all[p.at].Name
	case *unsurePage:
		return "unsure"
	case *safety:
		return "safety"
	case *resume:
		return "resume"
	case *pickPage:
		return p.id
	case *entryPage:
		return p.id
	case *toldPage:
		return p.title
	case *provePage:
		return "prove"
	case *troublePage:
		return "trouble"
	case *bench:
		return "bench"
	case *form:
		return p.asks.Name
	case *partsPage:
		return "parts"
	case *kindsPage:
		return "kinds"
	case *keysPage:
		return "keys"
	case *finish:
		return "finish"
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

// requireWhole holds what a frame keeps to besides: no figure that is none, and the same drawn twice.
func requireWhole(t test, r *root) {
	t.Helper()
	frame := r.View()
	requireFits(t, frame, r.size)
	require.NotContains(t, frame, "NaN")
	require.NotContains(t, frame, "Inf")
	require.Equal(t, frame, r.View(), "drawn twice")
}

func resize(l size) tea.WindowSizeMsg { return tea.WindowSizeMsg{Width: l.w, Height: l.h} }

// fieldText is what stands in the field that is asked for: typed, or taken.
func fieldText(r *root) string {
	switch p := r.page().(type) {
	case *stepPage:
		return p.field.String()
	case *groupPage:
		if b := &p.all[p.at]; b.own() != "" {
			return b.typed.String()
		}
		return r.s.answers.Text(p.all[p.at].Field)
	}
	return ""
}

// faultText is why the last answer was not taken.
func faultText(r *root) string {
	switch p := r.page().(type) {
	case *stepPage:
		return p.fault
	case *groupPage:
		return p.fault
	}
	return ""
}
