package catalogue

import (
	"cmp"
	"slices"

	"boothset/calc/unit"
)

// boreEntry is the bores that hoses or mains are to be had in.
type boreEntry struct {
	origin
	US     []length `toml:"us"`
	Metric []length `toml:"metric"`
}

// bores is the bores of a field in a system, narrowest first. Hoses without bores of their
// own in the US system are those that the catalogue describes.
func (c *Catalogue) bores(field string, e *boreEntry, sys unit.System) []length {
	all := slices.Clone(e.US)
	if sys == unit.Metric {
		all = slices.Clone(e.Metric)
	} else if field == KindHose && len(all) == 0 {
		for _, h := range c.Hoses {
			all = append(all, h.Of.Bore)
		}
	}
	slices.SortFunc(all, func(a, b length) int { return cmp.Compare(a.V, b.V) })
	return all
}

// checkBore says what is wrong with the bores of a field.
func (c *Catalogue) checkBore(id string, e *boreEntry) *sentence {
	if id != KindHose && id != keyMain {
		return newSentence("file-bore-of", text("hose", KindHose), text("main", keyMain))
	}
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		all := c.bores(id, e, sys)
		if len(all) == 0 || all[0].V <= 0 {
			return newSentence("file-bores")
		}
	}
	return nil
}

