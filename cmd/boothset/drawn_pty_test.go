//go:build unix

package main

import (
	"regexp"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/require"
)

// The terminal's other screen, which the assistant draws on, is entered and left.
const entered, left = "\x1b[?1049h", "\x1b[?1049l"

// screens is what was drawn while the other screen was there; before and after it the terminal
// itself may echo what is typed.
func screens(sent string) (drawn []string) {
	for {
		_, rest, ok := strings.Cut(sent, entered)
		if !ok {
			return drawn
		}
		var screen string
		screen, sent, _ = strings.Cut(rest, left)
		drawn = append(drawn, screen)
	}
}

// drawing is the sequences that a screen is drawn with: control sequences, a title, the
// clipboard.
var drawing = regexp.MustCompile(`\x1b\[[?<>=]?[0-9;:]*[ ]?[A-Za-z]|\x1b\]0;([^\x00-\x1f\x7f-\x9f]*)\x07|\x1b\]2;([^\x00-\x1f\x7f-\x9f]*)\x07|\x1b\]52;c;[A-Za-z0-9+/=]*\x07`)

// nonsense is what is on no screen: a figure that is none, a format that did not fit.
var nonsense = regexp.MustCompile(`NaN|[+-]Inf|%!`)

// requireDrawn holds that a screen is text and what draws it, and nothing raw.
func requireDrawn(t *testing.T, screen string) {
	t.Helper()
	text := drawing.ReplaceAllString(screen, "")
	if at := strings.IndexFunc(text, func(r rune) bool { return r != '\r' && r != '\n' && r != '\u00a0' && !unicode.IsPrint(r) }); at >= 0 {
		require.Fail(t, "raw on the screen", "%q", text[max(0, at-100):min(len(text), at+100)])
	}
	require.NotRegexp(t, nonsense, text)
}
