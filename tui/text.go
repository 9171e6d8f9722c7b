package tui

import (
	"strings"
	"unicode"

	"github.com/charmbracelet/x/ansi"
)

// wrap breaks text into rows of at most w columns.
func wrap(text string, w int) []string {
	if text == "" {
		return nil
	}
	rows := strings.Split(ansi.Wrap(text, max(w, 1), ""), "\n")
	for i := range rows {
		rows[i] = strings.TrimRight(rows[i], " ")
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

// pad fills a row with blanks to w columns, and cuts what is longer.
func pad(row string, w int) string {
	row = cut(row, w)
	return row + strings.Repeat(" ", max(w-ansi.StringWidth(row), 0))
}

// ends puts one text at the left end of a row and one at the right; where they do not
// both fit the right one goes.
func ends(left, right string, w int) string {
	free := w - ansi.StringWidth(left) - ansi.StringWidth(right)
	if right == "" || free < 1 {
		return cut(left, w)
	}
	return left + strings.Repeat(" ", free) + right
}

// tail shortens a row from its front.
func tail(row string, w int) string {
	over := ansi.StringWidth(row) - w
	if over <= 0 {
		return row
	}
	const mark = "..."
	return cut(mark+ansi.TruncateLeft(row, over+len(mark), ""), w)
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

// right fills a row with blanks at its front to w columns.
func right(row string, w int) string {
	return strings.Repeat(" ", max(w-ansi.StringWidth(row), 0)) + row
}
