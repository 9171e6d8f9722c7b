package tui

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"boothset/presets/catalogue"
	"boothset/presets/last"
	"boothset/presets/question"
	"boothset/presets/words"
	"boothset/tui/draw"
	"boothset/tui/golden"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

// shot is a place that is looked at: the keys to it from the start.
type shot struct {
	name  string
	keys  []string
	whole bool // it may go on behind what shows, which is looked at too
	kept  *last.Draft
	// spanish: it stands for its kind of page in another language and other units too;
	// extremes: in the smallest window and in a large one.
	spanish, extremes bool
}

// half and whole are what a last run may have left: on its way to the answer, and there.
func halfRun() *last.Draft {
	return &last.Draft{
		Saved: testDay.Add(-3 * time.Hour), At: question.Humidity.Name, Typed: "4", Units: catalogue.UnitsUS, Check: checkSkip,
		Answers: last.Texts{"coat": {"clear"}, "gun": {"reduced-pressure"}, "temp": {"75F"}},
	}
}

func wholeRun() *last.Draft {
	d := halfRun()
	d.Saved, d.Finished, d.At, d.Typed = testDay.Add(-26*time.Hour), true, atBench, ""
	d.Answers["humidity"], d.Answers["supply"] = []string{"45%"}, []string{"90psi"}
	return d
}

// tried is keys that try ten steps of an input, so many behind the wall.
func tried(keys []string, behind int) []string {
	all := then(keys)
	for range behind {
		all = append(all, "up")
	}
	return then(all, "shift+right")
}

// How far the inputs lie behind the wall in toAnswer.
const (
	hoseBehind = 4
	airBehind  = 12
)

// alike is the states in which a view shows what it shows in others.
var alike = map[string][]string{
	"look": {"-supply"}, "line": {"-tried-air", "-supply"}, "day": {"-tried-hose", "-supply"}, "sure": {"-supply"}, "why": {"-tried-air"},
}

