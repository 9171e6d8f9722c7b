package catalogue

import (
	"slices"
	"strings"
	"unicode"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// None is the answer for a part that is not there.
const None = "none"

// origin is what every entry has: its place in lists, its names, what it rests on.
type origin struct {
	Rank    int      `toml:"rank"`
	Name    string   `toml:"name"`
	Aliases []string `toml:"aliases"` // what else it may be called, in any case of letters
	Basis   string   `toml:"basis"`
	Source  string   `toml:"source"`
}

type based interface{ base() *origin }

func (o *origin) base() *origin { return o }

// Ground is what the entry rests on.
func (o *origin) Ground() calc.Ground { return ground{o.Basis, o.Source}.Ground() }

// ground is what a table inside an entry rests on.
type ground struct {
	Basis  string `toml:"basis"`
	Source string `toml:"source"`
}

// Ground is what the table rests on.
func (g ground) Ground() calc.Ground {
	return calc.Ground{Basis: calc.Basis(g.Basis), Source: g.Source}
}

// name is what an entry of a kind is called. One without a name of its own is called as
// the sentences name the shipped one of its id, a regulator by its size, else by its id.
func (o *origin) name(kind, id string, w *words.Words) string {
	if o.Name != "" {
		return o.Name
	}
	if name := "name-" + kind + "-" + id; w.Has(name) {
		return w.Say(name)
	}
	if size, err := unit.Parse[unit.Length](unit.Bore, id, unit.Named); err == nil && kind == KindRegulator {
		return w.Text(unit.US, "name-regulator", calc.Figures{text("size", unit.US.Bore(size))})
	}
	return id
}

// The kinds of entries, as sentences and fields call them.
const (
	KindCoat      = "coat"
	KindGun       = "gun"
	KindCoupling  = "coupling"
	KindRegulator = "regulator"
	KindFilter    = "filter"
	KindHose      = "hose"
)

// TypeName is what a part of an id is called behind its kind's name in a sentence: the id
// itself unless the language has another word for the shipped one.
func (c *Catalogue) TypeName(kind, id string) string {
	if name := "kind-" + kind + "-" + id; c.words.Has(name) {
		return c.words.Say(name)
	}
	return id
}

// Name is what an entry of a kind is called.
func Name[E based](c *Catalogue, kind, id string, e E) string {
	return e.base().name(kind, id, c.words)
}

// Choice is an entry as a list shows it.
type Choice struct {
	ID, Name string
	Aliases  []string
	Ground   calc.Ground
}

// Choices is the entries of a kind as a list shows them.
func (c *Catalogue) Choices(kind string) []Choice {
	switch kind {
	case KindCoat:
		return choices(c, kind, c.Coats)
	case KindGun:
		return choices(c, kind, c.Guns)
	case KindCoupling:
		return choices(c, kind, c.Couplings)
	case KindRegulator:
		return choices(c, kind, c.Regulators)
	case KindFilter:
		return choices(c, kind, c.Filters)
	}
	return nil
}

func choices[E based](c *Catalogue, kind string, t Table[E]) []Choice {
	list := make([]Choice, 0, len(t)+1)
	for i := range t {
		o := t[i].Of.base()
		list = append(list, Choice{ID: t[i].ID, Name: o.name(kind, t[i].ID, c.words), Aliases: o.Aliases, Ground: o.Ground()})
	}
	return list
}

// IDs is the ids of the entries of a kind, with the aliases of each, for who reads names
// often and wants no list made.
func (c *Catalogue) IDs(kind string, each func(id string, aliases []string) (more bool)) {
	switch kind {
	case KindCoat:
		walk(c.Coats, each)
	case KindGun:
		walk(c.Guns, each)
	case KindCoupling:
		walk(c.Couplings, each)
	case KindRegulator:
		walk(c.Regulators, each)
	case KindFilter:
		walk(c.Filters, each)
	}
}

func walk[E based](t Table[E], each func(id string, aliases []string) bool) {
	for i := range t {
		if !each(t[i].ID, t[i].Of.base().Aliases) {
			return
		}
	}
}

func (o *origin) check(id string, w *words.Words) *sentence {
	bases := []calc.Basis{calc.Published, calc.CommonPractice, calc.Computed, calc.Estimate, calc.OwnReadings}
	unprintable := func(r rune) bool { return !unicode.IsPrint(r) }
	shown := append([]string{id, o.Name, w.Say(o.Source)}, o.Aliases...)
	switch {
	case id == "" || slices.ContainsFunc(shown, func(s string) bool { return strings.ContainsFunc(s, unprintable) }):
		return newSentence("file-plain-text")
	case id == None || slices.Contains(o.Aliases, None):
		return newSentence("file-none")
	case !slices.Contains(bases, calc.Basis(o.Basis)):
		return newSentence("file-basis", text("basis", o.Basis), text("names", w.Listed(texts(bases))))
	}
	return nil
}

func (g *ground) check(w *words.Words) *sentence {
	o := origin{Basis: g.Basis, Source: g.Source}
	return o.check("table", w)
}

func texts[S ~string](list []S) []string {
	out := make([]string, len(list))
	for i, s := range list {
		out[i] = string(s)
	}
	return out
}
