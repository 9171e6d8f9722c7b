package calc

import (
	"errors"
	"strings"

	"boothset/calc/coat"
	"boothset/calc/gun"
	"boothset/calc/supply"
	"boothset/calc/unit"
)

// problemAt is a problem of a field that an error below tells of.
func problemAt(field string, err error) *Problem {
	id, f := SentenceOf(err)
	return &Problem{field, id, f}
}

// because makes a problem the cause of another: its sentence is the figure "why" of id's.
func (p *Problem) because(id string, f ...Figure) *Problem {
	why := SentenceFigure("why", p.ID)
	return &Problem{p.Field, id, append(append(f, why), p.Figures...)}
}

// SentenceOf is the sentence for an error of the packages below, with its figures. An error
// that has none is its own text.
func SentenceOf(err error) (id string, f Figures) {
	var typed *unit.ParseError
	var outside *coat.OutOfRange
	var cup *coat.CupRange
	var fit *coat.FitError
	var solvent *coat.UnknownSolvent
	var unknown *coat.UnknownCup
	var input *supply.InputError
	var stamp *gun.Fault
	var problem *Problem
	switch {
	case errors.As(err, &problem):
		return problem.ID, problem.Figures
	case errors.As(err, &typed):
		f = Figures{SentenceFigure("usage", typed.Usage), brief(temp("zero", 0))}
		for _, p := range typed.Details {
			f = append(f, TextFigure(p.Name, p.Text))
		}
		return typed.ID, f
	case errors.As(err, &outside):
		return "outside-unit", Figures{TextFigure("unit", outside.Unit),
			digits("given", outside.Given), digits("low", outside.Low), digits("high", outside.High)}
	case errors.As(err, &cup):
		return cupSentence(cup)
	case errors.As(err, &fit):
		return fit.ID, Figures{brief(degrees("apart", fit.Apart)), degrees("least", fit.LeastApart),
			brief(share("slope", float64(fit.Slope))), brief(share("low", float64(fit.Low))), brief(share("high", float64(fit.High)))}
	case errors.As(err, &solvent):
		ids := make([]string, 0, 16)
		for _, s := range coat.Solvents() {
			ids = append(ids, s.ID)
		}
		return "want-solvent", Figures{TextFigure("given", solvent.Given), TextFigure("names", strings.Join(ids, ", "))}
	case errors.As(err, &unknown):
		ids := make([]string, 0, 16)
		for _, c := range coat.Cups() {
			ids = append(ids, c.ID)
		}
		return "want-cup", Figures{TextFigure("given", unknown.Given), TextFigure("names", strings.Join(ids, ", "))}
	case errors.As(err, &input):
		return input.ID, Figures{TextFigure("unit", input.Unit), digits("given", input.Given), digits("low", input.Low), digits("high", input.High)}
	case errors.As(err, &stamp):
		return stamp.ID, Figures{brief(gauge("inlet", stamp.Stamp.Inlet)), brief(flow("flow", stamp.Stamp.Flow)), brief(gauge("cap", stamp.Stamp.Cap)),
			digits("ratio", stamp.Ratio)}
	}
	return err.Error(), nil
}

// cupSentence says why a cup cannot tell a viscosity, and which could.
func cupSentence(e *coat.CupRange) (id string, f Figures) {
	way := "cup-too-long"
	if e.Seconds < e.Cup.Low {
		way = "cup-too-short"
	}
	f = Figures{TextFigure("seconds", unit.DigitsText(e.Seconds, 3)), TextFigure("cup", e.Cup.Label), SentenceFigure("way", way), CountFigure("low", int(e.Cup.Low)), CountFigure("high", int(e.Cup.High))}
	if len(e.Better) == 0 {
		return "cup-range", f
	}
	return "cup-range-better", append(f, TextFigure("better", e.Better[0].Label))
}

// RegulatorFigure is what sentences call the regulator that is set, by its place: the wall, the
// one at the gun's foot; without any it is the supply that stands on the line.
func RegulatorFigure(at Place) Figure {
	return SentenceFigure("regulator", [...]string{Wall: "set-wall", Foot: "set-foot", Nowhere: "set-none"}[at])
}

// digits is a number to four digits, in a unit that the sentence names itself.
func digits(name string, v float64) Figure {
	return TextFigure(name, unit.DigitsText(v, 4))
}
