package draw

import "math"

// Dial is a wall gauge: a round scale over three quarters of a circle, as gauges have it,
// from the lower left over the top to the lower right.
//
//	draw.Dial{Scale: draw.NewScale(0, 60, 7, psi), Set: draw.Mark{At: 29, Text: "set 29"}, Label: "WALL 29 psi"}
type Dial struct {
	Scale
	Set    Mark   // the needle
	Rest   Mark   // with no air moving: a ring on the rim
	Ghost  Mark   // where the needle stood before: dots
	Likely Span   // a shaded arc
	Limit  Mark   // from here to the scale's end is barred
	Label  string // under the dial
}

const (
	leastDialWidth  = 20
	leastDialHeight = 8
	// The rows a dial keeps when the texts of its marks are put under it.
	dialOverLegend = 9
	// sweep is the angle from the scale's Low to its High, and lowAngle that of Low, from
	// the right against the clock.
	sweep    = 1.5 * math.Pi
	lowAngle = 1.25 * math.Pi
	restSign = 'o'
	// largeRadius, in columns, is from where the needle and the arcs are wider.
	largeRadius = 14
)

// Rows draws the dial. It needs 20 columns and 8 rows. The texts of the marks stand beside
// it where there is room, else under it, else nowhere.
func (d Dial) Rows(w, h int, g Glyphs, ink Ink) []string {
	if w < leastDialWidth || h < leastDialHeight || !d.ok() {
		return nil
	}
	c := newCanvas(w, h, g)
	high := c.h
	if d.Label != "" {
		high--
	}
	keys, wide := d.keys(g), c.w
	f := d.face(wide, high)
	beside := 0
	for _, k := range keys {
		beside = max(beside, length(k.text)+2)
	}
	switch under := legendRows(keys, c.w); {
	case c.w-f.width()-keyGap >= beside:
		wide = f.width()
		for i, k := range keys {
			c.put(wide+keyGap, (high-len(keys))/2+i, k.sign, k.role)
			c.text(wide+keyGap+2, (high-len(keys))/2+i, k.text, RoleText)
		}
	case high-under >= dialOverLegend:
		high -= under
		c.legend(keys, c.h-under, c.w)
	}
	f = d.face(wide, high)
	f.canvas, f.w, f.h = c, wide, high
	d.draw(f)
	if d.Label != "" {
		c.middle(wide/2, high, 0, wide-1, d.Label, RoleText)
	}
	return c.rows(ink)
}

// face is where a dial stands: its middle and radius in half rows, which are as high as a
// column is wide.
type face struct {
	*canvas
	w, h    int // the room, of the canvas's upper left
	x, y, r float64
	labels  int // the columns of the longest number
}

// face is the largest that fits the room, with its numbers around it.
func (d Dial) face(w, h int) face {
	f := face{}
	for _, t := range d.Ticks {
		f.labels = min(max(f.labels, length(t.Text)), w/4)
	}
	const top = 2 // half rows for the number at the top
	below := math.Sin(sweep/2 - math.Pi/2)
	f.r = max(min(float64(w-1)/2-float64(f.labels+1), (float64(2*h-1)-top)/(1+below)), 1)
	f.x, f.y = float64(w-1)/2, top+f.r
	return f
}

// width is the columns the face and its numbers take.
func (f face) width() int { return 2*(int(f.r)+f.labels) + 4 }

// point is the place of a share of the scale at a distance from the middle.
func (f face) point(share, r float64) (x, y float64) {
	sin, cos := math.Sincos(lowAngle - share*sweep)
	return f.x + r*cos, f.y - r*sin
}

// set puts a character at a share of the scale and a distance from the middle.
func (f face) set(share, r float64, char rune, role Role) {
	x, y := f.point(share, r)
	f.put(round(x), int(y)/2, char, role)
}

// arc puts a piece of the rim that looks different from the rest.
func (f face) arc(share float64, char rune, role Role) {
	f.set(share, f.r, char, role)
	if f.r >= largeRadius {
		f.set(share, f.r-1, char, role)
		f.set(share, f.r-2, char, role)
	}
}

