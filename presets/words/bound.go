package words

import (
	"strings"
	"unicode/utf8"
)

// NoBreak is the blank at which no row may end.
const NoBreak = "\u00a0"

// longestUnit is the room of the longest unit that a figure has.
const longestUnit = len("L/min")

// Bound is text with each number bound to its unit by NoBreak, so that no row ends between
// them. A short word behind a number that is no unit is bound to it too, which does no harm.
func Bound(text string) string {
	var b strings.Builder
	done := 0
	for i := 1; i < len(text); i++ {
		if text[i] != ' ' {
			continue
		}
		next, _, _ := strings.Cut(text[i+1:], " ")
		next = strings.TrimRight(next, ".,;:)]")
		number := text[i-1] >= '0' && text[i-1] <= '9' && next != "" && utf8.RuneCountInString(next) <= longestUnit
		if number || next == "oz" && strings.HasSuffix(text[:i], " fl") {
			b.WriteString(text[done:i])
			b.WriteString(NoBreak)
			done = i + 1
		}
	}
	if done == 0 {
		return text
	}
	return b.String() + text[done:]
}
