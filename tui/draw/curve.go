package draw

import "math"

// Point is a place on a chart, in the display units of its scales.
type Point struct{ X, Y float64 }

// CurveLine is a line through points, in their order, with its name.
type CurveLine struct {
	Points []Point
	Text   string
	Role   Role
}

// Spot is a point with its name.
type Spot struct {
	Point
	Text string
	Role Role
}

// Curve is how one thing goes with another: one line or several, the band that is wanted,
// and points with their names.
//
//	draw.Curve{X: temps, Y: seconds, XTitle: "F", YTitle: "seconds", Lines: []draw.CurveLine{{Points: points, Text: "as it is"}},
//		WantedY: draw.Span{Low: 18, High: 20, Text: "wanted"}, Spots: []draw.Spot{{Point: draw.Point{X: 68, Y: 24}, Text: "today", Role: draw.RoleMark}}}
type Curve struct {
	X, Y             Scale
	XTitle, YTitle   string
	Lines            []CurveLine // told apart by thick, thin and broken as well as by role
	WantedX, WantedY Span        // a band down, a band across
	Spots            []Spot      // the first ones keep their names where there is no room for all
}

const (
	leastCurveWidth  = 30
	leastCurveHeight = 8
	// titledCurve is the rows from where the title across has a row of its own.
	titledCurve = 12
	leastGraph  = 4 // rows the graph keeps when the names of its lines are put under it
	spotSign    = 'o'
)

// Rows draws the curve. It needs 30 columns and 8 rows, and something to show. What lies off
// the scales is not drawn, but for a spot, which stands at the edge with <, >, ^ or v.
func (k Curve) Rows(w, h int, g Glyphs, ink Ink) []string {
	if w < leastCurveWidth || h < leastCurveHeight || !k.X.ok() || !k.Y.ok() || len(k.Lines)+len(k.Spots) == 0 {
		return nil
	}
	c := newCanvas(w, h, g)
	left := tickWidth(k.Y, c.w/5) + 2
	high := c.h - 3 // the axis, its numbers, the title up
	titled := length(k.XTitle) >= left && c.h >= titledCurve
	if titled {
		high--
	}
	keys := k.keys(g)
	legend := legendRows(keys, c.w)
	if high-legend < leastGraph {
		legend = 0
	}
	high -= legend
	p := newPlot(c, left, 1, c.w-left, high, k.X, k.Y)
	c.text(0, 0, cutTo(k.YTitle, c.w), RoleAxis)
	p.upAxis()
	p.acrossAxis()
	foot := p.top + high + 1
	switch n := length(k.XTitle); {
	case titled:
		foot++
		c.middle(left+p.w/2, foot, left, c.w-1, k.XTitle, RoleAxis)
	case n < left:
		c.text(left-1-n, foot, k.XTitle, RoleAxis)
	case length(k.YTitle)+n+2 <= c.w:
		c.text(c.w-n, 0, k.XTitle, RoleAxis)
	}
	if legend > 0 {
		c.legend(keys, foot+1, c.w)
	}
	k.lines(p)
	at := k.spots(p)
	k.wanted(p)
	k.names(p, at)
	p.show()
	return c.rows(ink)
}

// lines draws the lines.
func (k Curve) lines(p plot) {
	for i, l := range k.Lines {
		look := lineLook(i)
		way := 0.0
		for j := 1; j < len(l.Points); j++ {
			a, b := l.Points[j-1], l.Points[j]
			x0, y0, x1, y1, ok := p.dots.within(p.px(a.X), p.py(a.Y), p.px(b.X), p.py(b.Y))
			if !ok {
				continue
			}
			if look.broken == 0 {
				p.line(x0, y0, x1, y1, p.thick(look.thick), l.Role)
				continue
			}
			long := math.Hypot(x1-x0, y1-y0)
			for at := 0.0; at < long; at += 0.5 {
				if math.Mod(way+at, 2*look.broken) < look.broken {
					x, y := x0+(x1-x0)*at/long, y0+(y1-y0)*at/long
					p.line(x, y, x, y, p.thick(look.thick), l.Role)
				}
			}
			way += long
		}
	}
}

// lineStyle is how a line is drawn: so many dots thick, and in pieces of so many dots with
// as many between them.
type lineStyle struct {
	thick  int
	broken float64
}

// lineLook is that of the i-th line.
func lineLook(i int) lineStyle {
	return [...]lineStyle{{thick: 2}, {thick: 1}, {thick: 2, broken: 4}, {thick: 1, broken: 3}}[i%4]
}

