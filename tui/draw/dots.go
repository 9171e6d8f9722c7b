package draw

import (
	"math"
	"math/bits"
)

// dots is a layer of dots over the cells of a canvas, two across and four down in each, so
// that a dot is about as high as wide. A dot's middle is at whole numbers, y grows downward.
// Each cell has one role, the highest in rank of what is drawn in it. A fill is quiet: it
// gives way to any line through its cell.
type dots struct {
	w, h  int // in dots
	cell  []dotCell
	plain [len(rank)]rune // what stands for a role where the set has no Braille; 0: the shape
}

type dotCell struct {
	bits  uint8 // as Braille counts them
	role  Role
	quiet bool
}

// The dots of a cell.
const (
	dotsAcross = 2
	dotsDown   = 4
)

// newDots is a blank layer over w x h cells.
func newDots(w, h int) *dots {
	w, h = min(max(w, 1), mostSide), min(max(h, 1), mostSide)
	return &dots{w: dotsAcross * w, h: dotsDown * h, cell: make([]dotCell, w*h)}
}

// bit is a dot's in its cell, by column and row.
var bit = [dotsAcross][dotsDown]uint8{{0x01, 0x02, 0x04, 0x40}, {0x08, 0x10, 0x20, 0x80}}

// at is a dot's cell and its bit in it; nil outside.
func (d *dots) at(x, y int) (*dotCell, uint8) {
	if x < 0 || x >= d.w || y < 0 || y >= d.h {
		return nil, 0
	}
	return &d.cell[y/dotsDown*(d.w/dotsAcross)+x/dotsAcross], bit[x%dotsAcross][y%dotsDown]
}

// set inks a dot of a line or an area.
func (d *dots) set(x, y int, role Role) {
	c, b := d.at(x, y)
	switch {
	case c == nil:
		return
	case c.quiet, c.bits == 0:
		*c = dotCell{role: role}
	case rank[role] > rank[c.role]:
		c.role = role
	}
	c.bits |= b
}

// fill inks a dot of a quiet ground.
func (d *dots) fill(x, y int, role Role) {
	c, b := d.at(x, y)
	if c == nil || c.bits != 0 && !c.quiet {
		return
	}
	if c.bits == 0 || rank[role] > rank[c.role] {
		c.role = role
	}
	c.bits |= b
	c.quiet = true
}

// ground inks a dot of a ground that a line may cross: it stays beside it in its cell.
func (d *dots) ground(x, y int, role Role) {
	if c, b := d.at(x, y); c != nil && c.bits != 0 && !c.quiet {
		c.bits |= b
		return
	}
	d.fill(x, y, role)
}

// tone is how dense a fill is.
type tone uint8

// The tones: no dot, one, two, four of a cell's eight.
const (
	blank tone = iota
	sparse
	middling
	dense
)

// has reports whether a tone inks a dot. The dots of each stand evenly apart, each row
// between those of the row above.
func (t tone) has(x, y int) bool {
	switch t {
	case sparse:
		return x%2 == 0 && y%4 == x/2%2*2
	case middling:
		return y%2 == 0 && x%2 == y/2%2
	case dense:
		return (x+y)%2 == 0
	}
	return false
}

// line draws a straight line so many dots thick, even along its way.
func (d *dots) line(x0, y0, x1, y1 float64, thick int, role Role) {
	x0, y0, x1, y1, ok := d.clip(x0, y0, x1, y1)
	if !ok {
		return
	}
	back := float64(thick-1) / 2
	if steep := math.Abs(y1-y0) > math.Abs(x1-x0); steep {
		if y0 > y1 {
			x0, y0, x1, y1 = x1, y1, x0, y0
		}
		for y := round(y0); y <= round(y1); y++ {
			from := round(along(y0, x0, y1, x1, float64(y)) - back)
			for x := from; x < from+thick; x++ {
				d.set(x, y, role)
			}
		}
		return
	}
	if x0 > x1 {
		x0, y0, x1, y1 = x1, y1, x0, y0
	}
	for x := round(x0); x <= round(x1); x++ {
		from := round(along(x0, y0, x1, y1, float64(x)) - back)
		for y := from; y < from+thick; y++ {
			d.set(x, y, role)
		}
	}
}

