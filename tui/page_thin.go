package tui

import (
	"slices"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/tui/draw"
)

// The curve of a mix.
const (
	curveAround = unit.Temp(6) // K to either side of the temperatures that the answer names
	curveMargin = 0.15         // of the seconds that it names, above and below them
	curvePoints = 41
	curveTemps  = 6
	curveTimes  = 6
)

// thinCurve is the cup's seconds over the temperature of the mix, the seconds that are asked
// for, and where the mix is now and after each step of the answer.
func (s *session) thinCurve(t *answer.Thin) draw.Curve {
	r, a := t.Request, t.Found
	rows := t.Rows(s.words, s.sys)
	warm := s.axis(unit.Temperature)
	warm.decimals = 0
	point := func(at unit.Temp, seconds float64) draw.Point { return draw.Point{X: warm.at(float64(at)), Y: seconds} }
	named := func(id, value string) string { return s.text(id, calc.TextFigure("value", value)) }
	c := draw.Curve{
		X:      draw.NewScale(warm.at(float64(min(r.Reading.At, a.To)-curveAround)), warm.at(float64(max(r.Reading.At, a.To)+curveAround)), curveTemps, warm.number),
		XTitle: unit.Temperature.Unit(s.sys),
		YTitle: s.text("curve-seconds", calc.TextFigure("cup", r.Reading.Cup.Label)),
		Spots:  []draw.Spot{{Point: point(r.Reading.At, r.Reading.Seconds), Text: s.text("curve-now", calc.FigureOf("seconds", calc.FigureCup, r.Reading.Seconds)), Role: draw.RoleMark}},
	}
	if row, ok := rowOf(rows, "wanted"); ok {
		c.WantedY = draw.Span{Low: a.Wanted.Low.Seconds, High: a.Wanted.High.Seconds, Text: named("curve-wanted", row.Text)}
	}
	if row, ok := rowOf(rows, "warmed"); ok {
		c.Spots = append(c.Spots, draw.Spot{Point: point(a.To, a.Warmed.Seconds), Text: named("curve-warmed", row.Text), Role: draw.RoleText})
	}
	c.Lines = []draw.CurveLine{{Points: s.thinLine(t, c.X, 0), Text: s.say("curve-as-is"), Role: draw.RoleKept}}
	if row, ok := rowOf(rows, "then"); ok {
		id := map[calc.Remedy]string{calc.RemedyCool: "curve-cooled", calc.RemedyWarm: "curve-warmed", calc.RemedyThin: "curve-thinned", calc.RemedyWarmThin: "curve-thinned"}[a.Remedy]
		c.Spots = append(c.Spots, draw.Spot{Point: point(a.To, a.Reached.Seconds), Text: named(id, row.Text), Role: draw.RoleText})
		if a.Add > 0 {
			c.Lines = append(c.Lines, draw.CurveLine{Points: s.thinLine(t, c.X, a.Add), Text: s.text("curve-with", calc.BriefFigure("add", calc.FigureShare, a.Add)), Role: draw.RoleOwn})
		}
	}
	low, high := a.Wanted.Low.Seconds, a.Wanted.High.Seconds
	for _, spot := range c.Spots {
		low, high = min(low, spot.Y), max(high, spot.Y)
	}
	around := (high - low) * curveMargin
	c.Y = draw.NewScale(max(low-around, 0), high+around, curveTimes, s.axis(unit.CupTime).number)
	return c
}

// thinLine is the seconds of the mix with so much thinner over a scale of temperatures, and at
// those that the answer names, as far as the cup can tell them.
func (s *session) thinLine(t *answer.Thin, over draw.Scale, add float64) (points []draw.Point) {
	var all []float64
	for i := range curvePoints {
		all = append(all, unit.Temperature.Of(s.sys, over.Low+(over.High-over.Low)*float64(i)/(curvePoints-1)))
	}
	all = append(all, float64(t.Request.Reading.At), float64(t.Found.To))
	slices.Sort(all)
	for _, at := range all {
		if read, err := t.Found.ReadAt(t.Request, unit.Temp(at), add); err == nil {
			points = append(points, draw.Point{X: unit.Temperature.Count(s.sys, at), Y: read.Seconds})
		}
	}
	return points
}
