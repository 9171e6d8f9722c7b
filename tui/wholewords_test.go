package tui

import (
	"regexp"
	"strings"
	"testing"

	"boothset/presets/answer"
	"boothset/presets/words"
	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// letterRuns is words as they stand on a screen, of three letters and more, without those that
// touch a digit: these are units.
var letterRuns = regexp.MustCompile(`[\pL\d]+`)

// vocabulary is every word that the program can say in a language, in small letters.
func vocabulary(lang string) map[string]bool {
	w, _ := words.For(lang)
	all := map[string]bool{programName: true}
	for _, id := range w.IDs() {
		for _, word := range letterRuns.FindAllString(strings.ToLower(w.Say(id)+" "+id), -1) {
			all[word] = true
		}
	}
	return all
}

// Whatever the window, the keys, what is tried and the language: no row is too wide, no word is
// cut in two, nothing that is set shows on STOP, and the settings are on every view and page.
func TestWhateverIsShownIsWhole(t *testing.T) {
	t.Parallel()
	known := map[string]map[string]bool{}
	for _, lang := range words.Languages() {
		known[lang] = vocabulary(lang)
	}
	rapid.Check(t, func(t *rapid.T) {
		l := anyLook(t)
		l.colour = false
		l.size = size{rapid.IntRange(leastWidth, 210).Draw(t, "wide"), rapid.IntRange(leastHeight, 70).Draw(t, "high")}
		r := start(t, l)
		press(r, rapid.SampledFrom([][]string{toAnswer, toSupply, toDew, toShort, toStarved, toRead, toForm, toMix}).Draw(t, "start")...)
		for _, k := range moves().Draw(t, "moves") {
			if where(r) == "bench" { // elsewhere it may be typed
				press(r, k)
			}
		}
		frame := ansi.Strip(r.View())
		requireFits(t, frame, l.size)
		for _, word := range letterRuns.FindAllString(strings.ToLower(frame), -1) {
			if len(word) > 2 && !strings.ContainsAny(word, "0123456789") {
				require.True(t, known[l.language()][word], "%q is no word\n%s", word, frame)
			}
		}
		b := r.bench
		if b.tried.Stopped() {
			require.NotContains(t, frame, b.s.say("number-valve"))
			require.Contains(t, strings.Join(strings.Fields(frame), " "), strings.Fields(answer.TurnText(r.s.words, r.s.sys, b.tried.Setup.Turn()))[0])
			return
		}
		for _, n := range b.settings(&b.tried) {
			drawn := strings.Contains(frame, n.short) || strings.Contains(frame, n.text)
			require.True(t, drawn || strings.Contains(frame, n.name) && holdsDigits(frame, n.value, r), "%s %s\n%s", n.name, n.value, frame)
		}
	})
}

// holdsDigits reports whether a number stands in a frame in digits of some height.
func holdsDigits(frame, value string, r *root) bool {
	for _, high := range []int{1, 3, 5, 7, 9} {
		whole := true
		for _, row := range draw.Digits(value, high, r.s.glyphs) {
			whole = whole && strings.Contains(frame, strings.TrimRight(row, " "))
		}
		if whole {
			return true
		}
	}
	return false
}
