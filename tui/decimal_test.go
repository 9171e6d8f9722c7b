package tui

import (
	"regexp"
	"testing"

	"boothset/calc/calctest"
	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

// Where decimals are marked with a comma every frame and every line has them so, and is
// otherwise as it is where they are marked with a point.
func TestDecimalsAreOfThePlace(t *testing.T) {
	calctest.WithoutRace(t)
	t.Parallel()
	pointed := regexp.MustCompile(`(^|[ (<>])\d{1,3}\.\d`)
	seen := 0
	for _, f := range shots() {
		here, there := f.at(t, look{lang: "es_ES", metric: true}), f.at(t, look{lang: "es_MX", metric: true})
		if _, answered := here.page().(ruled); !answered { // the digits of an answer have a comma of their own
			require.Equal(t, there.s.words.WithComma(true).Marked(there.View()), here.View(), f.name)
		}
		require.NotRegexp(t, pointed, ansi.Strip(here.View()), f.name)
		require.Equal(t, there.s.answers.Texts(), here.s.answers.Texts(), "what is kept is the same everywhere")
		if here.View() != there.View() {
			seen++
		}
	}
	require.Greater(t, seen, 10)
	answer := start(t, look{lang: "es_ES", metric: true})
	press(answer, toAnswer...)
	for _, row := range draw.Digits("2,15", 3, answer.s.glyphs) {
		require.Contains(t, answer.View(), row)
	}
	here, there := dialogueOf(t, look{lang: "es_ES"}, lines(linesToAnswer...)), dialogueOf(t, look{lang: "es_MX"}, lines(linesToAnswer...))
	require.NotRegexp(t, pointed, here.out)
	require.NotEqual(t, there.out, here.out)
	require.Equal(t, there.left, here.left)
}
