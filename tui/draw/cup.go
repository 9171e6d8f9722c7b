package draw

import "math"

// Pour is a part of a mix: how much of it, and its texts.
type Pour struct {
	Name   string
	Amount float64 // a volume, in the same unit for all
	Text   string  // the amount in figures
	Mark   string  // the level to pour to, in figures
}

// Cup is a mixing cup with straight walls: each part to scale on the one before, with the
// level to pour to at its left and its name and amount at its right.
//
//	draw.Cup{Pours: []draw.Pour{{Name: "clear", Amount: 16, Text: "16 oz", Mark: "16"}, {Name: "hardener", Amount: 4, Text: "4 oz", Mark: "20"}}, Holds: 32}
type Cup struct {
	Pours []Pour
	Holds float64 // what the cup holds to its brim; where it is less than the mix, the mix fills it
}

const (
	leastCupWidth  = 24
	leastCupHeight = 5
	// leader is the columns from the cup to the names, mostCup those of the cup at most.
	leader, mostCup = 4, 24
)

// Rows draws the cup. It needs 24 columns, 5 rows, and a row for each part.
func (u Cup) Rows(w, h int, g Glyphs, ink Ink) []string {
	pours, sum := u.finite()
	if w < leastCupWidth || h < max(leastCupHeight, len(pours)+1) || len(pours) == 0 {
		return nil
	}
	c := newCanvas(w, h, g)
	marks, names := 0, 0
	for _, k := range pours {
		marks, names = max(marks, length(k.Mark)), max(names, length(k.Name)+1+length(k.Text))
	}
	marks = min(marks, c.w/5)
	left := marks + 1
	wide := min(max(c.w-left-leader-names, 6), mostCup, 2*c.h)
	names = c.w - left - wide - leader
	d := newDots(wide+leader, c.h)
	top, foot := 2.0, float64(d.h-2)
	holds := max(u.Holds, sum)
	if math.IsInf(holds, 0) {
		holds = sum
	}
	level := func(v float64) float64 { return foot - v/holds*(foot-top) }
	x1 := float64(dotsAcross*wide - 1)
	// The walls, a lip at the brim, the bottom.
	for _, x := range [...]float64{0, x1} {
		d.line(x, 0, x, float64(d.h-1), 1, RoleAxis)
	}
	d.line(-1, 0, 1, 0, 1, RoleAxis)
	d.line(x1-1, 0, x1+1, 0, 1, RoleAxis)
	d.line(0, float64(d.h-1), x1, float64(d.h-1), 1, RoleAxis)
	rows := u.rows(pours, level, c.h)
	before := 0.0
	for i, k := range pours {
		lower, upper := level(before), level(before+k.Amount)
		before += k.Amount
		d.line(2, upper, x1-2, upper, 1, RoleKeep)
		d.line(-1, upper, 1, upper, 1, RoleKeep)
		middle := (lower + upper) / 2
		end := float64(dotsAcross*(wide+leader) - 3)
		y := float64(rows[i]*dotsDown) + 1.5
		d.line(x1+2, middle, x1+4, middle, 1, RoleAxis)
		d.line(x1+4, middle, end-1, y, 1, RoleAxis)
		d.line(end-1, y, end, y, 1, RoleAxis)
		c.text(left+wide+leader, rows[i], cutTo(k.Name, names), RoleText)
		if n := length(k.Name) + 1; n < names {
			c.text(left+wide+leader+n, rows[i], figure(k.Text, names-n), RoleMark)
		}
		mark := figure(k.Mark, marks)
		if at := row(upper); c.blank(0, at, marks) {
			c.text(marks-length(mark), at, mark, RoleKeep)
		}
	}
	before = 0
	for i, k := range pours {
		pourLook(i).fill(d, 2, int(x1)-2, round(level(before+k.Amount)), round(level(before)))
		before += k.Amount
	}
	d.onto(c, left, 0)
	return c.rows(ink)
}

// finite are the parts that can be poured, and what they come to.
func (u Cup) finite() (pours []Pour, sum float64) {
	for _, k := range u.Pours {
		if k.Amount > 0 && !math.IsInf(sum+k.Amount, 0) {
			pours = append(pours, k)
			sum += k.Amount
		}
	}
	return pours, sum
}

// rows are those the names stand in: each as near the middle of its part as the others let
// it, the first poured lowest.
func (u Cup) rows(pours []Pour, level func(float64) float64, h int) []int {
	rows := make([]int, len(pours))
	before, last := 0.0, h
	for i, k := range pours {
		rows[i] = max(min(row(level(before+k.Amount/2)), last-1), len(pours)-1-i)
		last = rows[i]
		before += k.Amount
	}
	return rows
}

// pourLook is the tone of the i-th part: no two that touch are alike.
func pourLook(i int) tone { return [...]tone{middling, sparse, dense}[i%3] }

// fill fills a box of dots with a tone.
func (t tone) fill(d *dots, x0, x1, y0, y1 int) {
	for y := y0 + 2; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			if t.has(x, y) {
				d.ground(x, y, RoleKept)
			}
		}
	}
}