// wanted draws the bands, where no line is, with their texts at an end.
func (k Curve) wanted(p plot) {
	band := func(b Span, across bool) {
		if !b.shown() {
			return
		}
		low, high := b.ends()
		x0, x1, y0, y1 := 0.0, float64(p.dots.w-1), 0.0, float64(p.dots.h-1)
		if across {
			y0, y1 = max(p.py(high), y0), min(p.py(low), y1)
		} else {
			x0, x1 = max(p.px(low), x0), min(p.px(high), x1)
		}
		for y := ceil(y0 - 0.5); y <= floor(y1+0.5); y++ {
			for x := ceil(x0 - 0.5); x <= floor(x1+0.5); x++ {
				edge := across && (y == round(y0) || y == round(y1)) || !across && (x == round(x0) || x == round(x1))
				if edge && (x+y)%2 == 0 || sparse.has(x, y) {
					p.dots.fill(x, y, RoleKeep)
				}
			}
		}
		if y0 > y1 || x0 > x1 {
			return
		}
		n := length(b.Text)
		if across {
			p.label(b.Text, RoleKeep, [2]int{p.w - n - 1, row((y0 + y1) / 2)}, [2]int{1, row((y0 + y1) / 2)})
		} else {
			p.label(b.Text, RoleKeep, [2]int{start((x0+x1)/2, n), p.h - 1}, [2]int{start((x0+x1)/2, n), 0})
		}
	}
	band(k.WantedY, true)
	band(k.WantedX, false)
}

// label puts a text at the one of some places, in cells of the plot, where it hides least of
// the lines, if it fits anywhere, and keeps the dots off its ends.
func (p plot) label(text string, role Role, places ...[2]int) {
	n := length(text)
	best, least := [2]int{}, math.MaxInt
	for _, at := range places {
		if at[0] < 0 || at[0]+n > p.w || at[1] < 0 || at[1] >= p.h || !p.blank(p.left+at[0], p.top+at[1], n) {
			continue
		}
		hidden := 0
		for x := at[0]; x < at[0]+n; x++ {
			if c, _ := p.dots.at(x*dotsAcross, at[1]*dotsDown); c != nil && c.bits != 0 && !c.quiet {
				hidden++
			}
		}
		if hidden < least {
			best, least = at, hidden
		}
	}
	if n == 0 || least == math.MaxInt {
		return
	}
	x, y := p.left+best[0], p.top+best[1]
	p.text(x, y, text, role)
	for _, beside := range [...]int{x - 1, x + n} {
		if p.canvas.at(beside, y) == ' ' {
			p.text(beside, y, " ", role)
		}
	}
}

// spots puts the signs of the spots and returns where they stand, in cells of the plot; left
// of it one that stands nowhere.
func (k Curve) spots(p plot) (at [][2]int) {
	at = make([][2]int, len(k.Spots))
	for i := len(k.Spots) - 1; i >= 0; i-- {
		s := k.Spots[i]
		x, offX := p.across.at(s.X)
		y, offY := p.up.at(s.Y)
		if math.IsNaN(x) || math.IsNaN(y) {
			at[i] = [2]int{-1, 0}
			continue
		}
		col, line := start(x*float64(p.dots.w-1), 1), row((1-y)*float64(p.dots.h-1))
		at[i] = [2]int{min(max(col, 0), p.w-1), min(max(line, 0), p.h-1)}
		sign := spotSign
		switch {
		case offX != 0:
			sign = offX.arrow()
		case offY < 0:
			sign = 'v'
		case offY > 0:
			sign = '^'
		case s.Role == RoleMark:
			sign = p.g.Full
		}
		p.put(p.left+at[i][0], p.top+at[i][1], sign, s.Role)
	}
	return at
}

// names puts the names of the spots that have room beside them.
func (k Curve) names(p plot, at [][2]int) {
	for i, s := range k.Spots {
		if at[i][0] < 0 {
			continue
		}
		text := cutTo(s.Text, p.w/2)
		n, x, y := length(text), at[i][0], at[i][1]
		p.label(text, s.Role, [2]int{x + 2, y}, [2]int{x - n - 1, y}, [2]int{x + 1, y - 1}, [2]int{x - n, y - 1}, [2]int{x + 1, y + 1}, [2]int{x - n, y + 1},
			[2]int{x - n/2, y - 2}, [2]int{x - n/2, y + 2})
	}
}

// keys are the signs of the lines and their names.
func (k Curve) keys(g Glyphs) (keys []key) {
	for i, l := range k.Lines {
		d := newDots(1, 1)
		look := lineLook(i)
		last := 1.0
		if look.broken > 0 {
			last = 0
		}
		if g.Braille == 0 {
			look.thick = 1
		}
		d.line(0, 1.5, last, 1.5, look.thick, l.Role)
		if l.Text != "" && len(l.Points) > 1 {
			keys = append(keys, key{d.cell[0].char(g), l.Text, l.Role})
		}
	}
	return keys
}
