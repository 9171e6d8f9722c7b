package words

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Whatever a message quotes goes through here: what was typed, keys, flags, paths, what stands
// in a file. None of it may reach a terminal that moves its cursor, turns its text or hides.

// The most characters of what is quoted. Of a path the end is kept, which says most.
const (
	mostQuoted = 60
	mostPath   = 200
)

const cut = "..."

// Quoted is what was typed, in quotes.
func Quoted(given string) string { return `"` + escaped(given, `"\`, mostQuoted) + `"` }

// Short is what was typed, without quotes.
func Short(given string) string { return escaped(given, "", mostQuoted) }

// Path is the name of a file with its folders.
func Path(file string) string {
	file = Printable(file)
	if runes := []rune(file); len(runes) > mostPath {
		return cut + string(runes[len(runes)-mostPath:])
	}
	return file
}

// Printable is text with escapes in place of what cannot be printed: "\x1b" of an escape
// character, "\u202e" of one that turns the direction. It stands on one line.
func Printable(text string) string {
	for i := range len(text) {
		if c := text[i]; c < ' ' || c >= 0x7f {
			return escaped(text, "", math.MaxInt)
		}
	}
	return text
}

// OneLine is what people wrote into a file as it may be shown anywhere: on one line, what cannot
// be printed as an escape, of at most so many characters.
func OneLine(text string, most int) string {
	return escaped(strings.NewReplacer("\r\n", " ", "\n", " ", "\t", " ", "\r", " ").Replace(text), "", most)
}

// Cut is the beginning of a text that is too long to be quoted whole.
func Cut(given string) string {
	n := 0
	for i := range given {
		if n++; n > mostQuoted {
			return given[:i] + cut
		}
	}
	return given
}

// escaped is a text of at most so many characters, escapes counted, with a backslash before
// each of those in marked too.
func escaped(text, marked string, most int) string {
	var b strings.Builder
	n := 0
	for len(text) > 0 {
		c, size := utf8.DecodeRuneInString(text)
		one := text[:size]
		switch {
		case c == utf8.RuneError && size == 1:
			one = `\x` + strconv.FormatUint(uint64(text[0]), 16)
		case strings.ContainsRune(marked, c):
			one = `\` + one
		case !unicode.IsPrint(c):
			one = strings.Trim(strconv.QuoteRune(c), "'")
		}
		if n += utf8.RuneCountInString(one); n > most {
			b.WriteString(cut)
			break
		}
		b.WriteString(one)
		text = text[size:]
	}
	return b.String()
}