// along is the second number at a place of the first between two points.
func along(at0, v0, at1, v1, at float64) float64 {
	if at1 == at0 {
		return v0
	}
	return v0 + (v1-v0)*min(max((at-at0)/(at1-at0), 0), 1)
}

// clip is the piece of a line on the layer, and a little about it, so that a thick one is
// whole; not ok where there is none.
func (d *dots) clip(x0, y0, x1, y1 float64) (a, b, e, f float64, ok bool) {
	const thickest = 8
	return d.inside(x0, y0, x1, y1, thickest/2)
}

// within is the piece of a line on the layer.
func (d *dots) within(x0, y0, x1, y1 float64) (a, b, e, f float64, ok bool) {
	return d.inside(x0, y0, x1, y1, 0.5)
}

// inside is the piece of a line on the layer with so much about it.
func (d *dots) inside(x0, y0, x1, y1, edge float64) (a, b, e, f float64, ok bool) {
	from, to := 0.0, 1.0
	for _, side := range [][3]float64{{x0, x1, float64(d.w - 1)}, {y0, y1, float64(d.h - 1)}} {
		low, high := -edge-side[0], side[2]+edge-side[0]
		switch by := side[1] - side[0]; {
		case by > 0:
			from, to = max(from, low/by), min(to, high/by)
		case by < 0:
			from, to = max(from, high/by), min(to, low/by)
		case !(low <= 0 && high >= 0):
			return 0, 0, 0, 0, false
		}
	}
	if !(from <= to) || math.IsInf(x1-x0, 0) || math.IsInf(y1-y0, 0) {
		return 0, 0, 0, 0, false
	}
	return x0 + (x1-x0)*from, y0 + (y1-y0)*from, x0 + (x1-x0)*to, y0 + (y1-y0)*to, true
}

// fullTurn is once round, in radians. Angles go with the clock, from straight up.
const fullTurn = 2 * math.Pi

// polar is the point at an angle and a distance from another.
func polar(x, y, r, angle float64) (px, py float64) {
	sin, cos := math.Sincos(angle)
	return x + r*sin, y - r*cos
}

// ring draws a circle, even all round.
func (d *dots) ring(x, y, r, thick float64, role Role) {
	d.arc(x, y, r, thick, 0, fullTurn, role)
}

// disc draws a full circle.
func (d *dots) disc(x, y, r float64, role Role) { d.ring(x, y, r/2, r, role) }

// arc draws the piece of a circle between two angles: each dot whose middle lies less than
// half the thickness from it.
func (d *dots) arc(x, y, r, thick, from, to float64, role Role) {
	outer, inner := r+thick/2, max(r-thick/2, 0)
	for row := max(ceil(y-outer), 0); row <= min(floor(y+outer), d.h-1); row++ {
		dy := float64(row) - y
		out, in := math.Sqrt(outer*outer-dy*dy), math.Sqrt(max(inner*inner-dy*dy, 0))
		put := func(left, right float64) {
			for col := max(ceil(left), 0); col <= min(floor(right), d.w-1); col++ {
				if to-from >= fullTurn || turned(math.Atan2(float64(col)-x, -dy)-from) <= to-from {
					d.set(col, row, role)
				}
			}
		}
		if in == 0 {
			put(x-out, x+out)
			continue
		}
		put(x-out, x-in)
		put(x+in, x+out)
	}
}

// turned is an angle within one turn.
func turned(angle float64) float64 {
	angle = math.Mod(angle, fullTurn)
	if angle < 0 {
		angle += fullTurn
	}
	return angle
}

