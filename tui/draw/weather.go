package draw

import "math"

// Weather is a chart of days: temperature across, relative humidity up, in the display
// units of the scales. Each region has a tone, the worse the denser, and a border.
//
//	draw.Weather{Temperature: t, Humidity: rh, TemperatureUnit: "F", HumidityUnit: "%", At: region, Dew: dew, DewText: "dew point",
//		Today: draw.DayPoint{Temperature: 75, Humidity: 45, Text: "today"}, Go: "go", Watch: "watch", Wait: "wait", Stop: "stop"}
type Weather struct {
	Temperature, Humidity         Scale
	TemperatureUnit, HumidityUnit string
	At                            func(temperature, humidity float64) Region // asked column by column, a few times each row of cells
	Dew                           func(temperature float64) float64          // the humidity of the line at a temperature; NaN where it has none
	DewText                       string                                     // names that line; without it none is drawn
	Today, Ghost                  DayPoint                                   // ghost: the day before a change
	TemperatureError              float64                                    // how far off the instruments may be: a box round today
	HumidityError                 float64
	Go, Watch, Wait, Stop         string // words
}

const (
	leastWeatherWidth  = 30
	leastWeatherHeight = 8
	leastWeatherPlot   = 5 // rows the chart keeps when its legend is put under it
	leastBox           = 4 // dots to each side of today from which a box round it can be told
)

// Rows draws the chart. It needs 30 columns and 8 rows. A day off the chart stands at its
// edge with <, >, ^ or v.
func (d Weather) Rows(w, h int, g Glyphs, ink Ink) []string {
	if w < leastWeatherWidth || h < leastWeatherHeight || !d.Temperature.ok() || !d.Humidity.ok() {
		return nil
	}
	c := newCanvas(w, h, g)
	left := tickWidth(d.Humidity, c.w/5) + 2
	high := c.h - 3 // the axis, its numbers, and over all the unit of humidity
	keys := d.keys(g)
	legend := legendRows(keys, c.w)
	if high-legend < leastWeatherPlot {
		legend = 0
	}
	c.legend(keys[:len(keys)*min(legend, 1)], c.h-legend, c.w)
	p := newPlot(c, left, 1, c.w-left, high-legend, d.Temperature, d.Humidity)
	c.text(0, 0, cutTo(d.HumidityUnit, c.w/2), RoleAxis)
	p.upAxis()
	p.acrossAxis()
	if n := length(d.TemperatureUnit); n < left {
		c.text(left-1-n, p.top+p.h+1, d.TemperatureUnit, RoleAxis)
	}
	d.day(p, d.Today, g.Full, RoleMark)
	d.day(p, d.Ghost, dayGhost, RoleGhost)
	d.regions(p)
	p.plain[RoleLimit] = dewSign
	d.dew(p)
	d.box(p)
	p.show()
	return c.rows(ink)
}

// tones are how the regions look.
var tones = [...]tone{Nowhere: blank, Go: blank, Watch: sparse, Wait: middling, Stop: dense}

// regionRoles are what they stand for.
var regionRoles = [...]Role{Nowhere: RoleFill, Go: RoleGo, Watch: RoleWatch, Wait: RoleWait, Stop: RoleStop}

// known is a region there is.
func known(r Region) Region {
	if int(r) >= len(tones) {
		return Nowhere
	}
	return r
}

// regions fills the chart and draws the borders. A column's regions are asked for once a
// row of cells; where two that follow differ, what lies between is asked for dot by dot.
func (d Weather) regions(p plot) {
	if d.At == nil {
		return
	}
	before, column := make([]Region, p.dots.h), make([]Region, p.dots.h)
	for x := range p.dots.w {
		t := p.across.value(x, p.dots.w)
		ask := func(y int) Region { return known(d.At(t, p.up.value(p.dots.h-1-y, p.dots.h))) }
		column[0] = ask(0)
		for y := 0; y+1 < p.dots.h; {
			next := min(y+dotsDown, p.dots.h-1)
			column[next] = ask(next)
			for i := y + 1; i < next; i++ {
				if column[i] = column[y]; column[next] != column[y] {
					column[i] = ask(i)
				}
			}
			y = next
		}
		for y, r := range column {
			below, left := column[min(y+1, p.dots.h-1)], r
			if x > 0 {
				left = before[y]
			}
			if below != r || left != r {
				p.dots.set(x, y, regionRoles[max(r, below, left)])
			}
		}
		for y, r := range column {
			if near := 2; tones[r].has(x, y) && column[max(y-near, 0)] == r && column[min(y+near, p.dots.h-1)] == r {
				p.dots.ground(x, y, regionRoles[r])
			}
		}
		before, column = column, before
	}
}

