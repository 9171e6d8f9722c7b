// Package signs holds what bad spray looks like, what it is due to and what to look at, as data
// that calc/trouble works with, and finds a sign by what it is called in any language.
//
//	ids := signs.Search(w, "naranja") // orange-peel
//	r := signs.Book().Rank(&trouble.Known{Signs: ids})
package signs

import (
	_ "embed"
	"sync"
	"time"

	"boothset/calc"
	"boothset/calc/trouble"
	"boothset/presets/tables"
)

//go:embed signs.toml
var file []byte

// Drawn is what a sign leaves on paper or on a panel: the numbers of a picture of it, each as
// tui/draw.Pattern has it.
type Drawn struct{ Wide, High, Wet, Ends, Lean, Bend, Sputter float64 }

// even is the pattern of a gun that sprays well: what a sign's own numbers are laid over.
var even = Drawn{Wide: 0.6, High: 0.9, Wet: 0.7}

// shipped is the file, read.
type shipped struct {
	book  trouble.Book
	drawn map[string]Drawn
	also  map[string][]string // what else a sign is called, by its id
}

// read reads what ships, once; tests hold that it can be read and holds together.
var read = sync.OnceValue(func() *shipped {
	root, _ := tables.Read(file)
	s := &shipped{drawn: map[string]Drawn{}, also: map[string][]string{}}
	b := &s.book
	b.Raised, b.Lowered, b.Odd = map[string][]string{}, map[string][]string{}, map[string][]string{}
	each(root.Table("sign"), func(id string, t *tables.Table) {
		b.Signs = append(b.Signs, signOf(id, t))
		s.drawn[id] = drawnOf(t.Table("draw"))
		s.also[id] = append(list(t, "en"), list(t, "es")...)
	})
	each(root.Table("cause"), func(id string, t *tables.Table) {
		move := trouble.MoveSaid
		if m := text(t, "move"); m != "" {
			move = trouble.Move(m)
		}
		b.Causes = append(b.Causes, trouble.Cause{ID: id, Move: move})
	})
	each(root.Table("check"), func(id string, t *tables.Table) { b.Checks = append(b.Checks, checkOf(id, t)) })
	each(root.Table("fact"), func(id string, t *tables.Table) {
		b.Raised[id], b.Lowered[id] = list(t, "raises"), list(t, "lowers")
	})
	odd := root.Table("odd")
	for _, kind := range odd.Names {
		b.Odd[kind] = list(odd, kind)
	}
	return s
})

// Book is every sign, cause and check.
func Book() *trouble.Book { return &read().book }

// DrawnOf is what a sign leaves on paper or on a panel; of what is no sign it is an even pattern.
func DrawnOf(id string) Drawn {
	if d, is := read().drawn[id]; is {
		return d
	}
	return even
}

func each(t *tables.Table, do func(id string, t *tables.Table)) {
	for _, id := range t.Names {
		do(id, t.Table(id))
	}
}

func signOf(id string, t *tables.Table) trouble.Sign {
	s := trouble.Sign{ID: id, Wet: text(t, "wet"), Ground: calc.Ground{Basis: calc.Basis(text(t, "basis")), Source: text(t, "source")}}
	for _, of := range bands {
		for _, cause := range list(t, of.key) {
			s.Causes = append(s.Causes, trouble.Likely{Cause: cause, Band: of.band})
		}
	}
	return s
}

// bands is the keys that a sign's causes stand under, the likeliest first.
var bands = []struct {
	key  string
	band trouble.Band
}{{"usual", trouble.Usual}, {"often", trouble.Often}, {"seldom", trouble.Seldom}}

// trusts is how a check's trust is called.
var trusts = map[string]trouble.Trust{"": trouble.Sure, "fair": trouble.Fair}

func checkOf(id string, t *tables.Table) trouble.Check {
	c := trouble.Check{ID: id, Trust: trusts[text(t, "trust")]}
	c.Takes, _ = time.ParseDuration(text(t, "takes"))
	for _, finding := range list(t, "finds") {
		c.Findings = append(c.Findings, trouble.Finding{ID: finding, Shows: list(t, finding)})
	}
	return c
}

// drawnOf lays a sign's own numbers over those of an even pattern.
func drawnOf(t *tables.Table) Drawn {
	d := even
	for key, to := range map[string]*float64{"wide": &d.Wide, "high": &d.High, "wet": &d.Wet, "ends": &d.Ends, "lean": &d.Lean, "bend": &d.Bend, "sputter": &d.Sputter} {
		if v := t.Get(key); v != nil {
			*to, _ = v.Of.(float64)
		}
	}
	return d
}

// text is the text at a key, empty where there is none.
func text(t *tables.Table, key string) string {
	if v := t.Get(key); v != nil {
		return v.Text
	}
	return ""
}

// list is the texts of the list at a key, none where there is none.
func list(t *tables.Table, key string) (all []string) {
	if v := t.Get(key); v != nil {
		of, _ := v.Of.(tables.List)
		for _, one := range of {
			all = append(all, one.Text)
		}
	}
	return all
}
