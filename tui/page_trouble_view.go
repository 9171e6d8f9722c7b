package tui

import (
	"boothset/calc"
	"boothset/calc/trouble"
	"boothset/presets/answer"
	"boothset/presets/signs"
	"boothset/tui/draw"
)

// The picture of a sign's pattern: as wide and as high, and the window that has room for it
// beside the text.
const (
	patternWide = 19
	patternHigh = 9
	besideWide  = 58 // columns of the room
	besideHigh  = 6  // rows of the room
)

// How the rows of a small room are shared: from so many on the sign stands over all, and under
// what a check can show, of which so much shows at least, are so many for the text.
const (
	titledRoom    = 9
	leastFindings = 2
	leastUnder    = 2
)

// pattern is what a sign leaves on paper or on the panel, in as much of the room as it takes at the right; nil
// where there is none.
func (s *session) pattern(sign string, room size) []string {
	if sign == "" || room.w < besideWide || room.h < besideHigh {
		return nil
	}
	d := signs.DrawnOf(sign)
	high := min(patternHigh, room.h-1)
	rows := draw.Pattern{Wide: d.Wide, High: d.High, Wet: d.Wet, Ends: d.Ends, Lean: d.Lean, Bend: d.Bend, Sputter: d.Sputter}.Rows(patternWide, high, s.glyphs, s.ink)
	on := "trouble-paper"
	if known := signs.Book().Sign(sign); known != nil && known.Wet != "" {
		on = "trouble-panel"
	}
	return append(rows, s.theme.Caption.Render(cut(s.say(on), patternWide)))
}

// textWide is how wide the text is beside a picture.
func textWide(room size, picture []string) int {
	if picture == nil {
		return room.w
	}
	return room.w - patternWide - 3
}

// besidePicture is rows with a picture at their right.
func (s *session) besidePicture(rows, picture []string, w int) []string {
	if picture == nil {
		return rows
	}
	right := make([]string, max(len(rows), len(picture)))
	for y := range picture {
		right[y] = " " + s.theme.Caption.Render(string(s.glyphs.Upright)) + " " + picture[y]
	}
	for len(rows) < len(right) {
		rows = append(rows, "")
	}
	return joined(rows, right, w)
}

func (p *troublePage) body(room size) []string {
	if p.sign == "" {
		rows, _, _, w := p.signRows(room)
		return p.s.besidePicture(rows, p.s.pattern(p.offers.id(), room), w)
	}
	rows, _, _, w := p.above(room)
	text, rest := p.textRows(room)
	return p.s.besidePicture(append(rows, p.scroll.window(p.s, text, rest)...), p.s.pattern(p.sign, room), w)
}

// signRows is the question, what is typed and the signs that it may be; the first row of these,
// how many, and how wide.
func (p *troublePage) signRows(room size) (rows []string, first, high, w int) {
	s := p.s
	w = textWide(room, s.pattern(p.offers.id(), room))
	rows = each(clip(wrap(s.say("trouble-ask"), w), max(room.h-3, 1), w), s.theme.Question.Render)
	rows = append(rows, s.theme.Focus.Render("> "+p.typed.row(s.glyphs.Cursor, w-2)))
	first, high = len(rows), max(room.h-len(rows), 1)
	if len(p.offers.items) == 0 {
		return append(rows, each(hang("! ", s.say("trouble-nothing"), w), s.theme.level[calc.Warn].Render)...), first, 0, w
	}
	if p.offers.meanings(w) == 0 && high > 3 { // what it looks like stands under the list
		look := each(clip(wrap(p.offers.meaning(p.offers.at), w), 2, w), s.theme.Note.Render)
		high -= len(look)
		return append(append(rows, p.offers.rows(s, size{w, high})...), look...), first, high, w
	}
	return append(rows, p.offers.rows(s, size{w, high})...), first, high, w
}

// above is what stands over the text: the sign, how far it has come, and where a check is asked
// for what it can show; the first row of that, how many, and how wide.
func (p *troublePage) above(room size) (rows []string, first, high, w int) {
	s := p.s
	w = textWide(room, s.pattern(p.sign, room))
	if room.h >= titledRoom {
		rows = []string{s.theme.Title.Render(s.ruled(s.say(signs.Name(p.sign)), w))}
	}
	if p.answer == nil {
		return rows, 0, 0, w
	}
	head := p.answer.Headline(s.words, s.sys)
	style := s.theme.Question
	if p.answer.Found.End != trouble.Open {
		style = s.theme.level[head.Level].Bold(s.theme.colour)
	}
	rows = append(rows, each(hang(head.Name+" ", plain(head.Text), w), style.Render)...)
	if !p.asks() {
		return rows, 0, 0, w
	}
	next := p.answer.NextRows(s.words, s.sys)
	if p.further {
		rows = append(rows, each(wrap(plain(next[1].Text), w), s.theme.Question.Render)...)
	}
	first = len(rows)
	high = min(max(room.h-first-leastUnder, leastFindings), len(p.findings.items))
	return append(rows, p.findings.rows(s, size{w, high})...), first, high, w
}

// textRows is what can be scrolled, and its room.
func (p *troublePage) textRows(room size) (rows []string, rest size) {
	above, _, _, w := p.above(room)
	rest = size{w, max(room.h-len(above), 1)}
	return p.s.told(p.lines(w), w), rest
}

// lines is what is said under the headline: what to do, where that is told, else why this check;
// then the causes, the panel as it is, what protects, and what it rests on.
func (p *troublePage) lines(w int) []answer.Line {
	if p.answer == nil {
		return nil
	}
	a, words, sys := p.answer, p.s.words, p.s.sys
	var rows []answer.Row
	add := func(all []answer.Row) {
		if len(all) > 0 {
			all[0].Begins = len(rows) > 0
			rows = append(rows, all...)
		}
	}
	if p.asks() {
		next := a.NextRows(words, sys)
		add(next[len(next)-1:])
	} else {
		add(a.MoveRows(words, sys))
	}
	add(a.CauseRows(words, sys))
	add(a.WetRows(words))
	add(answer.CautionRows(words, sys, a.Cautions()))
	add(answer.ReasonRows(words, sys, a.Reasons()))
	return answer.Lay(rows, w, words)
}
