package tui

import (
	"testing"

	"boothset/presets/question"

	"github.com/stretchr/testify/require"
)

// The title says coat and verdict as they stand, once each, and is given back.
func TestTheTitleSaysCoatAndVerdict(t *testing.T) {
	r := start(t, look{})
	var sent []string
	r.s.title.send = func(sequence string) { sent = append(sent, sequence) }
	to := func(keys ...string) {
		for _, k := range keys {
			follow(t, r, k)
		}
	}
	to("enter")
	require.Equal(t, []string{keepTitle + "\x1b]2;boothset\x07"}, sent, "the terminal's own is kept first")
	to(toAnswer[1:]...)
	require.Equal(t, []string{"\x1b]2;boothset: clearcoat\x07", "\x1b]2;boothset: clearcoat, GO\x07"}, sent[1:])
	sent = nil
	to("2", "down", "up", "?", "esc")
	require.Empty(t, sent)
	for r.bench.inputs()[r.bench.input].Field != question.Humidity {
		to("down")
	}
	for r.bench.tried.Setup.Verdict.String() == "go" {
		to("right")
	}
	require.Len(t, sent, 1)
	require.Contains(t, sent[0], "boothset: clearcoat, W")
	to("esc")
	require.Equal(t, "\x1b]2;boothset: clearcoat, GO\x07", sent[1])
	to("esc")
	require.Equal(t, "\x1b]2;boothset: clearcoat\x07", sent[2], "no verdict where it may not hold")
	sent = nil
	r.s.title.giveBack()
	r.s.title.giveBack()
	require.Equal(t, []string{"\x1b]2;\x07" + giveTitle}, sent)
}

func TestATitleThatComesLateIsNotShown(t *testing.T) {
	var sent []string
	title := titler{send: func(s string) { sent = append(sent, s) }}
	first, second := title.set("one"), title.set("two")
	require.Nil(t, title.set("two"))
	second()
	first()
	require.Equal(t, []string{keepTitle + "\x1b]2;two\x07"}, sent)
}

func TestAVirtualConsoleHasNoTitle(t *testing.T) {
	for term, want := range map[string]bool{"linux": false, "xterm-256color": true, "": true} {
		require.Equal(t, want, titled(func(string) string { return term }), term)
	}
}
