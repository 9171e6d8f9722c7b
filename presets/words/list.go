package words

import (
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
)

// Listed is "a, b or c".
func (w *Words) Listed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " " + w.Say("or") + " " + names[last]
}

// Choose asks for one of some answers.
func (w *Words) Choose(names []string) string {
	return w.Text(unit.US, "choose", calc.Figures{calc.TextFigure("names", w.Listed(names))})
}
