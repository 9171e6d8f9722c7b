package tui

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
)

// Every key that the help speaks of does something, on every page.
func TestEveryKeyInTheHelpDoesSomething(t *testing.T) {
	tried := map[string]bool{}
	for _, f := range frames {
		if strings.HasPrefix(f.name, "too-small") {
			continue // no key but one works there
		}
		at := func() *root {
			r := open80x24(t)
			press(r, f.keys...)
			return r
		}
		r := at()
		same := fmt.Sprintf("%T", r.page())
		for _, b := range r.keys() {
			same += "," + b.show + " " + b.does
		}
		if tried[same] {
			continue
		}
		tried[same] = true
		for _, b := range r.keys() {
			require.NotEmpty(t, b.does)
			if b.show == "enter" && strings.HasSuffix(f.name, "-bad") {
				continue // it was pressed already; the fault is shown, and stays
			}
			for _, k := range b.keys {
				// At an end a key can do nothing; then it does after one of its fellows.
				require.True(t, slices.ContainsFunc(append([]string{""}, b.keys...), func(first string) bool {
					r := at()
					if first != "" {
						press(r, first)
					}
					before := where(r) + r.View()
					press(r, k)
					return r.done || where(r)+r.View() != before
				}), "%s: %s (%s) %s", f.name, b.show, k, b.does)
			}
		}
	}
}

func TestHelpFitsAnyWindowAndKeepsItsLastKey(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	all := r.keys()
	for w := leastWidth; w <= 200; w++ {
		for high, most := range map[int]int{leastHeight: 1, tallWindow: 2} {
			rows := helpRows(r.s, all, w, high)
			require.LessOrEqual(t, len(rows), most)
			for _, row := range rows {
				require.LessOrEqual(t, ansi.StringWidth(row), w)
			}
			require.True(t, strings.HasSuffix(rows[len(rows)-1], "? keys"), rows)
		}
	}
}

func TestNoKeyIsBoundTwiceOnAPage(t *testing.T) {
	for _, f := range frames {
		r := open80x24(t)
		press(r, f.keys...)
		seen := map[string]string{}
		for _, b := range r.keys() {
			for _, k := range b.keys {
				require.Empty(t, seen[k], "%s: %s", f.name, k)
				seen[k] = b.does
			}
		}
	}
}

func TestQLeavesOnlyWhereNoTextIsTyped(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer[:3]...)
	press(r, "q")
	require.False(t, r.done, "a field does not take it for a command")
	press(r, toAnswer[3:]...)
	press(r, "q")
	require.True(t, r.done)
	require.False(t, r.stopped)
	require.True(t, r.result().Answered)
}

func TestLeavingBeforeTheAnswerLeavesNone(t *testing.T) {
	r := open80x24(t)
	press(r, "enter", "q")
	require.True(t, r.done)
	require.False(t, r.result().Answered)
}

func TestCtrlCStopsAnywhere(t *testing.T) {
	for _, f := range frames {
		for _, l := range f.sizes {
			r := open80x24(t)
			press(r, f.keys...)
			r.Update(resize(l))
			_, cmd := r.Update(key("ctrl+c"))
			require.True(t, r.stopped, f.name)
			require.NotNil(t, cmd)
		}
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
	press(r, toAnswer[:3]...)
	r.Update(resize(size{30, 8}))
	require.Contains(t, r.View(), "30 x 8")
	require.Contains(t, r.View(), stopKey)
	press(r, "7", "5", "enter", "esc", "?")
	r.Update(resize(usualSize))
	require.Equal(t, "temp", where(r))
	require.Empty(t, r.page().(*question).field.String())
}

func TestAWindowOfUnknownSizeIsTakenAs80x24(t *testing.T) {
	r := open80x24(t)
	r.Update(resize(size{0, 0}))
	require.Equal(t, usualSize, r.size)
}
