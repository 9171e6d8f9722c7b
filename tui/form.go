package tui

import (
	"errors"
	"slices"
	"strings"

	"boothset/calc/unit"
	"boothset/presets"

	tea "github.com/charmbracelet/bubbletea"
)

// Question is one of the coat's own questions, asked on a page of its own that is
// reached from the answer.
type Question struct {
	Name   string // its id
	Title  string // what it answers
	Fields []presets.Field
	// Ask answers what was typed, its bare numbers read in one system, as text of a width
	// in another; stopped is whether the job cannot be done as asked. What will not do comes
	// as a *presets.FieldError.
	Ask func(s presets.Sheet, read, show unit.System) (text func(width int) string, stopped bool, err error)
}

// form is the page of a question: its fields one below the other and the answer under
// them, worked out anew whenever a field is left. What was typed stays in it for as long
// as the assistant runs.
type form struct {
	s      *session
	from   *bench
	ask    Question
	boxes  []box
	at     int // the box that is typed in; behind the last one lies the answer
	read   unit.System
	answer struct {
		text    func(width int) string
		stopped bool
	}
	err    error
	fault  string // why what was typed was not taken; the next key clears it
	scroll scroll
}

// box is a field of a form.
type box struct {
	presets.Field
	typed   field
	choices []presets.Item // where it is chosen from a list
	picked  int            // of the choices, -1 where none was picked here
}

func newForm(s *session, from *bench, q Question) *form {
	f := &form{s: s, from: from, ask: q}
	for _, x := range q.Fields {
		f.boxes = append(f.boxes, box{Field: x, choices: s.catalogue.Choices(x.Name), picked: -1})
	}
	return f
}

// own is what was typed or picked here.
func (b *box) own() string {
	if b.picked >= 0 {
		return b.choices[b.picked].ID
	}
	return strings.TrimSpace(b.typed.String())
}

// typed is what was said here, field by field.
func (f *form) typed() presets.Sheet {
	s := presets.Sheet{}
	for i := range f.boxes {
		if own := f.boxes[i].own(); own != "" {
			s[f.boxes[i].Name] = presets.Typed(own)
		}
	}
	return s
}

// fill says what a sheet holds, as typed here with bare numbers in a system.
func (f *form) fill(s presets.Sheet, read unit.System) {
	f.read = read
	for i := range f.boxes {
		b := &f.boxes[i]
		own := string(s[b.Name])
		b.clear()
		if b.choices == nil {
			b.typed.set(own)
		} else {
			b.picked = slices.IndexFunc(b.choices, func(c presets.Item) bool { return c.ID == own })
		}
	}
}

