package tui

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/tui/draw"
)

// stirring is how much more than the mix its cup is drawn to hold: room to stir.
const stirring = 1.1

// mixCup is the mixing cup with the mark that each part is poured up to, or the whole mix.
func (s *session) mixCup(m *answer.Mix) (c draw.Cup) {
	for i, p := range m.Pours(s.sys) {
		name := s.text("pour-part", calc.CountFigure("number", i+1))
		if len(m.Request.Ratio.Value.Parts) == 0 {
			name = s.say("pour-mix")
		}
		c.Pours = append(c.Pours, draw.Pour{
			Name: name, Amount: float64(p.Volume),
			Text: s.sys.Volume(p.Volume, unit.Usual), Mark: s.sys.Volume(p.UpTo, unit.Usual),
		})
		c.Holds = float64(p.UpTo) * stirring
	}
	return c
}
