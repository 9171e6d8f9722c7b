package draw

import "math"

// Opening is a share of a bore that is open, 0 to 1, with the rows of text under it.
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
	Open, Closed string // what the two fillings mean; none is shown where empty
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
		if _, off := shares.at(o.Share); off != 0 {
			c.put(x+col/2, high/2, off.arrow(), RoleMark)
		}
	}
	c.close(high+texts, c.h-legend)
	return c.rows(ink)
}

// shares is the scale of a share.
var shares = Scale{High: 1}

// shown reports whether an opening is drawn.
func (o Opening) shown() bool { return len(o.Texts) > 0 && !math.IsNaN(o.Share) }

// disc puts a disc of h rows and as wide as it is high, filled from below.
func (o Opening) disc(c *canvas, left, h int) {
	tall := 1 // cells of ink in a row
	if c.g.Upper != 0 {
		tall = 2
	}
	all := 0
	for y := range h * tall {
		all += 2 * chord(y, h, tall)
	}
	share, _ := shares.at(o.Share)
	closed := all - round(share*float64(all))
	for y := range h * tall {
		half := chord(y, h, tall)
		shut := min(closed, 2*half)
		closed -= shut
		from, to := left+h-half, left+h+half
		// What is open of the row that is cut stands at its left.
		c.run(to-shut, y/tall, shut, c.g.Light, RoleLost)
		for x := from; x < to-shut; x++ {
			c.dot(x, y*2/tall, RoleKept)
		}
	}
}

// chord is half the columns of the y-th row of ink of a disc of h rows, each of which is
// so many rows of ink tall.
func chord(y, h, tall int) int {
	dy := (float64(y)+0.5)*2/float64(tall) - float64(h)
	return round(math.Sqrt(float64(h*h) - dy*dy))
}
