package draw

import (
	"math"
	"unicode/utf8"
)

// Climate is a chart of days: temperature across, relative humidity up, in the display
// units of the scales. Each region has a shade, a letter and a word.
//
//	draw.Climate{Temperature: t, Humidity: rh, At: region, Dew: dew, Today: draw.Day{75, 45, "today"}, Go: "Go", Watch: "watch", Wait: "Wait", Stop: "Stop"}
type Climate struct {
	Temperature, Humidity Scale
	At                    func(temperature, humidity float64) Region // asked once a cell
	Dew                   func(temperature float64) float64          // the humidity of the line at a temperature; NaN where it has none
	DewText               string                                     // names that line; without it none is drawn
	Today, Ghost          DayPoint                                   // ghost: the day before a change
	Go, Watch, Wait, Stop string                                     // words; their first letters stand in the regions
}

const (
	leastClimateWidth  = 30
	leastClimateHeight = 8
	leastChart         = 4 // rows of the chart that the texts leave
	// Letters stand in the regions so many columns and rows apart.
	letterColumns = 9
	letterRows    = 3
	ghostDay      = 'o'
)

// Rows draws the chart. It needs 30 columns and 8 rows. A day off the chart stands at its
// edge with <, >, ^ or v.
func (c Climate) Rows(w, h int, g Glyphs, ink Ink) []string {
	if w < leastClimateWidth || h < leastClimateHeight || !c.Temperature.ok() || !c.Humidity.ok() {
		return nil
	}
	cv := newCanvas(w, h, g)
	p := chart{Climate: c, canvas: cv}
	for _, t := range c.Humidity.Ticks {
		p.left = min(max(p.left, length(t.Text)), cv.w/4)
	}
	p.left += 2
	p.w, p.h = cv.w-p.left, cv.h-2
	keys := c.keys(g)
	if n := legendRows(keys, cv.w); p.h-n >= leastChart {
		p.h -= n
		cv.legend(keys, cv.h-n, cv.w)
	}
	p.regions()
	p.dew()
	p.axes()
	p.day(c.Ghost, ghostDay, RoleGhost)
	p.day(c.Today, g.Full, RoleMark)
	return cv.rows(ink)
}

// chart is where a climate stands on its canvas.
type chart struct {
	Climate
	*canvas
	left, w, h int
}

// shade is how a region looks.
func (c Climate) shade(r Region, g Glyphs) (char rune, word string, role Role) {
	switch r {
	case Go:
		return g.Dot, c.Go, RoleGo
	case Watch:
		return g.Rule, c.Watch, RoleWatch
	case Wait:
		return g.Light, c.Wait, RoleWait
	case Stop:
		return g.Mid, c.Stop, RoleStop
	}
	return ' ', "", RoleText
}

// keys are the signs of the chart and their texts.
func (c Climate) keys(g Glyphs) (keys []key) {
	for _, d := range []struct {
		DayPoint
		sign rune
		role Role
	}{{c.Today, g.Full, RoleMark}, {c.Ghost, ghostDay, RoleGhost}} {
		if d.shown() {
			keys = append(keys, key{c.sign(d.DayPoint, d.sign), d.Text, d.role})
		}
	}
	if c.At != nil {
		for _, r := range []Region{Go, Watch, Wait, Stop} {
			char, word, role := c.shade(r, g)
			keys = append(keys, key{char, word, role})
		}
	}
	if c.Dew != nil {
		sign := g.Lower
		if sign == 0 {
			sign = dewSign
		}
		keys = append(keys, key{sign, c.DewText, RoleLimit})
	}
	return keys
}

// regions shades the chart and sets the letters.
func (p chart) regions() {
	if p.At == nil {
		return
	}
	for y := range p.h {
		humidity := p.Humidity.value(p.h-1-y, p.h)
		for x := range p.w {
			char, word, role := p.shade(p.At(p.Temperature.value(x, p.w), humidity), p.g)
			if y%letterRows == letterRows/2 && x%letterColumns == letterColumns/2 {
				if letter, _ := utf8.DecodeRuneInString(clean(word)); letter != utf8.RuneError {
					char = letter
				}
			}
			p.put(p.left+x, y, char, role)
		}
	}
}

// dew puts the line, joined where it is steep; in half rows where the set has them.
func (p chart) dew() {
	if p.Dew == nil || p.DewText == "" {
		return
	}
	last := -1
	for x := range p.w {
		v := p.Dew(p.Temperature.value(x, p.w))
		row, off := p.Humidity.column(v, 2*p.h)
		if math.IsNaN(v) || off != 0 {
			last = -1
			continue
		}
		y := 2*p.h - 1 - row
		from, to := y, y
		switch {
		case last > y:
			to = last - 1
		case last >= 0 && last < y:
			from = last + 1
		}
		for i := from; i <= to; i++ {
			if p.g.Upper == 0 {
				p.put(p.left+x, i/2, dewSign, RoleLimit)
			} else {
				p.dot(p.left+x, i, RoleLimit)
			}
		}
		last = y
	}
}

// axes puts both with their numbers.
func (p chart) axes() {
	for y := range p.h {
		p.put(p.left-1, y, p.g.Upright, RoleAxis)
	}
	for _, t := range p.Humidity.Ticks {
		row, off := p.Humidity.column(t.At, p.h)
		if off != 0 || math.IsNaN(t.At) {
			continue
		}
		text := figure(t.Text, p.left-2)
		if y := p.h - 1 - row; p.blank(0, y, p.left-1) {
			p.put(p.left-1, y, p.g.TeeLeft, RoleAxis)
			p.text(p.left-2-length(text), y, text, RoleAxis)
		}
	}
	p.Temperature.axis(p.canvas, p.left, p.w, p.h)
	p.put(p.left-1, p.h, p.g.UpRight, RoleAxis)
}

// day puts a day with its text beside it.
func (p chart) day(d DayPoint, sign rune, role Role) {
	if !d.shown() {
		return
	}
	x, _ := p.Temperature.column(d.Temperature, p.w)
	row, _ := p.Humidity.column(d.Humidity, p.h)
	x, y := x+p.left, p.h-1-row
	text := " " + cutTo(d.Text, p.w/2) + " "
	if n := length(text); x+1+n <= p.left+p.w {
		p.text(x+1, y, text, role)
		p.clear(x-1, y)
	} else {
		p.text(x-n, y, text, role)
		p.clear(x+1, y)
	}
	p.put(x, y, p.sign(d, sign), role)
}

// clear blanks a cell of the chart.
func (p chart) clear(x, y int) {
	if x >= p.left {
		p.put(x, y, ' ', RoleText)
	}
}

// sign is a day's own sign, or the arrow to it where it lies off the chart.
func (c Climate) sign(d DayPoint, own rune) rune {
	if _, off := c.Temperature.at(d.Temperature); off != 0 {
		return off.arrow()
	}
	switch _, off := c.Humidity.at(d.Humidity); {
	case off < 0:
		return 'v'
	case off > 0:
		return '^'
	}
	return own
}
