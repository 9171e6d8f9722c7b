package tui

import (
	"boothset/calc"
	"boothset/presets"
)

// margin stands before every row of a question.
const margin = "  "

// body is the question, why it is asked, what can be answered and what was wrong with
// the last answer. Where rows are short the list scrolls and the reason is cut.
func (q *question) body(room size) []string {
	s := q.s
	w := room.w - 2*len(margin)
	ask := each(wrap(s.say("ask-"+q.step.id), w), s.theme.Question.Render)
	why := append(wrap(s.say("why-"+q.step.id), w), q.shown(w)...)
	var fault []string
	if q.fault != "" {
		st := s.theme.level[calc.Warn]
		fault = each(hang("! ", q.fault, w), st.Render)
	}
	var answer []string
	if q.step.typed {
		answer = q.row(w)
	} else {
		spare := room.h - len(ask) - len(fault)
		rows := min(len(q.list.items), max(spare-len(why), leastRows))
		answer = q.list.rows(s, size{w, rows})
	}
	why = why[:max(min(len(why), room.h-len(ask)-len(answer)-len(fault)), 0)]

	blocks := [][]string{ask, why, answer, fault}
	free := room.h
	for _, b := range blocks {
		free -= len(b)
	}
	var rows []string
	if free > 4 {
		rows = append(rows, "")
	}
	for i, b := range blocks {
		if i > 1 && len(b) > 0 && free >= 4-i { // the gap before the fault opens last
			rows = append(rows, "")
		}
		rows = append(rows, b...)
	}
	for i := range rows {
		if rows[i] != "" {
			rows[i] = margin + rows[i]
		}
	}
	return rows[:min(len(rows), room.h)]
}

// leastRows is how much of a list is always shown.
const leastRows = 3

// row is the field, and under it what an empty one takes or a bare number means.
func (q *question) row(w int) []string {
	s := q.s
	rows := []string{s.theme.Focus.Render("> ") + q.field.row(s.glyphs.Cursor, w-2)}
	if q.field.String() == "" {
		if offer := q.offer(); offer != "" {
			rows = append(rows, wrap(s.say("field-offer")+" "+offer, w)...)
		} else {
			rows = append(rows, wrap(s.say("empty-"+q.step.id), w)...)
		}
	}
	if q.step.id == presets.FieldHose {
		return append(rows, wrap(s.say("field-hose"), w)...)
	}
	return append(rows, wrap(s.say("field-bare")+" "+readings[q.step.id].unit(s.sys), w)...)
}

// shown is the line as it stands, on the step that asks about it.
func (q *question) shown(w int) (rows []string) {
	if q.step.id != stepLine {
		return nil
	}
	for i := range steps {
		st := &steps[i]
		if !st.ofLine() || st.id == presets.FieldRegulatorAt && !hasRegulator(q.s) {
			continue
		}
		rows = append(rows, hang(pad(st.short, 10)+" ", q.s.name(st.id, q.s.value(st.id)), w)...)
	}
	return append([]string{""}, rows...)
}
