package draw

import "math"

// Pattern is what a spray gun leaves on paper in one short pull, as dots: an oval that is
// taller than wide, and what may be wrong with it.
//
//	draw.Pattern{Wide: 0.5, High: 0.9, Wet: 0.7}            // even
//	draw.Pattern{Wide: 0.5, High: 0.9, Wet: 0.7, Ends: 0.8} // split: heavy ends
type Pattern struct {
	Wide, High float64 // of the room, 0 to 1
	Wet        float64 // how dense, 0 to 1
	Ends       float64 // -1 heavy in the middle, to 1 heavy at top and bottom
	Lean       float64 // -1 heavy at the bottom, to 1 heavy at the top
	Bend       float64 // -1 a crescent whose back is to the left, to 1 to the right
	Sputter    float64 // 0 to 1: how much is missing in spells
}

const (
	leastPatternWidth  = 7
	leastPatternHeight = 4
)

// Rows draws the pattern in all of the room. It needs 7 columns and 4 rows, and a width, a
// height and a density above 0.
func (p Pattern) Rows(w, h int, g Glyphs, ink Ink) []string {
	if w < leastPatternWidth || h < leastPatternHeight || !(p.Wide > 0 && p.High > 0 && p.Wet > 0) {
		return nil
	}
	c := newCanvas(w, h, g)
	d := newDots(c.w, c.h)
	p = p.kept()
	mx, my := float64(d.w-1)/2, float64(d.h-1)/2
	for y := range d.h {
		for x := range d.w {
			u, v := (float64(x)-mx)/(mx*p.Wide), (float64(y)-my)/(my*p.High)
			if p.density(u, v) > threshold(x, y) {
				d.fill(x, y, RoleKept)
			}
		}
	}
	d.onto(c, 0, 0)
	return c.rows(ink)
}

// kept is the pattern with each number within its bounds.
func (p Pattern) kept() Pattern {
	within := func(v, low, high float64) float64 {
		if math.IsNaN(v) {
			return 0
		}
		return min(max(v, low), high)
	}
	return Pattern{
		Wide: within(p.Wide, 0, 1), High: within(p.High, 0, 1), Wet: within(p.Wet, 0, 1), Ends: within(p.Ends, -1, 1),
		Lean: within(p.Lean, -1, 1), Bend: within(p.Bend, -1, 1), Sputter: within(p.Sputter, 0, 1),
	}
}

// density is how wet the paper is, 0 to 1, at a place: u across and v down, each from -1 to
// 1 within an oval that touches the edges.
func (p Pattern) density(u, v float64) float64 {
	if p.Bend != 0 {
		// The middle line bows out; the crescent is thinner than the oval it is cut from.
		u = (u - p.Bend*(0.5-v*v)) / (1 - 0.4*math.Abs(p.Bend))
	}
	r := u*u + v*v
	if !(r < 1) {
		return 0
	}
	wet := p.Wet * min(1, 2.5*(1-r)) // it fades at its edge
	if p.Ends > 0 {
		wet *= 1 - p.Ends*(1-min(v*v*2.2, 1))
	} else {
		wet *= 1 + p.Ends*min(r*1.6, 1)
	}
	wet *= 1 - math.Abs(p.Lean)/2 - p.Lean*v/2
	if math.Sin(v*17)+0.6*math.Sin(v*41+u*3) > 1.6-2*p.Sputter {
		return 0
	}
	return wet
}

// threshold is a number from 0 to 1 for each dot, no two near each other alike, so that
// what is denser shows more dots, evenly apart.
func threshold(x, y int) float64 {
	// The two are the powers of the inverse plastic number.
	_, part := math.Modf(float64(x)*0.7548776662466927 + float64(y)*0.5698402909980532)
	return 0.05 + 0.95*part
}
