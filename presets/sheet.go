package presets

import (
	"maps"
	"slices"
	"strings"
)

// Sheet is what was typed for one of the coat's own questions, field by field: the day,
// the thinning, the film, the material. Fields that a plan has too carry the same names,
// so that what was typed for one serves the other. A field that holds several parts them
// by "+".
type Sheet map[string]Typed

// Field is a field that a question takes.
type Field struct {
	Name  string
	Usage string // the id of its usage, in which the value's name stands in back quotes
	List  bool   // may be given more than once
}

// Add puts another value into a field that is a list.
func (s Sheet) Add(field string, v Typed) {
	if s[field] != "" {
		v = s[field] + " + " + v
	}
	s[field] = v
}

// list is the values of a field that is a list.
func (s Sheet) list(field string) []Typed { return parted(string(s[field])) }

// parted is the values that text holds with "+" between them.
func parted(text string) (all []Typed) {
	for _, t := range strings.Split(text, "+") {
		if t = strings.TrimSpace(t); t != "" {
			all = append(all, Typed(t))
		}
	}
	return all
}

// Field is the text of a field.
func (s Sheet) Field(field string) string { return string(s[field]) }

// Unknown is the first field by name that fields do not have, empty where there is none.
func (s Sheet) Unknown(fields []Field) string {
	for _, name := range slices.Sorted(maps.Keys(s)) {
		if !slices.ContainsFunc(fields, func(f Field) bool { return f.Name == name }) {
			return name
		}
	}
	return ""
}
