package draw

import "math"

// Coat is a layer of a film: how thick, in the unit of the scale, with its text.
type Coat struct {
	Thick float64
	Text  string
}

// Stack is a film: its coats from the ground up, and what it must reach and not pass.
type Stack struct {
	Name      string
	Coats     []Coat
	Low, High Mark
}

// Layers are films beside each other, such as wet and dry, to scale.
//
//	draw.Layers{Scale: draw.NewScale(0, 8, 5, mils), Unit: "mil", Stacks: []draw.Stack{{Name: "wet", Coats: coats, Low: draw.Mark{At: 4, Text: "from 4"}}}}
type Layers struct {
	Scale  // up; it should begin at 0
	Unit   string
	Stacks []Stack
}

const (
	leastLayersHeight = 7
	// leastStack is the columns of a film with its texts, mostFilm those of the film alone.
	leastStack, mostFilm = 14, 20
	// limitStub is the columns between the film and its texts, where the limits show.
	limitStub = 3
)

// Rows draws the layers. It needs 7 rows, and 14 columns for each film beside the scale's. A
// film that does not end on the scale is cut with an arrow.
func (l Layers) Rows(w, h int, g Glyphs, ink Ink) []string {
	if h < leastLayersHeight || !l.ok() || len(l.Stacks) == 0 {
		return nil
	}
	c := newCanvas(w, h, g)
	left := max(tickWidth(l.Scale, c.w/4), 1) + 2
	each := (c.w - left) / len(l.Stacks)
	if each < leastStack || w < leastStack {
		return nil
	}
	p := newPlot(c, left, 1, c.w-left, c.h-3, Scale{High: 1}, l.Scale)
	p.plain[RoleLimit] = '-'
	c.text(0, 0, cutTo(l.Unit, c.w), RoleAxis)
	p.upAxis()
	c.run(left, p.top+p.h, p.w, g.Rule, RoleAxis)
	c.put(left-1, p.top+p.h, g.UpRight, RoleAxis)
	for i, s := range l.Stacks {
		l.stack(p, s, i*each, each)
	}
	p.show()
	return c.rows(ink)
}

// stack draws a film in some columns of the plot, its texts to its right and its name below.
func (l Layers) stack(p plot, s Stack, from, columns int) {
	film := min(columns/2-limitStub, mostFilm)
	x0, x1 := (from+1)*dotsAcross, (from+film)*dotsAcross
	text := from + film + limitStub
	room := columns - film - limitStub - 1
	p.middle(p.left+from+film/2, p.top+p.h+1, p.left+from, p.left+from+columns-2, s.Name, RoleText)
	for _, m := range [...]Mark{s.Low, s.High} {
		if _, off := l.at(m.At); m.shown() && off == 0 {
			p.beside(text, row(p.py(m.At)), room, m.Text, RoleLimit)
		}
	}
	sum := 0.0
	for i, k := range s.Coats {
		if !(k.Thick > 0) || math.IsInf(k.Thick, 0) {
			continue
		}
		foot := min(max(l.place(sum), 0), 1)
		sum += k.Thick
		share, off := l.at(sum)
		bottom, top := round((1-foot)*float64(p.dots.h-1)), round((1-share)*float64(p.dots.h-1))
		look := [...]tone{middling, dense}[i%2]
		for y := top; y <= bottom; y++ {
			for x := x0; x < x1; x++ {
				switch {
				case y == top || x == x0 || x == x1-1:
					p.dots.set(x, y, RoleKept)
				case look.has(x, y) && y > top+1:
					p.dots.ground(x, y, RoleKept)
				}
			}
		}
		if off != 0 {
			p.put(p.left+from+film/2, p.top, '^', RoleLimit)
		}
		p.beside(text, row(float64(top+bottom)/2), room, k.Text, RoleText)
	}
	for _, m := range [...]Mark{s.Low, s.High} {
		if _, off := l.at(m.At); m.shown() && off == 0 {
			p.limit(round(p.py(m.At)), from*dotsAcross, (text-1)*dotsAcross)
		}
	}
}

// limit draws a line between two columns of dots where there is nothing yet.
func (p plot) limit(y, x0, x1 int) {
	for x := x0; x < x1; x++ {
		if c, _ := p.dots.at(x, y); c != nil && (c.bits == 0 || c.role == RoleLimit) {
			p.dots.set(x, y, RoleLimit)
		}
	}
}

// beside puts a text into some columns of a row, or of the next one above or below it that
// is free.
func (p plot) beside(x, y, columns int, text string, role Role) {
	text = cutTo(text, columns)
	for _, at := range [...]int{y, y - 1, y + 1} {
		if at >= 0 && at < p.h && text != "" && p.blank(p.left+x, p.top+at, length(text)) {
			p.text(p.left+x, p.top+at, text, role)
			return
		}
	}
}
