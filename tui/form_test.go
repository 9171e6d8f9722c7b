package tui

import (
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

// The keys from the answer to its pages: of the day, which can be answered as it opens; of
// thinning, which lacks a cup and its seconds; of the mix, which lacks an area.
var (
	toDay  = then(toAnswer, pageKey(question.Day))
	toThin = then(toAnswer, pageKey(question.Thin))
	toMix  = then(toAnswer, pageKey(question.Mix))
	// toForm is one with a field in the way.
	toForm = toThin
)

func formOf(r *root) *form { return r.page().(*form) }

// boxAt is the name of the field that is typed in, empty on the answer.
func boxAt(r *root) string {
	if f := formOf(r); !f.onAnswer() {
		return f.all[f.at].Name
	}
	return ""
}

// answerText is all that a page's answer says.
func answerText(r *root) string { return bodyText(strings.Join(formOf(r).lines(200), "\n")) }

func TestAFormOpensAtTheFieldInTheWayAndSharesWhatWasAnswered(t *testing.T) {
	r := open80x24(t)
	press(r, toThin...)
	require.Equal(t, "thin", where(r))
	require.Equal(t, question.Seconds.Name, boxAt(r), "the cup may be left out")
	require.Contains(t, r.View(), "> seconds: type a number")
	require.Contains(t, r.View(), "75F  as answered")
	press(r, "up", "din4", "enter")
	require.Equal(t, question.Seconds.Name, boxAt(r))
	press(r, "22", "enter")
	require.Equal(t, question.Paint.Name, boxAt(r))
	require.Contains(t, answerText(r), "22 s")
	require.Contains(t, answerText(r), "75 F", "the air's, which the paint has")
	press(r, "esc", pageKey(question.Film))
	require.Equal(t, "film", where(r))
	require.Equal(t, "", boxAt(r))
	require.Contains(t, bodyText(r.View()), "gun pressure 26.0 psi", "the answer's")
}

// What the answer has counts on a page as a painter reads it: typed there, it would come to
// the same.
func TestWhatTheAnswerHasCountsAsItIsRead(t *testing.T) {
	for _, keys := range [][]string{toAnswer, toShort} {
		r := open80x24(t)
		press(r, then(keys, pageKey(question.Film))...)
		film := formOf(r).answer.(*answer.Film)
		setup := r.bench.kept.Setup
		want := setup.Working.Pressure
		if setup.Short.Is {
			want = setup.Short.Best
		}
		require.InDelta(t, want.PSI(), film.Request.Held.Pressure.PSI(), 0.05)
		require.InDelta(t, setup.Distance.Target.Inches(), film.Request.Held.Distance.Inches(), 0.05)
		for i := range formOf(r).all {
			b := &formOf(r).all[i]
			if b.Field == question.Pressure || b.Field == question.Distance {
				text, here := formOf(r).value(b)
				require.False(t, here)
				b.typed.set(text)
			}
		}
		formOf(r).solve()
		require.Equal(t, film.Request, formOf(r).answer.(*answer.Film).Request)
	}
}

func TestOvertypingAFormLeavesTheAnswerAlone(t *testing.T) {
	r := open80x24(t)
	press(r, toThin...)
	before := r.result()
	press(r, "up", "din4", "enter", "22", "enter", "90", "enter")
	require.Contains(t, answerText(r), "90 F")
	require.Equal(t, before, r.result())
	press(r, "up", "ctrl+u")
	require.NotContains(t, answerText(r), "90 F")
	require.Contains(t, answerText(r), "75 F", "cleared, what was answered counts again")
}

func TestAFaultyFieldOfAFormKeepsTheCursorAndNothingIsLost(t *testing.T) {
	r := open80x24(t)
	press(r, toMix...)
	press(r, "two", "enter")
	require.Equal(t, question.Area.Name, boxAt(r))
	require.Contains(t, r.View(), "! area \"two\": ")
	press(r, "pgdown")
	require.Equal(t, question.Area.Name, boxAt(r), "no answer to go to")
	press(r, "up")
	require.Equal(t, question.Distance.Name, boxAt(r), "back is always allowed")
	press(r, "esc")
	require.Equal(t, "bench", where(r))
	press(r, pageKey(question.Mix))
	require.Equal(t, question.Area.Name, boxAt(r))
	require.Contains(t, r.View(), "two")
	press(r, "ctrl+u", "3 doors", "enter", "esc", "esc", "enter", pageKey(question.Mix))
	require.Equal(t, "", boxAt(r), "nothing in the way of the answer")
	require.Contains(t, r.View(), "area 3 doors")
}

func TestBehindTheLastFieldLiesTheAnswerOrWhatIsInItsWay(t *testing.T) {
	r := open80x24(t)
	press(r, toMix...)
	for boxAt(r) != question.FluidRate.Name {
		at := boxAt(r)
		press(r, "enter")
		require.NotEqual(t, at, boxAt(r), "an empty field holds nobody up")
	}
	press(r, "enter")
	require.Equal(t, question.Area.Name, boxAt(r))
	press(r, "hood", "enter")
	for boxAt(r) != "" {
		press(r, "enter")
	}
	require.Contains(t, r.View(), "area hood")
	press(r, "enter")
	require.Equal(t, question.Coat.Name, boxAt(r))
	press(r, "pgdown")
	require.Equal(t, "", boxAt(r))
}

// How wide any other character is terminals do not agree on.
func TestAFieldOfWordsTakesCharactersOfOneColumnOnly(t *testing.T) {
	r := open80x24(t)
	press(r, toMix...)
	press(r, "2é、\u0301😀x")
	require.Equal(t, "2éx", formOf(r).all[formOf(r).at].typed.String())
}

func TestAQuantityOfAFormTakesWhatCanBePartOfIt(t *testing.T) {
	r := open80x24(t)
	press(r, then(toThin, "up", "din4", "enter", "2", "x", "2", "s")...)
	require.Equal(t, "22s", formOf(r).all[formOf(r).at].typed.String())
	press(r, "x")
	require.Contains(t, r.View(), "! Only a number and its unit")
}

func TestAFormsListIsChosenFrom(t *testing.T) {
	r := open80x24(t)
	press(r, then(toDay, "enter")...)
	require.Equal(t, question.Coat.Name, boxAt(r))
	f := formOf(r)
	coat := func() string { return f.answer.(*answer.Day).Request.Coat.ID }
	require.Equal(t, "clear", coat())
	press(r, "left")
	require.NotEmpty(t, f.all[0].own())
	require.NotEqual(t, "clear", f.all[0].own())
	require.Equal(t, f.all[0].own(), coat(), "at once")
	press(r, "right")
	require.Equal(t, "clear", coat())
	press(r, "right", "ctrl+u")
	require.Equal(t, "clear", coat(), "as answered")
}

func TestAFormsBareNumbersKeepTheUnitsTheyWereTypedIn(t *testing.T) {
	r := open80x24(t)
	press(r, toThin...)
	press(r, "up", "din4", "enter", "22", "enter", "90", "enter", "esc", "u", pageKey(question.Thin))
	require.Contains(t, answerText(r), "32.2 C", "90 F, shown in the other units")
	require.Contains(t, r.View(), "still read in the units they were typed in")
	press(r, "u")
	require.Contains(t, answerText(r), "90 F")
	require.Equal(t, unit.US, r.result().System)
}

func TestAFormThatCannotBeDoneSaysSo(t *testing.T) {
	r := open80x24(t)
	press(r, then(toDew, pageKey(question.Day))...)
	require.Contains(t, r.View(), r.s.say("form-stopped"))
	require.Contains(t, r.View(), "\nSTOP: do not spray. ")
}

func TestEveryRowOfAFormsAnswerCanBeReachedAtAnyWidth(t *testing.T) {
	t.Parallel()
	for _, keys := range [][]string{toDay, then(toThin, "up", "din4", "enter", "22", "enter", "pgdown"), then(toAnswer, pageKey(question.Film)), then(toMix, "hood", "enter", "pgdown")} {
		for _, l := range []size{{40, 12}, {60, 20}, {80, 24}, {120, 40}} {
			r := start(t, look{size: l})
			press(r, keys...)
			require.True(t, formOf(r).onAnswer())
			var seen string
			for before := ""; before != r.View(); {
				before = r.View()
				requireFits(t, before, l)
				seen += before
				press(r, "down")
			}
			text, _ := formOf(r).beside(frameOf(formOf(r), l).room)
			for _, row := range formOf(r).lines(text.w) {
				require.Contains(t, seen, strings.TrimRight(row, " "), "%v", l)
			}
		}
	}
}

// A stop looks like one whatever it is called; what is no verdict and no caution has no looks
// of its own.
func TestTheRowsOfAnAnswerLookAsGraveAsTheyAre(t *testing.T) {
	for _, lang := range words.Languages() {
		r := start(t, look{lang: lang, colour: true})
		press(r, then(toDew, pageKey(question.Day))...)
		level := r.s.theme.level
		require.NotEqual(t, "x", level[calc.Stop].Render("x"))
		stop := r.s.say("verdict-stop")
		marks := map[string]calc.Level{stop + ": ": calc.Stop, stop + " ": calc.Stop, "! ": calc.Warn}
		found := map[calc.Level]int{}
		now, styled := calc.Note, false
		for _, row := range formOf(r).lines(80) {
			text := ansi.Strip(row)
			if !strings.HasPrefix(text, "  ") { // else it hangs under the one before
				now, styled = calc.Note, false
				for mark, level := range marks {
					if strings.HasPrefix(text, mark) {
						now, styled = level, true
					}
				}
			}
			if styled {
				found[now]++
				require.Equal(t, level[now].Render(text), row, lang)
			} else {
				require.Equal(t, text, row, lang)
			}
		}
		require.Greater(t, found[calc.Stop], 1, "%s: in the rows that hang under the first too", lang)
		require.Positive(t, found[calc.Warn], lang)
	}
}

// A usage speaks of another field by its flag, and the page by the name it has there.
func TestAUsageSpeaksOfFieldsByTheirNames(t *testing.T) {
	for _, lang := range words.Languages() {
		r := start(t, look{lang: lang, size: size{200, 24}})
		press(r, toAnswer...)
		found := 0
		for _, f := range r.bench.forms {
			for i := range f.all {
				b := &f.all[i]
				usage := f.usage(b)
				require.NotContains(t, usage, "--", b.Name)
				require.NotContains(t, usage, "{", b.Name)
				for _, flag := range flagRef.FindAllString(r.s.words.Say(b.Usage()), -1) {
					found++
					name := r.s.say("short-" + strings.TrimPrefix(flag, "--"))
					require.NotEmpty(t, name, "%s in %s", flag, b.Usage())
					require.Contains(t, usage, name)
				}
			}
		}
		require.Positive(t, found)
	}
}
