package draw

import (
	"math"
	"strings"
	"unicode/utf8"
)

// Large figures are strokes along a skeleton, as even all round as the cells allow, with
// round corners where the set has quarters of a cell. They are measured in columns; a row is
// as high as two.

// rowsOfDigits are the heights there are, the largest first.
var rowsOfDigits = [...]int{9, 7, 5, 3, 1}

// FitDigits is a number drawn as large as fits the room, or nil where it does not fit as
// text either.
func FitDigits(text string, w, h int, g Glyphs) []string {
	for _, n := range rowsOfDigits {
		if n > h {
			continue
		}
		if digitsWidth(text, n, g) > w {
			continue
		}
		if rows := Digits(text, n, g); len(rows) == n && length(rows[0]) <= w {
			return rows
		}
	}
	return nil
}

// Digits draws a number such as "29", "-5.5", "2,15", "3/8" or "1 3/8" in 3, 5, 7 or 9 rows
// of equal width. In other heights, and with other characters, the text comes back as it
// is, in one row.
func Digits(text string, rows int, g Glyphs) []string {
	if text == "" || strings.Trim(text, "0123456789.,-/ ") != "" {
		return []string{clean(text)}
	}
	switch {
	case rows == 3 && g.Upper == 0:
		return strokes3(text)
	case rows == 3:
		return joinDigits(text, 3, func(c rune) []string { return inHalves(pixels3[c], g) })
	case rows == 5 || rows == 7 || rows == 9:
		return joinDigits(text, rows, newPen(rows, g).digit)
	}
	return []string{text}
}

// digitsWidth is how many columns a number takes in so many rows; 0 where that is not told
// before it is drawn.
func digitsWidth(text string, rows int, g Glyphs) int {
	if rows < 5 {
		return 0
	}
	p, w := newPen(rows, g), 0
	for _, c := range text {
		w += int(p.wide(c)) + digitGap(rows)
	}
	return w - digitGap(rows)
}

// digitGap is the columns between two characters.
func digitGap(rows int) int { return max(rows/3, 1) }

// joinDigits puts the characters of a number beside each other.
func joinDigits(text string, rows int, draw func(rune) []string) []string {
	between := strings.Repeat(" ", digitGap(rows))
	all := make([]string, rows)
	for i, c := range text {
		for y, row := range draw(c) {
			if i > 0 {
				all[y] += between
			}
			all[y] += row
		}
	}
	return all
}

// pixels3 are the pixels of three rows of halves.
var pixels3 = map[rune][5]string{
	'0': {"###", "# #", "# #", "# #", "###"},
	'1': {" # ", "## ", " # ", " # ", "###"},
	'2': {"###", "  #", "###", "#  ", "###"},
	'3': {"###", "  #", " ##", "  #", "###"},
	'4': {"# #", "# #", "###", "  #", "  #"},
	'5': {"###", "#  ", "###", "  #", "###"},
	'6': {"###", "#  ", "###", "# #", "###"},
	'7': {"###", "  #", " # ", " # ", " # "},
	'8': {"###", "# #", "###", "# #", "###"},
	'9': {"###", "# #", "###", "  #", "###"},
	'/': {"  #", "  #", " # ", "#  ", "#  "},
	' ': {" ", " ", " ", " ", " "},
	'.': {" ", " ", " ", " ", "#"},
	',': {"  ", "  ", "  ", " #", "# "},
	'-': {"   ", "   ", "###", "   ", "   "},
}

// inHalves puts two rows of pixels into each row of cells, none under the last.
func inHalves(pixels [5]string, g Glyphs) []string {
	rows := make([]string, 3)
	for y := range rows {
		for x := range pixels[0] {
			up, low := pixels[2*y][x] == '#', 2*y+1 < len(pixels) && pixels[2*y+1][x] == '#'
			char := ' '
			switch {
			case up && low:
				char = g.Full
			case up:
				char = g.Upper
			case low:
				char = g.Lower
			}
			rows[y] += string(char)
		}
	}
	return rows
}

