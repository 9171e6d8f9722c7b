package draw

import "math"

// plot is the inside of a chart on a canvas: so many cells from an upper left one, with a
// layer of dots over them and a scale across and up.
type plot struct {
	*canvas
	*dots
	left, top, w, h int // in cells
	across, up      Scale
}

// newPlot is one in some cells of a canvas.
func newPlot(c *canvas, left, top, w, h int, across, up Scale) plot {
	return plot{canvas: c, dots: newDots(w, h), left: left, top: top, w: w, h: h, across: across, up: up}
}

// tickWidth is how many columns the numbers of a scale take, at most so many.
func tickWidth(s Scale, most int) (w int) {
	for _, t := range s.Ticks {
		if n := length(t.Text); n <= most {
			w = max(w, n)
		}
	}
	return w
}

// px and py are the dot of a value; beyond the scale where it lies off it.
func (p plot) px(v float64) float64 { return p.across.place(v) * float64(p.dots.w-1) }
func (p plot) py(v float64) float64 { return (1 - p.up.place(v)) * float64(p.dots.h-1) }

// place is where a value lies, 0 at Low and 1 at High, and beyond these where it lies off
// the scale.
func (s Scale) place(v float64) float64 { return (v - s.Low) / (s.High - s.Low) }

// apartRows is how far apart the numbers up stand at least: nearer, a row more or less
// between them would look uneven.
const apartRows = 2

// upAxis puts the scale up at the left of the plot: its line, and its ticks with their
// numbers, which end a column before it: every one, every second, and so on, as many as
// have a row.
func (p plot) upAxis() {
	for y := range p.h {
		p.put(p.left-1, p.top+y, p.g.Upright, RoleAxis)
	}
	n := len(p.up.Ticks)
	least := 1
	for least < n && (p.h-1)*least < apartRows*(n-1) {
		least++
	}
	for i := 0; i < n; i += evenStep(n, least) {
		t := p.up.Ticks[i]
		if math.IsNaN(t.At) || t.At < p.up.Low || t.At > p.up.High {
			continue
		}
		y := min(max(row(p.py(t.At)), 0), p.h-1)
		text := figure(t.Text, p.left-2)
		if p.canvas.at(p.left-1, p.top+y) == p.g.TeeLeft {
			continue // ticks that are not in steps may share a row
		}
		p.put(p.left-1, p.top+y, p.g.TeeLeft, RoleAxis)
		p.text(p.left-2-length(text), p.top+y, text, RoleAxis)
	}
}

// acrossAxis puts the scale across under the plot: its line, and under it the numbers of
// every tick, of every second, and so on: as many as stand apart.
func (p plot) acrossAxis() {
	y := p.top + p.h
	p.run(p.left, y, p.w, p.g.Rule, RoleAxis)
	p.put(p.left-1, y, p.g.UpRight, RoleAxis)
	p.across.numbers(p.canvas, p.left, p.w, y)
}

// numbers puts the ticks of a scale on the line of a row of w columns, and their numbers
// under it: of every tick, of every second, and so on, as many as stand apart.
func (s Scale) numbers(c *canvas, left, w, y int) {
	type number struct {
		at, x int
		text  string
	}
	var all []number
	for _, t := range s.Ticks {
		if math.IsNaN(t.At) || t.At < s.Low || t.At > s.High {
			continue
		}
		at := left + int(s.place(t.At)*float64(w-1)+0.5)
		text := figure(t.Text, w)
		n := length(text)
		all = append(all, number{at, max(min(at-n/2, left+w-n), left), text})
	}
	step, least := 1, 1
	apart := func() bool {
		for i := step; i < len(all); i += step {
			if before := all[i-step]; all[i].x < before.x+length(before.text)+1 {
				return false
			}
		}
		return true
	}
	for step < len(all) && !apart() {
		least++
		step = evenStep(len(all), least)
	}
	for i, k := range all {
		if i%step == 0 {
			c.put(k.at, y, c.g.Down, RoleAxis)
			c.text(k.x, y+1, k.text, RoleAxis)
		}
	}
}

// thick is how many dots a line takes that should take so many: one where characters stand
// for its shape, for they show a thin line best.
func (p plot) thick(n int) int {
	if p.g.Braille == 0 {
		return 1
	}
	return n
}

// evenStep is a step of ticks, no less than asked, that meets the last of n as well as the
// first where there is such a one not much larger.
func evenStep(n, least int) int {
	for step := least; step <= 2*least+1; step++ {
		if (n-1)%step == 0 {
			return step
		}
	}
	return least
}

// under fills the ground under a line of dots, from it down to the plot's foot.
func (p plot) under(x int, y float64, t tone, role Role) {
	for i := max(ceil(y)+2, 0); i < p.dots.h; i++ {
		if t.has(x, i) {
			p.dots.fill(x, i, role)
		}
	}
}

// show puts the dots on the canvas.
func (p plot) show() { p.onto(p.canvas, p.left, p.top) }
