package draw

import "math"

// Look is how a stage of a job is drawn.
type Look uint8

// The looks: full for work, thin for waiting, open for a window to keep to.
const (
	Solid Look = iota
	Thin
	Open
)

// Stage is a piece of time of a job.
type Stage struct {
	From, To float64 // To may lie beyond the scale: it goes on
	Text     string
	Look     Look
	Role     Role
}

// Lane is a row of stages that do not overlap.
type Lane struct {
	Name   string
	Stages []Stage
}

// Clock is the time of one job: its lanes under each other on one axis.
//
//	draw.Clock{Scale: draw.NewScale(0, 90, 10, whole), Unit: "min", Lanes: lanes, Now: draw.Mark{At: 22, Text: "now"}}
type Clock struct {
	Scale
	Unit  string // before the axis' numbers
	Lanes []Lane
	Now   Mark
}

const (
	leastClockWidth = 30
	// clockRows are those beside the lanes: what now is, the axis, its numbers.
	clockRows = 3
	// leastTime is the columns of the axis at least.
	leastTime = 16
)

// Rows draws the clock. It needs 30 columns, 3 rows and one for each lane. With two for each
// the stages' texts stand over them, else behind them; one that has no room is left out.
func (k Clock) Rows(w, h int, g Glyphs, ink Ink) []string {
	if w < leastClockWidth || !k.ok() || len(k.Lanes) == 0 || h < clockRows+len(k.Lanes) {
		return nil
	}
	c := newCanvas(w, h, g)
	left := length(k.Unit) + 1
	for _, l := range k.Lanes {
		left = max(left, length(l.Name)+1)
	}
	left = min(left, c.w-leastTime)
	each := min((c.h-clockRows)/len(k.Lanes), 3)
	p := newPlot(c, left, 1, c.w-left, each*len(k.Lanes), k.Scale, Scale{High: 1})
	p.plain[RoleMark] = '|'
	if at, off := k.at(k.Now.At); k.Now.shown() {
		x := at * float64(p.dots.w-1)
		text := k.Now.Text
		if off != 0 {
			text = string(off.arrow()) + " " + text
		}
		c.middle(left+start(x, 0), 0, left, c.w-1, text, RoleMark)
		p.line(x, 0, x, float64(p.dots.h-1), 1, RoleMark)
	}
	for i, l := range k.Lanes {
		bar := min(i*each+each/2, i*each+1)
		c.text(0, p.top+bar, cutTo(l.Name, left-1), RoleText)
		p.lane(l, bar, each > 1)
	}
	y := p.top + p.h
	c.run(left, y, p.w, g.Rule, RoleAxis)
	k.numbers(c, left, p.w, y)
	if n := length(k.Unit); n < left {
		c.text(left-1-n, y+1, k.Unit, RoleAxis)
	}
	p.show()
	c.h = y + 2
	return c.rows(ink)
}

// lane draws the stages of one, and their texts a row higher or behind them.
func (p plot) lane(l Lane, y int, over bool) {
	free := 0 // the first column that is, of the row of texts
	for i, s := range l.Stages {
		from, to := min(s.From, s.To), max(s.From, s.To)
		if math.IsNaN(from) || math.IsNaN(to) || to < p.across.Low || from > p.across.High {
			continue
		}
		a, _ := p.across.at(from)
		b, off := p.across.at(to)
		x0, x1 := round(a*float64(p.dots.w-1)), round(b*float64(p.dots.w-1))
		p.stage(s, x0, max(x1-1, x0), y*dotsDown)
		if off != 0 {
			p.put(p.left+p.w-1, p.top+y, off.arrow(), s.Role)
		}
		text, at, end := s.Text, x0/dotsAcross, p.w
		if !over {
			at = x1/dotsAcross + 2
			if i+1 < len(l.Stages) {
				if next, _ := p.across.at(l.Stages[i+1].From); next >= 0 {
					end = int(next * float64(p.w-1))
				}
			}
		}
		at = max(at, free)
		line := p.top + y
		if over {
			line--
			at = max(min(at, p.w-length(text)), free)
		}
		if n := length(text); n > 0 && at+n <= end && at <= x1/dotsAcross+2 {
			p.text(p.left+at, line, text, s.Role)
			free = at + n + 1
		}
	}
}

// stage draws one between two dots of a row of cells.
func (p plot) stage(s Stage, x0, x1, top int) {
	for x := x0; x <= x1; x++ {
		for y := range dotsDown {
			edge := x == x0 || x == x1 || y == 0 || y == dotsDown-1
			if s.Look == Solid || s.Look == Thin && y == 2 || s.Look == Open && edge {
				p.dots.set(x, top+y, s.Role)
			}
		}
	}
}
