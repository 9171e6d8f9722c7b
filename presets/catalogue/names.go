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
	seen := map[string]bool{strings.ToLower(id): true}
	for _, alias := range o.Aliases {
		lower := strings.ToLower(alias)
		whose := all[lower]
		switch {
		case alias == "" || alias != strings.TrimSpace(alias):
			return newSentence("file-plain-text")
		case lower == None:
			return newSentence("file-none")
		case whose != id || seen[lower]:
			return newSentence("file-alias", calc.GivenFigure("alias", alias), calc.GivenFigure("entry", whose))
		}
		seen[lower] = true
	}
	return basisFault(o.Basis, w)
}
