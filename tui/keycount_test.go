package tui

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// singleKeys is keys with text as a key a character, as a hand presses them.
func singleKeys(keys ...string) (single []string) {
	for _, k := range keys {
		if _, named := keyTypes[k]; named {
			single = append(single, k)
			continue
		}
		for _, c := range k {
			single = append(single, string(c))
		}
	}
	return single
}

// From a first start the usual shop is at its answer within 12 keys, its instruments read and
// typed; with all as usual in half of them.
func TestTheFirstAnswerTakesTwelveKeys(t *testing.T) {
	for most, keys := range map[int][]string{
		12: singleKeys("enter", "8", "2", "75", "enter", "45", "enter", "enter", "enter", "enter"),
		6:  singleKeys("enter", "8", "2", "=", "enter", "enter"),
	} {
		require.LessOrEqual(t, len(keys), most)
		r := open80x24(t)
		press(r, keys[:len(keys)-1]...)
		require.NotEqual(t, "bench", where(r))
		press(r, keys[len(keys)-1])
		require.False(t, againstDay(t, r))
	}
}

// From kept answers two keys lead to yesterday's, and another coat with all else as before takes
// no more than four; where its hardener is not known that is asked.
func TestKeptAnswersTakeTwoKeysAndAnotherCoatFour(t *testing.T) {
	h := newShelf(t)
	typed(h.run(t, look{}), toSupply...)
	h.now = testDay.Add(24 * time.Hour)
	r := h.run(t, look{})
	press(r, "enter", "enter")
	require.True(t, againstDay(t, r))
	before := r.s.answers

	r = h.run(t, look{})
	press(r, "enter", "2", "7")
	require.True(t, againstDay(t, r))
	require.Equal(t, "single-stage", r.result().Plan.Request.Coat.ID)
	for _, row := range r.s.steps[2].rows {
		require.Equal(t, before.Text(row.Field), r.s.answers.Text(row.Field))
	}
	require.True(t, r.result().Plan.Setup.Supplied.Checked)
	press(r, "esc")
	require.Equal(t, stepSheet, where(r), "going back asks for everything again")

	r = h.run(t, look{})
	press(r, "enter", "2", "5")
	require.Equal(t, "hardener", where(r))
	press(r, "enter")
	require.Equal(t, "bench", where(r))
}
