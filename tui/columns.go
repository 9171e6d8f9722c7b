package tui

import "strings"

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
