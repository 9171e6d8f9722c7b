package shop

import (
	"encoding/json"
	"slices"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
)

// Record is a record of the log of a booth: a job, or what was said of one later.
type Record struct {
	ID    string
	Of    string // the id of the job that this says more of, empty for a job
	At    time.Time
	Booth string
	Subject
	Asked    map[string][]string // what was answered to the questions, by field
	Answered Values              // what the program said to set
	Set      Values              // what was really set
	Read     Values              // what the gauges really showed
	Outcome  []Outcome
	Then     Then
	Painter  string // an id, see Painters
	Note     string
}

// Outcome is how a coat came out, in the trade's words.
type Outcome string

// The outcomes.
const (
	Good    Outcome = "good"
	Dry     Outcome = "dry"
	Peel    Outcome = "peel"
	Runs    Outcome = "run"
	Sag     Outcome = "sag"
	Mottle  Outcome = "mottle"
	Dieback Outcome = "dieback"
	Popping Outcome = "popping"
	Dirt    Outcome = "dirt"
)

// Outcomes is all of them, in the order that they are offered.
func Outcomes() []Outcome {
	return []Outcome{Good, Dry, Peel, Runs, Sag, Mottle, Dieback, Popping, Dirt}
}

// Then is what had to be done about it.
type Then string

// What may have to be done; nothing is said where it is empty.
const (
	Nothing Then = "none"
	Polish  Then = "polish"
	Redo    Then = "redo"
)

// Thens is all of them, in the order that they are offered.
func Thens() []Then { return []Then{Nothing, Polish, Redo} }

// wireRecord is a record as its line holds it.
type wireRecord struct {
	Format   string              `json:"format"`
	ID       string              `json:"id"`
	Of       string              `json:"of,omitempty"`
	At       time.Time           `json:"at"`
	Coat     string              `json:"coat,omitempty"`
	Stage    string              `json:"stage,omitempty"`
	Gun      string              `json:"gun,omitempty"`
	Band     string              `json:"band,omitempty"`
	Asked    map[string][]string `json:"asked,omitempty"`
	Answered *wireValues         `json:"answered,omitempty"`
	Set      *wireValues         `json:"set,omitempty"`
	Read     *wireValues         `json:"read,omitempty"`
	Outcome  []Outcome           `json:"outcome,omitempty"`
	Then     Then                `json:"then,omitempty"`
	Painter  string              `json:"painter,omitempty"`
	Note     string              `json:"note,omitempty"`
}

// line is the record as a line of its file, ended.
func (r *Record) line(sys unit.System) ([]byte, error) {
	w := wireRecord{
		Format: recordFormat, ID: r.ID, Of: r.Of, At: r.At, Coat: r.Coat, Stage: r.Stage, Gun: r.Gun, Band: r.Band, Asked: r.Asked,
		Answered: wired(&r.Answered, sys), Set: wired(&r.Set, sys), Read: wired(&r.Read, sys),
		Outcome: r.Outcome, Then: r.Then, Painter: r.Painter, Note: r.Note,
	}
	data, err := json.Marshal(w)
	return append(data, '\n'), err
}

// wired is values as a file holds them, nil where nothing was said.
func wired(v *Values, sys unit.System) *wireValues {
	if *v == (Values{}) {
		return nil
	}
	w := v.wire(sys)
	return &w
}

// readRecord reads a line of a log; fault is why it is not used, without its place.
func readRecord(booth, file string, line []byte) (*Record, *Fault) {
	var w wireRecord
	switch {
	case isMergeMark(line):
		return nil, faultOf(file, Broken, "shop-merge-log")
	case json.Unmarshal(line, &w) != nil:
		return nil, faultOf(file, Broken, "shop-torn")
	}
	if f := formatFault(file, w.Format, recordFormat); f != nil {
		return nil, f
	}
	r := &Record{
		ID: w.ID, Of: w.Of, At: w.At, Booth: booth, Subject: Subject{shownName(w.Coat), shownName(w.Stage), shownName(w.Gun), shownName(w.Band)},
		Asked: shownTexts(w.Asked), Outcome: w.Outcome, Then: w.Then, Painter: shownName(w.Painter), Note: shownNote(w.Note),
	}
	if !isUUID(w.ID) || w.Of != "" && !isUUID(w.Of) || w.At.IsZero() {
		return nil, faultOf(file, Broken, "shop-record-lacks")
	}
	for i, o := range r.Outcome {
		if !slices.Contains(Outcomes(), o) {
			r.Outcome[i] = Outcome(shownName(string(o)))
			return r, faultOf(file, Told, "shop-outcome", calc.TextFigure("given", string(r.Outcome[i])))
		}
	}
	if r.Then != "" && !slices.Contains(Thens(), r.Then) {
		r.Then = Then(shownName(string(r.Then)))
		return r, faultOf(file, Told, "shop-outcome", calc.TextFigure("given", string(r.Then)))
	}
	for _, of := range []struct {
		wire *wireValues
		v    *Values
	}{{w.Answered, &r.Answered}, {w.Set, &r.Set}, {w.Read, &r.Read}} {
		if of.wire == nil {
			continue
		}
		v, key, given := valuesOf(of.wire)
		if key != "" {
			return nil, faultOf(file, Broken, "shop-value", calc.TextFigure("key", key), calc.TextFigure("given", shownName(given)))
		}
		*of.v = v
	}
	return r, nil
}

// shownTexts is answers by field as they may be shown.
func shownTexts(asked map[string][]string) map[string][]string {
	if asked == nil {
		return nil
	}
	all := make(map[string][]string, len(asked))
	for field, texts := range asked {
		for _, t := range texts {
			all[shownName(field)] = append(all[shownName(field)], shownName(t))
		}
	}
	return all
}
