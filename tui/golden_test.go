package tui

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"boothset/calc/calctest"
	"boothset/presets/catalogue"
	"boothset/presets/words"
	"boothset/tui/draw"
	"boothset/tui/golden"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

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
			if strings.HasPrefix(f.name, "prove") { // lines are drawn for each
				calctest.WithoutRace(t)
			}
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
	r.s.theme = newTheme(Dark)
	coloured = r.View()
	r.s.theme = newTheme(None)
	boxes := strings.NewReplacer("[", " ", "]", " ") // what is inverted in colour stands in brackets without
	require.Equal(t, trimmed(boxes.Replace(frame)), trimmed(boxes.Replace(ansi.Strip(coloured))), "colour adds nothing that is not said in text")
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

// letters are those beyond ASCII that the languages' sentences have, large and small, and
// the marks that they may have.
var letters = func() string {
	all := "¿¡°"
	for _, lang := range words.Languages() {
		w, _ := words.For(lang)
		for _, id := range w.IDs() {
			for _, c := range w.Say(id) {
				if c > unicode.MaxASCII && unicode.IsLetter(c) && !strings.ContainsRune(all, c) {
					all += string([]rune{unicode.ToLower(c), unicode.ToUpper(c)})
				}
			}
		}
	}
	return all
}()

// pictureRunes are the characters beyond ASCII that a frame may have: those of the set, and with
// its Braille all 256 of that, eighths and quarters of a cell, rounded corners, a heavy rule with
// its ends, and points.
var pictureRunes = func() string {
	g := draw.Blocks
	all := "╭╮╰╯━╸╺╼╾●◆○"
	for c := g.Braille; c < g.Braille+256; c++ {
		all += string(c)
	}
	for c := '▁'; c <= '▟'; c++ {
		all += string(c)
	}
	return all + string([]rune{g.Full, g.Upper, g.Lower, g.Left, g.Right, g.Light, g.Mid, g.Dark, g.Dot, g.Rule, g.Upright, g.Down, g.Up,
		g.Cross, g.TeeRight, g.TeeLeft, g.DownRight, g.DownLeft, g.UpRight, g.UpLeft, g.Between, g.Cursor, g.Done})
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