func shots() []shot {
	all := []shot{
		{name: "safety", whole: true, spanish: true},
		{name: "resume-half", kept: halfRun(), keys: []string{"enter"}},
		{name: "resume-done", kept: wholeRun(), keys: []string{"enter"}, spanish: true},
		{name: "coat", keys: toAnswer[:1], spanish: true},
		{name: "coat-entered", kept: wholeRun(), keys: []string{"enter", "2"}},
		{name: "coat-end", keys: then(toAnswer[:1], "down", "down", "down", "down", "down", "down", "down", "down", "down", "down")},
		{name: "gun", keys: toAnswer[:2]},
		{name: "temp", keys: toAnswer[:3]},
		{name: "temp-typed", keys: toAnswer[:4]},
		{name: "temp-entered", kept: wholeRun(), keys: []string{"enter", "2", "enter", "enter"}},
		{name: "temp-bad", keys: then(toAnswer[:3], "75 bar", "enter"), spanish: true},
		{name: "temp-outside", keys: then(toAnswer[:3], "300F", "enter")},
		{name: "temp-empty", keys: then(toAnswer[:3], "enter")},
		{name: "humidity", keys: toAnswer[:5]},
		{name: "humidity-bad", keys: then(toAnswer[:5], "450", "enter")},
		{name: "panel", keys: toAnswer[:7]},
		{name: "altitude", keys: toAnswer[:8]},
		{name: "supply", keys: toAnswer[:9]},
		{name: "supply-bad", keys: then(toAnswer[:9], "1,500", "enter")},
		{name: "line", keys: toAnswer[:11], spanish: true},
		{name: "regulator", keys: then(toAnswer[:11], "2")},
		{name: "regulator-at", keys: then(toAnswer[:11], "2", "enter")},
		{name: "filter", keys: then(toAnswer[:11], "2", "enter", "enter")},
		{name: "hose", keys: then(toAnswer[:11], "2", "enter", "enter", "enter"), spanish: true},
		{name: "hose-bad", keys: then(toAnswer[:11], "2", "enter", "enter", "enter", "25ft", "enter")},
		{name: "coupling", keys: then(toAnswer[:11], "2", "enter", "enter", "enter", "enter")},
		{name: "gauge", keys: then(toAnswer[:11], "2", "enter", "enter", "enter", "enter", "enter")},
		{name: "wall", keys: toAnswer[:12]},
		{name: "check", keys: toAnswer[:13]},
		{name: "check-again", keys: then(toSupply[:27], "esc", "esc", "esc", "esc", "esc", "esc", "esc", "esc", "esc", "esc"), spanish: true},
		{name: "compressor", keys: toSupply[:14]},
		{name: "receiver", keys: toSupply[:16]},
		{name: "cut-in", keys: toSupply[:18]},
		{name: "cut-out", keys: toSupply[:19]},
		{name: "main", keys: toSupply[:20]},
		{name: "main-bad", keys: then(toSupply[:20], "100ft", "enter")},
		{name: "other", keys: toSupply[:22]},
		{name: "spray-time", keys: toSupply[:24]},
		{name: "receiver-temp", keys: toSupply[:25]},
		{name: "line-temp", keys: toSupply[:26]},
		{name: "page-day", keys: then(toAnswer, "7"), whole: true},
		{name: "page-day-dew", keys: then(toDew, "7"), whole: true, spanish: true},
		{name: "page-coat", keys: then(toAnswer, "8", "up", "left")},
		{name: "page-thin", keys: then(toAnswer, "8"), spanish: true},
		{name: "page-thin-typed", keys: then(toAnswer, "8", "din4", "enter")},
		{name: "page-thin-answer", keys: then(toAnswer, "8", "din4", "enter", "22", "enter", "pgdown"), whole: true},
		{name: "page-film", keys: then(toAnswer, "9"), whole: true},
		{name: "page-mix", keys: then(toAnswer, "0")},
		{name: "page-mix-bad", keys: then(toAnswer, "0", "two", "enter")},
		{name: "page-mix-answer", keys: then(toAnswer, "0", "hood", "enter", "pgdown"), whole: true, spanish: true},
		{name: "keys-safety", keys: []string{"?"}, whole: true},
		{name: "keys-list", keys: then(toAnswer[:2], "?"), whole: true},
		{name: "keys-typed", keys: then(toAnswer[:4], "f1"), whole: true},
		{name: "keys-bench", keys: then(toAnswer, "?"), whole: true, spanish: true},
		{name: "keys-tried", keys: then(toAnswer, "right", "?"), whole: true},
		{name: "keys-page", keys: then(toAnswer, "8", "f1"), whole: true},
		{name: "finish", keys: then(toAnswer, "6", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "enter"), spanish: true},
		{name: "finish-early", keys: then(toAnswer[:1], "esc")},
	}
	for n, v := range views {
		for _, state := range []struct {
			name string
			keys []string
		}{
			{"", toAnswer},
			{"-tried-hose", tried(toAnswer, hoseBehind)},
			{"-tried-air", tried(toAnswer, airBehind)},
			{"-dew", toDew},
			{"-short", toShort},
			{"-wall", toRead},
			{"-supply", toSupply},
		} {
			if slices.Contains(alike[v.id], state.name) {
				continue
			}
			keys := then(state.keys, viewKeys()[n])
			if n == 0 { // it shows already, and would turn
				keys = state.keys
			}
			// The reasons are many pages, and many of them the same in all states.
			whole := v.id != "why" || slices.Contains([]string{"", "-dew", "-supply"}, state.name)
			plain := state.name == ""
			all = append(all, shot{name: "bench-" + v.id + state.name, keys: keys, whole: whole, spanish: plain, extremes: plain && n == 0})
		}
	}
	return all
}

