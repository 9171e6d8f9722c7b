package question

import (
	"errors"
	"slices"
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
	usual Answers // to the plan's fields
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
	if c.HasShop() {
		if err := r.checkKeys(); err != nil {
			return nil, err
		}
	}
	sys := c.System()
	for _, row := range Plan.Fields {
		if !row.OfShop() {
			continue
		}
		texts, ok := c.Usual(row.Name)
		if !ok || len(texts) > 1 && !row.Repeats {
			return nil, c.LineFault(row.Name, r.Fault(row.Name, "", sys, "file-key-takes", text("key", "line."+row.Name), sentence("what", lineTakes(row.Field))).Want())
		}
		for _, t := range texts {
			v := r.Read(row.Field, t, sys)
			switch {
			case v.Fault != nil:
				return nil, c.LineFault(row.Name, ofLine(v.Fault))
			case r.bareInFile(row.Field, &v):
				return nil, c.LineFault(row.Name, ofLine(r.Fault(row.Name, t, sys, "file-units")))
			}
			r.usual.add(row.Name, v)
		}
	}
	if c.HasShop() {
		if f := r.checkLine(sys); f != nil {
			return nil, c.LineFault(f.Field, ofLine(f))
		}
	}
	return r, nil
}

// ofLine is what is wrong with the shop's usual line.
func ofLine(f *Fault) string { return f.Called("line: " + f.Field) }

// bareInFile reports whether a value named no unit where that would make it one thing in
// one system and another in the other.
func (r *Reader) bareInFile(f *Field, v *Value) bool {
	for i, q := range f.Of {
		if q != nil && v.Bare[i] && q.Unit(unit.US) != q.Unit(unit.Metric) {
			return true
		}
	}
	return false
}

// lineTakes is the sentence of what a key of the shop's line holds.
func lineTakes(f *Field) string {
	if f.Repeats {
		return "takes-texts"
	}
	return "takes-text"
}

// checkKeys refuses what the shop's line has no place for, and units that are none.
func (r *Reader) checkKeys() error {
	known := []string{catalogue.UnitsKey}
	for _, row := range Plan.Fields {
		if row.OfShop() {
			known = append(known, row.Name)
		}
	}
	for _, key := range r.LineKeys() {
		if !slices.Contains(known, key) {
			return r.LineFault(key, r.Fault("", "", unit.US, "file-unknown-key", text("key", "line."+key), r.names(known)).Want())
		}
	}
	systems := []string{catalogue.UnitsUS, catalogue.UnitsMetric}
	if units, ok := r.Catalogue.Usual(catalogue.UnitsKey); !ok || len(units) > 0 && !slices.Contains(append(systems, ""), units[0]) {
		return r.LineFault(catalogue.UnitsKey, r.Fault(catalogue.UnitsKey, strings.Join(units, ""), unit.US, "choose", r.names(systems)).Called("line: "+catalogue.UnitsKey))
	}
	return nil
}

// checkLine resolves the shop's usual line with a coat, a gun and a day, so that a fault
// in it shows at once.
func (r *Reader) checkLine(sys unit.System) *Fault {
	a := r.usual
	coat, gun := r.goTogether("", "")
	for f, t := range map[*Field]string{Coat: coat, Gun: gun, Temp: "20C", Humidity: "50", Supply: "100psi"} {
		if !a.Has(f) {
			a = a.With(f, r.Read(f, t, sys))
		}
	}
	if _, faults := r.Plan(a, sys); len(faults) > 0 {
		return faults[0]
	}
	return nil
}

// Usual is the shop's usual answers.
func (r *Reader) Usual() Answers { return r.usual }

// UsualFor is the shop's usual answer to a field as text, with its units named.
func (r *Reader) UsualFor(f *Field) string { return r.Completed(f, r.usual.Get(f), r.System()).text }

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
	for _, one := range strings.Split(t, "+") {
		if one = strings.TrimSpace(one); one != "" {
			all = append(all, r.Read(f, one, sys))
		}
	}
	return all
}

// Read reads one value of a field, a bare number in the system's unit.
func (r *Reader) Read(f *Field, t string, sys unit.System) Value {
	v := f.Read(r, f, t, sys)
	v.Text = t
	return v
}

// Check is what is wrong with a field's values by themselves, nil where nothing is: they
// cannot be read, or lie outside the field's bounds.
func (r *Reader) Check(f *Field, values []Value, sys unit.System) *Fault {
	if len(values) == 0 && (f.Default == Required || f.Default == ShopOrAsk) && !r.usual.Has(f) {
		return r.Read(f, "", sys).Fault
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
			if b != nil && !b.Holds(v.SI[n]) {
				return r.Fault(f.Name, v.Text, sys, b.ID, b.Figures(v.SI[n])...)
			}
		}
	}
	return nil
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
	return r.Fault(p.Field, a.Text(&Field{Name: p.Field}), sys, p.ID, p.Figures...)
}

// sentence is a figure that is another sentence.
func sentence(name, id string) calc.Figure {
	return calc.Figure{Name: name, Kind: calc.FigureSentence, Text: id}
}
