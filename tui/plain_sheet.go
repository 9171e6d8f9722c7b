package tui

import (
	"fmt"
	"strconv"
	"strings"

	"boothset/presets/question"
)

// sheet asks for what the product's sheet says, until nothing is typed.
func (p *dialogue) sheet(page *sheetPage) error {
	s := p.r.s
	ask := s.sentence(page.step, question.SayAsk)
	p.stepOf(page.step)
	p.say(ask)
	p.say(s.sentence(page.step, question.SayWhy))
	p.say(s.say("plain-sheet"))
	if page.fault != "" {
		p.wrong(page.fault)
	}
	for {
		var rows []string
		for i := range page.all {
			b := &page.all[i]
			rows = append(rows, hang(fmt.Sprintf("%3d  ", i+1), strings.TrimSpace(page.label(b)+" "+b.own()), plainWidth)...)
		}
		p.paragraphs(rows)
		text, err := p.read(ask, rows)
		if err != nil || p.common(text) {
			return err
		}
		if text == "" {
			forward(p.r)
			return nil
		}
		if page.order(text); page.fault != "" {
			p.wrong(page.fault)
		}
	}
}

// order answers one of the fields: "2 9psi" the second. What will not do leaves it as it was.
func (p *sheetPage) order(text string) {
	where, what, _ := strings.Cut(text, " ")
	n, err := strconv.Atoi(where)
	if err != nil || n < 1 || n > len(p.all) {
		p.fault = p.s.say("plain-sheet")
		return
	}
	p.fault = ""
	b := &p.all[n-1]
	had := b.typed
	b.typed.set(what)
	if fault := p.take(n - 1); fault != nil {
		p.fault = fault.Called(p.label(b))
		b.typed = had
	}
}
