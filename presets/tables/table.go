package tables

import "boothset/calc"

// Place is a place in a file, from 1; 0 where it is not known.
type Place struct{ Line, Column int }

// Fault is a text that cannot be read as tables: where, and the sentence of why, with what
// would do.
type Fault struct {
	At Place
	ID string
	calc.Figures
}

// Table is a table of a file.
type Table struct {
	At    Place    // of its header, else of the first key in it
	Names []string // of its keys, in the order of the file
	of    map[string]*Value
	made  making
}

// Value is what stands at a key, or in a list.
type Value struct {
	Key, At Place // At is where the value begins, Key its key; alike in a list
	// Text is a string, and what else is no table and no list as the file spells it.
	Text string
	// Of is a string, int64, float64, bool, List, *Table, or a Date.
	Of any
}

// List is the values of a list.
type List []*Value

// Date is a day or a time of day, of which the text is all that there is.
type Date struct{}

// making is how a table came to be, which says what may still be put into it.
type making int

const (
	byHeader  making = iota // [it]
	onTheWay                // [it.below], and perhaps [it] to come
	byDots                  // it.key = value
	inOnePart               // it = { key = value }
)

// Get is the value at a key, nil where there is none. A nil table has none.
func (t *Table) Get(name string) *Value {
	if t == nil {
		return nil
	}
	return t.of[name]
}

// Table is the table at a key, nil where there is none.
func (t *Table) Table(name string) *Table {
	if v := t.Get(name); v != nil {
		below, _ := v.Of.(*Table)
		return below
	}
	return nil
}

func (t *Table) put(name string, v *Value) {
	if t.of == nil {
		t.of = map[string]*Value{}
	}
	t.of[name] = v
	t.Names = append(t.Names, name)
}

// below puts a new table at a key.
func (t *Table) below(name string, at Place, made making) *Table {
	sub := &Table{At: at, made: made}
	t.put(name, &Value{Key: at, At: at, Of: sub})
	return sub
}
