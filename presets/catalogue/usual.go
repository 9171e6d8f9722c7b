package catalogue

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// usualEntry is the answers that a field is usually given.
type usualEntry struct {
	origin
	Values []string `toml:"values"`
	Metric []string `toml:"metric"` // Values where left out
}

// UsualAnswers is what a field is usually answered with in a system, as typed and in the
// order it is picked in, with what they rest on; none for a field without.
func (c *Catalogue) UsualAnswers(field string, sys unit.System) ([]string, calc.Ground) {
	e, ok := c.usual.Get(field)
	if !ok {
		return nil, calc.Ground{}
	}
	if sys == unit.Metric && len(e.Metric) > 0 {
		return e.Metric, e.Ground()
	}
	return e.Values, e.Ground()
}

// usualReads says, for each field that has usual answers, what is wrong with one.
var usualReads = []struct {
	field string
	wrong func(given string) *sentence
}{
	{"cup", func(given string) *sentence {
		if k, err := coat.FindCup(given); err != nil || k.ID != given {
			return sentenceOf(&coat.UnknownCup{Given: given})
		}
		return nil
	}},
	{"cup-size", func(given string) *sentence {
		q, err := unit.Parse[unit.Volume](unit.Tank, given, unit.Named)
		switch {
		case err != nil:
			return sentenceOf(err)
		case !(q >= calc.SmallestCup && q <= calc.LargestCup):
			return newSentence("file-usual-cup-size", litre("least", calc.SmallestCup), litre("most", calc.LargestCup))
		}
		return nil
	}},
	{"ratio", func(given string) *sentence {
		if _, err := coat.ParseRatio(given); err != nil {
			return newSentence("want-ratio")
		}
		return nil
	}},
	{"tip", func(given string) *sentence {
		l, err := unit.Parse[unit.Length](unit.Tip, given, unit.Named)
		switch {
		case err != nil:
			return sentenceOf(err)
		case l <= 0:
			return newSentence("want-above-zero")
		}
		return nil
	}},
}

// litre is a volume told in litres whatever the system: a file gives its units.
func litre(name string, v unit.Volume) calc.Figure {
	return calc.TextFigure(name, unit.Metric.Volume(v, 0))
}

// checkUsual says what is wrong with the usual answers of a field.
func (c *Catalogue) checkUsual(field string, e *usualEntry) *sentence {
	at := -1
	fields := make([]string, len(usualReads))
	for i, r := range usualReads {
		if fields[i] = r.field; r.field == field {
			at = i
		}
	}
	if at < 0 {
		return newSentence("file-usual-of", calc.TextFigure("fields", c.words.Listed(fields)))
	}
	if len(e.Values) == 0 {
		return newSentence("file-usual-values")
	}
	for _, given := range slices.Concat(e.Values, e.Metric) {
		if given != strings.TrimSpace(given) || !plainText([]string{given}) {
			return newSentence("file-usual-plain", calc.GivenFigure("given", given))
		}
		if why := usualReads[at].wrong(given); why != nil {
			return why
		}
	}
	return nil
}