// at is a shot as a look has it.
func (f *shot) at(t test, l look) *root {
	t.Helper()
	r := start(t, look{lang: l.lang, metric: l.metric, colour: l.colour, ascii: l.ascii})
	if f.kept != nil {
		r.resume.run = r.s.read(*f.kept)
	}
	press(r, f.keys...)
	if l.size != (size{}) {
		r.Update(resize(l.size))
	}
	return r
}

// each gives each screenful of a shot to see, with its number from 1, and leaves it at the
// first.
func (f *shot) each(r *root, see func(n int, frame string)) {
	frame := r.View()
	see(1, frame)
	for n := 2; f.whole; n++ {
		press(r, "pgdown")
		next := r.View()
		if next == frame {
			if where(r) == "bench" {
				openView(r, r.bench.view)
			}
			press(r, "home")
			return
		}
		frame = next
		see(n, frame)
	}
}

func (l look) String() string {
	units := catalogue.UnitsUS
	if l.metric {
		units = catalogue.UnitsMetric
	}
	return fmt.Sprintf("%dx%d %s %s", l.size.w, l.size.h, l.language(), units)
}

// largeWindow is a window that few have.
var largeWindow = size{200, 60}

// isGolden reports whether the frames of a shot in a look are held to those that a person has
// looked at: in English and US units in the two windows that most have, and, where it stands
// for others, in Spanish and metric ones and in the extreme windows.
func (f *shot) isGolden(l look) bool {
	switch {
	case l.size == usualSize, l.size == theSizes[len(theSizes)-1]:
		return l.language() == "en" && !l.metric || f.spanish && l.language() == "es" && l.metric
	}
	return f.extremes && (l.size == theSizes[0] || l.size == largeWindow) && l.language() == "en" && !l.metric
}

// Every page and view is sound at every size, in every language and in both unit systems.
// Without colour a frame is the same text, so that the file of a shot has those in colour
// alone.
func TestFrames(t *testing.T) {
	for _, f := range shots() {
		t.Run(f.name, func(t *testing.T) {
			t.Parallel()
			var frames strings.Builder
			for _, lang := range words.Languages() {
				for _, metric := range []bool{false, true} {
					l := look{lang: lang, metric: metric}
					r := f.at(t, l)
					for _, l.size = range append(theSizes[:len(theSizes):len(theSizes)], largeWindow) {
						r.Update(resize(l.size))
						f.each(r, func(n int, frame string) {
							requireSound(t, r, frame, l)
							coloured := requireTheSameInColour(t, r, frame)
							requireASCII(t, r, l.size)
							if f.isGolden(l) {
								fmt.Fprintf(&frames, "%s\n%s\n", l.head(n), coloured)
							}
						})
					}
				}
			}
			golden.Equal(t, f.name+".ansi", frames.String())
		})
	}
}

// head names a frame, the n-th of its shot.
func (l look) head(n int) string {
	if n == 1 {
		return fmt.Sprintf("== %v", l)
	}
	return fmt.Sprintf("== %v, page %d", l, n)
}

// requireTheSameInColour gives a frame in colour, which adds nothing to its text.
func requireTheSameInColour(t test, r *root, frame string) (coloured string) {
	t.Helper()
	r.s.theme = newTheme(true)
	coloured = r.View()
	r.s.theme = newTheme(false)
	require.Equal(t, trimmed(frame), trimmed(ansi.Strip(coloured)), "colour adds nothing that is not said in text")
	return coloured
}

// requireASCII holds what a frame on a plain terminal keeps to.
func requireASCII(t test, r *root, l size) {
	t.Helper()
	r.s.glyphs = draw.ASCII
	frame := r.View()
	r.s.glyphs = draw.Blocks
	requireOnly(t, frame, letters)
	requireNarrow(t, frame, l)
}

// trimmed is a frame without the blanks at the ends of its rows.
func trimmed(frame string) string {
	rows := strings.Split(frame, "\n")
	for i := range rows {
		rows[i] = strings.TrimRight(rows[i], " ")
	}
	return strings.Join(rows, "\n")
}

