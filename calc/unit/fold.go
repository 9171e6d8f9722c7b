package unit

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// lookAlike is the plain form of what phones, word processors and keyboards of other countries
// put in the place of what is typed at the bench, empty of what is none of it. Compatibility
// composition (NFKC of Unicode) knows half of them, and makes 11/2 of a one with a half behind
// it. It is no map: that would be made at every start.
func lookAlike(c rune) string {
	switch c {
	case 'º', '˚':
		return "°"
	case '℃':
		return "°C"
	case '℉':
		return "°F"
	case '−', '‐', '‑', '‒', '–', '—', '―', '﹣':
		return "-"
	case '′', '’', '‘', '´', 'ʹ', 'ʼ':
		return "'"
	case '″', '”', '“', '„', '˝', 'ʺ':
		return `"`
	case '⁄', '∕':
		return "/"
	case '×':
		return "x"
	case 'µ', 'μ':
		return "u"
	case 'ℓ':
		return "l"
	case '½':
		return "1/2"
	case '⅓':
		return "1/3"
	case '⅔':
		return "2/3"
	case '¼':
		return "1/4"
	case '¾':
		return "3/4"
	case '⅕':
		return "1/5"
	case '⅖':
		return "2/5"
	case '⅗':
		return "3/5"
	case '⅘':
		return "4/5"
	case '⅙':
		return "1/6"
	case '⅚':
		return "5/6"
	case '⅐':
		return "1/7"
	case '⅛':
		return "1/8"
	case '⅜':
		return "3/8"
	case '⅝':
		return "5/8"
	case '⅞':
		return "7/8"
	case '⅑':
		return "1/9"
	case '⅒':
		return "1/10"
	case '²':
		return "2"
	case '³':
		return "3"
	}
	return ""
}

// The full-width forms of ASCII, and how far they lie from it.
const (
	firstWide, lastWide = '！', '～'
	wide                = firstWide - '!'
)

// Fold is text with plain characters for those that only look otherwise: minus signs, primes,
// degree signs, fractions in one character, squares and cubes of units, full-width letters
// and digits, blanks that do not break. What is plain already stays as it is.
func Fold(text string) string {
	at := strings.IndexFunc(text, func(c rune) bool { return c >= 0x80 })
	if at < 0 || !utf8.ValidString(text) {
		return text
	}
	var b strings.Builder
	b.WriteString(text[:at])
	before := ' '
	if at > 0 {
		before = rune(text[at-1])
	}
	for _, c := range text[at:] {
		plain := lookAlike(c)
		digit := '0' <= before && before <= '9'
		switch {
		case c >= firstWide && c <= lastWide:
			c -= wide
			b.WriteRune(c)
		case c >= 0x80 && unicode.Is(unicode.Zs, c):
			c = ' '
			b.WriteRune(c)
		case (c == '²' || c == '³') && !unicode.IsLetter(before): // of a number it is a power
			b.WriteRune(c)
		case plain != "":
			if len(plain) > 1 && strings.Contains(plain, "/") && digit {
				b.WriteByte(' ') // a whole number before a fraction
			}
			b.WriteString(plain)
			c, _ = utf8.DecodeLastRuneInString(plain)
		default:
			b.WriteRune(c)
		}
		before = c
	}
	return b.String()
}
