package draw

import "strings"

// Range is one row: a rule that is a scale, the part of it that a value likely lies in, and the
// value. What lies off the scale stands at its end.
type Range struct {
	Scale
	Likely Span
	Set    Mark
}

const leastRangeWidth = 5

// Row draws it in w columns; empty where that is fewer than 5, or it has no scale.
func (r Range) Row(w int, g Glyphs, ink Ink) string {
	if w < leastRangeWidth || !r.ok() {
		return ""
	}
	heavy, point := '=', 'o'
	if g.Braille != 0 {
		heavy, point = '━', '●'
	}
	c := newCanvas(w, 1, g)
	c.run(0, 0, w, g.Rule, RoleAxis)
	if r.Likely.shown() {
		from, _ := r.column(min(r.Likely.Low, r.Likely.High), w)
		to, _ := r.column(max(r.Likely.Low, r.Likely.High), w)
		c.run(from, 0, to-from+1, heavy, RoleBand)
	}
	if r.Set.shown() {
		at, off := r.column(r.Set.At, w)
		c.put(at, 0, map[side]rune{-1: '<', 0: point, 1: '>'}[off], RoleMark)
	}
	return strings.TrimRight(c.rows(ink)[0], " ")
}
