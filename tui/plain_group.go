package tui

import (
	"fmt"
	"strconv"
	"strings"

	"boothset/presets/question"
)

// What is typed for a reading that stands as it is now, and for what is not known.
const (
	plainRead   = "="
	plainUnsure = "!"
)

// group asks for the fields of a page one after the other.
func (p *dialogue) group(page *groupPage) error {
	p.stepOf(page.step)
	for p.r.page() == asking(page) && !p.r.done {
		if page.fault != "" {
			p.wrong(page.fault)
			page.fault = ""
		}
		p.keep()
		on, err := p.member(page, &page.all[page.at])
		switch {
		case err != nil:
			return err
		case !on:
		case page.at+1 < len(page.all):
			page.at++
		default:
			if m := page.goOn(); m != nil {
				m(p.r)
				return nil
			}
		}
	}
	return nil
}

// member asks one field of a page; on is false where it is to be asked again, or another is.
func (p *dialogue) member(page *groupPage, b *box) (on bool, err error) {
	s := p.r.s
	ask := s.say(b.Sentence(question.SayAsk))
	p.say(ask)
	p.say(s.say(b.Sentence(question.SayWhy)))
	var rows []string
	if b.choices != nil {
		p.paragraphs(page.shownLine(size{plainWidth, 1}))
		rows = numbered(b.choices)
		p.paragraphs(rows)
		p.offer(fmt.Sprintf("%d %s", b.picked+1, plain(b.choices[b.picked].Name)))
	} else {
		rows = wrap(s.bare(b.Field), plainWidth)
		if text, _ := page.value(b); text != "" {
			p.offer(strings.TrimSpace(text + "  " + page.note(b)))
		} else {
			rows = append(wrap(s.say(b.Sentence(question.SayEmpty)), plainWidth), rows...)
		}
		p.paragraphs(rows)
	}
	text, err := p.read(ask, rows)
	switch {
	case err != nil:
		return false, err
	case text == plainBack && page.at > 0:
		page.at--
		return false, nil
	case p.common(text):
		return false, nil
	case b.choices != nil:
		if text == "" {
			return true, nil
		}
		at, ok := pickItem(b.choices, text)
		if !ok {
			p.noSuch(len(b.choices))
			return false, nil
		}
		b.picked = at
		return true, nil
	}
	return p.took(page, b, text), nil
}

// took takes what was typed for a field, and reports whether it will do.
func (p *dialogue) took(page *groupPage, b *box, text string) bool {
	s, had := p.r.s, b.typed
	switch {
	case text == plainClear:
		page.empty(b)
		return false
	case text == plainUnsure:
		p.unsure(b.Field)
		if fault := s.takeUnsure(b.Field); fault != nil {
			page.refuse(fault)
			return false
		}
		return true
	case text == plainRead && page.step.id == stepDay:
		if fault := page.take(page.at); fault != nil {
			page.refuse(fault)
			return false
		}
		s.answers = s.readNow(s.answers, b.Field)
		return true
	case text != "":
		b.typed.set(text)
	}
	page.read = s.sys
	if fault := page.take(page.at); fault != nil {
		page.refuse(fault)
		b.typed = had
		return false
	}
	return true
}

// unsure says how a field is measured and what is taken meanwhile.
func (p *dialogue) unsure(f *question.Field) {
	p.say(p.r.s.say(f.Sentence(question.SayHow)))
	p.say(p.r.s.meanwhile(f))
}

// sheet asks for what the product's sheet says, until nothing is typed.
func (p *dialogue) sheet(page *groupPage) error {
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
			value, _ := page.value(b)
			rows = append(rows, hang(fmt.Sprintf("%3d  ", i+1), strings.TrimSpace(page.label(b)+" "+value), plainWidth)...)
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
func (p *groupPage) order(text string) {
	where, what, _ := strings.Cut(text, " ")
	n, err := strconv.Atoi(where)
	if err != nil || n < 1 || n > len(p.all) {
		p.fault = p.s.say("plain-sheet")
		return
	}
	p.fault = ""
	b := &p.all[n-1]
	had := b.typed
	if b.typed.set(what); what == "" {
		p.empty(b)
	}
	if fault := p.take(n - 1); fault != nil {
		p.fault = fault.Called(p.label(b))
		b.typed = had
	}
}
