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

// usualReads reports, for each field that has usual answers, whether one will do.
var usualReads = map[string]func(text string) bool{
	FieldCup: func(text string) bool {
		k, err := coat.FindCup(text)
		return err == nil && k.ID == text
	},
	FieldRatio: func(text string) bool {
		_, err := coat.ParseRatio(text)
		return err == nil
	},
	FieldTip: func(text string) bool {
		l, err := unit.ParseLength(text, 0)
		return err == nil && l > 0
	},
	FieldCupSize: func(text string) bool {
		q, err := unit.ParseVolume(text, 0)
		return err == nil && q >= calc.SmallestCup && q <= calc.LargestCup
	},
}

// checkUsual says what is wrong with the usual answers of a field.
func checkUsual(field string, e *usualEntry) *said {
	reads := usualReads[field]
	if reads == nil {
		return sentence("file-usual-of", text("fields", strings.Join(sortedKeys(usualReads), ", ")))
	}
	if len(e.Values) == 0 {
		return sentence("file-usual-values")
	}
	for _, given := range slices.Concat(e.Values, e.Metric) {
		plain := given == strings.TrimSpace(given) && !strings.ContainsFunc(given, func(r rune) bool { return !unicode.IsPrint(r) })
		if !plain || !reads(given) {
			return sentence("file-usual-bad", text("given", strconv.Quote(given)))
		}
	}
	return nil
}
