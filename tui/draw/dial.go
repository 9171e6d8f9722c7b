package draw

// dial is where something round stands: its middle and outer radius in dots of its layer, which
// begins at a column of the canvas.
type dial struct {
	*canvas
	*dots
	left    int
	x, y, r float64
}

// newDial is a dial with a layer of some cells, its middle halfway across.
func newDial(w, h int) dial {
	d := dial{dots: newDots(w, h)}
	d.x = float64(d.dots.w-1) / 2
	return d
}

// radial draws a line along a radius.
func (d dial) radial(angle, from, to float64, thick int, role Role) {
	x0, y0 := polar(d.x, d.y, from, angle)
	x1, y1 := polar(d.x, d.y, to, angle)
	d.line(x0, y0, x1, y1, thick, role)
}

// roomRound lays the texts of marks out about something round that takes so many columns and is
// so many rows high: beside it where there is room, else under it where at least so many rows are
// left for it, else nowhere. It gives the columns and the rows that are left, and where they begin.
func (c *canvas) roomRound(keys []key, across, high, least int) (left, wide, rows int) {
	if beside := keysWidth(keys); beside > 0 && across+keyGap+beside <= c.w {
		left = (c.w - across - keyGap - beside) / 2
		c.list(keys, left+across+keyGap, (high-len(keys))/2)
		return left, across, high
	}
	if under := legendRows(keys, c.w); under > 0 && high-under >= least {
		c.legend(keys, c.h-under, c.w)
		return 0, c.w, high - under
	}
	return 0, c.w, high
}

// dotSign is what dots are called by in a legend, in ASCII a sign of its own.
func dotSign(g Glyphs, dots dotCell, plain rune) rune {
	if g.Braille == 0 {
		return plain
	}
	return dots.char(g)
}
