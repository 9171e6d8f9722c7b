package tui

import (
	"fmt"

	"boothset/calc"
	"boothset/presets/question"

	"github.com/charmbracelet/x/ansi"
)

// body is the question and the parts, a row each, a hose's length and bore in two.
func (p *partsPage) body(room size) []string {
	s, all, inputs := p.s, p.s.current(), p.inputs()
	w := room.w - 2*len(margin)
	rows := each(wrap(s.say("ask-parts"), w), s.theme.Question.Render)
	var fault []string
	if p.fault != "" {
		fault = each(hang("! ", p.fault, w), s.theme.level[calc.Warn].Render)
	}
	free := room.h - len(rows) - len(fault)
	if why := wrap(s.say("why-parts"), w); free-len(why) >= len(inputs)+2 {
		rows = append(append(rows, why...), "")
		free -= len(why) + 1
	}
	wide := 0
	for _, in := range inputs {
		wide = max(wide, ansi.StringWidth(s.inputName(all, in)))
	}
	top := around(p.at, len(inputs), free)
	end := min(top+free, len(inputs))
	for i := top; i < end; i++ {
		in := inputs[i]
		value := s.inputValue(all, in)
		if i == p.at {
			value = "< " + value + " >"
		}
		row := cut(listMark(i, p.at, top, end, len(inputs))+" "+pad(s.inputName(all, in), wide)+"  "+value, w)
		if i == p.at {
			row = s.theme.Focus.Render(row)
		}
		rows = append(rows, row)
	}
	rows = append(rows, fault...)
	return each(rows[:min(len(rows), room.h)], indented)
}

// indented is a row of a question with its margin.
func indented(row ...string) string {
	if row[0] == "" {
		return ""
	}
	return margin + row[0]
}

func (k *kindsPage) body(room size) []string {
	ask, list := k.laid(room)
	rows := append(each(ask, k.of.s.theme.Question.Render), k.list.rows(k.of.s, list)...)
	return each(rows[:min(len(rows), room.h)], indented)
}

// laid is the question, and the room of the list under it.
func (k *kindsPage) laid(room size) (ask []string, list size) {
	w := room.w - 2*len(margin)
	ask = wrap(k.of.s.say("parts-add"), w)
	return ask, size{w, max(room.h-len(ask), 1)}
}

func (k *kindsPage) clicked(x, y int, room size) move {
	ask, list := k.laid(room)
	return k.list.zones(0, len(ask), size{room.w, list.h}, k.take).at(x, y)
}

// lineRows is a line that is given part by part: a row a part, or all of it in a sentence where
// the window is low.
func (s *session) lineRows(a question.Answers, room size) (rows []string) {
	var short []string
	for i, v := range a.Get(question.Line) {
		f, part := v.Part()
		if f == nil {
			continue
		}
		value := plain(s.reader.Called(f, part))
		if !f.Listed() {
			value = s.say(sayPartKind+f.Name) + " " + value
		}
		rows = append(rows, hang(fmt.Sprintf("%3d  ", i+1), value, room.w)...)
		short = append(short, value)
	}
	if room.h > 2*len(rows) {
		return rows
	}
	return flow(short, ", ", room.w)
}