func (d Dial) draw(f face) {
	g := f.g
	low, high := d.Likely.ends()
	steps := 8 * int(f.r)
	for i := range steps + 1 {
		share := float64(i) / float64(steps)
		v := d.Low + share*(d.High-d.Low)
		switch {
		case d.Limit.shown() && v >= d.Limit.At:
			f.arc(share, g.Dark, RoleLimit)
		case d.Likely.shown() && low <= v && v <= high:
			f.arc(share, g.Mid, RoleBand)
		default:
			f.set(share, f.r, g.Dot, RoleAxis)
		}
	}
	d.ticks(f)
	if d.Limit.shown() {
		d.arrow(f, d.Limit.At, f.r, RoleLimit)
	}
	if d.Likely.shown() {
		d.arrow(f, low, f.r, RoleBand)
		d.arrow(f, high, f.r, RoleBand)
	}
	if d.Ghost.shown() {
		share, _ := d.at(d.Ghost.At)
		for r := 1.0; r < f.r-1; r++ {
			f.set(share, r, g.Dot, RoleGhost)
		}
		d.arrow(f, d.Ghost.At, f.r-1, RoleGhost)
	}
	if d.Set.shown() {
		share, _ := d.at(d.Set.At)
		for r := 0.0; r <= f.r-1.5; r += 0.25 {
			x, y := f.point(share, r)
			f.dot(round(x), round(y), RoleMark)
			if f.r >= largeRadius {
				f.dot(round(x)+1, round(y), RoleMark)
			}
		}
		d.arrow(f, d.Set.At, f.r-1, RoleMark)
	}
	if d.Rest.shown() {
		share, _ := d.at(d.Rest.At)
		f.set(share, f.r, restSign, RoleRest)
		d.arrow(f, d.Rest.At, f.r, RoleRest)
	}
}

// ticks puts the ticks on the rim and the numbers around it, each where it hides nothing.
func (d Dial) ticks(f face) {
	for _, t := range d.Ticks {
		share, off := d.at(t.At)
		if off != 0 || math.IsNaN(t.At) {
			continue
		}
		if x, y := f.point(share, f.r); f.at(round(x), int(y)/2) == f.g.Dot {
			f.put(round(x), int(y)/2, f.g.Cross, RoleAxis)
		}
		if t.Text != "" {
			x, y := f.point(share, f.r+1.5)
			f.number(x-f.x, round(x), min(int(y)/2, f.h-1), figure(t.Text, f.labels))
		}
	}
}

// number puts the number of a tick beside the rim, a few columns out where it must.
func (f face) number(side float64, x, y int, text string) {
	n, step := length(text), 1
	switch {
	case side < -f.r/4:
		x, step = x-n+1, -1
	case side < f.r/4:
		x -= n / 2
	}
	for range 4 {
		if x >= 0 && x+n <= f.w && f.blank(x-1, y, n+2) {
			f.text(x, y, text, RoleAxis)
			return
		}
		x += step
	}
}

// arrow marks an end of the scale where a value lies beyond it.
func (d Dial) arrow(f face, v, r float64, role Role) {
	if share, off := d.at(v); off != 0 {
		f.set(share, r, off.arrow(), role)
	}
}

// keys are the signs of the marks and their texts.
func (d Dial) keys(g Glyphs) []key {
	var keys []key
	for _, k := range []struct {
		Mark
		sign rune
		role Role
	}{
		{d.Set, g.Full, RoleMark},
		{d.Rest, restSign, RoleRest},
		{d.Ghost, g.Dot, RoleGhost},
		{Mark{min(d.Likely.Low, d.Likely.High), d.Likely.Text}, g.Mid, RoleBand},
		{d.Limit, g.Dark, RoleLimit},
	} {
		if k.shown() {
			keys = append(keys, key{d.sign(k.At, k.sign), k.Text, k.role})
		}
	}
	return keys
}
