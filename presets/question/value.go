package question

import (
	"slices"
	"strings"

	"boothset/calc/coat"
)

// Value is an answer as it was read.
type Value struct {
	Text string // as typed
	ID   string // of a list's entry or option, of a cup, of a panel of usual size
	// SI is its quantities, its count, a clock's seconds since midnight, the ends of a range.
	SI   [2]float64
	Word bool // the field's SecondWord was typed
	// Bare: which of its quantities named no unit.
	Bare  [2]bool
	Ratio coat.Ratio // of a mixing ratio
	Kind  string     // of a part of a line
	Seen  *Seen      // of a reading of the gauges
	// Assumed: it was not read or known, but taken to be usual, or of the day's readings to be
	// as on another day.
	Assumed bool
	// Fault is why the text could not be read, nil where it was.
	Fault *Fault
}

// Answer is what was answered to a field.
type Answer struct {
	Field  string
	Values []Value // one but for a field that repeats
}

// Answers is what was answered to a question. It is a value: With and its like leave it as
// it was.
type Answers struct{ list []Answer }

// Get is the values of a field, none where it was not answered.
func (a Answers) Get(f *Field) []Value { return a.of(f.Name) }

// of is the values of the field of a name.
func (a Answers) of(name string) []Value {
	for i := range a.list {
		if a.list[i].Field == name {
			return a.list[i].Values
		}
	}
	return nil
}

// One is the value of a field that does not repeat.
func (a Answers) One(f *Field) (Value, bool) {
	if all := a.Get(f); len(all) > 0 {
		return all[0], true
	}
	return Value{}, false
}

// ID is the entry or option that a field was answered with, empty where it was not.
func (a Answers) ID(f *Field) string {
	v, _ := a.One(f)
	return v.ID
}

// Has reports whether a field was answered.
func (a Answers) Has(f *Field) bool { return len(a.Get(f)) > 0 }

// Text is a field's values as text, " + " between several.
func (a Answers) Text(f *Field) string { return TextOf(a.Get(f)) }

// TextOf is values as one text.
func TextOf(all []Value) string {
	switch len(all) {
	case 0:
		return ""
	case 1:
		return all[0].Text
	}
	texts := make([]string, len(all))
	for i := range all {
		texts[i] = all[i].Text
	}
	return strings.Join(texts, Between)
}

// Between parts the values of a field that repeats, in one text.
const Between = " + "

// add puts values to a field in place.
func (a *Answers) add(name string, values ...Value) {
	for i := range a.list {
		if a.list[i].Field == name {
			a.list[i].Values = append(a.list[i].Values, values...)
			return
		}
	}
	a.list = append(a.list, Answer{name, values})
}

// With is the answers with a field answered anew, or not at all where there are no values.
func (a Answers) With(f *Field, values ...Value) Answers {
	list := make([]Answer, 0, len(a.list)+1)
	placed := len(values) == 0
	for _, x := range a.list {
		switch {
		case x.Field != f.Name:
			list = append(list, x)
		case !placed:
			list, placed = append(list, Answer{f.Name, values}), true
		}
	}
	if !placed {
		list = append(list, Answer{f.Name, values})
	}
	return Answers{list}
}

// WithValue is the answers with one of a field's values replaced.
func (a Answers) WithValue(f *Field, at int, v Value) Answers {
	values := slices.Clone(a.Get(f))
	if at >= len(values) {
		values = append(values, v)
	} else {
		values[at] = v
	}
	return a.With(f, values...)
}

// Or is the answers with those of others where they have none. Where either says the line as
// a list of its parts, nothing of the others' usual line counts.
func (a Answers) Or(others Answers) Answers {
	list := append(make([]Answer, 0, len(a.list)+len(others.list)), a.list...)
	whole := Whole(a) || !a.Has(Line) && Whole(others)
	for _, x := range others.list {
		if whole && ofUsualLine(x.Field) {
			continue
		}
		if !slices.ContainsFunc(a.list, func(y Answer) bool { return y.Field == x.Field }) {
			list = append(list, x)
		}
	}
	return Answers{list}
}

// Of is the answers to the fields of a question alone.
func (a Answers) Of(q *Question) (of Answers) {
	for _, x := range a.list {
		if _, ok := q.Field(x.Field); ok {
			of.list = append(of.list, x)
		}
	}
	return of
}

// Empty reports whether nothing was answered.
func (a Answers) Empty() bool { return len(a.list) == 0 }

// Texts is answers as text, by field: what is typed, kept and sent.
type Texts map[string][]string

// Texts is the answers as text.
func (a Answers) Texts() Texts {
	t := Texts{}
	for _, x := range a.list {
		for _, v := range x.Values {
			t[x.Field] = append(t[x.Field], v.Text)
		}
	}
	return t
}
