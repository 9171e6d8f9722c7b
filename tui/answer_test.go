package tui

import (
	"strings"
	"testing"

	"boothset/calc"

	"github.com/stretchr/testify/require"
)

func TestTryingTheWallShowsWhatTheGunGetsAndIsForgotten(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	before := r.result()
	a := r.answer
	press(r, "right")
	require.InDelta(t, before.Setup.Wall.Flowing.PSI()+1, a.shown().Now.Wall.PSI(), 1e-6, "one mark up")
	press(r, "shift+right", "shift+right", "shift+right", "shift+right", "left")
	require.InDelta(t, before.Setup.Wall.Flowing.PSI()+40, a.shown().Now.Wall.PSI(), 1e-6)
	require.Contains(t, r.View(), "With the wall at 71")
	require.Equal(t, before, r.result(), "what is printed at the end is the job as answered")
	for range 30 {
		press(r, "shift+right")
	}
	require.InDelta(t, 90, a.shown().Now.Wall.PSI(), 1e-6, "no higher than the supply")
	for range 30 {
		press(r, "shift+left")
	}
	require.InDelta(t, calc.LowestSupply.PSI(), a.shown().Now.Wall.PSI(), 1e-6)
}

func TestTryingStartsFromTheWallAsItStands(t *testing.T) {
	r := open80x24(t)
	press(r, append(toAnswer[:12:12], "70", "enter", "enter", "left")...)
	require.InDelta(t, 69, r.answer.shown().Now.Wall.PSI(), 1e-6)
	require.InDelta(t, 70, r.result().Request.Now.PSI(), 1e-6)
}

func TestAllReasonsAreThereOnceAskedFor(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	a := r.answer
	few, _ := a.rows(a.room)
	press(r, "r")
	rows, _ := a.rows(a.room)
	require.Greater(t, len(rows), len(few))
	for _, about := range []string{"gun", "weather", "wall", "valve", "distance", "line"} {
		require.Contains(t, rows, "why: the "+about)
	}
	press(r, "r")
	again, _ := a.rows(a.room)
	require.Equal(t, few, again)
}

func TestEveryPartOfTheLineIsShownAndTheWorstIsMarked(t *testing.T) {
	for _, w := range []int{40, 60, 80, 120} {
		r := start(t, look{size: size{w, 40}})
		press(r, toAnswer...)
		a := r.answer
		rows := a.line(&a.setup, w)
		require.Len(t, rows, 1+len(a.setup.Line))
		for i, part := range a.setup.Line {
			require.Contains(t, rows[1+i], part.Name[:min(len(part.Name), 14)])
			require.Equal(t, i == a.setup.Bottleneck, len(rows[1+i]) > len(costsMost) && rows[1+i][len(rows[1+i])-len(costsMost):] == costsMost, rows[1+i])
		}
	}
}

func TestScrollingReachesEveryRow(t *testing.T) {
	for _, l := range []size{{40, 12}, {60, 20}, {80, 24}} {
		r := start(t, look{size: l})
		press(r, append(toAnswer[:14:14], "r", "home")...)
		r.View()
		a := r.answer
		rows, _ := a.rows(a.room)
		seen := map[string]bool{}
		for range rows {
			for _, row := range a.scroll.window(a.s, rows, a.room) {
				seen[row] = true
			}
			press(r, "down")
		}
		for _, row := range rows {
			require.True(t, seen[row], "%v: %q", l, row)
		}
	}
}

func TestTheSafetyLineIsOnEveryAnswer(t *testing.T) {
	for _, l := range []size{{40, 12}, {60, 20}, {80, 24}, {120, 40}} {
		r := start(t, look{size: l})
		press(r, toAnswer...)
		for range 5 {
			require.Contains(t, r.View(), "Respirator, exhaust, no sparks.")
			press(r, "pgdown")
			r.View()
		}
	}
}

func TestAJobThatCannotBeDoneSaysStopFirst(t *testing.T) {
	r := open80x24(t)
	press(r, append(toAnswer[:9:9], "20", "enter", "1", "enter", "enter")...)
	setup := r.result().Setup
	require.True(t, setup.Stopped())
	rows, _ := r.answer.rows(r.answer.room)
	require.Contains(t, rows[0], "STOP ")
}

func TestAboveTheFoldStandWhatToSetHowSureAndWhatCostsMost(t *testing.T) {
	for _, l := range []size{{80, 24}, {120, 40}} {
		r := start(t, look{size: l})
		press(r, toAnswer...)
		for _, text := range []string{"likely 28 to 34", "likely 5.3 to 5.7", "likely 48 to 100%", "main hose costs most", "WATCH", "Eight times in ten"} {
			require.Contains(t, r.View(), text)
		}
	}
}

func TestHowSureIsThatOfThePropagation(t *testing.T) {
	r := open80x24(t)
	press(r, toAnswer...)
	got := r.result()
	require.Equal(t, calc.Propagate(&got.Request, &got.Setup), got.Spread)
	require.Less(t, got.Spread.Wall.Low, got.Setup.Wall.Flowing)
	require.Greater(t, got.Spread.Wall.High, got.Setup.Wall.Flowing)
	rows, _ := r.answer.rows(r.answer.room)
	all := strings.Join(strings.Fields(strings.Join(rows, " ")), " ")
	for _, text := range got.Setup.Fixes {
		require.Contains(t, all, text.Part)
	}
	require.Contains(t, all, "Check the wall gauge against a good one", "what to measure")
	require.Contains(t, all, "The supply is not checked")
}

func TestNoRangeStandsBesideAWallThatIsOnlyWhereTheSupplyEnds(t *testing.T) {
	r := open80x24(t)
	press(r, append(toAnswer[:9:9], "27", "enter", "1", "enter", "enter")...)
	require.True(t, r.result().Setup.Short.Is)
	require.NotContains(t, r.View(), likelyMark)
}

func TestWhatATriedWallDoesIsInSightAtAnySize(t *testing.T) {
	for _, l := range []size{{40, 12}, {60, 20}, {80, 24}, {120, 40}} {
		r := start(t, look{size: l})
		press(r, append(toAnswer[:14:14], "right")...)
		require.Contains(t, r.View(), "> With the wall at 32.0 psi")
	}
}
