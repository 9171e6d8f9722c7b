package tui

import (
	"regexp"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/question"

	"github.com/charmbracelet/x/ansi"
)

// boxes is fields one below the other, one of which is typed in.
type boxes struct {
	s     *session
	all   []box
	at    int                         // the box that is typed in
	read  unit.System                 // that bare numbers were typed in
	offer func(*box) []question.Value // what counts for a box where nothing is typed
	note  func(*box) string           // what is said behind that
}

// boxAt is the box of which a row of a page shows, -1 where it shows none: from row first on so many
// of them show, around the one that is typed in.
func (b *boxes) boxAt(y, first, high int) int {
	at := around(b.at, len(b.all), high) + y - first
	if y < first || y >= first+high || at >= len(b.all) {
		return -1
	}
	return at
}

// box is a field among others.
type box struct {
	question.Row
	typed   field
	choices []catalogue.Choice // where it is chosen from a list
	picked  int                // of the choices, -1 where none was picked here
	called  string             // in place of its label; empty where that says it
}

// boxesOf is a box for each row.
func boxesOf(s *session, rows []question.Row) boxes {
	bs := boxes{s: s}
	for _, row := range rows {
		bs.all = append(bs.all, box{Row: row, choices: s.reader.Choices(row.Field), picked: -1})
	}
	return bs
}

// own is what was typed or picked here.
func (b *box) own() string {
	if b.picked >= 0 {
		return b.choices[b.picked].ID
	}
	return strings.TrimSpace(b.typed.String())
}

// own is what was typed or picked on the page, field by field.
func (bs *boxes) own() question.Texts {
	texts := question.Texts{}
	for i := range bs.all {
		if own := bs.all[i].own(); own != "" {
			texts[bs.all[i].Name] = []string{own}
		}
	}
	return texts
}

// fill puts texts into the boxes, as typed here with bare numbers in a system. What a list
// no longer has is left out.
func (bs *boxes) fill(texts question.Texts, read unit.System) {
	bs.read = read
	for i := range bs.all {
		b := &bs.all[i]
		own := strings.Join(texts[b.Name], question.Between)
		b.clear()
		if b.choices == nil {
			b.typed.set(own)
		} else {
			b.picked = b.choice(own)
		}
	}
}

// choice is the place of an entry among the choices, -1 where it is none of them.
func (b *box) choice(id string) int {
	return slices.IndexFunc(b.choices, func(c catalogue.Choice) bool { return c.ID == id })
}

// put puts text into a box: of a list, the number, the id or the name of an entry; false
// where there is none such.
func (b *box) put(text string) bool {
	if b.choices == nil {
		b.typed.set(text)
		return true
	}
	at, ok := pickItem(b.choices, text)
	if ok {
		b.picked = at
	}
	return ok
}

func (b *box) clear() {
	b.typed.set("")
	b.picked = -1
}

// values is what counts for a box: what was typed or picked here, else what is offered.
func (bs *boxes) values(b *box) []question.Value {
	if own := b.own(); own != "" {
		return bs.s.reader.ReadText(b.Field, own, bs.read)
	}
	return bs.offer(b)
}

// value is what counts for a box as a person reads it, and whether it was typed or picked
// here.
func (bs *boxes) value(b *box) (text string, here bool) {
	switch own := b.own(); {
	case b.picked >= 0:
		return plain(b.choices[b.picked].Name), true
	case own != "":
		return plain(own), true
	}
	values := bs.offer(b)
	if len(values) == 0 {
		return "", false
	}
	return plain(bs.s.reader.Shown(b.Field, values, bs.s.sys)), false
}

// label is a field's name in words.
func (bs *boxes) label(b *box) string {
	if b.called != "" {
		return b.called
	}
	return bs.s.label(b.Field)
}

// flagRef is a flag that a usage speaks of; on the page the field has another name.
var flagRef = regexp.MustCompile(`--[a-z][a-z-]*`)

// usage is what a field is for.
func (bs *boxes) usage(b *box) string {
	figures := append(calc.Figures{{Name: "repeatable"}}, bs.s.reader.UsageFigures(b.Row, bs.s.sys)...)
	text := flagRef.ReplaceAllStringFunc(strings.ReplaceAll(bs.s.text(b.Usage(), figures...), "`", ""), func(flag string) string {
		return bs.s.say(question.SayLabel + strings.TrimPrefix(flag, "--"))
	})
	if b.Repeats {
		text += bs.s.say("form-list")
	}
	return text
}

// list is as many fields as there is room for, the one that is typed in among them.
func (bs *boxes) list(room size) (rows []string) {
	wide := 0
	for i := range bs.all {
		wide = max(wide, ansi.StringWidth(bs.label(&bs.all[i])))
	}
	top := around(bs.at, len(bs.all), room.h)
	end := min(top+room.h, len(bs.all))
	for i := top; i < end; i++ {
		b := &bs.all[i]
		row := listMark(i, bs.at, top, end, len(bs.all)) + " " + pad(bs.label(b), wide) + "  "
		row += bs.shown(b, i == bs.at, room.w-ansi.StringWidth(row))
		row = strings.TrimRight(row, " ")
		if i == bs.at {
			row = bs.s.theme.Focus.Render(row)
		}
		rows = append(rows, row)
	}
	return rows
}

// shown is the value of a box, in w columns.
func (bs *boxes) shown(b *box, typedIn bool, w int) string {
	text, here := bs.value(b)
	note := ""
	if !here {
		note = bs.note(b)
	}
	switch {
	case typedIn && b.choices != nil:
		text = "< " + text + " >"
	case typedIn && (b.typed.String() != "" || text+note == ""):
		return b.typed.row(bs.s.glyphs.Cursor, w)
	case typedIn:
		text = strings.TrimRight(string(bs.s.glyphs.Cursor)+" "+text, " ")
	}
	if text != "" && note != "" {
		text += "  "
	}
	if whole := text + note; typedIn || note == "" || ansi.StringWidth(whole) > w {
		return fit(whole, w)
	}
	return text + bs.s.theme.Note.Render(note)
}

// filled is every field that has a value, those first that were filled here.
func (bs *boxes) filled(room size) []string {
	var own, offered []string
	for i := range bs.all {
		b := &bs.all[i]
		value, here := bs.value(b)
		switch text := bs.label(b) + " " + value; {
		case here:
			own = append(own, text)
		case value != "":
			offered = append(offered, text)
		}
	}
	rows := flow(append(own, offered...), " "+string(bs.s.glyphs.Between)+" ", room.w)
	return clip(rows, room.h, room.w)
}
