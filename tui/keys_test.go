package tui

import (
	"slices"
	"strings"
	"testing"

	"boothset/calc/calctest"
	"boothset/presets/words"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

// Every key that the help speaks of does something, on every page.
func TestEveryKeyInTheHelpDoesSomething(t *testing.T) {
	t.Parallel()
	tried := map[string]bool{}
	for _, f := range shots() {
		for _, l := range []size{{40, 12}, usualSize} {
			r := f.at(t, look{size: l})
			same := where(r)
			for _, b := range r.keys() {
				same += "," + b.Help().Key + " " + b.does
			}
			if tried[same] {
				continue
			}
			tried[same] = true
			for _, b := range r.keys() {
				require.True(t, r.s.words.Has(b.does), b.does)
				if strings.HasPrefix(b.Help().Key, "key-") {
					require.True(t, r.s.words.Has(b.Help().Key), b.Help().Key)
				}
				if b.more != "" {
					require.True(t, r.s.words.Has(b.more), b.more)
				}
				if (b.Help().Key == "key-enter" || b.does == "do-answer" || b.does == "do-read") && (strings.HasSuffix(f.name, "-bad") || strings.HasSuffix(f.name, "-outside") || strings.HasSuffix(f.name, "-empty")) {
					continue // it was pressed already; the fault is shown, and stays
				}
				for _, k := range b.Keys() {
					// At an end a key can do nothing; then it does after one of its fellows.
					require.True(t, slices.ContainsFunc(append([]string{""}, b.Keys()...), func(first string) bool {
						r := f.at(t, look{size: l})
						if first != "" {
							press(r, first)
						}
						before := where(r) + r.View()
						press(r, k)
						return r.done || where(r)+r.View() != before
					}), "%s: %s %s %v", f.name, k, b.does, l)
				}
			}
		}
	}
}

// The page of keys lists every key that works on the page below it.
func TestThePageOfKeysListsAllOfThem(t *testing.T) {
	calctest.WithoutRace(t)
	t.Parallel()
	for _, lang := range words.Languages() {
		for _, f := range shots() {
			r := f.at(t, look{lang: lang, size: size{120, 100}})
			if where(r) == "keys" {
				continue
			}
			all := r.keys()
			press(r, "f1")
			require.Equal(t, "keys", where(r), f.name)
			text := bodyText(r.View())
			for _, b := range all {
				line := r.s.keyName(b) + " " + r.s.say(b.does)
				if b.more != "" {
					line += ": " + r.s.say(b.more)
				}
				require.Contains(t, text, line, f.name)
			}
			press(r, "esc")
			require.NotEqual(t, "keys", where(r))
		}
	}
}

// The table for the reader has every binding of every kind of page.
func TestTheTableOfKeysListsAllOfThem(t *testing.T) {
	table := keyTable(readerOf(t, look{}))
	for _, f := range shots() {
		r := f.at(t, look{size: size{leastWidth, leastHeight}})
		if name := where(r); name == "keys" || name == "resume" || name == "finish" {
			continue // a list, and what the page itself says
		}
		for _, b := range r.keys() {
			if b.Help().Key == b.Keys()[0] || strings.HasPrefix(b.Help().Key, b.Keys()[0]+"-") {
				continue // digits, as many as there are entries
			}
			if slices.Contains([]string{"do-take-usual", "do-without", "do-leave"}, b.does) {
				continue // what enter and esc come to at one question and another
			}
			require.Contains(t, table, "| `"+r.s.keyName(b)+"` | "+r.s.say(b.does), f.name)
		}
	}
}

func TestHelpFitsAnyWindowAndKeepsItsLastKey(t *testing.T) {
	for _, lang := range words.Languages() {
		for _, keys := range [][]string{nil, atGun, toAnswer[:4], toAnswer, then(toAnswer, "right"), toForm, then(toMix, "hood", "enter", "pgdown")} {
			r := start(t, look{lang: lang})
			press(r, keys...)
			all := r.keys()
			for w := leastWidth; w <= 200; w++ {
				for _, most := range []int{1, 2} {
					rows := helpRows(r.s, all, w, most)
					require.LessOrEqual(t, len(rows), most)
					for _, row := range rows {
						require.LessOrEqual(t, ansi.StringWidth(row), w)
					}
					require.True(t, strings.HasSuffix(rows[len(rows)-1], "? "+r.s.say("do-keys")), rows)
				}
			}
		}
	}
}

func TestNoKeyIsBoundTwiceOnAPage(t *testing.T) {
	for _, f := range shots() {
		r := f.at(t, look{})
		seen := map[string]string{}
		for _, b := range r.keys() {
			for _, k := range b.Keys() {
				require.Empty(t, seen[k], "%s: %s", f.name, k)
				seen[k] = b.does
			}
		}
	}
}

func TestQLeavesOnlyWhereNoTextIsTyped(t *testing.T) {
	r := open80x24(t)
	press(r, atTemp...)
	press(r, "q")
	require.False(t, r.done, "a field does not take it for a command")
	press(r, toAnswer[3:]...)
	press(r, "q")
	require.True(t, r.done)
	require.False(t, r.stopped)
	require.NotNil(t, r.result().Plan)
}

func TestLeavingBeforeTheAnswerLeavesNone(t *testing.T) {
	r := open80x24(t)
	press(r, "enter", "q")
	require.True(t, r.done)
	require.Nil(t, r.result().Plan)
}

func TestCtrlCStopsAnywhere(t *testing.T) {
	for _, f := range shots() {
		for _, key := range stopKeys.Keys() {
			r := f.at(t, look{size: size{30, 8}}) // too small for most other keys
			_, cmd := r.Update(keyOf(key))
			require.True(t, r.stopped, f.name)
			require.NotNil(t, cmd)
		}
	}
}

// Pausing is asked for by a key or a signal, anywhere, once until it is over; the title is given
// back for as long and the mouse asked for again.
func TestPausing(t *testing.T) {
	if !canPause {
		t.Skip("there are no shells here that continue a program")
	}
	for name, ask := range map[string]tea.Msg{"ctrl+z": keyOf("ctrl+z"), "a signal": pauseMsg{}} {
		for _, l := range []size{usualSize, {30, 8}} {
			r := start(t, look{size: l})
			var sent string
			r.s.mouse, r.s.title.send = true, func(sequence string) { sent += sequence }
			messages(r.s.title.set(r.title()))
			require.Equal(t, keepTitle+"\x1b]2;boothset\x07", sent)
			sent = ""
			_, cmd := r.Update(ask)
			require.NotNil(t, cmd, name)
			require.Equal(t, "\x1b]2;\x07"+giveTitle, sent)
			_, again := r.Update(ask)
			require.Nil(t, again, "it is asked for already")
			require.False(t, r.done)

			sent = ""
			_, cmd = r.Update(resumedMsg{})
			require.Contains(t, messages(cmd), tea.EnableMouseCellMotion())
			require.Equal(t, keepTitle+"\x1b]2;boothset\x07", sent)
		}
	}
}

// A window that says it is as large as one can be costs no more than a large one.
func TestAWindowIsLaidOutToALimit(t *testing.T) {
	for _, keys := range [][]string{nil, toAnswer[:2], toAnswer, toForm} {
		huge, large := start(t, look{size: size{65535, 65535}}), start(t, look{size: size{mostWidth, mostHeight}})
		press(huge, keys...)
		press(large, keys...)
		require.Equal(t, large.View(), huge.View())
		requireFits(t, huge.View(), size{mostWidth, mostHeight})
	}
}

func TestAStopMessageStops(t *testing.T) {
	r := open80x24(t)
	_, cmd := r.Update(stopMsg{})
	require.True(t, r.stopped)
	require.NotNil(t, cmd)
}

func TestTooSmallAWindowTakesNoOtherKey(t *testing.T) {
	r := open80x24(t)
	press(r, atTemp...)
	r.Update(resize(size{30, 8}))
	require.Contains(t, r.View(), "30 x 8")
	require.Contains(t, r.View(), "ctrl+c")
	press(r, "7", "5", "enter", "esc", "?")
	r.Update(resize(usualSize))
	require.Equal(t, "temp", where(r))
	require.Empty(t, fieldText(r))
}

func TestAWindowOfUnknownSizeIsTakenAs80x24(t *testing.T) {
	r := open80x24(t)
	r.Update(resize(size{0, 0}))
	require.Equal(t, usualSize, r.size)
}
