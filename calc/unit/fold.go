package unit

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// lookAlikes is what phones, word processors and keyboards of other countries put in the place
// of what is typed at the bench. Compatibility composition (NFKC of Unicode) knows half of
// them, and makes 11/2 of a one with a half behind it.
var lookAlikes = map[rune]string{
	'º': "°", '˚': "°", '℃': "°C", '℉': "°F",
	'−': "-", '‐': "-", '‑': "-", '‒': "-", '–': "-", '—': "-", '―': "-", '﹣': "-",
	'′': "'", '’': "'", '‘': "'", '´': "'", 'ʹ': "'", 'ʼ': "'",
	'″': `"`, '”': `"`, '“': `"`, '„': `"`, '˝': `"`, 'ʺ': `"`,
	'⁄': "/", '∕': "/", '×': "x", 'µ': "u", 'μ': "u", 'ℓ': "l",
	'½': "1/2", '⅓': "1/3", '⅔': "2/3", '¼': "1/4", '¾': "3/4", '⅕': "1/5", '⅖': "2/5", '⅗': "3/5", '⅘': "4/5",
	'⅙': "1/6", '⅚': "5/6", '⅐': "1/7", '⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8", '⅑': "1/9", '⅒': "1/10",
	'²': "2", '³': "3",
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
		plain, known := lookAlikes[c]
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
		case known:
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
