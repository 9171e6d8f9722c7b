package shop

import (
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
)

// Booth is a booth as its file describes it.
type Booth struct {
	ID   string
	Name string // its id where the file gives none
	// Answers is what the file answers of the shop's usual line, by the fields of the questions.
	Answers question.Answers
	// Draught is how fast the air of the booth passes the panel; 0 where it is not said.
	Draught unit.Speed
	// FilterChanged and GaugeChecked are when that was last done.
	FilterChanged, GaugeChecked Date
	Notes                       string
	Retired                     bool // no longer offered
}

// The keys of a booth that are no fields of a question.
const (
	keyName          = "name"
	keyNotes         = "notes"
	keyRetired       = "retired"
	keyDraught       = "draught"
	keyFilterChanged = "filter-changed"
	keyGaugeChecked  = "gauge-checked"
)

// mostDraught is far above what a booth's fans move over a panel; codes ask for some 0.5 m/s,
// from memory.
const mostDraught = unit.Speed(5)

// Booth reads a booth by its id. It is nil where a fault costs it, or where there is none.
func (f *Folder) Booth(r *question.Reader, id string) (*Booth, []*Fault) {
	return one(f, boothsDir, id, func(file string, data []byte) (*Booth, []*Fault) { return ReadBooth(r, id, file, data) })
}

// Booths reads every booth, in the order of their ids. One that will not do is left out, with
// its faults among the others'.
func (f *Folder) Booths(r *question.Reader) ([]*Booth, []*Fault) {
	return all(f, boothsDir, func(id string) (*Booth, []*Fault) { return f.Booth(r, id) })
}

// BoothIDs is the ids that booths' files are called by.
func (f *Folder) BoothIDs() []string {
	ids, _ := f.ids(boothsDir)
	return ids
}

// one reads the file of an id.
func one[T any](f *Folder, dir, id string, read func(file string, data []byte) (*T, []*Fault)) (*T, []*Fault) {
	if !IsID(id) {
		return nil, []*Fault{faultOf(dir, Broken, "shop-id", calc.TextFigure("given", shownName(id)), calc.CountFigure("most", mostID))}
	}
	file := fileOf(dir, id)
	data, found, fault := f.read(file)
	switch {
	case fault != nil:
		return nil, []*Fault{fault}
	case !found:
		return nil, nil
	}
	v, faults := read(file, data)
	if costs(faults) {
		return nil, faults
	}
	return v, faults
}

// all reads every file of a folder that has an id for its name.
func all[T any](f *Folder, dir string, read func(id string) (*T, []*Fault)) (list []*T, faults []*Fault) {
	ids, fault := f.ids(dir)
	if fault != nil {
		faults = append(faults, fault)
	}
	for _, id := range ids {
		v, wrong := read(id)
		faults = append(faults, wrong...)
		if v != nil {
			list = append(list, v)
		}
	}
	return list, faults
}

// ReadBooth reads a booth from its file's contents; file is its name for faults.
func ReadBooth(r *question.Reader, id, file string, data []byte) (*Booth, []*Fault) {
	d := parse(file, data, boothFormat)
	if costs(d.faults) {
		return nil, d.faults
	}
	b := &Booth{ID: id, Name: d.name(id), Notes: shownNote(d.text(keyNotes)), Retired: d.flag(keyRetired)}
	b.Draught = d.speed(keyDraught)
	b.FilterChanged, b.GaugeChecked = d.date(keyFilterChanged), d.date(keyGaugeChecked)
	b.Answers = d.answers(r, question.ShopFields())
	if !costs(d.faults) {
		d.resolves(r, b.Answers)
	}
	d.strangers()
	return b, d.faults
}

// name is what the file calls what it describes, else its id.
func (d *document) name(id string) string {
	if name := strings.TrimSpace(shownName(d.text(keyName))); name != "" {
		return name
	}
	return id
}

// speed is the speed of a key, with its unit; 0 where it has none.
func (d *document) speed(key string) unit.Speed {
	given := d.text(key)
	if given == "" {
		return 0
	}
	v, err := unit.Parse[unit.Speed](unit.Velocity, given, unit.Named)
	if err != nil || !(v >= 0 && v <= mostDraught) {
		d.wrong(key, Broken, "shop-draught", calc.TextFigure("given", shownName(given)))
		return 0
	}
	return v
}

// answers reads the keys that are fields of a question. Each value must say the same whoever
// reads it, in psi or in bar.
func (d *document) answers(r *question.Reader, fields []*question.Field) question.Answers {
	var a question.Answers
	for _, f := range fields {
		var texts []string
		if f.Repeats {
			texts = d.texts(f.Name)
		} else if t := d.text(f.Name); t != "" {
			texts = []string{t}
		}
		values := make([]question.Value, len(texts))
		for i, t := range texts {
			t = shownNote(t)
			values[i] = r.Read(f, t, unit.US)
			if metric := r.Read(f, t, unit.Metric); values[i].Fault == nil && metric.SI != values[i].SI {
				values[i].Fault = r.Fault(f.Name, t, unit.US, "file-units")
			}
		}
		if len(values) == 0 {
			continue
		}
		if fault := r.Check(f, values, unit.US); fault != nil {
			d.answerFault(fault)
			continue
		}
		a = a.With(f, values...)
	}
	return a
}

// answerFault is a fault of a field as one of the file.
func (d *document) answerFault(f *question.Fault) {
	d.wrong(f.Field, Broken, "shop-answer", calc.TextFigure("why", shownNote(f.Error())))
}

// resolves tells what keeps a booth's answers from being those of a job, with a coat, a gun
// and a day.
func (d *document) resolves(r *question.Reader, a question.Answers) {
	if twice := r.SaidTwice(a, unit.US); twice != nil {
		d.answerFault(twice)
		return
	}
	over := r.Over(a)
	if _, faults := over.Plan(over.AnyJob(), unit.US); len(faults) > 0 {
		d.answerFault(faults[0])
	}
}
