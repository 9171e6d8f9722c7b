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

// of is the bores of a system, narrowest first.
func (e *boreEntry) of(sys unit.System) []length {
	if sys == unit.Metric {
		return e.Metric
	}
	return e.US
}

// checkBore sorts the bores of a field and says what is wrong with them. Hoses without
// bores of their own in the US system are those that the catalogue describes.
func (c *Catalogue) checkBore(id string, e *boreEntry) *said {
	if id != FieldHose && id != FieldMain {
		return sentence("file-bore-of", text("hose", FieldHose), text("main", FieldMain))
	}
	if id == FieldHose && len(e.US) == 0 {
		for _, h := range c.entries.Hose {
			e.US = append(e.US, h.Bore)
		}
	}
	for _, all := range [][]length{e.US, e.Metric} {
		slices.SortFunc(all, func(a, b length) int { return cmp.Compare(a.v, b.v) })
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
	for _, b := range n.c.entries.Bore[n.in.Field].of(n.sys) {
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
