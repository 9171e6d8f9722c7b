package tui

import (
	"slices"

	"boothset/calc"
	"boothset/presets/question"
)

// The steps that ask for several fields on one page.
const (
	stepDay   = "day"
	stepAir   = "air"
	stepSheet = "sheet"
)

// What the page of the air asks besides fields, by the names that its sentences are under.
const (
	stepLine  = "line"  // whether the line is as it is shown
	stepCheck = "check" // whether the supply is checked
)

// pageOf is the step that a part's fields are asked for in together.
var pageOf = map[question.Part]string{question.PartDay: stepDay, question.PartAir: stepAir, question.PartSheet: stepSheet}

// step is one thing that is asked, or several on one page. Its sentences are under ask-, why-,
// short- and empty- and its id.
type step struct {
	id    string // the field's name, or that of the page
	part  question.Part
	field *question.Field // nil where it is a page
	rows  []question.Row  // of a page
}

// stepsOf is every step of a question in order: its fields that the assistant asks for, those
// of a page together where the first of them stands. Behind the supply's pressure the line is
// shown, and at the end of the air the check of the supply is offered.
func stepsOf(q *question.Question) (all []step) {
	for _, row := range q.Fields {
		id := pageOf[row.Part]
		at := slices.IndexFunc(all, func(st step) bool { return st.id == id })
		switch {
		case row.Part == "":
		case id == "":
			all = append(all, step{id: row.Name, part: row.Part, field: row.Field})
		case at < 0:
			all = append(all, step{id: id, part: row.Part, rows: []question.Row{row}})
		default:
			all[at].rows = append(all[at].rows, row)
		}
	}
	for i := range all {
		if st := &all[i]; st.id == stepAir {
			st.rows = append(slices.Insert(st.rows, 1, question.Row{Field: wayField}), question.Row{Field: checkField})
		}
	}
	return all
}

// typed reports whether a step is typed, not picked from a list, whose names speak for
// themselves.
func (st *step) typed() bool { return st.field != nil && !st.field.Listed() }

// optional reports whether a step may be left empty where the shop has no usual.
func (st *step) optional() bool { return st.field != nil && st.field.Optional() }

// sentence is one of the step's sentences by what those of a field begin with.
func (s *session) sentence(st *step, prefix string) string { return s.say(prefix + st.id) }

// asked reports whether a step is to be asked as things stand.
func (s *session) asked(st *step) bool {
	switch {
	case s.asBefore && s.answered(st):
		return false
	case st.field == nil:
		return true
	case st.part == question.PartLine && !s.walkLine, st.part == question.PartSupply && s.check != checkChange:
		return false
	case st.field == question.Gun && s.pickedGun():
		return false
	case st.field == question.Hardener && s.reader.KnowsHardener(s.current()):
		return false
	}
	return question.Applies(st.field, s.current())
}

// answered reports whether a step has all the answers that it must have. The coat is asked for
// however that is.
func (s *session) answered(st *step) bool {
	switch st.field {
	case nil:
	case question.Coat:
		return false
	case question.Hardener: // its coat may be another
		return s.current().Has(st.field)
	default:
		return st.optional() || s.current().Has(st.field)
	}
	return !slices.ContainsFunc(st.rows, func(row question.Row) bool {
		return row.Field != wayField && row.Field != checkField && !row.Optional() && !s.current().Has(row.Field)
	})
}

// position is where a step stands among those to be asked.
func (s *session) position(id string) (n, of int) {
	for i := range s.steps {
		if !s.asked(&s.steps[i]) {
			continue
		}
		of++
		if s.steps[i].id == id {
			n = of
		}
	}
	return n, of
}

// stepHeading is what stands at the top of a step's page.
func (s *session) stepHeading(st *step) (left, right string) {
	n, of := s.position(st.id)
	return s.say(st.part.Sentence()), s.unitsName() + "  " + s.text("step-of", calc.CountFigure("n", n), calc.CountFigure("of", of))
}
