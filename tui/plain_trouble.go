package tui

import "boothset/presets/signs"

// plainFurther is what is typed to look at more than was needed to tell.
const plainFurther = "+"

// trouble asks what is seen, then for one check after another, and says what it is and what to
// do.
func (p *dialogue) trouble(t *troublePage) error {
	p.answered = true
	p.row("")
	title, _ := t.heading()
	p.say(title)
	for p.r.page() == page(t) && !p.r.done {
		ask := p.seen
		switch {
		case t.asks():
			ask = p.checked
		case t.sign != "":
			ask = p.traced
		}
		if err := ask(t, title); err != nil {
			return err
		}
	}
	return nil
}

// seen asks what is seen: a word of it, or the number of one that was listed.
func (p *dialogue) seen(t *troublePage, title string) error {
	rows := wrap(p.r.s.say("plain-trouble"), plainWidth)
	p.paragraphs(rows)
	text, err := p.read(title, rows)
	if err != nil || text != "" && p.common(text) {
		return err
	}
	if at, ok := pickItem(t.offers.items, text); ok {
		t.offers.at = at
		t.trace("")
		return nil
	}
	t.typed.set(text)
	t.offer()
	t.offers.point(signs.Find(text))
	switch len(t.offers.items) {
	case 0:
		p.wrong(p.r.s.say("trouble-nothing"))
		t.typed.set("")
		t.offer()
	case 1:
		t.trace("")
	default:
		if signs.Find(text) != "" {
			t.trace("")
			return nil
		}
		p.paragraphs(t.offers.numbered())
	}
	return nil
}

// checked asks for what a check shows.
func (p *dialogue) checked(t *troublePage, _ string) error {
	s := p.r.s
	p.row("")
	if len(t.found) == 0 {
		p.say(t.answer.Seen(s.words, t.sign))
	}
	ask := s.say("ask-check-" + t.answer.Found.Next.ID)
	p.say(ask)
	next := t.answer.NextRows(s.words, s.sys)
	p.say(next[len(next)-1].Text)
	rows := append(numbered(t.findings.items), wrap(s.say("plain-found"), plainWidth)...)
	p.paragraphs(rows)
	for {
		text, err := p.read(ask, rows)
		switch {
		case err != nil:
			return err
		case text == plainBack:
			t.before("")
			return nil
		case text == plainUnits:
			t.changeUnits("")
			p.row(s.unitsName())
			continue
		case p.common(text):
			return nil
		}
		at, ok := pickItem(t.findings.items, text)
		if !ok {
			p.noSuch(len(t.findings.items))
			continue
		}
		t.findings.at = at
		t.shows("")
		return nil
	}
}

// traced says what it comes to, and asks whether to look further.
func (p *dialogue) traced(t *troublePage, title string) error {
	s := p.r.s
	head := t.answer.Headline(s.words, s.sys)
	p.row("")
	p.paragraphs(hang(head.Name+": ", plain(head.Text), plainWidth))
	for _, line := range t.lines(plainWidth) {
		p.row(plain(line.Text))
	}
	rows := wrap(s.say("plain-further"), plainWidth)
	p.paragraphs(rows)
	text, err := p.read(title, rows)
	switch {
	case err != nil:
		return err
	case text == plainFurther:
		if t.answer.Found.Next != nil {
			t.look("")
		}
	case text == plainBack:
		t.before("")
	case text == plainUnits:
		t.changeUnits("")
		p.row(s.unitsName())
	case text == plainQuit:
		leave(p.r)
	default:
		back(p.r)
	}
	return nil
}