// requireOnly holds that a frame has no characters beyond ASCII but some.
func requireOnly(t test, frame, beyond string) {
	t.Helper()
	for _, c := range frame {
		if c != '\n' && (c < ' ' || c >= 0x7f) && !strings.ContainsRune(beyond, c) {
			t.Errorf("%q is none of the known characters\n%s", c, frame)
			t.FailNow()
		}
	}
}

// requireNarrow is requireFits for a frame of which every character is one column wide.
func requireNarrow(t test, frame string, l size) {
	t.Helper()
	rows := strings.Split(frame, "\n")
	require.LessOrEqual(t, len(rows), l.h, "rows\n%s", frame)
	for i, row := range rows {
		if utf8.RuneCountInString(row) > l.w {
			t.Errorf("row %d is too wide: %q", i, row)
			t.FailNow()
		}
	}
}

func TestEveryKnownCharacterIsOneColumnWide(t *testing.T) {
	for _, c := range letters + pictureRunes {
		require.Equal(t, 1, ansi.StringWidth(string(c)), "%q", c)
	}
}

// letters are those beyond ASCII that a sentence may have in some language.
const letters = "áéíóúñüÁÉÍÓÚÑÜ¿¡°"

// pictureRunes are the characters beyond ASCII that a frame may have.
var pictureRunes = func() string {
	g := draw.Blocks
	return string([]rune{g.Full, g.Upper, g.Lower, g.Left, g.Right, g.Light, g.Mid, g.Dark, g.Dot, g.Rule, g.Upright, g.Down, g.Up,
		g.Cross, g.TeeRight, g.TeeLeft, g.DownRight, g.DownLeft, g.UpRight, g.UpLeft, g.Between, g.Cursor})
}()

// idLike is what may be a sentence's id.
var idLike = regexp.MustCompile(`[a-z0-9]+(-[a-z0-9]+)+`)

// englishWords are those that a Spanish frame has no business with.
var englishWords = regexp.MustCompile(`(?i)\b(the|and|with|wall|pressure|valve|spray|sprays|hose|gun|coat|coats|weather|keep|likely|loses|lost|costs|give|type|typed|such|of|or|from|to|at|is|are|be|back|take|quit|keys|what|why|out|each|not|open|shut|step|answer|humidity|line|water|number|between|outside|more)\b`)

// titles are those of books, which are in English everywhere.
var titles = strings.NewReplacer("Handbook of", "")

// requireSound holds what every frame without colour keeps to.
func requireSound(t test, r *root, frame string, l look) {
	t.Helper()
	requireOnly(t, frame, letters+pictureRunes) // so there are no attributes either
	requireNarrow(t, frame, l.size)
	require.NotContains(t, frame, "{", "every figure has its value")
	require.NotContains(t, frame, "NaN")
	require.NotContains(t, frame, "Inf")
	for _, id := range idLike.FindAllString(frame, -1) {
		require.False(t, r.s.words.Has(id), "the id %s shows", id)
	}
	if l.language() != "en" {
		require.Empty(t, englishWords.FindAllString(titles.Replace(frame), -1), "%v\n%s", l, frame)
	}
}

func TestTooSmallAWindowSaysSo(t *testing.T) {
	var text strings.Builder
	for _, lang := range words.Languages() {
		for _, at := range []size{{39, 12}, {80, 11}, {12, 5}, {1, 1}} {
			l := look{size: at, lang: lang}
			r := start(t, l)
			requireSound(t, r, r.View(), l)
			fmt.Fprintf(&text, "== %v\n%s\n", l, r.View())
		}
	}
	golden.Equal(t, "too-small.txt", text.String())
}

func TestColoursAreOfTheTerminalsOwnSixteen(t *testing.T) {
	for n := range views {
		r := start(t, look{colour: true})
		press(r, toAnswer...)
		openView(r, n)
		frame := r.View()
		require.Contains(t, frame, "\x1b[")
		require.NotContains(t, frame, "38;5;")
		require.NotContains(t, frame, "38;2;")
	}
}
