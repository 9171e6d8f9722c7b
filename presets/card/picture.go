package card

import (
	"math"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/words"

	"github.com/clipperhouse/displaywidth"
)

// Picture is a drawing in black and greys, lengths in millimetres from its upper left corner.
type Picture struct {
	Width, Height float64
	Shapes        []Shape
}

// Shape is a line through points, filled where Fill is set, or a text at the first of them.
type Shape struct {
	Points [][2]float64
	Stroke float64 // the line's width
	Fill   bool
	Grey   float64 // 0 black to 1 white
	Text   string
	Size   float64 // height of the text's letters, by the font
	Anchor Anchor
}

// Anchor is which end of a text stands at its point.
type Anchor uint8

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

const (
	small   = 2.4 // size of letters
	thin    = 0.2 // of strokes
	heavy   = 1.8
	halfway = 0.65 // the grey of what is likely
	sweep   = 1.5 * math.Pi
)

func (p *Picture) stroke(width, grey float64, points ...[2]float64) {
	p.Shapes = append(p.Shapes, Shape{Points: points, Stroke: width, Grey: grey})
}

func (p *Picture) text(x, y float64, anchor Anchor, text string) {
	p.Shapes = append(p.Shapes, Shape{Points: [][2]float64{{x, y}}, Text: text, Size: small, Anchor: anchor})
}

// Pictures is the dial of the gauge that the pressure is set by, and the line's pressure; none
// where nothing is set.
func (c *Card) Pictures(w *words.Words, sys unit.System) []Picture {
	if c.Plan.Stopped() {
		return nil
	}
	return []Picture{c.dial(w, sys), c.line(sys)}
}

// face is a gauge's: its middle, its radius, and the pressure at the end of its scale.
type face struct {
	x, y, r float64
	span    unit.Gauge
}

// at is the point of a pressure so far from the middle, a share of the radius.
func (f *face) at(p unit.Gauge, share float64) [2]float64 {
	a := (min(max(float64(p/f.span), 0), 1) - 0.5) * sweep
	return [2]float64{f.x + share*f.r*math.Sin(a), f.y - share*f.r*math.Cos(a)}
}

// arc is the points between two pressures.
func (f *face) arc(low, high unit.Gauge, share float64) (points [][2]float64) {
	const parts = 48
	for i := range parts + 1 {
		points = append(points, f.at(low+(high-low)*unit.Gauge(i)/parts, share))
	}
	return points
}

// dial is the gauge with its own span: the needle where the pressure is set with the trigger
// pulled, a ring with it released, a grey rim over the likely range, a black one from the
// limit on.
func (c *Card) dial(w *words.Words, sys unit.System) Picture {
	p := Picture{Width: 72, Height: 36}
	wall := &c.Plan.Setup.Wall
	label := "label-wall"
	if c.Plan.Request.RegulatorAt() == calc.Foot {
		label = answer.LabelFoot
	}
	f := face{18, 19, 16, c.Span}
	top := unit.Pressure.Count(sys, float64(c.Span))
	step := roundStep(top / 8)
	of := func(count float64) unit.Gauge { return unit.Gauge(unit.Pressure.Of(sys, count)) }
	text := func(v unit.Gauge) string { return sys.Gauge(v, unit.Usual) }
	var key []func(y float64)
	sample := func(width, grey float64, text string) {
		key = append(key, func(y float64) {
			p.stroke(width, grey, [2]float64{38, y - 0.8}, [2]float64{42, y - 0.8})
			p.text(44, y, Start, text)
		})
	}
	sample(0.7, 0, w.Say("mark-set")+" "+text(wall.Flowing))
	if likely, ok := c.Plan.LikelyWall(); ok {
		p.stroke(heavy, halfway, f.arc(likely.Low, likely.High, 0.95)...)
		sample(heavy, halfway, w.Text(sys, "number-likely", calc.Figures{
			calc.TextFigure("low", unit.Pressure.Number(sys, float64(likely.Low), unit.Usual)), calc.TextFigure("high", text(likely.High)),
		}))
	}
	if wall.Limit > 0 && wall.Limit < c.Span {
		p.stroke(heavy, 0, f.arc(wall.Limit, c.Span, 0.95)...)
		sample(heavy, 0, w.Say("mark-limit")+" "+text(wall.Limit))
	}
	p.stroke(2*thin, 0, f.arc(0, c.Span, 1)...)
	for i := 0; float64(i)*step/4 <= top*1.0001; i++ {
		v := of(float64(i) * step / 4)
		long := 0.93
		if i%4 == 0 {
			long = 0.86
			at := f.at(v, 0.7)
			p.text(at[0], at[1]+small/3, Middle, unit.Pressure.Number(sys, float64(v), 0))
		}
		p.stroke(thin, 0, f.at(v, long), f.at(v, 1))
	}
	p.stroke(0.7, 0, [2]float64{f.x, f.y}, f.at(wall.Flowing, 0.9))
	ring := f.at(wall.Static, 1.07)
	p.stroke(2*thin, 0, circle(ring, 0.7)...)
	key = append(key, func(y float64) {
		p.stroke(2*thin, 0, circle([2]float64{40, y - 0.8}, 0.7)...)
		p.text(44, y, Start, w.Say("mark-rest")+" "+text(wall.Static))
	})
	for i, draw := range key {
		draw(12 + 5*float64(i))
	}
	p.text(f.x, f.y+f.r*0.95, Middle, w.Say(label))
	return p
}

func circle(at [2]float64, r float64) (points [][2]float64) {
	const parts = 16
	for i := range parts + 1 {
		a := 2 * math.Pi * float64(i) / parts
		points = append(points, [2]float64{at[0] + r*math.Cos(a), at[1] + r*math.Sin(a)})
	}
	return points
}

// roundStep is the first of 1, 2, 5, 10 and so on that is no smaller.
func roundStep(least float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(least)))
	for _, m := range []float64{1, 2, 5} {
		if m*power >= least*0.9999 {
			return m * power
		}
	}
	return 10 * power
}

// line is the pressure that is left after each part of the line, as a bar a part, in the order
// that air meets them.
func (c *Card) line(sys unit.System) Picture {
	const (
		wide, high = 112, 36
		left, full = 44.0, 54.0 // where the bars begin, and how long the longest is
		widestRow  = 5.0
		letters    = 32 // of a part's name, at the most
	)
	p := Picture{Width: wide, Height: high}
	steps := c.Plan.Setup.Line
	most := unit.Gauge(0)
	for i := range steps {
		most = max(most, steps[i].Out)
	}
	row := min(widestRow, high/float64(max(len(steps), 1)))
	for i := range steps {
		s := &steps[i]
		y := row * float64(i)
		base := y + row/2 + small/3
		p.text(left-1.5, base, End, displaywidth.TruncateString(s.Name, letters, "..."))
		end := left
		if most > 0 {
			end += full * float64(max(s.Out, 0)/most)
		}
		grey := halfway
		if i == c.Plan.Setup.Bottleneck {
			grey = 0
		}
		if s.Out > 0 {
			p.Shapes = append(p.Shapes, Shape{Fill: true, Grey: grey, Points: [][2]float64{
				{left, y + row*0.2}, {end, y + row*0.2}, {end, y + row*0.8}, {left, y + row*0.8},
			}})
		}
		p.text(end+1, base, Start, sys.Gauge(s.Out, unit.Pressure.Fine(sys)))
	}
	p.stroke(thin, 0, [2]float64{left, 0}, [2]float64{left, row * float64(len(steps))})
	return p
}
