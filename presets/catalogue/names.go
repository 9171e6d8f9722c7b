package catalogue

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/presets/words"
)

// names is whose each name is that an entry of a kind may be called by, ids and aliases
// alike, in small letters; of a name that several have, the first by id.
type names map[string]string

func namesOf[E based](t Table[E]) names {
	all := names{}
	add := func(name, id string) {
		name = strings.ToLower(name)
		if _, taken := all[name]; !taken {
			all[name] = id
		}
	}
	sorted := t.byID()
	for _, e := range sorted {
		add(e.ID, e.ID)
	}
	for _, e := range sorted {
		for _, alias := range e.Of.base().Aliases {
			add(alias, e.ID)
		}
	}
	return all
}

// check says what is wrong with what every entry has; all is the names of its kind.
func (o *origin) check(id string, all names, w *words.Words) *sentence {
	switch {
	case id == "" || !plainText(slices.Concat([]string{id, o.Name, w.Say(o.Source)}, o.Aliases, o.Shared)):
		return newSentence("file-plain-text")
	case id == None:
		return newSentence("file-none")
	}
	for i, alias := range o.Aliases {
		same := func(name string) bool { return strings.EqualFold(name, alias) }
		whose := all[strings.ToLower(alias)]
		switch {
		case alias == "" || alias != strings.TrimSpace(alias):
			return newSentence("file-plain-text")
		case same(None):
			return newSentence("file-none")
		case whose != id || same(id) || slices.ContainsFunc(o.Aliases[:i], same):
			return newSentence("file-alias", calc.TextFigure("alias", alias), calc.TextFigure("entry", whose))
		}
	}
	return basisFault(o.Basis, w)
}
