package tui

import (
	"slices"

	"boothset/calc"
	"boothset/presets/question"
)

// The steps that are no field of the answers: they show the line and the supply as they
// are and ask whether to go through them part by part, and ask for the product's sheet on one
// page.
const (
	stepLine   = "line"
	stepSupply = "check"
	stepSheet  = "sheet"
)

// step is one thing that is asked. Its sentences are under ask-, why-, short- and empty- and
// its id.
type step struct {
	id    string // the field's name, stepLine or stepSupply
	part  question.Part
	field *question.Field // nil at those that are no field
}

// stepsOf is every step of a question in order: its fields that the assistant asks for, and
// before those of the line and of the supply the steps that show these; of the sheet one step.
func stepsOf(q *question.Question) (all []step) {
	begun := func(id string) bool { return slices.ContainsFunc(all, func(st step) bool { return st.id == id }) }
	for _, row := range q.Fields {
		switch {
		case row.Part == "":
			continue
		case row.Part == question.PartLine && !begun(stepLine):
			all = append(all, step{id: stepLine, part: question.PartAir})
		case row.Part == question.PartSupply && !begun(stepSupply):
			all = append(all, step{id: stepSupply, part: question.PartSupply})
		case row.Part == question.PartSheet && !begun(stepSheet):
			all = append(all, step{id: stepSheet, part: question.PartSheet})
		}
		if row.Part == question.PartSheet {
			continue
		}
		all = append(all, step{row.Name, row.Part, row.Field})
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
	case st.field == nil:
		return true
	case st.part == question.PartLine && !s.walkLine, st.part == question.PartSupply && s.check != checkChange:
		return false
	case st.field == question.Hardener && s.reader.KnowsHardener(s.current()):
		return false
	}
	return question.Applies(st.field, s.current())
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

// trailUnder is the answers so far under a step's heading.
func (s *session) trailUnder(window size) []string {
	rows := 1
	if window.h >= roomyWindow {
		rows = 2
	}
	return s.trail(window.w, rows)
}
