package draw

import "math"

// Answer is a value with the range it likely lies within, on a scale of its own.
type Answer struct {
	Name              string
	Scale             Scale
	Low, High, At     float64
	LowText, HighText string // the ends in figures
	Text              string // the value in figures
}

// Cause is a share, 0 to 1, of what makes an answer unsure.
type Cause struct {
	Name  string
	Share float64
}

// Ranges is how sure each answer is, and under it what causes that.
//
//	draw.Ranges{Answers: answers, Title: "what makes it unsure", Causes: causes, Text: percent}
type Ranges struct {
	Answers []Answer
	Title   string // over the causes
	Causes  []Cause
	Others  string               // names the row of the causes that have none of their own
	Text    func(float64) string // a share as a short figure
}

const (
	leastRangesWidth = 30
	// intervalRows is a row of an answer with its scale under it and a blank one.
	intervalRows = 4
	// leastInterval is the columns below which an interval goes under its name.
	leastInterval = 12
	shortInterval = 5 // columns it has beside its name in any case
	leastCauses   = 2 // rows of causes under their title
)

// Rows draws the ranges. It needs 30 columns and 1 row an answer. Where there is height
// each answer has its scale under it, and where there is little width its range. Causes beyond the rows are gathered, the smallest
// first.
func (r Ranges) Rows(w, h int, g Glyphs, ink Ink) []string {
	answers := r.complete()
	if w < leastRangesWidth || h < len(answers) || len(answers) == 0 {
		return nil
	}
	c := newCanvas(w, h, g)
	l := r.layout(c, answers)
	l.intervals(c, answers)
	y := len(answers) * l.each
	if l.each < intervalRows {
		y++ // a blank row before the causes
	}
	if c.h-y-1 >= min(leastCauses, len(r.Causes)) && len(r.Causes) > 0 {
		c.text(0, y, r.Title, RoleText)
		y = r.bars(c, y+1)
	} else {
		y = len(answers) * l.each
	}
	c.h = min(c.h, y)
	return c.rows(ink)
}

// layout is where the pieces of the answers stand: the rows of each, and the columns.
type layout struct {
	each, name, text, low int
	left, w               int // of the interval
}

func (r Ranges) layout(c *canvas, answers []Answer) layout {
	l, high := layout{each: 1}, 0
	for _, a := range answers {
		l.name, l.text = max(l.name, length(a.Name)), max(l.text, length(a.Text))
		l.low, high = max(l.low, length(a.LowText)), max(high, length(a.HighText))
	}
	fifth := c.w / 5
	l.name, l.text, l.low, high = min(l.name, c.w/2), min(l.text, fifth), min(l.low, fifth), min(high, fifth)
	beside := func() {
		l.left = l.name + l.text + l.low + 3
		l.w = c.w - l.left - high - 1
	}
	beside()
	causes := 0
	if len(r.Causes) > 0 {
		causes = len(r.Causes) + 1
	}
	switch {
	case l.w < leastInterval && c.h >= 2*len(answers):
		l.each, l.left = 2, l.low+1
		l.w = c.w - l.left - high - 1
	case l.w < leastInterval:
		l.name = max(l.name-max(shortInterval-l.w, 0), 0)
		beside()
	case len(answers)*intervalRows+causes <= c.h:
		l.each = intervalRows
	}
	return l
}

// complete are the answers that have a value and a scale.
func (r Ranges) complete() (answers []Answer) {
	for _, a := range r.Answers {
		if a.Scale.ok() && !math.IsNaN(a.At) && !math.IsNaN(a.Low) && !math.IsNaN(a.High) {
			answers = append(answers, a)
		}
	}
	return answers
}

// intervals puts each answer: its name, its value, and its range between the ends' figures.
func (l layout) intervals(c *canvas, answers []Answer) {
	for i, a := range answers {
		y := i * l.each
		c.text(0, y, nameTo(a.Name, l.name), RoleText)
		c.text(l.name+1, y, figure(a.Text, l.text), RoleMark)
		if l.each == 2 {
			y++
		}
		low := figure(a.LowText, l.low)
		c.text(l.left-1-length(low), y, low, RoleBand)
		c.text(l.left+l.w+1, y, figure(a.HighText, c.w-l.left-l.w-1), RoleBand)
		a.interval(c, l.left, l.w, y)
		if l.each == intervalRows {
			a.Scale.axis(c, l.left, l.w, y+1)
		}
	}
}

// interval puts the range with the value in it.
func (a Answer) interval(c *canvas, left, w, y int) {
	from, under := a.Scale.column(min(a.Low, a.High), w)
	to, over := a.Scale.column(max(a.Low, a.High), w)
	at, off := a.Scale.column(a.At, w)
	c.run(left, y, w, c.g.Dot, RoleAxis)
	c.run(left+from, y, to-from+1, c.g.Mid, RoleBand)
	if under != 0 {
		c.put(left+from, y, under.arrow(), RoleBand)
	}
	if over != 0 {
		c.put(left+to, y, over.arrow(), RoleBand)
	}
	sign := c.g.Full
	if off != 0 {
		sign = off.arrow()
	}
	c.put(left+at, y, sign, RoleMark)
}

// bars puts the causes from a row on and returns the row behind them.
func (r Ranges) bars(c *canvas, y int) int {
	causes := r.gather(c.h - y)
	name, wide := 0, 0
	text := r.Text
	if text == nil {
		text = func(float64) string { return "" }
	}
	for _, a := range causes {
		name, wide = max(name, length(a.Name)), max(wide, length(text(a.Share)))
	}
	name, wide = min(name, c.w/2), min(wide, c.w/5)
	bar := c.w - name - wide - 2
	for _, a := range causes {
		c.text(0, y, nameTo(a.Name, name), RoleText)
		share := figure(text(a.Share), wide)
		c.text(name+1+wide-length(share), y, share, RoleText)
		c.text(name+wide+2, y, Bar(a.Share, bar, c.g), RoleBand)
		switch _, off := shares.at(a.Share); {
		case off > 0:
			c.put(c.w-1, y, off.arrow(), RoleBand)
		case off < 0:
			c.put(name+wide+2, y, off.arrow(), RoleBand)
		}
		y++
	}
	return y
}

// gather keeps n of the causes in their order, the smallest gathered in one behind them.
func (r Ranges) gather(n int) []Cause {
	if len(r.Causes) <= n {
		return r.Causes
	}
	kept := append([]Cause(nil), r.Causes...)
	rest := Cause{Name: r.Others}
	for len(kept) >= n && len(kept) > 0 {
		least := 0
		for i, a := range kept {
			if !(a.Share >= kept[least].Share) {
				least = i
			}
		}
		rest.Share += kept[least].Share
		kept = append(kept[:least], kept[least+1:]...)
	}
	return append(kept, rest)
}
