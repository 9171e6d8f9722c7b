package catalogue

import (
	"slices"

	"boothset/calc"
	"boothset/calc/unit"
)

// boreEntry is the bores that hoses or mains are to be had in.
type boreEntry struct {
	origin
	US     []length `toml:"us"`
	Metric []length `toml:"metric"`
}

// keyMain is the field of the shop's main, which has bores besides the hoses.
const keyMain = "main"

// Bores is the bores that a field's hoses or mains are to be had in, in a system,
// narrowest first. Hoses without bores of their own in the US system are those that the
// catalogue describes.
func (c *Catalogue) Bores(field string, sys unit.System) []unit.Length {
	e, ok := c.bores.Get(field)
	if !ok {
		return nil
	}
	from := e.US
	if sys == unit.Metric {
		from = e.Metric
	}
	var all []unit.Length
	for _, l := range from {
		all = append(all, l.V)
	}
	if sys == unit.US && field == KindHose && len(all) == 0 {
		for _, h := range c.Hoses {
			all = append(all, h.Of.Bore.V)
		}
	}
	slices.Sort(all)
	return all
}

// checkBore says what is wrong with the bores of a field.
func (c *Catalogue) checkBore(id string, _ *boreEntry) *sentence {
	if id != KindHose && id != keyMain {
		return newSentence("file-bore-of", calc.TextFigure("hose", KindHose), calc.TextFigure("main", keyMain))
	}
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		all := c.Bores(id, sys)
		if len(all) == 0 || all[0] <= 0 {
			return newSentence("file-bores")
		}
	}
	return nil
}
