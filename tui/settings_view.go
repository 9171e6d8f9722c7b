package tui

import (
	"cmp"
	"strings"

	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
)

// Widths from which the numbers stand beside each other with room for their ranges, and
// from which they are large and their reasons stand under them.
const (
	narrowColumns = 54
	wideColumns   = 78
)

// numbers is the three settings in digits, as large as the room allows; whole is false where
// what they are is not said with them.
func (b *bench) numbers(room size) (rows []string, whole bool) {
	three := b.changedSettings()
	if room.w < wideColumns {
		for _, gap := range []int{1, 0} {
			if rows := b.stacked(three, room.w, gap); len(rows) <= room.h {
				return rows, true
			}
		}
	}
	for size := draw.Large; size >= draw.Small; size-- {
		rows := b.beside(three, room.w, size)
		if rows != nil && (len(rows) <= room.h || size == draw.Small && room.w >= narrowColumns) {
			return rows, true
		}
	}
	if rows := b.tight(three, room.w, draw.Medium); rows != nil && len(rows) <= room.h {
		return rows, false
	}
	return b.tight(three, room.w, draw.Small), false
}

// stacked is the numbers one below the other, large, each with its words beside it.
func (b *bench) stacked(three [3]setting, w, gap int) (rows []string) {
	th := b.s.theme
	wide := 0
	var pictures [3][]string
	for i, n := range three {
		pictures[i] = draw.Number(n.value, draw.Large, b.s.glyphs)
		wide = max(wide, ansi.StringWidth(pictures[i][0]))
	}
	for i, n := range three {
		if i > 0 && gap > 0 {
			rows = append(rows, "")
		}
		text := wrap(n.name+"  "+n.unit, w-wide-2)
		text = each(text, th.Title.Render)
		for _, t := range n.below() {
			text = append(text, wrap(t, w-wide-2)...)
		}
		for y := range max(len(pictures[i]), len(text)) {
			var left, right string
			if y < len(pictures[i]) {
				left = pictures[i][y]
			}
			if y < len(text) {
				right = text[y]
			}
			rows = append(rows, strings.TrimRight(th.Number.Render(pad(left, wide))+"  "+right, " "))
		}
	}
	return rows
}

// beside is the numbers in three columns: name and unit, the digits, the range and what
// they are. None where the digits are wider than their column.
func (b *bench) beside(three [3]setting, w int, scale draw.Size) []string {
	th := b.s.theme
	col := w / len(three)
	var cells [3][]string
	for i, n := range three {
		digits := draw.Number(n.value, scale, b.s.glyphs)
		if ansi.StringWidth(digits[0]) >= col {
			return nil
		}
		cells[i] = append(each(wrap(n.name+"  "+n.unit, col-1), th.Title.Render), each(digits, th.Number.Render)...)
	}
	evenOut(&cells)
	for i, n := range three {
		for _, t := range n.below() {
			cells[i] = append(cells[i], wrap(t, col-1)...)
		}
	}
	return across(cells, [3]int{col, col, col})
}

// tight is the numbers with their names, each column as wide as it must be, and
// the range or what was moved under them. None where that is too wide.
func (b *bench) tight(three [3]setting, w int, scale draw.Size) []string {
	th := b.s.theme
	var cells [3][]string
	var cols [3]int
	free := w
	for i, n := range three {
		cells[i] = append([]string{th.Title.Render(n.name + " " + n.label)}, each(draw.Number(n.value, scale, b.s.glyphs), th.Number.Render)...)
		if below := cmp.Or(n.changeShort, n.span); below != "" {
			cells[i] = append(cells[i], below)
		}
		for _, row := range cells[i] {
			cols[i] = max(cols[i], ansi.StringWidth(row))
		}
		free -= cols[i]
	}
	gap := free / (len(three) - 1)
	if gap < 1 {
		return nil
	}
	for i := range cols {
		cols[i] += min(gap, widestGap)
	}
	return across(cells, cols)
}

// widestGap is the most between the columns of the numbers that stand tight.
const widestGap = 4

// evenOut fills the cells up to the highest of them.
func evenOut(cells *[3][]string) {
	high := 0
	for i := range cells {
		high = max(high, len(cells[i]))
	}
	for i := range cells {
		for len(cells[i]) < high {
			cells[i] = append(cells[i], "")
		}
	}
}

// across is cells of rows side by side, each in so many columns.
func across(cells [3][]string, cols [3]int) (rows []string) {
	evenOut(&cells)
	for y := range cells[0] {
		var row string
		for i := range cells {
			row += pad(cells[i][y], cols[i]-1) + " "
		}
		rows = append(rows, strings.TrimRight(row, " "))
	}
	return rows
}
