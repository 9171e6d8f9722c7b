package tui

import (
	"regexp"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/presets/answer"
	"boothset/presets/question"

	"github.com/charmbracelet/x/ansi"
)

// body is the fields, all in a list around the one that is typed in, or those that are
// filled in one sentence over the answer.
func (f *form) body(room size) []string {
	rows := f.above(room)
	if f.err != nil || len(rows) >= room.h {
		return rows
	}
	answer, rest := f.answerRows(room)
	return append(rows, f.scroll.window(f.s, answer, rest)...)
}

// above is what stands over the answer.
func (f *form) above(room size) (rows []string) {
	state := f.state(room.w)
	if f.onAnswer() {
		rows = f.filled(size{room.w, max(room.h/4, 1)})
	} else {
		b := &f.boxes[f.at]
		usage := each(wrap(f.usage(b), room.w), f.s.theme.Note.Render)
		least := max(room.h/3, len(state)) // rows for the answer, or for what is in its way
		usage = usage[:min(len(usage), max(room.h-least-leastRows, 1))]
		rows = append(f.list(size{room.w, max(room.h-least-len(usage), leastRows)}), usage...)
	}
	if f.read != f.s.sys {
		rows = append(rows, wrap(f.s.say("form-units"), room.w)...)
	}
	return append(rows, state...)
}

// answerRows is the whole answer and the room it has.
func (f *form) answerRows(room size) (rows []string, rest size) {
	rest = size{room.w, max(room.h-len(f.above(room)), 1)}
	if f.err != nil {
		return nil, rest
	}
	return f.lines(room.w), rest
}

// graded is the roles whose rows look as grave as they are.
var graded = []answer.Role{answer.Verdict, answer.Against, answer.Caution}

// lines is the whole answer in rows of w columns, stops and warnings as the theme has them.
func (f *form) lines(w int) (rows []string) {
	words := f.s.words
	for _, line := range answer.Lay(f.answer.Rows(words, f.s.sys), w, words) {
		row := cut(plain(line.Text), w)
		if slices.Contains(graded, line.Role) {
			row = f.s.theme.level[line.Level].Render(row)
		}
		rows = append(rows, row)
	}
	return rows
}

// state is the row over the answer: what is wrong where there is none.
func (f *form) state(w int) []string {
	warn := f.s.theme.level[calc.Warn].Render
	switch {
	case f.fault != "":
		return each(hang("! ", f.fault, w), warn)
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
		return faultOf(f.err).Called(f.label(&f.boxes[i]))
	}
	return f.err.Error()
}

// filled is every field that has a value, those first that were filled here.
func (f *form) filled(room size) []string {
	var own, offered []string
	for i := range f.boxes {
		b := &f.boxes[i]
		value, here := f.value(b)
		switch text := f.label(b) + " " + value; {
		case here:
			own = append(own, text)
		case value != "":
			offered = append(offered, text)
		}
	}
	rows := flow(append(own, offered...), " "+string(f.s.glyphs.Between)+" ", room.w)
	return rows[:min(len(rows), room.h)]
}

// value is what counts for a box as a person reads it, and whether it was typed or picked
// here.
func (f *form) value(b *box) (text string, here bool) {
	switch own := b.own(); {
	case b.picked >= 0:
		return plain(b.choices[b.picked].Name), true
	case own != "":
		return plain(own), true
	}
	var a question.Answers
	return f.s.called(b.Field, a.With(b.Field, f.offer(b)...)), false
}

// label is a field's name in words.
func (f *form) label(b *box) string { return f.s.label(b.Field) }

// flagRef is a flag that a usage speaks of; on the page the field has another name.
var flagRef = regexp.MustCompile(`--[a-z][a-z-]*`)

// usage is what a field is for.
func (f *form) usage(b *box) string {
	figures := append(calc.Figures{{Name: "repeatable"}}, f.s.reader.UsageFigures(b.Row, f.s.sys)...)
	text := flagRef.ReplaceAllStringFunc(strings.ReplaceAll(f.s.text(b.Usage(), figures...), "`", ""), func(flag string) string {
		return f.s.say(question.SayLabel + strings.TrimPrefix(flag, "--"))
	})
	if b.Repeats {
		text += f.s.say("form-list")
	}
	return text
}

// list is as many fields as there is room for, the one that is typed in among them.
func (f *form) list(room size) (rows []string) {
	wide := 0
	for i := range f.boxes {
		wide = max(wide, ansi.StringWidth(f.label(&f.boxes[i])))
	}
	top := around(f.at, len(f.boxes), room.h)
	end := min(top+room.h, len(f.boxes))
	for i := top; i < end; i++ {
		b := &f.boxes[i]
		row := listMark(i, f.at, top, end, len(f.boxes)) + " " + pad(f.label(b), wide) + "  "
		row += f.shown(b, i == f.at, room.w-ansi.StringWidth(row))
		row = strings.TrimRight(row, " ")
		if i == f.at {
			row = f.s.theme.Focus.Render(row)
		}
		rows = append(rows, row)
	}
	return rows
}

// shown is the value of a box, in w columns.
func (f *form) shown(b *box, typedIn bool, w int) string {
	text, here := f.value(b)
	offered := !here && text != ""
	switch {
	case typedIn && b.choices != nil:
		text = "< " + text + " >"
	case typedIn && (b.typed.String() != "" || text == ""):
		return b.typed.row(f.s.glyphs.Cursor, w)
	case typedIn:
		text = string(f.s.glyphs.Cursor) + " " + text
	}
	if offered {
		text += "  " + f.s.say("form-offered")
	}
	return cut(text, w)
}
