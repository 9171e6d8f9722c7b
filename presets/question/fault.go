package question

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// Fault is an answer that will not do: which, what was given, and the sentence of what
// would do.
type Fault struct {
	Field, Given string
	ID           string // of the sentence
	calc.Figures
	words *words.Words
	sys   unit.System
}

// Want is what would do, in words.
func (f *Fault) Want() string { return f.words.Text(f.sys, f.ID, f.Figures) }

func (f *Fault) Error() string { return f.Called(f.Field) }

// Called is the fault with the field called by another name.
func (f *Fault) Called(name string) string {
	if f.Given == "" {
		return name + ": " + f.Want()
	}
	return name + " " + words.Quoted(f.Given) + ": " + f.Want()
}

// Fault is a fault of a field, or of what else a name says.
func (r *Reader) Fault(field, given string, sys unit.System, id string, f ...calc.Figure) *Fault {
	return &Fault{field, given, id, f, r.Words(), sys}
}

// names is the figure of answers to choose from.
func (r *Reader) names(ids []string) calc.Figure {
	return calc.TextFigure("names", r.Words().Listed(ids))
}
