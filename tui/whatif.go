package tui

import (
	"math"
	"strings"

	"boothset/calc/unit"
	"boothset/presets/edit"
	"boothset/presets/question"
	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
)

// response is how the wall answers to the input that is moved: what it would be with the input
// at other places.
type response struct {
	of     responseOf
	values []string  // what the input is, in order
	walls  []float64 // what the wall is then, in the units shown; NaN where nothing can be set
	at     int       // where the input stands now
}

// responseOf is all that a response depends on.
type responseOf struct {
	tried int // by its id
	input edit.Input
	sys   unit.System
}

// How far a response goes to either side: so many choices of a list, so many times ten steps of
// a quantity.
const (
	responseEach = 4
	responseFar  = 10
)

// respond works out the response to the input that is moved, once for each trial.
func (b *bench) respond() *response {
	in := b.inputs()[b.input]
	of := responseOf{b.tried.id, in, b.s.sys}
	if b.response.of == of {
		return &b.response
	}
	r := response{of: of}
	for k := -responseEach; k <= responseEach; k++ {
		a, ok := b.tried.answers, true
		if k != 0 {
			a, _, ok = b.stepped(in, k*b.far(in))
		}
		if !ok {
			continue
		}
		value := b.s.inputValue(b.s.counting(a), in)
		if n := len(r.values); n > 0 && r.values[n-1] == value {
			continue // it goes no farther that way
		}
		if k == 0 {
			r.at = len(r.values)
		}
		r.values, r.walls = append(r.values, value), append(r.walls, b.wallOf(a))
	}
	b.response = r
	return &b.response
}

// far is how many steps of an input a large one has.
func (b *bench) far(in edit.Input) int {
	if f, _ := in.Of(b.s.counting(b.tried.answers)); f.Listed() || f == question.Panels {
		return 1
	}
	return responseFar
}

// wallOf is what the wall is set to with other answers, NaN where nothing can be set.
func (b *bench) wallOf(a question.Answers) float64 {
	setup, ok := b.s.setup(b.s.counting(a), b.s.sys)
	if !ok {
		return math.NaN()
	}
	return b.s.axis(unit.Pressure).at(float64(setup.Wall.Flowing))
}

// spark is the response in a row: the wall as bars, low to high, between what the input is at its
// ends. Nothing where the wall does not move.
func (b *bench) spark(w int) string {
	if b.tried.Stopped() {
		return ""
	}
	r, s := b.respond(), b.s
	bars := draw.Spark{Values: r.walls, At: r.at}.Row(s.glyphs, s.ink)
	if bars == "" {
		return ""
	}
	row := s.theme.Caption.Render(s.say("number-wall")+" "+r.values[0]) + " " + bars + " " + s.theme.Caption.Render(r.values[len(r.values)-1])
	if ansi.StringWidth(row) > w {
		return ""
	}
	return row
}

// movedText is what a trial moved: each setting as it was and is.
func (b *bench) movedText() string {
	var parts []string
	for _, n := range b.changedSettings() {
		if n.change != "" {
			parts = append(parts, strings.ToLower(n.name)+" "+n.change+n.by)
		}
	}
	if len(parts) == 0 {
		return b.s.say("moved-nothing")
	}
	return strings.Join(parts, "  ")
}

// stepText is the step that a press moves the input by.
func (b *bench) stepText() string {
	s := b.s
	size := edit.StepSize(s.reader, s.counting(b.tried.answers), b.tried.Request, b.inputs()[b.input], s.sys)
	if size == "" {
		return ""
	}
	return s.say("step-size") + " " + size
}

// strip is the inputs in a row, and under it, where there is room, what a trial moved, or the
// step and how the wall answers.
func (b *bench) strip(room size) []string {
	rows := []string{b.inputStrip(room.w)}
	if room.h < lowBench {
		return rows
	}
	if b.changed() && !b.tried.Stopped() {
		return append(rows, b.s.theme.Moved.Render(more(wrap(b.movedText(), room.w), room.w)))
	}
	left, right := fit(b.stepText(), room.w), b.spark(room.w)
	switch wide := max(room.w/3, ansi.StringWidth(left)+2); {
	case left == "" && right == "":
		return rows
	case right == "" || wide+ansi.StringWidth(right) > room.w && left != "":
		return append(rows, b.s.theme.Caption.Render(left))
	default:
		return append(rows, b.s.theme.Caption.Render(pad(left, wide))+right)
	}
}

// Rows of the side: its title, and those of the response at its foot.
const (
	responseHigh = 9
	leastInputs  = 8
)

// side is every input, and under them what a trial moved and how the wall answers.
func (b *bench) side(room size) []string {
	rows := []string{b.s.theme.Title.Render(b.s.ruled(b.s.say("side-title"), room.w))}
	foot := b.sideFoot(room)
	rows = append(rows, b.sideRows(size{room.w, sideList(room, foot)})...)
	for len(rows)+len(foot) < room.h {
		rows = append(rows, "")
	}
	return append(rows, foot...)
}

// sideList is the rows of the inputs in the side, under its title.
func sideList(room size, foot []string) int { return max(room.h-1-len(foot), 1) }

// sideFoot is what stands under the inputs in the side.
func (b *bench) sideFoot(room size) (foot []string) {
	s := b.s
	if b.changed() && !b.tried.Stopped() {
		foot = each(wrap(b.movedText(), room.w-1), s.theme.Moved.Render)
	} else {
		foot = []string{s.theme.Caption.Render(fit(b.stepText(), room.w-1))}
	}
	if room.h >= responseHigh+leastInputs+len(foot)+1 {
		foot = append(foot, b.responseRows(size{room.w, responseHigh})...)
	}
	return foot
}

// responseRows is how the wall answers, as a curve over the input's places, today's marked; none
// where the wall does not move.
func (b *bench) responseRows(room size) []string {
	if b.tried.Stopped() {
		return nil
	}
	r, s := b.respond(), b.s
	low, high := math.Inf(1), math.Inf(-1)
	var points []draw.Point
	for i, wall := range r.walls {
		if !math.IsNaN(wall) {
			points = append(points, draw.Point{X: float64(i), Y: wall})
			low, high = min(low, wall), max(high, wall)
		}
	}
	if !(high > low) {
		return nil
	}
	x := draw.Scale{High: float64(len(r.values) - 1)}
	for _, i := range []int{0, len(r.values) - 1} {
		x.Ticks = append(x.Ticks, draw.Tick{At: float64(i), Text: r.values[i]})
	}
	pressure := s.axis(unit.Pressure)
	curve := draw.Curve{
		X: x, Y: draw.NewScale(low, high, responseTicks, pressure.number), YTitle: s.say("number-wall") + " " + unit.Pressure.Unit(s.sys),
		Lines: []draw.CurveLine{{Points: points, Role: draw.RoleBand}},
	}
	if now := r.walls[r.at]; !math.IsNaN(now) {
		curve.Spots = []draw.Spot{{Point: draw.Point{X: float64(r.at), Y: now}, Text: r.values[r.at], Role: draw.RoleMark}}
	}
	return curve.Rows(room.w, room.h, s.glyphs, s.ink)
}

// responseTicks is the most ticks of the wall beside its curve.
const responseTicks = 4
