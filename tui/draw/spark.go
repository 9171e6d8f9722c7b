package draw

import "math"

// Spark is values as bars in a row, a cell each, low to high; one of them is the value now. One
// that is NaN is a gap.
type Spark struct {
	Values []float64
	At     int
}

// eighths are bars of one eighth to a whole cell.
var eighths = [...]rune{'▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'}

// heights are bars where there are no eighths.
var heights = [...]rune{'_', '.', '-', '=', '#'}

// Row draws it; empty where fewer than two values are known, or all are the same.
func (s Spark) Row(g Glyphs, ink Ink) string {
	low, high := math.Inf(1), math.Inf(-1)
	for _, v := range s.Values {
		if !math.IsNaN(v) {
			low, high = min(low, v), max(high, v)
		}
	}
	if !(Scale{Low: low, High: high}).ok() {
		return ""
	}
	bars := eighths[:]
	if g.Braille == 0 {
		bars = heights[:]
	}
	c := newCanvas(len(s.Values), 1, g)
	for i, v := range s.Values {
		role := RoleBand
		if i == s.At {
			role = RoleMark
		}
		if !math.IsNaN(v) {
			c.put(i, 0, bars[round((v-low)/(high-low)*float64(len(bars)-1))], role)
		}
	}
	return c.rows(ink)[0]
}
