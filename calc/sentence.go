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
		return outsideSentence(outside.Unit, outside.Given, outside.Low, outside.High)
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
		return "want-solvent", Figures{GivenFigure("given", solvent.Given), TextFigure("names", strings.Join(ids, ", "))}
	case errors.As(err, &unknown):
		ids := make([]string, 0, 16)
		for _, c := range coat.Cups() {
			ids = append(ids, c.ID)
		}
		return "want-cup", Figures{GivenFigure("given", unknown.Given), TextFigure("names", strings.Join(ids, ", "))}
	case errors.As(err, &input) && input.ID == "outside-unit":
		return outsideSentence(input.Unit, input.Given, input.Low, input.High)
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

// readers is the units of the errors below that are told in the reader's own: what a value in
// them is, and how many there are in SI.
var readers = map[string]struct {
	kind FigureKind
	si   func(float64) float64
}{
	"C":    {FigureTemp, func(v float64) float64 { return float64(unit.Celsius(v)) }},
	"psi":  {FigureGauge, func(v float64) float64 { return float64(unit.PSIG(v)) }},
	"mm":   {FigureDistance, func(v float64) float64 { return float64(unit.MM(v)) }},
	"m":    {FigureRun, func(v float64) float64 { return v }},
	"scfm": {FigureFlow, func(v float64) float64 { return float64(unit.SCFM(v)) }},
}

// outsideSentence says that a value lies outside its bounds, in the reader's units where it can.
func outsideSentence(in string, given, low, high float64) (id string, f Figures) {
	if t, ok := readers[in]; ok {
		b := Bound{ID: "outside", Low: t.si(low), High: t.si(high), Kind: t.kind}
		return b.ID, b.Figures(t.si(given))
	}
	return "outside-unit", Figures{TextFigure("unit", in), digits("given", given), digits("low", low), digits("high", high)}
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
