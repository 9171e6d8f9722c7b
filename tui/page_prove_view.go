package tui

import (
	"slices"

	"boothset/calc"
	"boothset/presets/answer"
	"boothset/presets/question"
)

// body is the gauges to read around the one that is typed in, how that is read, and under it what
// the readings come to.
func (p *provePage) body(room size) []string {
	if p.from.tried.Stopped() {
		return clip(p.from.unset(room.w), room.h, room.w)
	}
	rows, rest := p.answerRows(room)
	return append(p.above(room), p.scroll.window(p.s, rows, rest)...)
}

// above is what stands over what the readings come to.
func (p *provePage) above(room size) (rows []string) {
	state := p.state(room)
	if p.onAnswer() {
		return append(p.filled(size{room.w, max(room.h/4, 1)}), state...)
	}
	least := max(room.h/3, len(state)+leastUnder)
	high := max(room.h-least, leastRows+1)
	picture := p.picture(size{room.w, high})
	w := textWide(room, picture)
	does := each(clip(wrap(p.does(), w), max(high-leastRows, 1), w), p.s.theme.Note.Render)
	rows = append(p.list(size{w, max(high-len(does), leastRows)}), does...)
	return append(p.s.besidePicture(rows, picture, w), state...)
}

// picture is the pattern that is picked in the marked box, nil of another one.
func (p *provePage) picture(room size) []string {
	if b := &p.all[p.at]; b.Field == question.Pattern && b.picked >= 0 {
		return p.s.pattern(b.choices[b.picked].ID, room)
	}
	return nil
}

// state is why what was typed was not taken, or that it is being worked out; a rule where there is
// room for one.
func (p *provePage) state(room size) []string {
	s, w := p.s, room.w
	warn := s.theme.level[calc.Warn].Render
	switch {
	case p.fault != "":
		return each(hang("! ", p.fault, w), warn)
	case p.running || p.of == (learntOf{}):
		return each(wrap(s.say("prove-working"), w), s.theme.Note.Render)
	case p.answer == nil:
		return each(hang("! ", p.wrong, w), warn)
	case p.half():
		return each(wrap(s.say("prove-half"), w), s.theme.Note.Render)
	case room.h < titledRoom:
		return nil
	}
	return []string{s.theme.Title.Render(s.ruled(s.say("form-answer"), w))}
}

// half reports whether of the gauges that are read together some were read and some not.
func (p *provePage) half() (is bool) {
	p.each(func(_ *proveGroup, boxes []box) {
		is = is || slices.ContainsFunc(boxes, isEmpty) && slices.ContainsFunc(boxes, func(b box) bool { return !isEmpty(b) })
	})
	return is && p.onAnswer()
}

// answerRows is all that the readings come to, and the room it has.
func (p *provePage) answerRows(room size) (rows []string, rest size) {
	rest = size{room.w, max(room.h-len(p.above(room)), 1)}
	return p.s.told(p.lines(room.w), room.w), rest
}

// lines is what it comes to, or before that what there is to do at the gun. While things are typed
// what the last of them was judged to be stands first.
func (p *provePage) lines(w int) []answer.Line {
	if p.answer == nil {
		return nil
	}
	all := p.answer.GunRows(p.s.words, p.s.sys)
	if p.left != nil && !p.onAnswer() {
		judged := p.answer.SeenRowsOf(p.s.words, p.s.sys, p.left)
		rest := slices.DeleteFunc(all, func(r answer.Row) bool {
			return slices.ContainsFunc(judged, func(j answer.Row) bool { return j.ID == r.ID && j.Text == r.Text })
		})
		all = append(judged, rest...)
	}
	lines := answer.Lay(all, w, p.s.words)
	if !p.onAnswer() { // there is little room
		lines = slices.DeleteFunc(lines, func(l answer.Line) bool { return l.Text == "" })
	}
	return lines
}

// clicked marks the gauge that a click is on.
func (p *provePage) clicked(_, y int, room size) move {
	if p.onAnswer() || p.from.tried.Stopped() {
		return nil
	}
	high := min(len(p.all), len(p.above(room)))
	at := p.boxAt(y, 0, high)
	if at < 0 || at == p.at {
		return nil
	}
	return func(*root) {
		if p.fault = ""; p.leave() {
			p.at = at
		}
	}
}
