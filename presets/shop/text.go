package shop

import (
	"math"
	"strings"

	"boothset/presets/words"
)

// The most characters that are shown of a text of a file.
const (
	mostName = 60
	mostNote = 1000
)

// shownName is a text of a file that is to be short, as it may be shown.
func shownName(s string) string { return words.OneLine(s, mostName) }

// shownNote is one that may be longer.
func shownNote(s string) string { return words.OneLine(s, mostNote) }

// Note is what people wrote in their own words, as it may be kept: all of it.
func Note(text string) string { return strings.TrimSpace(words.OneLine(text, math.MaxInt)) }