// polygon fills an outline without dents; its corners go round.
func (d *dots) polygon(role Role, corners ...[2]float64) {
	top, bottom := math.Inf(1), math.Inf(-1)
	for _, c := range corners {
		top, bottom = min(top, c[1]), max(bottom, c[1])
	}
	for row := max(ceil(top), 0); row <= min(floor(bottom), d.h-1); row++ {
		left, right := math.Inf(1), math.Inf(-1)
		for i, a := range corners {
			b := corners[(i+1)%len(corners)]
			if y := float64(row); min(a[1], b[1]) <= y && y <= max(a[1], b[1]) {
				for _, x := range [...]float64{along(a[1], a[0], b[1], b[0], y), along(b[1], b[0], a[1], a[0], y)} {
					left, right = min(left, x), max(right, x)
				}
			}
		}
		for col := max(ceil(left), 0); col <= min(floor(right), d.w-1); col++ {
			d.set(col, row, role)
		}
	}
}

// onto puts the layer on a canvas, its upper left at a cell. What stands there stays: text
// wins over dots.
func (d *dots) onto(c *canvas, x, y int) {
	across := d.w / dotsAcross
	for i, k := range d.cell {
		col, row := x+i%across, y+i/across
		if k.bits == 0 || c.at(col, row) != ' ' || c.cell[row*c.w+col].text {
			continue
		}
		char := d.plain[k.role]
		if char == 0 || k.quiet || c.g.Braille != 0 {
			char = k.char(c.g)
		}
		c.put(col, row, char, k.role)
	}
}

// hush takes away the dots of n cells.
func (d *dots) hush(x, y, n int) {
	across := d.w / dotsAcross
	for i := max(x, 0); i < min(x+n, across) && y >= 0 && y < d.h/dotsDown; i++ {
		d.cell[y*across+i] = dotCell{}
	}
}

// start is the first cell of a text of n columns with its middle at a dot.
func start(x float64, n int) int { return round((x + 0.5 - float64(n)) / dotsAcross) }

// row is the row of cells a dot is nearest the middle of.
func row(y float64) int { return round((y - 1.5) / dotsDown) }

// char is the character that shows a cell's dots, or one of its shape.
func (k dotCell) char(g Glyphs) rune {
	if g.Braille != 0 {
		return g.Braille | rune(k.bits)
	}
	n := bits.OnesCount8(k.bits)
	if k.quiet {
		switch {
		case n <= 1:
			return g.Dot
		case n <= 3:
			return g.Light
		}
		return g.Dark
	}
	if n >= 6 {
		return '#'
	}
	best, off := '#', n/2+1
	for _, s := range shapes {
		if apart := bits.OnesCount8(k.bits ^ s.bits); apart < off {
			best, off = s.char, apart
		}
	}
	return best
}

// shapes are characters that look like some dots.
var shapes = [...]struct {
	char rune
	bits uint8
}{
	{'-', 0x12}, {'-', 0x24}, {'-', 0x09}, {'_', 0xC0}, {'|', 0x47}, {'|', 0xB8}, {'/', 0x5C}, {'\\', 0xA3},
	{'=', 0x36}, {'=', 0x1B}, {'=', 0xE4}, {'.', 0x40}, {'.', 0x80}, {'.', 0x04}, {'.', 0x20}, {'\'', 0x01},
	{'\'', 0x08}, {'\'', 0x02}, {'\'', 0x10}, {':', 0x42}, {':', 0x90}, {'+', 0x57}, {'+', 0xBA},
	{'/', 0x58}, {'\\', 0x23}, {'/', 0x1C}, {'\\', 0xA2},
}

// ceil and floor are the next whole numbers, of what is not far off a screen.
func ceil(v float64) int  { return int(math.Ceil(min(max(v, -2*mostSide), 8*mostSide))) }
func floor(v float64) int { return int(math.Floor(min(max(v, -2*mostSide), 8*mostSide))) }
