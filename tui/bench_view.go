package tui

import (
	"fmt"
	"strings"

	"boothset/calc"
	"boothset/presets"

	"github.com/charmbracelet/x/ansi"
)

// Widths and heights from which the bench shows more.
const (
	sideWindow = 110 // columns with room for the list of inputs beside the view
	sideHigh   = 18  // rows of it
	sideWide   = 38
	lowBench   = 13 // rows from which the bench tells its inputs and cautions in full
)

// shares is how the room of the bench is shared out.
type shares struct {
	verdict, numbers, foot []string
	view                   size
	side                   bool
}

func (b *bench) share(room size) shares {
	v := shares{verdict: b.verdictRows(room.w), side: room.w >= sideWindow && room.h >= sideHigh, view: room}
	if views[b.view].id != "set" {
		v.numbers = b.compact(room.w)
	}
	v.foot = b.foot(room, v.side)
	v.view.h = max(room.h-len(v.verdict)-len(v.numbers)-len(v.foot), 1)
	if v.side {
		v.view.w -= sideWide + 2
	}
	return v
}

// under is the views, the one that shows in brackets.
func (b *bench) under(window size) []string {
	var names []string
	add := func(digit, name string, here bool) {
		text := digit + " " + name
		if here {
			text = "[" + text + "]"
		}
		names = append(names, text)
	}
	for i, v := range views {
		add(fmt.Sprint(i+1), b.s.say("view-"+v.id), i == b.view)
	}
	for i, f := range b.forms {
		add(formDigits[i], f.ask.Name, false)
	}
	const between = "  "
	if rows := flow(names, between, window.w); len(rows) == 1 {
		return []string{b.s.theme.Key.Render(rows[0])}
	}
	// Too narrow for all the names: that of the view that shows, the rest as digits.
	for i := range names {
		if !strings.HasPrefix(names[i], "[") {
			names[i], _, _ = strings.Cut(names[i], " ")
		}
	}
	return []string{b.s.theme.Key.Render(cut(strings.Join(names, " "), window.w))}
}

// body is the verdict, the view that shows, the inputs and the safety line.
func (b *bench) body(room size) []string {
	s := b.s
	if b.err != nil {
		return hang("! ", b.err.Error(), room.w)
	}
	v := b.share(room)
	rows := append(v.verdict, v.numbers...)
	shown := b.leafRows(room, v.view)
	if !v.side {
		return append(append(rows, shown...), v.foot...)
	}
	side := b.sideRows(size{sideWide, v.view.h})
	for y := range v.view.h {
		var left, right string
		if y < len(shown) {
			left = shown[y]
		}
		if y < len(side) {
			right = side[y]
		}
		rows = append(rows, strings.TrimRight(pad(left, v.view.w)+" "+string(s.glyphs.Upright)+right, " "))
	}
	return append(rows, v.foot...)
}

// leafRows is the page of the view that shows, filled up to its height.
func (b *bench) leafRows(room, view size) []string {
	all := b.pages(view)
	at := b.leafOf(room)
	rows := make([]string, view.h)
	copy(rows, all[at])
	if len(all) > 1 {
		text := b.s.text("leaf", calc.Figures{whole("n", at+1), whole("of", len(all)), named("key", fmt.Sprint(b.view+1))})
		rows[view.h-1] = toRight(b.s.theme.Note.Render(cut(text, view.w)), view.w)
	}
	return rows
}

// verdictRows is whether to spray, in words.
func (b *bench) verdictRows(w int) []string {
	v := b.tried.verdict()
	text := b.s.say(string(v))
	if b.changed() {
		text += " " + b.s.say("tried")
	}
	style := b.s.theme.level[v.level()]
	if v == verdictGo {
		style = b.s.theme.Go
	}
	return []string{style.Render(cut(text, w))}
}

// foot is the input that is moved, what it changed, and the safety line.
func (b *bench) foot(room size, side bool) (rows []string) {
	s := b.s
	if !side {
		rows = append(rows, b.strip(room.w))
	}
	low := room.h < lowBench
	if !low || b.changed() {
		rows = append(rows, b.change(room.w))
	}
	if low && b.changed() && !side {
		rows = rows[1:] // its value is told there too
	}
	safety := wrap(s.say("safety-line"), room.w)
	if low {
		safety = []string{cut(s.say("safety-short"), room.w)}
	}
	return append(rows, each(safety, s.theme.level[calc.Warn].Render)...)
}

