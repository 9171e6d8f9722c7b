package tui

import (
	"slices"

	"boothset/calc"
	"boothset/presets/answer"
)

// under is what is pinned of the answer, and the tabs.
func (f *form) under(window size) []string {
	return append(f.from.glance(window), f.from.tabs(window.w, f.looksAt))
}

// looksAt reports whether a destination is this page.
func (f *form) looksAt(d destination) bool { return d.page == page(f) }

func (f *form) ownRules() bool { return true }

// body is the fields, all in a list around the one that is typed in, or those that are
// filled in one sentence over the answer; the picture at their right, or under the answer.
func (f *form) body(room size) []string {
	text, picture := f.beside(room)
	rows := f.above(text)
	if f.err == nil && len(rows) < room.h {
		answer, rest := f.answerRows(room)
		rows = append(rows, f.scroll.window(f.s, answer, rest)...)
	}
	if picture == nil {
		return rows
	}
	rule := " " + f.s.theme.Caption.Render(string(f.s.glyphs.Upright))
	right := make([]string, room.h)
	for y := range right {
		right[y] = rule
		if y < len(picture) {
			right[y] += " " + picture[y]
		}
	}
	return joined(rows, right, text.w)
}

// above is what stands over the answer.
func (f *form) above(room size) (rows []string) {
	state := f.state(room.w)
	if f.onAnswer() {
		rows = f.filled(size{room.w, max(room.h/4, 1)})
	} else {
		b := &f.all[f.at]
		least := max(room.h/3, len(state)) // rows for the answer, or for what is in its way
		usage := each(clip(wrap(f.usage(b), room.w), max(room.h-least-leastRows, 1), room.w), f.s.theme.Note.Render)
		rows = append(f.list(size{room.w, max(room.h-least-len(usage), leastRows)}), usage...)
	}
	if f.read != f.s.sys {
		rows = append(rows, wrap(f.s.say("form-units"), room.w)...)
	}
	return append(rows, state...)
}

// answerRows is the whole answer, its picture where that stands under it, and the room it has.
func (f *form) answerRows(room size) (rows []string, rest size) {
	text, picture := f.beside(room)
	rest = size{text.w, max(text.h-len(f.above(text)), 1)}
	if f.err != nil {
		return nil, rest
	}
	rows = f.lines(text.w)
	if picture == nil {
		rows = append(rows, f.below(rest)...)
	}
	return rows, rest
}

// graded is the roles whose rows look as grave as they are.
var graded = []answer.Role{answer.Verdict, answer.Against, answer.Caution}

// gradedRow is a line of an answer in a width, as grave as it is.
func (s *session) gradedRow(line answer.Line, w int) string {
	row := fit(plain(line.Text), w)
	if slices.Contains(graded, line.Role) {
		row = s.theme.level[line.Level].Render(row)
	}
	return row
}

// told is lines of an answer over the bench, where titles are quiet.
func (s *session) told(lines []answer.Line, w int) (rows []string) {
	for _, line := range lines {
		row := s.gradedRow(line, w)
		if line.Role == answer.Title {
			row = s.theme.Caption.Render(row)
		}
		rows = append(rows, row)
	}
	return rows
}

// lines is the whole answer in rows of w columns, stops and warnings as the theme has them,
// and what its picture says beyond it.
func (f *form) lines(w int) (rows []string) {
	words := f.s.words
	for _, line := range answer.Lay(f.answer.Rows(words, f.s.sys), w, words) {
		rows = append(rows, f.s.gradedRow(line, w))
	}
	if more := f.s.pictureWords(f.answer); more != nil {
		rows = append(rows, "")
		for _, sentence := range more {
			rows = append(rows, hang("- ", sentence, w)...)
		}
	}
	return rows
}

// state is the row over the answer: what is wrong where there is none.
func (f *form) state(w int) []string {
	warn := f.s.theme.level[calc.Warn].Render
	switch {
	case f.fault != "":
		return each(hang("! ", f.fault, w), warn)
	case f.err != nil && len(f.own()) == 0: // nothing was typed that could be wrong
		return each(hang("> ", f.wrong(), w), f.s.theme.Focus.Render)
	case f.err != nil:
		return each(hang("! ", f.wrong(), w), warn)
	case f.answer.Stopped():
		return []string{f.s.theme.level[calc.Stop].Render(f.s.ruled(f.s.say("form-stopped"), w))}
	}
	return []string{f.s.theme.Title.Render(f.s.ruled(f.s.say("form-answer"), w))}
}

// wrong is what is in the way of an answer, with the field as the page calls it.
func (f *form) wrong() string {
	if i := f.blamed(); i >= 0 {
		return faultOf(f.err).Called(f.label(&f.all[i]))
	}
	return f.err.Error()
}
