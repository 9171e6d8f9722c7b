package words

import (
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
)

// mostListed is the most names that are listed: a shop's own may be thousands.
const mostListed = 100

// Listed is "a, b or c", each name printable and short. Of very many names the first are said,
// and how many more there are.
func (w *Words) Listed(given []string) string {
	names := make([]string, min(len(given), mostListed))
	for i := range names {
		names[i] = Short(given[i])
	}
	if more := len(given) - len(names); more > 0 {
		names = append(names, w.Text(unit.US, "listed-more", calc.Figures{calc.CountFigure("more", more)}))
	}
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
