package catalogue

import (
	"bytes"
	_ "embed"
	"errors"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/tables"
	"boothset/presets/textfile"
	"boothset/presets/words"

	"github.com/pelletier/go-toml/v2"
)

// Catalogue is every coat, gun and part that can be named, and the shop's usual line. It
// speaks one language: that of its names and of what it says will not do.
type Catalogue struct {
	Coats      Table[*Coat]
	Guns       Table[*Gun]
	Couplings  Table[*Coupling]
	Hoses      Table[*Hose]
	Regulators Table[*Regulator]
	Filters    Table[*Filter]
	Dryers     Table[*Dryer]
	Valves     Table[*Valve]
	Tolerances calc.Tolerances

	bores  Table[*boreEntry]
	stages Table[*origin] // of all coats, by their names
	usual  Table[*usualEntry]
	// line is the shop's usual answers as its file gives them, by field, and own those that do
	// not come from what is shipped.
	line, own map[string]any
	words     *words.Words
	locale    words.Locale
	shop      tomlFile
}

// tomlFile is a file of entries; a shop's own has no tables where there is none.
type tomlFile struct {
	name string
	data []byte
	root *tables.Table
}

// entries is the tables as files hold them.
type entries struct {
	Coat      map[string]*Coat           `toml:"coat"`
	Gun       map[string]*Gun            `toml:"gun"`
	Coupling  map[string]*Coupling       `toml:"coupling"`
	Hose      map[string]*Hose           `toml:"hose"`
	Regulator map[string]*Regulator      `toml:"regulator"`
	Filter    map[string]*Filter         `toml:"filter"`
	Dryer     map[string]*Dryer          `toml:"dryer"`
	Valve     map[string]*Valve          `toml:"valve"`
	Bore      map[string]*boreEntry      `toml:"bore"`
	Usual     map[string]*usualEntry     `toml:"usual"` // by field
	Tolerance map[string]*toleranceEntry `toml:"tolerance"`
	Line      map[string]any             `toml:"line"` // by field
}

var (
	//go:embed coats.toml
	coatsFile []byte
	//go:embed stages.toml
	stagesFile []byte
	//go:embed guns.toml
	gunsFile []byte
	//go:embed line.toml
	lineFile []byte
)

// shipped is what ships. No key is in two of them.
var shipped = []struct {
	name string
	data []byte
}{{"coats.toml", coatsFile}, {"stages.toml", stagesFile}, {"guns.toml", gunsFile}, {"line.toml", lineFile}}

// Open is the shipped catalogue with the shop's file over it, where there is one. It
// speaks w; its units, where the shop's file gives none, are the locale's.
func Open(getenv func(string) string, w *words.Words) (*Catalogue, error) {
	locale := words.LocaleOf(getenv)
	file := ShopFile(getenv)
	if file == "" {
		return LoadIn(w, locale, nil, "")
	}
	data, err := textfile.Read(file, textfile.Most)
	var unfit *textfile.Error
	switch {
	case textfile.Absent(err):
		return LoadIn(w, locale, nil, "")
	case errors.As(err, &unfit):
		figures := append(unfit.Why(), calc.TextFigure("most", textfile.Size(textfile.Most)))
		return nil, &FileError{File: file, Why: newSentence("file-unreadable", figures...).in(w, unit.US)}
	}
	return LoadIn(w, locale, data, file)
}

// Load is LoadIn in English, in no locale.
func Load(shop []byte, file string) (*Catalogue, error) {
	return LoadIn(words.English(), words.Locale{}, shop, file)
}

// LoadIn is the shipped catalogue with a shop's own TOML over it: an entry of the same
// name changes the values it gives and keeps the rest, a new name is added. Faults of
// the shop's file come as *FileError with file as its name.
func LoadIn(w *words.Words, locale words.Locale, shop []byte, file string) (*Catalogue, error) {
	shop = bytes.TrimPrefix(shop, []byte("\ufeff")) // some editors put a byte order mark first
	c := &Catalogue{words: w, locale: locale}
	var all entries
	for _, f := range shipped {
		if err := toml.Unmarshal(f.data, &all); err != nil {
			return nil, &FileError{File: f.name, Why: err.Error()}
		}
	}
	if len(shop) == 0 { // what is shipped is known to do: tests check it
		all.inherit()
		c.hold(&all)
		c.tolerate(all.Tolerance)
		for _, g := range c.Guns {
			if err := g.Of.build(); err != nil {
				return nil, err
			}
		}
		return c, nil
	}
	var err error
	if c.shop, err = readTables(file, shop, w); err != nil {
		return nil, err
	}
	var own entries
	if err := own.decode(&c.shop, w); err != nil {
		return nil, err
	}
	if err := all.decode(&c.shop, w); err != nil {
		return nil, err
	}
	if f := all.liken(&own, c.shop.root, w); f != nil {
		return nil, c.refuse(f)
	}
	all.claim(&own, w)
	all.inherit()
	c.hold(&all)
	c.own = own.Line
	if f := c.check(all.Tolerance); f != nil {
		return nil, c.refuse(f)
	}
	c.tolerate(all.Tolerance)
	return c, nil
}

// refuse is a fault of the shop's file, at the header of its entry.
func (c *Catalogue) refuse(f *fault) error {
	at := c.shop.place(f.table, f.id)
	return &FileError{c.shop.name, at.Line, at.Column, f.in(c.words, c.System())}
}

// hold makes the catalogue that of entries.
func (c *Catalogue) hold(e *entries) {
	c.Coats, c.Guns, c.Couplings = tableOf(KindCoat, e.Coat, c.words), tableOf(KindGun, e.Gun, c.words), tableOf(KindCoupling, e.Coupling, c.words)
	c.Hoses, c.Regulators, c.Filters = tableOf(KindHose, e.Hose, c.words), tableOf(KindRegulator, e.Regulator, c.words), tableOf(KindFilter, e.Filter, c.words)
	c.Dryers, c.Valves = tableOf(KindDryer, e.Dryer, c.words), tableOf(KindValve, e.Valve, c.words)
	c.bores, c.usual, c.line = tableOf("bore", e.Bore, c.words), tableOf("usual", e.Usual, c.words), e.Line
	c.stages = stagesOf(c.Coats, c.words)
	for id, x := range e.Gun {
		x.like = e.Gun[x.ClassOf(id)]
	}
}

// Words is the sentences of the catalogue's language.
func (c *Catalogue) Words() *words.Words { return c.words }