// put says text in a field: of a list, the number, the id or the name of an entry; false
// where there is none such.
func (f *form) put(b *box, text string) bool {
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

// value is what counts for a box: what was said here, else what the answer rests on.
func (f *form) value(b *box) string {
	if own := b.own(); own != "" {
		return own
	}
	return f.from.offer(b.Name)
}

func (f *form) sheet() presets.Sheet {
	s := presets.Sheet{}
	for i := range f.boxes {
		if v := f.value(&f.boxes[i]); v != "" {
			s[f.boxes[i].Name] = presets.Typed(v)
		}
	}
	return s
}

// onAnswer reports whether no box is typed in.
func (f *form) onAnswer() bool { return f.at == len(f.boxes) }

// name is what the page is called in a word.
func (f *form) name() string {
	if name := f.s.say("page-" + f.ask.Name); name != "" {
		return name
	}
	return f.ask.Name
}

func (f *form) skip() bool { return false }

func (f *form) under(window size) []string { return nil }

func (f *form) heading() (left, right string) { return f.ask.Title, f.s.unitsName() }

// enter arrives at the first field in the way of an answer, or at the answer.
func (f *form) enter() *presets.FieldError {
	f.fault = ""
	f.scroll.top = 0
	f.solve()
	f.at = len(f.boxes)
	if i := f.blamed(); i >= 0 {
		f.at = i
	}
	return nil
}

// solve asks anew. Bare numbers keep the system they were typed in: it follows the
// assistant's only while nothing is typed.
func (f *form) solve() {
	if !slices.ContainsFunc(f.boxes, func(b box) bool { return b.own() != "" }) {
		f.read = f.s.sys
	}
	f.answer.text, f.answer.stopped, f.err = f.ask.Ask(f.sheet(), f.read, f.s.sys)
}

// blamed is the box that the fault lies in, -1 where there is none.
func (f *form) blamed() int {
	var e *presets.FieldError
	if !errors.As(f.err, &e) {
		return -1
	}
	return slices.IndexFunc(f.boxes, func(b box) bool { return b.Name == e.Field })
}

// leave takes what was typed, or keeps the cursor where it will not do.
func (f *form) leave() bool {
	if f.onAnswer() {
		return true
	}
	b := &f.boxes[f.at]
	if b.choices == nil && b.own() != "" {
		b.typed.set(complete(b.Name, b.own(), f.read))
	}
	f.solve()
	return b.own() == "" || f.blamed() != f.at
}

// next goes on, and behind the last field to the one that is in the way of an answer.
func (f *form) next(string) move {
	switch {
	case f.onAnswer():
		f.at = 0
	case !f.leave():
	case f.at < len(f.boxes)-1:
		f.at++
	case f.blamed() >= 0:
		f.at = f.blamed()
	default:
		f.toAnswer("")
	}
	return nil
}

// last goes one field back, from a faulty one too.
func (f *form) last(string) move {
	f.leave()
	f.at = max(f.at-1, 0)
	return nil
}

func (f *form) toAnswer(string) move {
	if f.leave() {
		f.at = len(f.boxes)
		f.scroll.top = 0
	}
	return nil
}

// choose picks the next choice of a box, or the one before.
func (f *form) choose(pressed string) move {
	b := &f.boxes[f.at]
	now := slices.IndexFunc(b.choices, func(c presets.Item) bool { return c.ID == f.value(b) })
	if pressed == "left" {
		now = max(now-1, 0)
	} else {
		now = min(now+1, len(b.choices)-1)
	}
	b.picked = now
	f.solve()
	return nil
}

// suggested is what may be picked in a field that is typed, as it stands.
func (f *form) suggested(b *box) []presets.Item {
	return f.s.catalogue.Suggestions(b.Name, b.own(), f.read)
}

// suggest puts the next suggestion into the field, or the one before.
func (f *form) suggest(pressed string) move {
	b := &f.boxes[f.at]
	all := f.suggested(b)
	at := slices.IndexFunc(all, func(i presets.Item) bool { return i.ID == b.own() })
	if pressed == "left" {
		at = max(at-1, 0)
	} else {
		at = min(at+1, len(all)-1)
	}
	b.typed.set(all[at].ID)
	f.solve()
	return nil
}

func (f *form) changeUnits(pressed string) move {
	f.from.changeUnits(pressed)
	f.solve()
	return nil
}

func (f *form) keys(room size) []binding {
	if f.onAnswer() {
		all := []binding{told(backKeys, "do-back-answer", always(back)), bound(firstKeys, "do-fields", f.next), bound(lastKeys, "do-last-field", f.last)}
		all = append(all, told(unitsKeys, "do-units", f.changeUnits), quitKey())
		rows, rest := f.answerRows(room)
		return append(all, f.scroll.keys(len(rows), rest)...)
	}
	all := []binding{told(nextKeys, "do-next", f.next), told(escKeys, "do-back-answer", always(back)), told(answerKeys, "do-answer", f.toAnswer)}
	if f.at > 0 {
		all = slices.Insert(all, 2, told(beforeKeys, "do-before", f.last))
	}
	b := &f.boxes[f.at]
	switch {
	case b.choices != nil:
		all = append(all, bound(nudgeKeys, "do-choose", f.choose))
	case f.suggested(b) != nil:
		all = append(all, told(nudgeKeys, "do-suggest", f.suggest))
	}
	if b.own() != "" {
		all = append(all, told(clearKeys, "do-clear", func(string) move {
			b.clear()
			f.solve()
			return nil
		}))
	}
	return all
}

func (f *form) press(k tea.KeyMsg) move {
	f.fault = ""
	if f.onAnswer() || f.boxes[f.at].choices != nil {
		return nil
	}
	b := &f.boxes[f.at]
	if !f.s.typeInto(&b.typed, b.Name, k) {
		f.fault = f.s.say("field-runes")
	}
	return nil
}
