package draw

import "math"

// Opening is a share of a bore that is open, 0 to 1, with the rows told under it.
type Opening struct {
	Share float64
	Texts []string
}

// Bore is a round bore, its open share as area, from the bottom up: as it stands, and
// beside it as it would stand otherwise. An Opening without texts is not drawn.
//
//	draw.Bore{Now: draw.Opening{Share: 0.81, Texts: []string{"81 % open", "set"}}, Else: ...}
type Bore struct {
	Now, Else    Opening
	Open, Closed string // what the two fillings mean; none is told where empty
}

const (
	leastBoreWidth  = 14
	leastBoreHeight = 6
	// leastBore is the rows of the smallest disc.
	leastBore = 3
	boreGap   = 4
)

// Rows draws the bores. It needs 14 columns and 6 rows.
//
// Where the set has halves, an open share is right to half a cell of ink, else to one. The
// second bore stands beside the first where there is room, else it is left out.
func (b Bore) Rows(w, h int, g Glyphs, ink Ink) []string {
	if w < leastBoreWidth || h < leastBoreHeight || !b.Now.shown() {
		return nil
	}
	c := newCanvas(w, h, g)
	both := []Opening{b.Now}
	if b.Else.shown() && c.w >= 2*leastBoreWidth+boreGap {
		both = append(both, b.Else)
	}
	col := (c.w - boreGap*(len(both)-1)) / len(both)
	texts := 0
	for _, o := range both {
		texts = max(texts, len(o.Texts))
	}
	texts = min(texts, c.h-leastBore)
	keys := []key{{g.Full, b.Open, RoleKept}, {g.Light, b.Closed, RoleLost}}
	high, legend := c.h-texts, legendRows(keys, c.w)
	if legend > 0 && high-legend >= 2*leastBore {
		high -= legend
		c.legend(keys, c.h-legend, c.w)
	}
	high = min(high, col/2)
	for i, o := range both {
		x := i * (col + boreGap)
		o.disc(c, x+(col-2*high)/2, high)
		for y := range texts {
			if y < len(o.Texts) {
				c.middle(x+col/2, high+y, x, x+col-1, o.Texts[y], RoleText)
			}
		}
		if _, off := unit.at(o.Share); off != 0 {
			c.put(x+col/2, high/2, off.arrow(), RoleMark)
		}
	}
	c.close(high+texts, c.h-legend)
	return c.rows(ink)
}

// unit is the scale of a share.
var unit = Scale{High: 1}

// shown reports whether an opening is drawn.
func (o Opening) shown() bool { return len(o.Texts) > 0 && !math.IsNaN(o.Share) }

// disc puts a disc of h rows and as wide as it is high, filled from below.
func (o Opening) disc(c *canvas, left, h int) {
	tall := 1 // cells of ink in a row
	if c.g.Upper != 0 {
		tall = 2
	}
	r := float64(h)
	type ink struct{ x, y int }
	var all []ink
	for y := h*tall - 1; y >= 0; y-- {
		for x := range 2 * h {
			dx, dy := float64(x)+0.5-r, (float64(y)+0.5)*2/float64(tall)-r
			if dx*dx+dy*dy <= r*r {
				all = append(all, ink{x, y})
			}
		}
	}
	share, _ := unit.at(o.Share)
	open := round(share * float64(len(all)))
	for _, p := range all[open:] {
		c.put(left+p.x, p.y/tall, c.g.Light, RoleLost)
	}
	for _, p := range all[:open] {
		c.dot(left+p.x, p.y*2/tall, RoleKept)
	}
}
