package presets

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
	} else if field == FieldHose && len(all) == 0 {
		for _, h := range c.entries.Hose {
			all = append(all, h.e.Bore)
		}
	}
	slices.SortFunc(all, func(a, b length) int { return cmp.Compare(a.v, b.v) })
	return all
}

// checkBore says what is wrong with the bores of a field.
func (c *Catalogue) checkBore(id string, e *boreEntry) *said {
	if id != FieldHose && id != FieldMain {
		return sentence("file-bore-of", text("hose", FieldHose), text("main", FieldMain))
	}
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		all := c.bores(id, e, sys)
		if len(all) == 0 || all[0].v <= 0 {
			return sentence("file-bores")
		}
	}
	return nil
}

// along is the path over the bores that there are, as far as the last. One that is
// written as the bore itself is not a step.
func (n *nudge) along(at unit.Length, toward int) (to func(steps int) string, ok bool) {
	var ahead []string
	here := n.sys.Bore(at)
	e, _ := n.c.entries.Bore.get(n.in.Field) // the shipped ones are of every field with bores
	for _, b := range n.c.bores(n.in.Field, e, n.sys) {
		if text := n.sys.Bore(b.v); text != here && (b.v > at) == (toward > 0) {
			ahead = append(ahead, text)
		}
	}
	if toward < 0 {
		slices.Reverse(ahead)
	}
	ahead = slices.Compact(ahead)
	return func(steps int) string { return ahead[min(steps, len(ahead))-1] }, len(ahead) > 0
}
