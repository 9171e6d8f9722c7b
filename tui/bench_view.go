package tui

import (
	"fmt"
	"slices"
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
	lowBench   = 13 // rows from which the safety line stands in full
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
		add(formDigits[i], f.name(), false)
	}
	between := "  "
	// Where it is too narrow for all the names those of the pages stand as digits, and
	// then all but that of the view that shows.
	for _, kept := range []int{len(views), 0} {
		if ansi.StringWidth(strings.Join(names, between)) <= window.w {
			break
		}
		between = " "
		for i := kept; i < len(names); i++ {
			if !strings.HasPrefix(names[i], "[") {
				names[i], _, _ = strings.Cut(names[i], " ")
			}
		}
	}
	return []string{b.s.theme.Key.Render(cut(strings.Join(names, between), window.w))}
}

// body is the verdict, the view that shows, the inputs and the safety line.
func (b *bench) body(room size) []string {
	s := b.s
	if b.err != nil {
		return hang("! ", b.err.Error(), room.w)
	}
	v := b.share(room)
	rows := append(v.verdict, v.numbers...)
	shown := b.leafRows(v.view)
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
func (b *bench) leafRows(view size) []string {
	all := b.pages(view)
	at := min(b.leaf, len(all)-1)
	rows := make([]string, view.h)
	copy(rows, all[at])
	if len(all) > 1 {
		id := "leaf"
		if warns := b.cautions(calc.Warn, view.w); views[b.view].id == "set" && len(warns) > 0 && !slices.Contains(all[at], warns[0]) {
			id = "leaf-watch"
		}
		text := b.s.text(id, calc.Figures{whole("n", at+1), whole("of", len(all)), named("key", fmt.Sprint(b.view+1))})
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

// foot is the input that is moved and the safety line.
func (b *bench) foot(room size, side bool) (rows []string) {
	s := b.s
	if !side {
		rows = append(rows, b.strip(room.w))
	}
	safety := wrap(s.say("safety-line"), room.w)
	if room.h < lowBench {
		safety = []string{cut(s.say("safety-short"), room.w)}
	}
	return append(rows, each(safety, s.theme.level[calc.Warn].Render)...)
}

// pieceNames is what the two quantities of a field are called, by their sentences.
var pieceNames = map[string][2]string{
	presets.FieldHose:  {"short-hose-1", "short-hose-2"},
	presets.FieldMain:  {"short-main-1", "short-main-2"},
	presets.FieldOther: {"short-other-1", "short-other-2"},
}

// inputName is what an input is called.
func (s *session) inputName(in presets.Input) string {
	if names, paired := pieceNames[in.Field]; paired {
		return s.say(names[in.Piece])
	}
	return s.say("short-" + in.Field)
}

// inputValue is what an input is, as a person reads it.
func (s *session) inputValue(all presets.Answers, in presets.Input) string {
	text := all.Field(in.Field)
	if text == "" {
		if usual := s.say("usual-" + in.Field); usual != "" {
			return usual
		}
		return s.say("usual")
	}
	if s.catalogue.Choices(in.Field) != nil {
		return s.name(in.Field, text)
	}
	return plain(in.Of(text))
}

// strip is the inputs in a row, that is moved in the middle of those there is room for.
func (b *bench) strip(w int) string {
	s := b.s
	inputs := b.inputs()
	all := s.complete(b.tried.answers)
	between := " " + string(s.glyphs.Between) + " "
	var row, moved string
	at := 0
	for i, in := range inputs {
		item := s.inputName(in) + " " + s.inputValue(all, in)
		if i == b.input {
			moved = "< " + item + " >"
			item, at = s.theme.Focus.Render(moved), ansi.StringWidth(row)
		}
		row += item
		if i < len(inputs)-1 {
			row += between
		}
	}
	left := at - max(w-ansi.StringWidth(moved), 0)/2
	left = max(min(left, ansi.StringWidth(row)-w), 0)
	return ansi.Cut(row, left, left+w)
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
