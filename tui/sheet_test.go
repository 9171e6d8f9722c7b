package tui

import (
	"testing"

	"boothset/presets/question"

	"github.com/stretchr/testify/require"
)

// The sheet's page is passed by with one key, takes what the sheet says, and what was taken
// counts, stays, and can be emptied again.
func TestTheSheetIsAskedOnOnePage(t *testing.T) {
	r := open80x24(t)
	press(r, atSheet...)
	require.Equal(t, stepSheet, where(r))
	press(r, "enter")
	require.Equal(t, "bench", where(r))
	usual := r.result().Plan.Request

	press(r, "esc")
	require.Equal(t, stepSheet, where(r))
	press(r, "24", "enter", "down", "5in", "enter", "12 min", "enter", "enter")
	require.Equal(t, "bench", where(r))
	q := r.result().Plan.Request
	require.InDelta(t, 24, q.Coat.Working.Start.PSI(), 1e-9)
	require.True(t, q.Coat.Working.Fixed)
	require.InDelta(t, 5, q.Coat.Stage.Held.Usual.Inches(), 1e-9)
	require.InDelta(t, 12, q.Coat.Stage.Flash.Usual.Minutes(), 1e-9)

	for where(r) != stepSheet {
		press(r, "esc")
	}
	for range r.sampleGroup(stepSheet).all {
		press(r, "up")
	}
	for range r.sampleGroup(stepSheet).all {
		press(r, "ctrl+u", "down")
	}
	press(r, "enter")
	require.Equal(t, "bench", where(r))
	require.Equal(t, usual, r.result().Plan.Request)
}

// What does not go together is refused where it was typed.
func TestTheSheetSaysThePressureOnce(t *testing.T) {
	r := open80x24(t)
	press(r, then(atSheet, "24", "enter", "9", "enter")...)
	require.Equal(t, stepSheet, where(r))
	p := r.page().(*groupPage)
	require.Equal(t, question.CapPressure, p.all[p.at].Field)
	require.Contains(t, p.fault, "give working or cap")
	press(r, "ctrl+u", "enter", "enter")
	require.Equal(t, "bench", where(r))
}
