package shop

import (
	"fmt"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// Weight is what a fault costs.
type Weight uint8

// The weights.
const (
	Told   Weight = iota // nothing: it is only told
	Mend                 // something in the folder is to be mended or agreed anew; all of it is read
	Broken               // the file, or a line of the log: it is not used
)

// Fault is something of a file that will not do, or that a person should know.
type Fault struct {
	File         string // in the folder, parted by slashes, as it may be shown
	Line, Column int    // from 1; 0 where the whole file is meant
	Weight       Weight
	ID           string // of its sentence
	calc.Figures
}

// Where is the file and the line.
func (f *Fault) Where() string {
	switch {
	case f.Line == 0:
		return f.File
	case f.Column == 0:
		return fmt.Sprintf("%s:%d", f.File, f.Line)
	}
	return fmt.Sprintf("%s:%d:%d", f.File, f.Line, f.Column)
}

// In is the fault in a language.
func (f *Fault) In(w *words.Words) string {
	return f.Where() + ": " + w.Text(unit.US, f.ID, f.Figures)
}

func (f *Fault) Error() string { return f.In(words.English()) }

// faultOf is a fault of a whole file.
func faultOf(file string, weight Weight, id string, f ...calc.Figure) *Fault {
	return &Fault{File: shown(file), Weight: weight, ID: id, Figures: f}
}

// at is the fault at a place.
func (f *Fault) at(line, column int) *Fault {
	f.Line, f.Column = line, column
	return f
}

// shown is the name of a file as it may be shown.
func shown(file string) string { return words.Path(strings.ReplaceAll(file, `\`, "/")) }

// costs reports whether any of faults costs the file.
func costs(faults []*Fault) bool {
	for _, f := range faults {
		if f.Weight == Broken {
			return true
		}
	}
	return false
}
