package tui

import (
	"strings"

	"boothset/calc"
	"boothset/presets"

	tea "github.com/charmbracelet/bubbletea"
)

// question asks one step. What was typed or picked stays in it for as long as the
// assistant runs.
type question struct {
	s     *session
	step  *step
	list  list
	field field
	fault string // why the answer was not taken; the next key clears it
	seen  bool
}

func (q *question) skip() bool { return !q.s.asked(q.step) }

func (q *question) enter() *presets.FieldError {
	q.fault = ""
	if q.step.typed {
		return nil
	}
	q.list.items = q.choices()
	switch {
	case q.step.id == stepLine:
		q.list.point(map[bool]string{true: lineChange, false: lineKeep}[q.s.walkLine])
	case q.step.id == stepSupply:
		q.list.point(q.s.check)
	case !q.seen:
		q.list.point(q.s.value(q.step.id))
	}
	q.seen = true
	return nil
}

// The choices of the step that shows the line; those of the supply are what checking
// can be.
const (
	lineKeep   = "keep"
	lineChange = "change"
)

func (q *question) choices() []presets.Item {
	item := func(id, sentence string) presets.Item { return presets.Item{ID: id, Name: q.s.say(sentence)} }
	switch {
	case q.step.field():
		return q.s.catalogue.Choices(q.step.id)
	case q.step.id == stepLine:
		return []presets.Item{item(lineKeep, "line-keep"), item(lineChange, "line-change")}
	}
	all := []presets.Item{item(checkSkip, "check-skip")}
	if q.s.hasCompressor() {
		all = append(all, item(checkKeep, "check-keep"))
	}
	return append(all, item(checkChange, "check-change"))
}

func (q *question) heading() (left, right string) {
	n, of := q.s.position(q.step.id)
	return q.s.say(q.step.part), q.s.unitsName() + "  " + q.s.text("step-of", calc.Figures{whole("n", n), whole("of", of)})
}

func (q *question) under(window size) []string {
	rows := 1
	if window.h >= roomyWindow {
		rows = 2
	}
	return q.s.trail(window.w, rows)
}

func (q *question) keys(size) []binding {
	takes := bound(takeKeys, "do-take", q.accept)
	goBack := bound(listBack, "do-back", always(back))
	if q.step == &steps[0] { // before the first lies the way out
		goBack = bound(listBack, "do-leave", always(open(&finish{s: q.s})))
	}
	if !q.step.typed {
		all := append([]binding{takes, goBack}, q.list.keys(q.accept)...)
		return append(all, unitsKey(q.s), quitKey())
	}
	step := told(stepKeys, "do-step", q.nudge)
	switch {
	case q.field.String() != "": // left and backspace edit
		goBack.Binding = typedBack
		clear := func(string) move { q.field.set(""); return nil }
		return []binding{takes, goBack, step, bound(clearKeys, "do-clear", clear)}
	case q.offer() != "":
		takes.does = "do-take-usual"
	case q.step.optional:
		takes.does = "do-without"
	}
	return []binding{takes, goBack, step}
}

// nudge moves the quantity that the cursor stands in by a step.
func (q *question) nudge(pressed string) move {
	q.fault = ""
	by := -1
	if pressed == "up" {
		by = 1
	}
	s := q.s
	text := complete(q.step.id, q.field.String(), s.sys)
	in := presets.InputAt(q.step.id, text, q.field.at())
	moved, ok := s.catalogue.NudgeText(s.complete(s.answers), in, text, by, s.sys)
	if !ok {
		q.fault = s.say("field-end")
		return nil
	}
	at := q.field.at()
	q.field.set(moved)
	if at < len(text) {
		q.field.to(at)
	}
	return nil
}

func (q *question) press(k tea.KeyMsg) move {
	q.fault = ""
	if !q.step.typed {
		return nil
	}
	if !q.s.typeInto(&q.field, q.step.id, k) {
		q.fault = q.s.say("field-runes")
	}
	return nil
}

// offer is what an empty field takes: the shop's usual.
func (q *question) offer() string { return q.s.usual(q.step.id) }

// accept takes the answer and goes on, or says why not and stays.
func (q *question) accept(string) move {
	q.fault = ""
	id := q.step.id
	switch id {
	case stepLine:
		q.s.walkLine = q.list.picked().ID == lineChange
		return forward
	case stepSupply:
		q.s.check = q.list.picked().ID
		return forward
	}
	var text string
	if q.step.typed {
		text = complete(id, q.field.String(), q.s.sys)
	} else {
		text = q.list.picked().ID
	}
	typed := text != ""
	if !typed {
		text = q.offer()
	}
	a := q.s.answers
	a.Set(id, text)
	if text != "" || !q.step.optional {
		if f := q.s.catalogue.Fault(a, id, q.s.sys); f != nil {
			q.refuse(f)
			return nil
		}
	}
	q.s.answers = a
	q.s.entered[id] = q.s.now()
	if q.step.typed && typed {
		q.field.set(text)
	}
	return forward
}

func (q *question) refuse(f *presets.FieldError) {
	q.fault = f.Want
	if q.step.typed && strings.TrimSpace(q.field.String()) == "" {
		q.fault = q.s.say("field-empty") + " " + f.Want
	}
}
