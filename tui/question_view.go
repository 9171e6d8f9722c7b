package tui

import (
	"boothset/calc"
	"boothset/presets"

	"github.com/charmbracelet/x/ansi"
)

// margin stands before every row of a question.
const margin = "  "

// body is the question, why it is asked, what can be answered and what was wrong with
// the last answer. Where rows are short the list scrolls and the reason is cut.
func (q *question) body(room size) []string {
	s := q.s
	w := room.w - 2*len(margin)
	ask := each(wrap(s.say("ask-"+q.step.id), w), s.theme.Question.Render)
	why := wrap(s.say("why-"+q.step.id), w)
	shown := q.shown(size{w, room.h})
	var fault []string
	if q.fault != "" {
		st := s.theme.level[calc.Warn]
		fault = each(hang("! ", q.fault, w), st.Render)
	}
	var answer []string
	if q.step.typed {
		answer = q.row(w)
	} else {
		spare := room.h - len(ask) - len(shown) - len(fault)
		rows := min(len(q.list.items), max(spare-len(why), leastRows))
		answer = q.list.rows(s, size{w, rows})
		if old := s.age(q.step.id, q.picked()); old != "" && spare-len(answer) > 0 {
			answer = append(answer, s.theme.Note.Render(cut(old, w)))
		}
	}
	why = why[:max(min(len(why), room.h-len(ask)-len(shown)-len(answer)-len(fault)), 0)]

	blocks := [][]string{ask, why, shown, answer, fault}
	free := room.h
	for _, b := range blocks {
		free -= len(b)
	}
	var rows []string
	if free > len(blocks) {
		rows = append(rows, "")
		free--
	}
	for i, b := range blocks {
		if i > 1 && len(b) > 0 && free > 0 {
			rows = append(rows, "")
			free--
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

// picked is the id of the marked choice.
func (q *question) picked() string {
	if len(q.list.items) == 0 {
		return ""
	}
	return q.list.picked().ID
}

// leastRows is how much of a list is always shown.
const leastRows = 3

// row is the field, and under it what an empty one takes or a bare number means.
func (q *question) row(w int) []string {
	s := q.s
	rows := []string{s.theme.Focus.Render("> ") + q.field.row(s.glyphs.Cursor, w-2)}
	if old := s.age(q.step.id, q.field.String()); old != "" {
		rows = append(rows, each(wrap(old, w), s.theme.Note.Render)...)
	}
	if q.field.String() == "" {
		if offer := q.offer(); offer != "" {
			rows = append(rows, wrap(s.say("field-offer")+" "+offer, w)...)
		} else {
			rows = append(rows, wrap(s.say("empty-"+q.step.id), w)...)
		}
	}
	if form := s.say("field-" + q.step.id); form != "" {
		return append(rows, wrap(form, w)...)
	}
	return append(rows, wrap(s.say("field-bare")+" "+readings[q.step.id].unit(s.sys), w)...)
}

// shown is the line or the supply as it stands, on the step that asks about it: a row a
// part, or all of it in a sentence where the window is low.
func (q *question) shown(room size) (rows []string) {
	wide := 0
	for i := range steps {
		if q.shows(&steps[i]) {
			wide = max(wide, ansi.StringWidth(q.s.say("short-"+steps[i].id)))
		}
	}
	var short []string
	for i := range steps {
		st := &steps[i]
		v := q.s.value(st.id)
		if v == "" || !q.shows(st) {
			continue
		}
		name, value := q.s.say("short-"+st.id), q.s.name(st.id, v)
		rows = append(rows, hang(pad(name, wide)+" ", value, room.w)...)
		if st.typed {
			value = name + " " + value
		}
		short = append(short, value)
	}
	if room.h > 2*len(rows) {
		return rows
	}
	return flow(short, ", ", room.w)
}

// shows reports whether a step's answer is shown on this one.
func (q *question) shows(st *step) bool {
	switch q.step.id {
	case stepLine:
		return st.ofLine() && (st.id != presets.FieldRegulatorAt || hasRegulator(q.s))
	case stepSupply:
		return st.ofSupply() && q.s.hasCompressor()
	}
	return false
}
