package catalogue

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

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
	Shared  []string `toml:"shared"`  // what others are called as well, so that it must be asked which is meant
	Basis   string   `toml:"basis"`
	Source  string   `toml:"source"`
	// called and variety are Called and Variety, set when the catalogue is opened.
	called, variety string
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

// Called is what the entry is called in the catalogue's language.
func (o *origin) Called() string { return o.called }

// Variety is what a part is called behind its kind's name in a sentence, "large-bore": its id
// unless the language has another word for the shipped one.
func (o *origin) Variety() string { return o.variety }

// call names an entry of a kind. One without a name of its own is called as the sentences
// name the shipped one of its id, a regulator by its size, else by its id.
func (o *origin) call(kind, id string, w *words.Words) {
	o.called, o.variety = id, id
	if variety := "kind-" + kind + "-" + id; w.Has(variety) {
		o.variety = w.Say(variety)
	}
	switch name := "name-" + kind + "-" + id; {
	case o.Name != "":
		o.called = o.Name
	case w.Has(name):
		o.called = w.Say(name)
	case kind == KindRegulator:
		if size, err := unit.Parse[unit.Length](unit.Bore, id, unit.Named); err == nil {
			o.called = w.Text(unit.US, "name-regulator", calc.Figures{calc.TextFigure("size", unit.US.Bore(size))})
		}
	}
	if kind == KindGun {
		o.called = withoutGun(o.called)
	}
}

// withoutGun is the name of a gun without that word, which sentences have beside it: "valve
// gun" is "valve". A name of nothing else stays.
func withoutGun(name string) string {
	for _, word := range words.Spellings(words.Gun) {
		ends := len(name) - len(word)
		switch {
		case ends <= 1:
		case strings.EqualFold(name[ends:], word) && strings.ContainsRune(" -", rune(name[ends-1])):
			return strings.TrimRight(name[:ends], " -")
		case strings.EqualFold(name[:len(word)], word) && name[len(word)] == ' ':
			return strings.TrimLeft(name[len(word):], " ")
		}
	}
	return name
}

// The kinds of entries, as sentences and fields call them.
const (
	KindCoat      = "coat"
	KindGun       = "gun"
	KindCoupling  = "coupling"
	KindRegulator = "regulator"
	KindFilter    = "filter"
	KindDryer     = "dryer"
	KindValve     = "valve"
	KindHose      = "hose"
	KindStage     = "stage" // of any coat
)

// Choice is an entry as a list shows it.
type Choice struct {
	ID, Name string
	Aliases  []string
	Shared   []string // what other entries are called as well
	Ground   calc.Ground
}

// Choices is the entries of a kind as a list shows them.
func (c *Catalogue) Choices(kind string) (list []Choice) {
	c.each(kind, func(id string, o *origin) bool {
		list = append(list, Choice{ID: id, Name: o.called, Aliases: o.Aliases, Shared: o.Shared, Ground: o.Ground()})
		return true
	})
	return list
}

// IDs is the ids of the entries of a kind, with the aliases of each and the names that it shares
// with others, for who reads names often and wants no list made.
func (c *Catalogue) IDs(kind string, each func(id string, aliases, shared []string) (more bool)) {
	c.each(kind, func(id string, o *origin) bool { return each(id, o.Aliases, o.Shared) })
}

// each goes over the entries of a kind that can be named, for as long as do says so.
func (c *Catalogue) each(kind string, do func(id string, o *origin) (more bool)) {
	switch kind {
	case KindCoat:
		walk(c.Coats, do)
	case KindGun:
		walk(c.Guns, do)
	case KindCoupling:
		walk(c.Couplings, do)
	case KindRegulator:
		walk(c.Regulators, do)
	case KindFilter:
		walk(c.Filters, do)
	case KindStage:
		walk(c.stages, do)
	case KindDryer:
		walk(c.Dryers, do)
	case KindValve:
		walk(c.Valves, do)
	}
}

func walk[E based](t Table[E], do func(id string, o *origin) bool) {
	for i := range t {
		if !do(t[i].ID, t[i].Of.base()) {
			return
		}
	}
}

// longestText is the most characters of a name or a source.
const longestText = 300

// plainText reports whether each of texts can be printed on one line, and is no longer than
// one there need be.
func plainText(all []string) bool {
	unprintable := func(r rune) bool { return !unicode.IsPrint(r) }
	return !slices.ContainsFunc(all, func(s string) bool {
		return strings.ContainsFunc(s, unprintable) || utf8.RuneCountInString(s) > longestText
	})
}

func basisFault(basis string, w *words.Words) *sentence {
	bases := []calc.Basis{calc.Published, calc.CommonPractice, calc.Computed, calc.Estimate, calc.OwnReadings}
	if slices.Contains(bases, calc.Basis(basis)) {
		return nil
	}
	return newSentence("file-basis", calc.GivenFigure("basis", basis), calc.TextFigure("names", w.Listed(texts(bases))))
}

func (g *ground) check(w *words.Words) *sentence {
	if !plainText([]string{w.Say(g.Source)}) {
		return newSentence("file-plain-text")
	}
	return basisFault(g.Basis, w)
}

func texts[S ~string](list []S) []string {
	out := make([]string, len(list))
	for i, s := range list {
		out[i] = string(s)
	}
	return out
}