// strokes3 draws in three rows of ASCII.
func strokes3(text string) []string {
	return joinDigits(text, 3, func(c rune) []string {
		switch c {
		case ' ':
			return []string{" ", " ", " "}
		case '.':
			return []string{" ", " ", "."}
		case ',':
			return []string{" ", " ", ","}
		case '-':
			return []string{"  ", "__", "  "}
		case '/':
			return []string{"  /", " / ", "/  "}
		}
		const top, middle, low = " _     _  _     _  _  _  _  _ ", "| |  | _| _||_||_ |_   ||_||_|", "|_|  ||_  _|  | _||_|  ||_| _|"
		at := 3 * int(c-'0')
		return []string{top[at : at+3], middle[at : at+3], low[at : at+3]}
	})
}

// pen draws a character of so many rows in a box of columns.
type pen struct {
	rows        int
	w, h, thick float64
	g           Glyphs
}

func newPen(rows int, g Glyphs) pen {
	p := pen{rows: rows, w: float64(rows + 1), h: float64(2 * rows), thick: 2, g: g}
	if rows == 9 && g.Braille != 0 {
		p.thick = 3
	}
	return p
}

// wide is the columns of a character.
func (p pen) wide(c rune) float64 {
	switch c {
	case '1':
		return math.Ceil(p.w*0.7 - 0.5)
	case '-':
		return math.Floor(p.w * 0.8)
	case '.':
		return p.thick
	case ',':
		return p.thick + 1
	case ' ':
		return math.Floor(p.w / 3)
	}
	return p.w
}

// stroke is a straight piece of a skeleton, or a quarter of a circle round its corner.
type stroke struct {
	x0, y0, x1, y1 float64
	round          bool    // a quarter from one end to the other
	cx, cy         float64 // round this
}

// skeleton is a character's strokes: a path of corners, each rounded.
type skeleton []stroke

// path appends strokes through corners, rounded by a radius.
func (s skeleton) path(radius float64, corners ...[2]float64) skeleton {
	at := corners[0]
	for i := 1; i < len(corners); i++ {
		to := corners[i]
		if i+1 == len(corners) {
			return append(s, stroke{x0: at[0], y0: at[1], x1: to[0], y1: to[1]})
		}
		in, out := toward(to, corners[i-1], radius), toward(to, corners[i+1], radius)
		s = append(s, stroke{x0: at[0], y0: at[1], x1: in[0], y1: in[1]},
			stroke{x0: in[0], y0: in[1], x1: out[0], y1: out[1], round: true, cx: in[0] + out[0] - to[0], cy: in[1] + out[1] - to[1]})
		at = out
	}
	return s
}

// square appends one round a point, so far to each side as a stroke is wide to one.
func square(s skeleton, x, y, half float64) skeleton {
	return s.path(0, [2]float64{x - half/2, y - half/4}, [2]float64{x + half/2, y - half/4}).
		path(0, [2]float64{x - half/2, y + half/4}, [2]float64{x + half/2, y + half/4})
}

// toward is the point so far from one on the way to another, which is somewhere else.
func toward(from, to [2]float64, by float64) [2]float64 {
	long := math.Hypot(to[0]-from[0], to[1]-from[1])
	by = min(by, long)
	return [2]float64{from[0] + (to[0]-from[0])*by/long, from[1] + (to[1]-from[1])*by/long}
}

// within reports whether a point lies no farther than so from the skeleton.
func (s skeleton) within(x, y, far float64) bool {
	for _, k := range s {
		if k.round {
			// Of the circle, the quarter toward the corner.
			dx, dy := x-k.cx, y-k.cy
			r := max(math.Abs(k.x0-k.cx), math.Abs(k.y0-k.cy))
			if dx*(k.x0+k.x1-2*k.cx) >= 0 && dy*(k.y0+k.y1-2*k.cy) >= 0 && math.Abs(math.Sqrt(dx*dx+dy*dy)-r) <= far {
				return true
			}
			continue
		}
		dx, dy := k.x1-k.x0, k.y1-k.y0
		at := 0.0
		if long := dx*dx + dy*dy; long > 0 {
			at = min(max(((x-k.x0)*dx+(y-k.y0)*dy)/long, 0), 1)
		}
		dx, dy = x-k.x0-at*dx, y-k.y0-at*dy
		if dx*dx+dy*dy <= far*far {
			return true
		}
	}
	return false
}

