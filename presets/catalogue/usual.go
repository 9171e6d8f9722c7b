package presets

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// usualEntry is what a field is usually answered with, as typed and in the order it is
// picked in.
type usualEntry struct {
	origin
	Values []string `toml:"values"`
	Metric []string `toml:"metric"` // Values where left out
}

// usual is the usual answers of a field that has some: the shipped catalogue gives each.
func (c *Catalogue) usual(field string) *usualEntry {
	e, _ := c.entries.Usual.get(field)
	return e
}

// of is the usual answers of a system.
func (e *usualEntry) of(sys unit.System) []string {
	if sys == unit.Metric && len(e.Metric) > 0 {
		return e.Metric
	}
	return e.Values
}

func (e *usualEntry) items(sys unit.System) (all []Item) {
	for _, text := range e.of(sys) {
		all = append(all, Item{ID: text, Name: text, Standing: e.standing()})
	}
	return distinct(all)
}

// usualReads says, for each field that has usual answers, what is wrong with one.
var usualReads = []struct {
	field string
	wrong func(given string) *said
}{
	{FieldCup, func(given string) *said {
		if k, err := coat.FindCup(given); err != nil || k.ID != given {
			return told(&coat.UnknownCup{Given: given})
		}
		return nil
	}},
	{FieldCupSize, func(given string) *said {
		q, err := unit.ParseVolume(given, 0)
		switch {
		case err != nil:
			return told(err)
		case !(q >= calc.SmallestCup && q <= calc.LargestCup):
			return sentence("file-usual-cup-size", litre("least", calc.SmallestCup), litre("most", calc.LargestCup))
		}
		return nil
	}},
	{FieldRatio, func(given string) *said {
		if _, err := coat.ParseRatio(given); err != nil {
			return sentence("want-ratio")
		}
		return nil
	}},
	{FieldTip, func(given string) *said {
		l, err := unit.ParseLength(given, 0)
		switch {
		case err != nil:
			return told(err)
		case l <= 0:
			return sentence("want-above-zero")
		}
		return nil
	}},
}

// litre is a volume told in litres whatever the system: a file gives its units.
func litre(name string, v unit.Volume) calc.Figure {
	return text(name, unit.Metric.Volume(v, 0))
}

// checkUsual says what is wrong with the usual answers of a field.
func (c *Catalogue) checkUsual(field string, e *usualEntry) *said {
	at := -1
	fields := make([]string, len(usualReads))
	for i, r := range usualReads {
		if fields[i] = r.field; r.field == field {
			at = i
		}
	}
	if at < 0 {
		return sentence("file-usual-of", text("fields", c.words.Listed(fields)))
	}
	if len(e.Values) == 0 {
		return sentence("file-usual-values")
	}
	for _, given := range slices.Concat(e.Values, e.Metric) {
		if given != strings.TrimSpace(given) || strings.ContainsFunc(given, func(r rune) bool { return !unicode.IsPrint(r) }) {
			return sentence("file-usual-plain", text("given", strconv.Quote(given)))
		}
		if why := usualReads[at].wrong(given); why != nil {
			return why
		}
	}
	return nil
}
