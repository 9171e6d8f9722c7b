package tui

import (
	"boothset/calc"
	"boothset/presets/question"

	"github.com/charmbracelet/x/ansi"
)

// margin stands before every row of a question.
const margin = "  "

// body is the question, why it is asked, what can be answered and what was wrong with
// the last answer. Where rows are short the list scrolls and the reason is cut.
func (p *stepPage) body(room size) []string {
	rows, _, _ := p.laid(room)
	return rows
}

func (p *stepPage) clicked(x, y int, room size) move {
	if p.step.typed() {
		return nil
	}
	_, first, high := p.laid(room)
	return p.list.zones(0, first, size{room.w, high}, p.accept).at(x, y)
}

// laid is the rows of the page; of a list, which is its first row and how many it has.
func (p *stepPage) laid(room size) (rows []string, first, high int) {
	s := p.s
	w := room.w - 2*len(margin)
	ask := each(wrap(s.sentence(p.step, question.SayAsk), w), s.theme.Question.Render)
	why := wrap(s.sentence(p.step, question.SayWhy), w)
	shown := p.shown(size{w, room.h})
	var fault []string
	if p.fault != "" {
		st := s.theme.level[calc.Warn]
		fault = each(hang("! ", p.fault, w), st.Render)
	}
	var answer []string
	if p.step.typed() {
		answer = p.row(w)
	} else {
		spare := room.h - len(ask) - len(shown) - len(fault)
		high = min(len(p.list.items), max(spare-len(why), leastRows))
		answer = p.list.rows(s, size{w, high})
		if old := s.age(p.step.field, p.list.id()); old != "" && spare-len(answer) > 0 {
			answer = append(answer, s.theme.Note.Render(cut(old, w)))
		}
	}
	why = why[:max(min(len(why), room.h-len(ask)-len(shown)-len(answer)-len(fault)), 0)]

	blocks := [][]string{ask, why, shown, answer, fault}
	free := room.h
	for _, b := range blocks {
		free -= len(b)
	}
	if free > len(blocks) {
		rows = append(rows, "")
		free--
	}
	for i, b := range blocks {
		if i > 1 && len(b) > 0 && free > 0 {
			rows = append(rows, "")
			free--
		}
		if i == len(blocks)-2 { // the answer, before the fault
			first = len(rows)
		}
		rows = append(rows, b...)
	}
	for i := range rows {
		if rows[i] != "" {
			rows[i] = margin + rows[i]
		}
	}
	return rows[:min(len(rows), room.h)], first, high
}

// leastRows is how much of a list is always shown.
const leastRows = 3

// row is the field, and under it what an empty one takes or a bare number means.
func (p *stepPage) row(w int) []string {
	s := p.s
	rows := []string{s.theme.Focus.Render("> ") + p.field.row(s.glyphs.Cursor, w-2)}
	if old := s.age(p.step.field, p.field.String()); old != "" {
		rows = append(rows, each(wrap(old, w), s.theme.Note.Render)...)
	}
	if p.field.String() == "" {
		if offer := p.offer(); offer != "" {
			rows = append(rows, wrap(s.say("field-offer")+" "+offer, w)...)
		} else {
			rows = append(rows, wrap(s.sentence(p.step, question.SayEmpty), w)...)
		}
	}
	if form := s.sentence(p.step, question.SayForm); form != "" {
		return append(rows, wrap(form, w)...)
	}
	if p.step.field.Of[0] == nil { // a number without a unit
		return rows
	}
	return append(rows, wrap(s.say("field-bare")+" "+p.step.field.Of[0].Unit(s.sys), w)...)
}

// shown is the line or the supply as it stands, on the step that asks about it: a row a
// part, or all of it in a sentence where the window is low.
func (p *stepPage) shown(room size) (rows []string) {
	s, current := p.s, p.s.current()
	if p.step.id == stepLine && question.Whole(current) {
		return s.lineRows(current, room)
	}
	var fields []*question.Field
	wide := 0
	for i := range s.steps {
		if f := s.steps[i].field; f != nil && p.shows(f, current) {
			fields = append(fields, f)
			wide = max(wide, ansi.StringWidth(s.label(f)))
		}
	}
	var short []string
	for _, f := range fields {
		if !current.Has(f) {
			continue
		}
		name, value := s.label(f), s.called(f, current)
		rows = append(rows, hang(pad(name, wide)+" ", value, room.w)...)
		if !f.Listed() {
			value = name + " " + value
		}
		short = append(short, value)
	}
	if room.h > 2*len(rows) {
		return rows
	}
	return flow(short, ", ", room.w)
}

// shows reports whether the answer to a field is shown on this step.
func (p *stepPage) shows(f *question.Field, current question.Answers) bool {
	switch p.step.id {
	case stepLine:
		return f.Part == question.PartLine && question.Applies(f, current)
	case stepSupply:
		return f.Part == question.PartSupply && question.Supplied(current)
	}
	return false
}
