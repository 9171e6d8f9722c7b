package tui

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

// frames is what is looked at: keys from the start, at the sizes named.
var frames = []struct {
	name  string
	keys  []string
	sizes []size
}{
	{"safety", nil, []size{usualSize, {60, 20}, {40, 12}}},
	{"coat", toAnswer[:1], []size{usualSize, {60, 20}, {120, 40}, {40, 12}}},
	{"gun", toAnswer[:2], []size{usualSize}},
	{"temp", toAnswer[:3], []size{usualSize, {40, 12}}},
	{"temp-bad", append(toAnswer[:3:3], "75 bar", "enter"), []size{usualSize, {40, 12}}},
	{"humidity", toAnswer[:5], []size{usualSize}},
	{"humidity-bad", append(toAnswer[:5:5], "450", "enter"), []size{usualSize}},
	{"panel", toAnswer[:7], []size{usualSize}},
	{"altitude", toAnswer[:8], []size{usualSize}},
	{"supply", toAnswer[:9], []size{usualSize}},
	{"line", toAnswer[:11], []size{usualSize, {60, 20}, {40, 12}}},
	{"regulator", append(toAnswer[:11:11], "2"), []size{usualSize}},
	{"regulator-at", append(toAnswer[:11:11], "2", "enter"), []size{usualSize}},
	{"filter", append(toAnswer[:11:11], "2", "enter", "enter"), []size{usualSize}},
	{"hose", append(toAnswer[:11:11], "2", "enter", "enter", "enter"), []size{usualSize, {40, 12}}},
	{"coupling", append(toAnswer[:11:11], "2", "enter", "enter", "enter", "enter"), []size{usualSize}},
	{"gauge", append(toAnswer[:11:11], "2", "enter", "enter", "enter", "enter", "enter"), []size{usualSize}},
	{"wall", toAnswer[:12], []size{usualSize}},
	{"check", toAnswer[:13], []size{usualSize, {40, 12}}},
	{"check-again", append(toSupply[:27:27], "esc", "esc", "esc", "esc", "esc", "esc", "esc", "esc", "esc", "esc"), []size{usualSize, {40, 12}}},
	{"compressor", toSupply[:14], []size{usualSize}},
	{"receiver", toSupply[:16], []size{usualSize}},
	{"cut-in", toSupply[:18], []size{usualSize}},
	{"cut-out", toSupply[:19], []size{usualSize}},
	{"main", toSupply[:20], []size{usualSize, {40, 12}}},
	{"main-bad", append(toSupply[:20:20], "100ft", "enter"), []size{usualSize}},
	{"other", toSupply[:22], []size{usualSize}},
	{"spray-time", toSupply[:24], []size{usualSize}},
	{"receiver-temp", toSupply[:25], []size{usualSize}},
	{"line-temp", toSupply[:26], []size{usualSize}},
	{"answer-supply", toSupply, []size{usualSize, {60, 20}}},
	{"answer-supply-below", append(toSupply[:27:27], "end"), []size{usualSize}},
	{"answer", toAnswer, []size{usualSize, {60, 20}, {120, 40}, {40, 12}}},
	{"answer-below", append(toAnswer[:14:14], "end"), []size{usualSize, {60, 20}, {40, 12}}},
	{"answer-wall-70psi", append(toAnswer[:12:12], "70", "enter", "enter"), []size{usualSize}},
	{"answer-metric", append(toAnswer[:14:14], "u"), []size{usualSize}},
	{"answer-reasons", append(toAnswer[:14:14], "r"), []size{usualSize, {60, 20}}},
	{"answer-stopped", append(toAnswer[:5:5], "97", "enter", "72", "enter", "enter", "20", "enter", "1", "enter", "enter"), []size{usualSize, {40, 12}}},
	{"form", toForm, []size{usualSize, {60, 20}, {120, 40}, {40, 12}}},
	{"form-typed", append(toForm[:15:15], "2", "enter"), []size{usualSize, {60, 20}, {120, 40}, {40, 12}}},
	{"form-coat", append(toForm[:15:15], "2", "enter", "up", "up", "up", "up", "left"), []size{usualSize}},
	{"form-answer", append(toForm[:15:15], "2", "enter", "pgdown"), []size{usualSize, {60, 20}, {120, 40}, {40, 12}}},
	{"form-stopped", append(toForm[:15:15], "9", "enter", "pgdown"), []size{usualSize}},
	{"keys-form", append(toForm[:15:15], "?"), []size{usualSize}},
	{"keys", append(toAnswer[:14:14], "?"), []size{usualSize, {40, 12}}},
	{"too-small", nil, []size{{39, 12}, {80, 11}, {12, 5}}},
}

var usualSize = size{80, 24}

func TestFrames(t *testing.T) {
	for _, f := range frames {
		for _, l := range f.sizes {
			name := fmt.Sprintf("%s-%dx%d", f.name, l.w, l.h)
			t.Run(name, func(t *testing.T) {
				shown := func(k look) string {
					k.size = usualSize
					r := start(t, k)
					press(r, f.keys...)
					r.Update(resize(l))
					frame := r.View()
					requireFits(t, frame, l)
					return frame
				}
				plain := shown(look{})
				golden(t, name, plain)
				require.Equal(t, plain, ansi.Strip(plain), "without colour there are no attributes either")
				coloured := shown(look{colour: true})
				require.Equal(t, plain, ansi.Strip(coloured), "colour adds nothing that is not said in text")
				for _, c := range plain {
					require.True(t, c < 0x80 || strings.ContainsRune(onlyGlyphs, c), "%q is one of the known glyphs", c)
				}
				for _, c := range shown(look{ascii: true}) {
					require.Less(t, c, rune(0x80), "the ASCII set is ASCII")
				}
			})
		}
	}
}

func TestColoursAreOfTheTerminalsOwnSixteen(t *testing.T) {
	r := start(t, look{size: usualSize, colour: true})
	press(r, toAnswer...)
	frame := r.View()
	require.Contains(t, frame, "\x1b[")
	require.NotContains(t, frame, "38;5;")
	require.NotContains(t, frame, "38;2;")
}
