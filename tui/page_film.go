package tui

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/tui/draw"
)

// filmMarks is the numbers up the side of the film.
const filmMarks = 6

// filmLayers is the coats as layers to scale, wet and dry, with the least and the most dry
// film that the coat wants.
func (s *session) filmLayers(f *answer.Film) draw.Layers {
	r, a := f.Request, f.Found
	thick := s.axis(unit.Film)
	coats := func(laid func(calc.Comb) unit.Length, left unit.Length) (all []draw.Coat, sum unit.Length) {
		add := func(l unit.Length, text string) {
			all = append(all, draw.Coat{Thick: thick.at(float64(l)), Text: text})
			sum += l
		}
		for _, c := range a.Laid {
			add(laid(c), s.say("layer-laid"))
		}
		for range a.Left {
			add(left, s.sys.Film(left, unit.Usual))
		}
		return all, sum
	}
	each := a.Each
	if a.AtSpeed.Wet > 0 {
		each = a.AtSpeed
	}
	wet, wetSum := coats(func(c calc.Comb) unit.Length { return (c.Wetted + c.Next) / 2 }, each.Wet)
	dry, drySum := coats(calc.Comb.Middle, each.Dry)
	films := []draw.Stack{
		{Name: s.say("layer-wet"), Coats: wet},
		{Name: s.text("layer-dry", calc.FigureOf("total", calc.FigureFilm, a.Running.Total)), Coats: dry},
	}
	top := max(wetSum, drySum)
	if w := &r.Wants; w.Known {
		limit := func(id string, l unit.Length) draw.Mark {
			return draw.Mark{At: thick.at(float64(l)), Text: s.text(id, calc.TextFigure("film", thick.Number(s.sys, float64(l), unit.Usual)))}
		}
		films[1].Low, films[1].High = limit("layer-least", w.Low), limit("layer-most", w.High)
		top = max(top, w.High)
	}
	return draw.Layers{Scale: draw.NewScale(0, thick.at(float64(top)), filmMarks, thick.number), Unit: unit.Film.Unit(s.sys), Stacks: films}
}
