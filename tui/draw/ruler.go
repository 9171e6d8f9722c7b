package draw

import "math"

// Ruler is the distance from the gun's cap, at 0, to the panel, at the target. Its scale
// should begin at 0.
//
//	draw.Ruler{Scale: draw.NewScale(0, 8, 9, inches), Target: draw.Mark{At: 5.5, Text: "5.5 in"},
//		Keep: draw.Span{Low: 5, High: 6, Text: "keep 5 to 6"}, Gun: "cap", Panel: "panel"}
type Ruler struct {
	Scale
	Target     Mark
	Ghost      Mark // the target before
	Keep       Span // the range to keep within
	Likely     Span // the range the target likely lies within
	Gun, Panel string
}

const (
	leastRulerWidth  = 24
	leastRulerHeight = 4
	mostFan          = 9 // rows of the fan of paint
)

// Rows draws the ruler. It needs 24 columns and 4 rows. From above: the names, the fan of
// paint from the cap to the panel, the range to keep, the likely range, the ruler, its
// numbers, and what the signs mean. Where there are not rows enough, what the signs mean
// goes first, then the fan, then the names, then the likely range.
func (r Ruler) Rows(w, h int, g Glyphs, ink Ink) []string {
	if w < leastRulerWidth || h < leastRulerHeight || !r.ok() || !r.Target.shown() {
		return nil
	}
	c := newCanvas(w, h, g)
	keys := []key{{r.sign(r.Target.At, g.Full), r.Target.Text, RoleMark}}
	if r.Ghost.shown() {
		keys = append(keys, key{r.sign(r.Ghost.At, g.Upright), r.Ghost.Text, RoleGhost})
	}
	free := c.h - 3 // the target with the range to keep, the ruler and its numbers
	take := func(n int) int {
		if n > free {
			return 0
		}
		free -= n
		return n
	}
	likely, names := 0, 0
	if r.Likely.shown() {
		likely = take(1)
		keys = append(keys, key{g.Light, r.Likely.Text, RoleBand})
	}
	if r.Keep.shown() {
		keys = append(keys, key{g.Mid, r.Keep.Text, RoleKeep})
	}
	if r.Gun != "" || r.Panel != "" {
		names = take(1)
	}
	fan := take(1)
	legend := take(legendRows(keys, c.w))
	fan += min(free, mostFan-1) / 2 * 2 * fan
	y := 0
	if names > 0 {
		r.names(c)
		y++
	}
	if fan > 0 {
		r.fan(c, y, fan)
	}
	below := y + fan
	if r.Keep.shown() {
		r.band(c, below, r.Keep, g.Mid, RoleKeep)
	}
	if likely > 0 {
		r.band(c, below+1, r.Likely, g.Light, RoleBand)
	}
	below += 1 + likely
	r.axis(c, 0, c.w, below)
	r.upright(c, r.Ghost, y, below, g.Upright, RoleGhost)
	r.upright(c, r.Target, y, below, g.Full, RoleMark)
	if legend > 0 {
		c.legend(keys, below+2, c.w)
	}
	c.h = below + 2 + legend
	return c.rows(ink)
}

// band shades a range in a row; an arrow stands where it goes on beyond the scale.
func (r Ruler) band(c *canvas, y int, b Span, char rune, role Role) {
	low, high := b.ends()
	from, under := r.column(low, c.w)
	to, over := r.column(high, c.w)
	c.run(from, y, to-from+1, char, role)
	if under != 0 {
		c.put(from, y, under.arrow(), role)
	}
	if over != 0 {
		c.put(to, y, over.arrow(), role)
	}
}

// upright puts a mark from one row to before another, as an arrow where it lies off the
// scale.
func (r Ruler) upright(c *canvas, m Mark, from, to int, char rune, role Role) {
	if !m.shown() {
		return
	}
	x, _ := r.column(m.At, c.w)
	for y := from; y < to; y++ {
		c.put(x, y, r.sign(m.At, char), role)
	}
}

// names puts the gun's name at 0 and the panel's at the target.
func (r Ruler) names(c *canvas) {
	gun, _ := r.column(0, c.w)
	panel, _ := r.column(r.Target.At, c.w)
	c.middle(panel, 0, 0, c.w-1, r.Panel, RoleMark)
	if c.blank(gun, 0, length(r.Gun)+1) {
		c.text(gun, 0, r.Gun, RoleText)
	}
}

// fan puts the gun and the paint's way from it to the panel, seen from the side.
func (r Ruler) fan(c *canvas, y, rows int) {
	gun, _ := r.column(0, c.w)
	panel, _ := r.column(r.Target.At, c.w)
	middle := float64(rows-1) / 2
	for x := gun; x < panel; x++ {
		open := middle * float64(x-gun) / float64(panel-gun)
		for i := range rows {
			if math.Abs(float64(i)-middle) <= open+0.25 {
				c.put(x, y+i, c.g.Dot, RoleAxis)
			}
		}
	}
	c.put(gun, y+rows/2, r.sign(0, c.g.Full), RoleText)
	c.put(gun+1, y+rows/2, '>', RoleText)
}
