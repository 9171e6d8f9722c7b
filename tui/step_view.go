package tui

import (
	"boothset/calc"
	"boothset/presets/question"
)

// margin stands before every row of a question.
const margin = "  "

// body is the question, why it is asked, what can be answered and what was wrong with
// the last answer. Where rows are short the list scrolls and the reason is left out.
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
	var fault []string
	if p.fault != "" {
		st := s.theme.level[calc.Warn]
		fault = each(hang("! ", p.fault, w), st.Render)
	}
	var answer []string
	if p.step.typed() {
		answer = p.row(w)
	} else {
		spare := room.h - len(ask) - len(fault)
		high = min(len(p.list.items), max(spare-len(why), leastRows))
		answer = p.list.rows(s, size{w, high})
		if means := p.list.meaning(p.list.at); means != "" && p.list.meanings(w) == 0 && spare-len(answer) > 0 {
			answer = append(answer, s.theme.Note.Render(fit(means, w)))
		}
		if old := s.age(p.step.field, p.list.id()); old != "" && spare-len(answer) > 0 {
			answer = append(answer, s.theme.Note.Render(cut(old, w)))
		}
	}
	if len(why) > room.h-len(ask)-len(answer)-len(fault) {
		why = nil
	}

	blocks := [][]string{ask, why, answer, fault}
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
	return append(rows, wrap(s.bare(p.step.field), w)...)
}

// bare is how a field's text is written, or what a bare number in it means; empty of one
// without a unit.
func (s *session) bare(f *question.Field) string {
	if form := s.say(f.Sentence(question.SayForm)); form != "" {
		return form
	}
	if f.Of[0] == nil {
		return ""
	}
	return s.say("field-bare") + " " + f.Of[0].Unit(s.sys)
}