// inputName is what an input is called.
func (s *session) inputName(in presets.Input) string {
	id := "short-" + in.Field
	if two := s.say(fmt.Sprintf("%s-%d", id, in.Piece+1)); two != "" {
		return two
	}
	return s.say(id)
}

// inputValue is what an input is, as a person reads it.
func (s *session) inputValue(all presets.Answers, in presets.Input) string {
	text := all.Field(in.Field)
	if text == "" {
		if in.Field == presets.FieldWall {
			return s.say("wall-not-read")
		}
		return s.say("input-usual")
	}
	if s.catalogue.Choices(in.Field) != nil {
		return s.name(in.Field, text)
	}
	return plain(in.Of(text))
}

// strip is the inputs in a row, as many as there is room for around the one that is
// moved.
func (b *bench) strip(w int) string {
	s := b.s
	inputs := b.inputs()
	all := s.complete(b.tried.answers)
	between := " " + string(s.glyphs.Between) + " "
	items := make([]string, len(inputs))
	for i, in := range inputs {
		items[i] = s.inputName(in) + " " + s.inputValue(all, in)
	}
	items[b.input] = s.theme.Focus.Render(cut("< "+items[b.input]+" >", w))
	wide := ansi.StringWidth(items[b.input])
	fits := func(i int) bool {
		if i < 0 || i >= len(items) {
			return false
		}
		more := ansi.StringWidth(between + items[i])
		if wide+more > w {
			return false
		}
		wide += more
		return true
	}
	first, end := b.input, b.input+1
	for grown := true; grown; {
		grown = false
		if fits(end) {
			end, grown = end+1, true
		}
		if fits(first - 1) {
			first, grown = first-1, true
		}
	}
	return strings.Join(items[first:end], between)
}

// change is what the numbers were and are once something is moved.
func (b *bench) change(w int) string {
	s := b.s
	if !b.changed() {
		return s.theme.Note.Render(cut(s.say("nudge-hint"), w))
	}
	var parts []string
	was, is := b.three(&b.kept), b.three(&b.tried)
	for i := range is {
		text := strings.ToLower(is[i].name) + " " + is[i].printed()
		if was[i].value != is[i].value {
			text = strings.ToLower(is[i].name) + " " + was[i].value + " -> " + is[i].printed()
		}
		parts = append(parts, text)
	}
	in := b.inputs()[b.input]
	all := s.complete(b.tried.answers)
	row := "< " + s.inputName(in) + " " + s.inputValue(all, in) + " >  "
	numbers := strings.Join(parts, ", ")
	if w < ansi.StringWidth(row+numbers) {
		row = ""
	}
	if w < ansi.StringWidth(numbers) {
		numbers = strings.Join(parts[:1], "")
		if was[2].value != is[2].value {
			numbers += ", " + parts[2]
		}
	}
	return s.theme.Focus.Render(cut(row+numbers, w))
}

// sideRows is every input, one below the other, with what it was where it was moved.
func (b *bench) sideRows(room size) (rows []string) {
	s := b.s
	inputs := b.inputs()
	now, was := s.complete(b.tried.answers), s.complete(b.kept.answers)
	top := around(b.input, len(inputs), room.h)
	end := min(top+room.h, len(inputs))
	for i := top; i < end; i++ {
		in := inputs[i]
		value := s.inputValue(now, in)
		if i == b.input {
			value = "< " + value + " >"
		}
		row := listMark(i, b.input, top, end, len(inputs)) + " " + pad(s.inputName(in), widestInput) + " " + value
		if old := s.inputValue(was, in); old != s.inputValue(now, in) {
			row += " (" + old + ")"
		}
		row = cut(row, room.w)
		if i == b.input {
			row = s.theme.Focus.Render(row)
		}
		rows = append(rows, row)
	}
	return rows
}

// widestInput is the room for the name of an input in the list of them.
const widestInput = 15
