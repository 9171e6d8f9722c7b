package tui

import (
	"slices"

	"boothset/presets/edit"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// groupPage asks for several fields on one page, one of which is marked: the day's, the air's,
// those of the product's sheet. A field where nothing is typed takes what stands behind it: the
// answer that it has, else what is usual.
type groupPage struct {
	boxes
	step  *step
	away  []box  // those that do not count as the others are answered
	fault string // why what was typed was not taken; the next key clears it
}

// What the page of the air asks besides fields: whether the line is as it is shown, and whether
// the supply is checked.
var (
	wayField   = &question.Field{Name: stepLine}
	checkField = &question.Field{Name: stepCheck}
)

func newGroupPage(s *session, st *step) *groupPage {
	p := &groupPage{boxes: boxesOf(s, st.rows), step: st}
	p.offer, p.note = p.offered, p.origin
	return p
}

func (p *groupPage) skip() bool                    { return !p.s.asked(p.step) }
func (p *groupPage) heading() (left, right string) { return p.s.stepHeading(p.step) }
func (p *groupPage) under(window size) []string    { return p.s.progressUnder(p.step.part, window) }
func (p *groupPage) of() *step                     { return p.step }

// enter shows the fields that count, bare numbers read in the assistant's units.
func (p *groupPage) enter() *question.Fault {
	p.fault, p.read = "", p.s.sys
	at := p.all[p.at].Name
	all := append(p.all, p.away...)
	p.all, p.away = nil, nil
	for _, row := range p.step.rows {
		b := all[slices.IndexFunc(all, func(b box) bool { return b.Field == row.Field })]
		b.choices, b.picked = p.choices(b.Field)
		if b.choices != nil || question.Applies(b.Field, p.s.current()) {
			p.all = append(p.all, b)
		} else {
			p.away = append(p.away, b)
		}
	}
	p.at = max(p.place(at), 0)
	return nil
}

func (p *groupPage) place(field string) int {
	return slices.IndexFunc(p.all, func(b box) bool { return b.Name == field })
}

func (p *groupPage) asks(field string) bool { return p.place(field) >= 0 }

func (p *groupPage) refuse(f *question.Fault) {
	p.at = p.place(f.Field)
	p.fault = p.s.refusal(f, p.all[p.at].own())
}

func (p *groupPage) draft() (at, typed string) {
	b := &p.all[p.at]
	return b.Name, b.typed.String()
}

// resume shows the kept answers as what is taken; what was not taken is typed again.
func (p *groupPage) resume(_ question.Answers, at, typed string) {
	for i := range p.all {
		p.all[i].clear()
	}
	if place := p.place(at); place >= 0 {
		p.at = place
		p.all[place].typed.set(typed)
	}
}

func (p *groupPage) follow(was, now question.Answers) {
	for i := range p.all {
		if b := &p.all[i]; b.choices == nil && now.Text(b.Field) != was.Text(b.Field) {
			p.s.entered[b.Name] = p.s.now()
			b.clear()
		}
	}
}

// offered is what counts for a field where nothing is typed.
func (p *groupPage) offered(b *box) []question.Value {
	if b.choices != nil {
		return nil
	}
	return p.s.offered(b.Field)
}

// origin says where what is offered comes from, and what counts where nothing is.
func (p *groupPage) origin(b *box) string {
	switch {
	case p.s.answers.Has(b.Field):
		return p.s.taken(b.Field, p.s.answers.Text(b.Field))
	case len(p.offered(b)) > 0:
		return p.s.usualBecause(b.Field)
	}
	return p.s.say(b.Sentence(sayUsualOf))
}

// typed reports whether the marked field holds something that was not taken.
func (p *groupPage) typed() bool {
	b := &p.all[p.at]
	return b.choices == nil && b.own() != ""
}

func (p *groupPage) keys(size) []binding {
	b := &p.all[p.at]
	takes := bindKey(takeKeys, "do-go-on", p.accept)
	if p.typed() {
		takes.does = "do-take"
	}
	all := []binding{takes, bindKey(escKeys, "do-back", always(back)), bindKey(fieldKeys, "do-choose", p.walk)}
	if b.choices != nil {
		return append(all, bindKey(nudgeKeys, "do-change", p.nudge), bindExplained(digits(len(b.choices)), "do-pick", p.pick), unitsKey(p.s), quitKey())
	}
	if p.step.id == stepDay {
		all = append(all, bindExplained(readKeys, "do-read", p.asRead))
	}
	all = append(all, bindExplained(nudgeKeys, "do-step", p.nudge))
	if p.step.id != stepSheet {
		all = append(all, bindExplained(unsureKeys, "do-unsure", func(string) move { return open(&unsurePage{p.s, b.Field, p.unsure}) }))
	}
	if b.own() != "" || p.s.answers.Has(b.Field) {
		all = append(all, bindKey(clearKeys, "do-clear", func(string) move { p.fault = ""; p.empty(b); return nil }))
	}
	return all
}

// empty takes out what is typed in a field, and its answer.
func (p *groupPage) empty(b *box) {
	b.clear()
	p.s.answers = p.s.answers.Changed(b.Field)
}

// press types; a key that edits begins with the answer that stands there.
func (p *groupPage) press(k tea.KeyMsg) move {
	p.fault = ""
	b := &p.all[p.at]
	if b.choices != nil {
		return nil
	}
	if b.typed.String() == "" && k.Type != tea.KeyRunes && k.Type != tea.KeySpace {
		b.typed.set(p.s.answers.Text(b.Field))
	}
	if !p.s.typeInto(&b.typed, b.Field, k) {
		p.fault = p.s.say("field-runes")
	}
	if b.typed.touched && b.typed.String() == "" {
		p.empty(b)
	}
	return nil
}

// walk takes the marked field, where it will do, and marks the one before or after it.
func (p *groupPage) walk(pressed string) move {
	p.fault = ""
	by := 1
	if pressed == "up" || pressed == "shift+tab" {
		by = -1
	}
	p.mark(min(max(p.at+by, 0), len(p.all)-1))
	return nil
}

// mark takes what was typed in the marked field, where it will do, and marks another.
func (p *groupPage) mark(at int) {
	if p.typed() {
		p.take(p.at)
	}
	p.at = at
}

// nudge moves the quantity that the cursor stands in by a step, or what is chosen.
func (p *groupPage) nudge(pressed string) move {
	p.fault = ""
	s, b := p.s, &p.all[p.at]
	if b.choices != nil {
		b.picked = neighbour(pressed, b.picked, len(b.choices))
		return nil
	}
	by := 1
	if pressed == "left" {
		by = -1
	}
	at, text := b.typed.at(), question.TextOf(p.offered(b))
	if own := b.own(); own != "" {
		_, text = s.completed(b.Field, own, s.sys)
	} else {
		at = len(text)
	}
	moved, ok := edit.StepText(s.reader, s.counting(s.answers), b.Field, text, at, by, s.sys)
	if !ok {
		p.fault = s.say("field-end")
		return nil
	}
	b.typed.set(moved)
	if at < len(text) {
		b.typed.to(at)
	}
	return nil
}

// pick picks a choice by its number and goes on.
func (p *groupPage) pick(pressed string) move {
	p.all[p.at].picked = int(pressed[0] - '1')
	return p.goOn()
}

// accept takes the marked field and goes to the next where it was typed in, else goes on with
// the job.
func (p *groupPage) accept(string) move {
	p.fault = ""
	typed := p.typed()
	if fault := p.take(p.at); fault != nil {
		p.refuse(fault)
		return nil
	}
	if typed && p.at+1 < len(p.all) {
		p.at++
		return nil
	}
	return p.goOn()
}

// goOn takes every field and goes on with the job, or to the first that will not do.
func (p *groupPage) goOn() move {
	for i := range p.all {
		if fault := p.take(i); fault != nil {
			p.refuse(fault)
			return nil
		}
	}
	if check := p.place(stepCheck); check >= 0 {
		p.s.check = p.all[check].own()
	}
	if way := p.place(stepLine); way >= 0 {
		return p.s.takeLine(p.all[way].own())
	}
	return forward
}

// take takes what a field says, or gives what is wrong with it.
func (p *groupPage) take(at int) *question.Fault {
	s, b := p.s, &p.all[at]
	own := b.own()
	switch {
	case b.choices != nil:
		return nil
	case own == "" && s.answers.Has(b.Field):
		return s.fault(b.Field, s.answers)
	}
	values, _ := s.completed(b.Field, own, p.read)
	if len(values) == 0 {
		values = s.usualOf(b.Field)
	}
	if fault := s.take(b.Field, values); fault != nil {
		return fault
	}
	b.clear()
	return nil
}

// asRead takes the day's readings as what the instruments show now, and goes on.
func (p *groupPage) asRead(string) move {
	p.fault = ""
	for i := range p.all {
		if fault := p.take(i); fault != nil {
			p.refuse(fault)
			return nil
		}
	}
	p.s.answers = p.s.readNow(p.s.answers, question.Readings...)
	return p.goOn()
}

// unsure takes what is usual for the marked field as not known, and goes to the next.
func (p *groupPage) unsure() move {
	b := &p.all[p.at]
	if fault := p.s.takeUnsure(b.Field); fault != nil {
		p.refuse(fault)
		return nil
	}
	b.clear()
	if p.at+1 < len(p.all) {
		p.at++
		return nil
	}
	return p.goOn()
}
