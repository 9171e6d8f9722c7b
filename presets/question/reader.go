package question

import (
	"errors"
	"strings"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/words"
)

// Reader reads what people type: it knows the catalogue, the shop's usual line, read, and
// the language.
type Reader struct {
	*catalogue.Catalogue
	usual  Answers // to the plan's fields
	learnt func(described *calc.Request) *calc.Learnt
}

// Open is the shipped catalogue with the shop's file over it, where there is one. Faults
// of that file come as *catalogue.FileError.
func Open(getenv func(string) string, w *words.Words) (*Reader, error) {
	c, err := catalogue.Open(getenv, w)
	if err != nil {
		return nil, err
	}
	return New(c)
}

// New reads the usual line of a catalogue.
func New(c *catalogue.Catalogue) (*Reader, error) {
	r := &Reader{Catalogue: c}
	if err := r.readUsual(); err != nil {
		return nil, err
	}
	return r, nil
}

// ReadAll reads the texts of a question's fields. What cannot be read is among the answers
// with its fault.
func (r *Reader) ReadAll(q *Question, t Texts, sys unit.System) (a Answers) {
	for _, row := range q.Fields {
		for _, s := range t[row.Name] {
			values := r.ReadText(row.Field, s, sys)
			if row.Repeats && len(values) == 0 { // another one was begun, and not given
				values = []Value{r.Read(row.Field, "", sys)}
			}
			if len(values) > 0 {
				a.add(row.Name, values...)
			}
		}
	}
	return a
}

// ReadText reads the text of a field: several values with "+" between where it repeats,
// none where it is empty.
func (r *Reader) ReadText(f *Field, t string, sys unit.System) []Value {
	if !f.Repeats {
		if t == "" {
			return nil
		}
		return []Value{r.Read(f, t, sys)}
	}
	var all []Value
	for _, one := range strings.Split(unit.Fold(t), "+") {
		if one = strings.TrimSpace(one); one != "" {
			all = append(all, r.Read(f, one, sys))
		}
	}
	return all
}

// Read reads one value of a field, a bare number in the system's unit. Its text has plain
// characters for those that only look otherwise.
func (r *Reader) Read(f *Field, t string, sys unit.System) Value {
	plain := unit.Fold(t)
	v := f.Read(r, f, plain, sys)
	v.Text = plain
	if v.Fault != nil && v.Fault.Given == plain {
		v.Fault.Given = t
	}
	return v
}

// Check is what is wrong with a field's values by themselves, nil where nothing is: they
// cannot be read, or lie outside the field's bounds.
func (r *Reader) Check(f *Field, values []Value, sys unit.System) *Fault {
	if len(values) == 0 && !f.Optional() && !r.usual.Has(f) {
		return r.missing(f, sys)
	}
	for i := range values {
		v := &values[i]
		if v.Fault != nil {
			return v.Fault
		}
		if v.ID != "" {
			continue
		}
		for n, b := range f.Bounds {
			if b != nil && b.ID != "" && !b.Holds(v.SI[n]) {
				return r.Fault(f.Name, TextOf(values), sys, b.ID, b.Figures(v.SI[n])...)
			}
		}
	}
	return nil
}

// missing is the fault of a field that must be answered and was not.
func (r *Reader) missing(f *Field, sys unit.System) *Fault {
	if f.Missing != "" {
		return r.Fault(f.Name, "", sys, f.Missing)
	}
	return f.Read(r, f, "", sys).Fault
}

// Refused is an error of solving as the fault of an answer, where it is one. Another error
// stays as it is.
func (r *Reader) Refused(err error, a Answers, sys unit.System) error {
	var p *calc.Problem
	var outside *coat.OutOfRange
	switch {
	case errors.As(err, &p):
		return r.problem(p, a, sys)
	case errors.As(err, &outside): // what an answer leads to, beyond what the models hold for
		id, figures := calc.SentenceOf(err)
		return r.problem(&calc.Problem{Field: outside.Quantity, ID: id, Figures: figures}, a, sys)
	}
	return err
}

func (r *Reader) problem(p *calc.Problem, a Answers, sys unit.System) *Fault {
	return r.Fault(p.Field, TextOf(a.of(p.Field)), sys, p.ID, p.Figures...)
}
