package shop

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// The most characters that are shown of a text of a file.
const (
	mostName = 60
	mostNote = 1000
)

// Printable is a text of a file as it may be shown anywhere: on one line, what cannot be
// printed (control characters, escape sequences, overrides of the direction of writing) by
// its number, cut at a number of characters.
func Printable(text string, most int) string {
	var b strings.Builder
	n := 0
	for i := 0; i < len(text) && n < most; n++ {
		r, size := utf8.DecodeRuneInString(text[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			b.WriteString(`\x` + strconv.FormatUint(uint64(text[i]), 16))
		case r == '\n' || r == '\t':
			b.WriteByte(' ')
		case r == '\r':
		case unicode.IsPrint(r):
			b.WriteRune(r)
		default:
			quoted := strconv.QuoteRuneToASCII(r)
			b.WriteString(quoted[1 : len(quoted)-1])
		}
		i += size
	}
	return b.String()
}

// Note is what people wrote in their own words, as it may be kept: all of it.
func Note(text string) string { return strings.TrimSpace(Printable(text, len(text))) }
