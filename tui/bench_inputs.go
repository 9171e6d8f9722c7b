package tui

import (
	"strconv"

	"boothset/presets/edit"
	"boothset/presets/question"

	"github.com/charmbracelet/x/ansi"
)

// inputName is what an input is called among answers; of a pair each quantity has a name of
// its own, and a part of a line its place.
func (s *session) inputName(all question.Answers, in edit.Input) string {
	f, _ := in.Of(all)
	name := s.label(f)
	if in.Field == question.Line {
		name = s.say(sayPartKind + f.Name)
	}
	if f.Pair() {
		name = s.say(f.Sentence([2]string{question.SayFirst, question.SaySecond}[in.Piece]))
	}
	if in.Field == question.Line {
		return strconv.Itoa(in.Part+1) + " " + name
	}
	return name
}

// sayPartKind begins the sentence that names a kind of part.
const sayPartKind = "part-kind-"

// What counts for an input that is not answered: what the field says of itself, else usual.
const (
	sayUsualOf = "usual-"
	sayUsual   = "usual"
)

// inputValue is what an input is among answers, as a person reads it.
func (s *session) inputValue(all question.Answers, in edit.Input) string {
	f, v := in.Of(all)
	switch {
	case f.Listed() && all.Has(in.Field):
		return plain(s.reader.Called(f, v))
	case all.Has(in.Field):
		return plain(in.Shown(s.reader, all, s.sys))
	}
	if usual := s.say(in.Field.Sentence(sayUsualOf)); usual != "" {
		return usual
	}
	return s.say(sayUsual)
}

// shownInput is an input as a row has it.
type shownInput struct{ name, value string }

// shownInputs is every input that can be moved, with what it is among answers.
func (b *bench) shownInputs(a question.Answers) []shownInput {
	s, inputs := b.s, b.inputs()
	all := s.counting(a)
	shown := make([]shownInput, len(inputs))
	for i, in := range inputs {
		shown[i] = shownInput{s.inputName(all, in), s.inputValue(all, in)}
	}
	return shown
}

// inputStrip is the inputs in a row: the one that is moved, and around it as many as there is
// room for.
func (b *bench) inputStrip(w int) string {
	s, inputs := b.s, b.shownInputs(b.tried.answers)
	between := " " + string(s.glyphs.Between) + " "
	item := func(i int) string { return inputs[i].name + " " + inputs[i].value }
	row := fit("< "+item(b.input)+" >", w)
	free := w - ansi.StringWidth(row)
	row = s.theme.Focus.Render(row)
	// fitting is an input as it fits beside the others: its name alone, where it is the last.
	fitting := func(i int) string {
		for _, text := range []string{item(i), inputs[i].name} {
			if wide := ansi.StringWidth(between + text); wide <= free {
				free -= wide
				return text
			}
		}
		return ""
	}
	first, last := b.input-1, b.input+1
	for first >= 0 || last < len(inputs) {
		if last < len(inputs) {
			if text := fitting(last); text != "" {
				row, last = row+between+text, last+1
			} else {
				last = len(inputs)
			}
		}
		if first >= 0 {
			if text := fitting(first); text != "" {
				row, first = text+between+row, first-1
			} else {
				first = -1
			}
		}
	}
	return row
}

// sideRows is every input, one below the other, with what it was where it was moved.
func (b *bench) sideRows(room size) (rows []string) {
	s, inputs, was := b.s, b.shownInputs(b.tried.answers), b.shownInputs(b.kept.answers)
	top := around(b.input, len(inputs), room.h)
	end := min(top+room.h, len(inputs))
	wide := 0
	for _, in := range inputs {
		wide = max(wide, ansi.StringWidth(in.name))
	}
	for i := top; i < end; i++ {
		in := inputs[i]
		value := in.value
		if i == b.input {
			value = "< " + value + " >"
		}
		row := listMark(i, b.input, top, end, len(inputs)) + " " + pad(in.name, wide) + " " + value
		if was[i].value != in.value {
			row += " (" + was[i].value + ")"
		}
		row = fit(row, room.w)
		if i == b.input {
			row = s.theme.Focus.Render(row)
		}
		rows = append(rows, row)
	}
	return rows
}
