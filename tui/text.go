package tui

import (
	"strings"
	"unicode"

	"boothset/presets/words"

	"github.com/charmbracelet/x/ansi"
)

// unbroken stands for a hyphen while text is wrapped, so that "1-4" stays whole.
const unbroken = "\u2011"

// wrap breaks text at blanks, but not between a number and its unit, into rows of at most w
// columns; a longer word is cut.
func wrap(text string, w int) []string {
	if text == "" {
		return nil
	}
	rows := strings.Split(ansi.Wrap(strings.ReplaceAll(words.Bound(text), "-", unbroken), max(w, 1), ""), "\n")
	for i := range rows {
		rows[i] = strings.TrimRight(strings.ReplaceAll(strings.ReplaceAll(rows[i], unbroken, "-"), words.NoBreak, " "), " ")
	}
	return rows
}

// hang wraps text behind a mark, its rows under each other.
func hang(mark, text string, w int) []string {
	indent := ansi.StringWidth(mark)
	rows := wrap(text, w-indent)
	for i := range rows {
		if i == 0 {
			rows[i] = mark + rows[i]
		} else {
			rows[i] = strings.Repeat(" ", indent) + rows[i]
		}
	}
	return rows
}

// cut shortens a row to w columns.
func cut(row string, w int) string { return ansi.Truncate(row, max(w, 0), "") }

// fit shortens a row to w columns at the end of a word, with a mark where it goes on.
func fit(row string, w int) string {
	if ansi.StringWidth(row) <= w {
		return row
	}
	short := cut(row, w-len(cutMark))
	if at := strings.LastIndexByte(short, ' '); at > len(short)/2 && row[len(short)] != ' ' {
		short = short[:at]
	}
	return strings.TrimRight(short, " ") + cutMark
}

// cutMark stands where a text goes on elsewhere.
const cutMark = "..."

// pad fills a row with blanks to w columns, and cuts what is longer.
func pad(row string, w int) string {
	row = cut(row, w)
	return row + strings.Repeat(" ", max(w-ansi.StringWidth(row), 0))
}

// ends puts a text at the right end of a row and at its left the first of others that
// fits beside it; where none does, the last of them is cut.
func ends(w int, right string, lefts ...string) string {
	for _, left := range lefts {
		if free := w - ansi.StringWidth(left) - ansi.StringWidth(right); free > 0 {
			return left + strings.Repeat(" ", free) + right
		}
	}
	free := w - 1 - ansi.StringWidth(right)
	return cut(pad(fit(lefts[len(lefts)-1], free), free)+" "+right, w)
}

// tail shortens a row from its front.
func tail(row string, w int) string {
	over := ansi.StringWidth(row) - w
	if over <= 0 {
		return row
	}
	return cut(cutMark+ansi.TruncateLeft(row, over+len(cutMark), ""), w)
}

// plain is text without characters that would move the cursor: a shop's own names are
// shown as well.
func plain(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return -1
		}
		return r
	}, text)
}

// each puts the same style or mark around every row.
func each(rows []string, render func(...string) string) []string {
	for i := range rows {
		rows[i] = render(rows[i])
	}
	return rows
}

// toRight fills a row with blanks at its front to w columns.
func toRight(row string, w int) string {
	return strings.Repeat(" ", max(w-ansi.StringWidth(row), 0)) + row
}

// flow wraps pieces of text, breaking between them and not at the blanks inside.
func flow(pieces []string, between string, w int) []string {
	const joined = "\u00a0"
	whole := make([]string, len(pieces))
	for i, p := range pieces {
		whole[i] = strings.ReplaceAll(p, " ", joined)
	}
	rows := wrap(strings.Join(whole, between), w)
	for i := range rows {
		rows[i] = strings.Trim(strings.ReplaceAll(rows[i], joined, " "), " ")
	}
	return rows
}

// ruled is a title in a rule of w columns.
func (s *session) ruled(title string, w int) string {
	rule := string(s.glyphs.Rule)
	row := strings.Repeat(rule, 2) + " " + title + " "
	return cut(row+strings.Repeat(rule, max(w-ansi.StringWidth(row), 0)), w)
}
