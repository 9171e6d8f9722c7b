package tui

import (
	"fmt"
	"strings"
	"testing"

	"boothset/calc/trouble"
	"boothset/presets/signs"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// From what is seen to its cause: typed with or without accents, one check after another, each
// answered with one key, to what to do and the settings that come of it; and back again.
func TestBadSprayIsTracedOverTheAnswer(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	press(r, "t")
	require.Equal(t, "trouble", where(r))
	require.Contains(t, r.View(), "What do you see?")
	press(r, "split")
	press(r, "enter")
	p := r.bench.trouble
	require.Equal(t, "split", p.sign)
	require.Contains(t, bodyText(r.View()), "LOOK Hold the trigger ten seconds")
	press(r, "4")
	require.Equal(t, trouble.Told, p.answer.Found.End)
	require.Contains(t, bodyText(r.View()), "LIKELY The air is too strong for the paint")
	require.Contains(t, bodyText(r.View()), "What to do")
	press(r, "enter")
	require.True(t, p.further)
	press(r, "esc", "esc")
	require.Empty(t, p.found)
	require.Equal(t, trouble.Open, p.answer.Found.End)
	press(r, "esc")
	require.Empty(t, p.sign)
	require.Contains(t, r.View(), "> split", "what was typed stays")
	press(r, "esc")
	require.Equal(t, "bench", where(r))
}

// What was typed is found in either language, whichever is spoken.
func TestASignIsFoundInEitherLanguage(t *testing.T) {
	for _, lang := range words.Languages() {
		for typed, id := range map[string]string{"cascara": "orange-peel", "orange p": "orange-peel", "escurrid": "runs", "tiger": "stripes"} {
			r := start(t, look{lang: lang})
			press(r, toAnswer...)
			press(r, "t", typed, "enter")
			require.Equal(t, id, r.bench.trouble.sign, typed)
		}
	}
}

// The job's own figures count: with a wall that chokes the valve that cause leads at once.
func TestTheAnswersFiguresCount(t *testing.T) {
	first := func(keys ...string) string {
		r := open80x24(t)
		press(r, keys...)
		press(r, "t", "fading", "enter")
		return r.bench.trouble.answer.Likeliest().ID
	}
	require.Equal(t, "valve-choked", first(then(atWallNow, "85psi", "enter", "enter", "enter")...))
}

// Every picture stands beside every sign in a window that has room for it.
func TestEverySignHasItsPicture(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	press(r, "t")
	seen := map[string]string{}
	for i, s := range signs.Book().Signs {
		r.bench.trouble.offers.at = i
		picture := strings.Join(r.s.pattern(s.ID, size{80, 14}), "\n")
		require.NotEmpty(t, picture, s.ID)
		require.Empty(t, seen[picture], "%s looks like %s", s.ID, seen[picture])
		seen[picture] = s.ID
		on := map[bool]string{true: "trouble-paper", false: "trouble-panel"}[s.Wet == ""]
		require.Contains(t, r.View(), r.s.say(on), s.ID)
	}
}

// Whatever is pressed, in any window, the page stays within it and back leads out.
func TestAnyKeysOnBadSpray(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLook(t)
		r := start(t, l)
		press(r, toAnswer...)
		press(r, "t", rapid.SampledFrom([]string{"runs", "peel", "naranja", "zz", "s", ""}).Draw(t, "typed"), "enter")
		for range rapid.IntRange(0, 14).Draw(t, "keys") {
			press(r, rapid.SampledFrom([]string{"1", "2", "3", "6", "enter", "down", "up", "pgdown", "u", "esc", "left", "x"}).Draw(t, "key"))
			if r.done {
				return
			}
			requireFits(t, r.View(), r.size)
		}
		for n := 0; where(r) == "trouble"; n++ {
			require.Less(t, n, 40, "back leads out")
			press(r, "esc")
		}
	})
}

// In lines of text it is asked and answered by the same sentences.
func TestBadSprayInLines(t *testing.T) {
	for lang, typed := range map[string]string{"en": "orange peel", "es": "naranja"} {
		in := append(linesToAnswer[:len(linesToAnswer):len(linesToAnswer)], "t", typed, "3", "3", "+", "<", "", "q")
		got := dialogueOf(t, look{lang: lang}, lines(in...))
		require.NoError(t, got.err)
		w, _ := words.For(lang)
		for _, id := range []string{"trouble-title", "look-sign-orange-peel", "trouble-do", "trouble-causes", "trouble-wet"} {
			require.Contains(t, bodyText(got.out), w.Say(id), fmt.Sprint(lang, id))
		}
	}
}
