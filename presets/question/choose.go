package question

import (
	"cmp"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
)

// What can be chosen besides the catalogue's entries.
const (
	None     = catalogue.None
	AtWall   = "wall"
	AtGun    = "gun"
	InHandle = "handle"
	AtFoot   = "foot"
)

// choice reads an answer that is chosen from a list: by its id, or by what else the
// catalogue calls it, in any case of letters. To a name that several have, it is asked which.
func choice(r *Reader, f *Field, t string, sys unit.System) Value {
	if id, ok := r.entry(f, t); ok {
		return Value{ID: id}
	}
	if which := r.sharing(f, t); len(which) > 0 {
		return r.wanted(f, t, sys, "which-entry", r.names(which))
	}
	all := r.names(r.ids(f))
	if near := r.nearest(f, t); near != "" {
		return r.wanted(f, t, sys, "choose-nearest", all, calc.TextFigure("nearest", near))
	}
	return r.wanted(f, t, sys, "choose", all)
}

// option is the field's option that a text names.
func (r *Reader) option(f *Field, t string) (string, bool) {
	for _, id := range f.Options {
		if strings.EqualFold(id, strings.TrimSpace(t)) {
			return id, true
		}
	}
	return "", false
}

// sameName is whether a name is a text, in any case of letters, with blanks for hyphens.
func sameName(t string) func(name string) bool {
	t = strings.TrimSpace(t)
	hyphened := strings.ReplaceAll(t, " ", "-")
	return func(name string) bool { return strings.EqualFold(name, t) || strings.EqualFold(name, hyphened) }
}

// sharing is the entries that a text names together.
func (r *Reader) sharing(f *Field, t string) (ids []string) {
	same := sameName(t)
	r.IDs(f.Entries, func(id string, _, shared []string) bool {
		if slices.ContainsFunc(shared, same) {
			ids = append(ids, id)
		}
		return true
	})
	return ids
}

// entry is the entry or option that a text names: first by its exact id, then by its id or
// an alias in any case of letters.
func (r *Reader) entry(f *Field, t string) (found string, ok bool) {
	t = strings.TrimSpace(t)
	var folded string
	same := sameName(t)
	r.IDs(f.Entries, func(id string, aliases, _ []string) bool {
		switch {
		case id == t:
			found = id
		case folded == "" && (same(id) || slices.ContainsFunc(aliases, same)):
			folded = id
		}
		return found == ""
	})
	if found = cmp.Or(found, folded); found != "" {
		return found, true
	}
	return r.option(f, t)
}

// ids is everything that may be chosen.
func (r *Reader) ids(f *Field) (ids []string) {
	r.IDs(f.Entries, func(id string, _, _ []string) bool { ids = append(ids, id); return true })
	return append(ids, f.Options...)
}

// Expand is the id that a beginning of one stands for, where it is of no other; the text
// itself elsewhere. It is for the command line, where a hand types.
func (r *Reader) Expand(f *Field, t string) string {
	if f == Line {
		kind, entry, ok := cutPart(t)
		if of := PartField(kind); ok && of != nil {
			return kind + "=" + r.Expand(of, entry)
		}
		return t
	}
	if !f.Listed() || t == "" {
		return t
	}
	if _, exact := r.entry(f, t); exact {
		return t
	}
	var found []string
	begins := func(name string) bool {
		return len(name) >= len(t) && strings.EqualFold(name[:len(t)], t)
	}
	r.IDs(f.Entries, func(id string, aliases, shared []string) bool {
		if begins(id) || slices.ContainsFunc(aliases, begins) || slices.ContainsFunc(shared, begins) {
			found = append(found, id)
		}
		return true
	})
	for _, id := range f.Options {
		if begins(id) {
			found = append(found, id)
		}
	}
	if len(found) == 1 {
		return found[0]
	}
	return t
}

// Choices is what may be answered to a field that is chosen from a list, nil for one that
// is typed.
func (r *Reader) Choices(f *Field) []catalogue.Choice {
	if !f.Listed() {
		return nil
	}
	var options []catalogue.Choice
	for _, id := range f.Options {
		say := "choice-" + f.Name + "-" + id
		if f.SayOption != nil {
			say = f.SayOption(id)
		}
		options = append(options, catalogue.Choice{ID: id, Name: r.Words().Say(say)})
	}
	entries := r.Catalogue.Choices(f.Entries)
	if f.OptionsFirst {
		return append(options, entries...)
	}
	return append(entries, options...)
}

// Called is an answer as a person reads it: the name of an entry, or its text.
func (r *Reader) Called(f *Field, v Value) string {
	for _, c := range r.Choices(f) {
		if c.ID == v.ID {
			return c.Name
		}
	}
	return v.Text
}
