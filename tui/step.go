package tui

import (
	"strings"

	"boothset/presets/edit"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// stepPage asks one step. What was typed or picked stays in it for as long as the assistant
// runs.
type stepPage struct {
	s     *session
	step  *step
	list  list
	field field
	fault string // why the answer was not taken; the next key clears it
	seen  bool
}

func (p *stepPage) skip() bool { return !p.s.asked(p.step) }

func (p *stepPage) enter() *question.Fault {
	p.fault = ""
	if p.step.typed() {
		return nil
	}
	p.list.items, p.list.means = p.s.reader.Choices(p.step.field), p.means
	if !p.seen || p.step.field == question.Hardener { // not at what was answered for another coat
		p.list.point(p.s.current().ID(p.step.field))
	}
	p.seen = true
	return nil
}

// means is what an entry of the list comes to beside the other answers.
func (p *stepPage) means(id string) string {
	return p.s.reader.Meaning(p.step.field, id, p.s.current(), p.s.sys)
}

// The ways to go through the line.
const (
	lineKeep   = "keep"
	lineChange = "change" // by the questions about the usual line
	lineParts  = "parts"  // by the list of its parts
)

// lineWay is how the line was last gone through.
func (s *session) lineWay() string {
	switch {
	case !s.walkLine:
		return lineKeep
	case question.Whole(s.current()):
		return lineParts
	}
	return lineChange
}

func (p *stepPage) heading() (left, right string) { return p.s.stepHeading(p.step) }
func (p *stepPage) under(window size) []string    { return p.s.progressUnder(p.step.part, window) }
func (p *stepPage) of() *step                     { return p.step }
func (p *stepPage) asks(field string) bool        { return p.step.id == field }
func (p *stepPage) draft() (at, typed string)     { return p.step.id, p.field.String() }

func (p *stepPage) resume(a question.Answers, at, typed string) {
	if !p.step.typed() {
		return
	}
	p.field.set(a.Text(p.step.field))
	if p.step.id == at {
		p.field.set(typed)
	}
}

func (p *stepPage) follow(was, now question.Answers) {
	if now.Text(p.step.field) == was.Text(p.step.field) {
		return
	}
	p.s.entered[p.step.id] = p.s.now()
	if p.step.typed() {
		p.field.set(now.Text(p.step.field))
	} else {
		p.seen = false // it points to its answer anew
	}
}

func (p *stepPage) keys(size) []binding {
	takes := bindKey(takeKeys, "do-take", p.accept)
	goBack := bindKey(listBack, "do-back", always(back))
	if p.step == &p.s.steps[0] && !p.s.picks() { // before the first lies the way out
		goBack = bindKey(listBack, "do-leave", always(open(&finish{s: p.s})))
	}
	if !p.step.typed() {
		all := append([]binding{takes, goBack}, p.list.keys(p.accept)...)
		return append(all, unitsKey(p.s), quitKey())
	}
	step := bindExplained(stepKeys, "do-step", p.stepValue)
	unsure := bindExplained(unsureKeys, "do-unsure", func(string) move { return open(&unsurePage{p.s, p.step.field, p.unsure}) })
	switch {
	case p.field.String() != "": // left and backspace edit
		goBack.Binding = typedBack
		clear := func(string) move { p.field.set(""); return nil }
		return []binding{takes, goBack, step, unsure, bindKey(clearKeys, "do-clear", clear)}
	case p.offer() != "":
		takes.does = "do-take-usual"
	case p.step.optional():
		takes.does = "do-without"
	}
	return []binding{takes, goBack, step, unsure}
}

// stepValue moves the quantity that the cursor stands in by a step.
func (p *stepPage) stepValue(pressed string) move {
	p.fault = ""
	by := -1
	if pressed == "up" {
		by = 1
	}
	s, f := p.s, p.step.field
	_, text := s.completed(f, p.field.String(), s.sys)
	moved, ok := edit.StepText(s.reader, s.counting(s.answers), f, text, p.field.at(), by, s.sys)
	if !ok {
		p.fault = s.say("field-end")
		return nil
	}
	at := p.field.at()
	p.field.set(moved)
	if at < len(text) {
		p.field.to(at)
	}
	return nil
}

func (p *stepPage) press(k tea.KeyMsg) move {
	p.fault = ""
	if !p.step.typed() {
		return nil
	}
	if !p.s.typeInto(&p.field, p.step.field, k) {
		p.fault = p.s.say("field-runes")
	}
	return nil
}

// offer is what an empty field takes: what is usual.
func (p *stepPage) offer() string {
	return p.s.reader.Shown(p.step.field, p.s.usualOf(p.step.field), p.s.sys)
}

// accept takes the answer and goes on, or says why not and stays.
func (p *stepPage) accept(string) move {
	p.fault = ""
	s, f := p.s, p.step.field
	answered := p.list.id()
	if p.step.typed() {
		answered = p.field.String()
	}
	values, text := s.completed(f, answered, s.sys)
	if len(values) == 0 {
		values = s.usualOf(f)
	}
	take := func() *question.Fault { return s.take(f, values) }
	if p.step.typed() && !p.field.touched && text != "" && text == s.answers.Text(f) { // it stays as old as it is
		take = func() *question.Fault { return s.fault(f, s.answers) }
	}
	if fault := take(); fault != nil {
		p.refuse(fault)
		return nil
	}
	if p.step.typed() && text != "" {
		p.field.set(text)
	}
	return forward
}

// unsure takes what is usual as not known, and goes on.
func (p *stepPage) unsure() move {
	f := p.step.field
	if fault := p.s.takeUnsure(f); fault != nil {
		p.refuse(fault)
		return nil
	}
	p.field.set(p.s.answers.Text(f))
	return forward
}

func (p *stepPage) refuse(f *question.Fault) {
	p.fault = f.Want()
	if p.step.typed() {
		p.fault = p.s.refusal(f, strings.TrimSpace(p.field.String()))
	}
}

// refusal is why what was typed will not do.
func (s *session) refusal(f *question.Fault, typed string) string {
	if typed == "" {
		return s.say("field-empty") + " " + f.Want()
	}
	return f.Want()
}