// digit draws a character.
func (p pen) digit(c rune) []string {
	t := p.thick / 2
	left, right, top, bottom := t, p.w-t, t, p.h-t
	middle := math.Floor(p.h/2-t) + t // so that its edges lie between half rows
	r := (right - left) * 0.4
	if p.rows == 5 {
		r = 1.5
	}
	var s skeleton
	pt := func(x, y float64) [2]float64 { return [2]float64{x, y} }
	w := p.wide(c)
	switch c {
	case '0':
		s = s.path(r, pt(w/2, top), pt(right, top), pt(right, bottom), pt(left, bottom), pt(left, top), pt(w/2, top))
	case '1':
		x := math.Floor(w/2-t) + t
		s = s.path(0, pt(t, top+t), pt(x, top+t)).path(0, pt(x, top), pt(x, bottom)).path(0, pt(t, bottom), pt(w-t, bottom))
	case '2':
		s = s.path(r, pt(left, top), pt(right, top), pt(right, middle), pt(left, middle), pt(left, bottom))
		s = s.path(0, pt(left, bottom), pt(right, bottom))
	case '3':
		s = s.path(r, pt(left, top), pt(right, top), pt(right, middle), pt(w/3+t/2, middle))
		s = s.path(r, pt(w/3+t/2, middle), pt(right, middle), pt(right, bottom), pt(left, bottom))
	case '4':
		s = s.path(r, pt(left, top), pt(left, middle), pt(right, middle)).path(r, pt(right, top), pt(right, bottom))
	case '5':
		s = s.path(0, pt(right, top), pt(left, top)).path(0, pt(left, top), pt(left, middle))
		s = s.path(r, pt(left, middle), pt(right, middle), pt(right, bottom), pt(left, bottom))
	case '6':
		s = s.path(r, pt(right, top), pt(left, top), pt(left, bottom), pt(right, bottom), pt(right, middle), pt(left, middle))
	case '7':
		bend := pt(right, p.h*0.35)
		s = s.path(0, pt(left, top), pt(right, top)).path(0, pt(right, top), bend).path(0, bend, pt(w*0.4, bottom))
	case '8':
		s = s.path(r, pt(w/2, top), pt(right, top), pt(right, middle), pt(left, middle), pt(left, top), pt(w/2, top))
		s = s.path(r, pt(w/2, bottom), pt(right, bottom), pt(right, middle), pt(left, middle), pt(left, bottom), pt(w/2, bottom))
	case '9':
		s = s.path(r, pt(left, bottom), pt(right, bottom), pt(right, top), pt(left, top), pt(left, middle), pt(right, middle))
	case '/':
		s = s.path(0, pt(right-0.5, top-t), pt(left+0.5, bottom+t))
	case '-':
		s = s.path(0, pt(0, middle), pt(w, middle))
	case '.':
		s = square(s, t, bottom, t)
	case ',':
		s = square(s, w-t, bottom-p.thick, t).path(0, pt(w-t+0.25, bottom-p.thick), pt(w-p.thick, bottom+t))
	}
	return p.raster(s, int(w))
}

// raster draws a skeleton in so many columns: by quarters of a cell where the set has them.
func (p pen) raster(s skeleton, w int) []string {
	rows := make([]string, p.rows)
	inked := func(x, y float64) bool { return s.within(x, y, p.thick/2+1e-6) }
	for row := range rows {
		b := make([]byte, 0, 3*w)
		for col := range w {
			x, y := float64(col), float64(2*row)
			if p.g.Braille == 0 {
				if inked(x+0.5, y+1) {
					b = utf8.AppendRune(b, p.g.Full)
				} else {
					b = append(b, ' ')
				}
				continue
			}
			n := 0
			for i, at := range [...][2]float64{{0.25, 0.5}, {0.75, 0.5}, {0.25, 1.5}, {0.75, 1.5}} {
				if inked(x+at[0], y+at[1]) {
					n |= 1 << i
				}
			}
			b = utf8.AppendRune(b, quarters[n])
		}
		rows[row] = string(b)
	}
	return rows
}

// quarters are the characters of a cell's quarters: 1 the upper left, 2 the upper right, 4
// the lower left, 8 the lower right.
var quarters = [...]rune{' ', '▘', '▝', '▀', '▖', '▌', '▞', '▛', '▗', '▚', '▐', '▜', '▄', '▙', '▟', '█'}