// dew draws the line, two dots thick.
func (d Weather) dew(p plot) {
	if d.Dew == nil || d.DewText == "" {
		return
	}
	last := math.NaN()
	for x := range p.dots.w {
		y := p.py(d.Dew(p.across.value(x, p.dots.w)))
		if !math.IsNaN(last) && !math.IsNaN(y) && y >= 0 && y <= float64(p.dots.h-1) {
			p.line(float64(x-1), last, float64(x), y, p.thick(2), RoleLimit)
		}
		last = y
	}
}

// half is half the box of the instruments' errors in dots; none where they are not told, and
// where it is too small to be told from today's own sign.
func (d Weather) half(p plot) (across, up float64) {
	across = d.TemperatureError / (p.across.High - p.across.Low) * float64(p.dots.w-1)
	up = d.HumidityError / (p.up.High - p.up.Low) * float64(p.dots.h-1)
	if !(across >= leastBox && up >= leastBox && across < float64(p.dots.w) && up < float64(p.dots.h)) {
		return 0, 0
	}
	return across, up
}

// box draws round today how far off the instruments may be, clear inside.
func (d Weather) box(p plot) {
	x, offX := p.across.at(d.Today.Temperature)
	y, offY := p.up.at(d.Today.Humidity)
	across, up := d.half(p)
	if !d.Today.shown() || offX != 0 || offY != 0 || across == 0 {
		return
	}
	x, y = x*float64(p.dots.w-1), (1-y)*float64(p.dots.h-1)
	left, right, top, bottom := x-across, x+across, y-up, y+up
	for line := round(top) / dotsDown; line <= round(bottom)/dotsDown; line++ {
		p.hush(round(left)/dotsAcross, line, round(right)/dotsAcross-round(left)/dotsAcross+1)
	}
	p.line(left, top, right, top, 1, RoleMark)
	p.line(left, bottom, right, bottom, 1, RoleMark)
	p.line(left, top, left, bottom, 1, RoleMark)
	p.line(right, top, right, bottom, 1, RoleMark)
}

// day puts a day's sign, and its text beside it or its box.
func (d Weather) day(p plot, day DayPoint, sign rune, role Role) {
	if !day.shown() {
		return
	}
	x, offX := p.across.at(day.Temperature)
	y, offY := p.up.at(day.Humidity)
	col, line := start(x*float64(p.dots.w-1), 1), row((1-y)*float64(p.dots.h-1))
	col, line = min(max(col, 0), p.w-1), p.top+min(max(line, 0), p.h-1)
	beside := 1
	switch {
	case offX != 0:
		sign = offX.arrow()
	case offY < 0:
		sign = 'v'
	case offY > 0:
		sign = '^'
	case role == RoleMark:
		if across, _ := d.half(p); across > 0 {
			beside = int(across/dotsAcross) + 2
		}
	}
	text := " " + cutTo(day.Text, p.w/2) + " "
	at := p.left + col + beside
	if at+length(text) > p.left+p.w {
		at = p.left + col + 1 - beside - length(text)
	}
	if at >= p.left && p.blank(at, line, length(text)) {
		p.text(at, line, text, role)
	}
	if p.blank(p.left+col, line, 1) {
		p.put(p.left+col, line, sign, role)
	}
}

// keys are the signs of the chart and their texts.
func (d Weather) keys(g Glyphs) (keys []key) {
	for _, r := range []struct {
		region Region
		text   string
	}{{Go, d.Go}, {Watch, d.Watch}, {Wait, d.Wait}, {Stop, d.Stop}} {
		sign := dotCell{quiet: true}
		for x := range dotsAcross {
			for y := range dotsDown {
				if tones[r.region].has(x, y) {
					sign.bits |= bit[x][y]
				}
			}
		}
		char := sign.char(g)
		if sign.bits == 0 {
			char = ' '
		}
		if d.At != nil && r.text != "" {
			keys = append(keys, key{char, r.text, regionRoles[r.region]})
		}
	}
	if d.Dew != nil && d.DewText != "" {
		sign := dotCell{bits: 0x36}.char(g)
		if g.Braille == 0 {
			sign = dewSign
		}
		keys = append(keys, key{sign, d.DewText, RoleLimit})
	}
	return keys
}

// Signs of a day before a change, and of the line where the set has no dots for it.
const (
	dayGhost = 'o'
	dewSign  = '*'
)
