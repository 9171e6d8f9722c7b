package tui

import "boothset/presets/answer"

// prove asks for one gauge after another, says what each pair comes to, and asks whether it
// counts.
func (p *dialogue) prove(g *provePage) error {
	s := p.r.s
	p.answered = true
	p.row("")
	title, _ := g.heading()
	p.say(title)
	switch {
	case g.from.tried.Stopped():
		p.paragraphs(g.from.unset(plainWidth))
		back(p.r)
		return nil
	case g.answer == nil:
		p.wrong(g.wrong)
		back(p.r)
		return nil
	}
	p.readings(g)
	p.say(s.say("plain-prove"))
	for g.at = 0; p.r.page() == page(g) && !p.r.done; {
		ask := p.gauge
		if g.onAnswer() {
			ask = p.proved
		}
		if err := ask(g); err != nil {
			return err
		}
	}
	return nil
}

// readings says what the readings come to.
func (p *dialogue) readings(g *provePage) {
	for _, line := range g.lines(plainWidth) {
		p.row(plain(line.Text))
	}
}

// gauge asks what a gauge shows.
func (p *dialogue) gauge(g *provePage) error {
	s, b := p.r.s, &g.all[g.at]
	text := g.label(b)
	if note := g.expected(b); note != "" {
		text += ": " + note
	}
	rows := wrap(text, plainWidth)
	if g.begins(g.at) {
		rows = append(wrap(g.does(), plainWidth), rows...)
	}
	p.paragraphs(rows)
	if own := b.own(); own != "" {
		p.offer(plain(own))
	}
	had, taken := b.typed, len(g.taken)
	text, err := p.read(g.label(b), rows)
	switch {
	case err != nil:
		return err
	case text == plainQuit:
		leave(p.r)
		return nil
	case text == plainBack && g.at == 0:
		back(p.r)
		return nil
	case text == plainBack:
		g.last("")
		return nil
	case text == plainUnits:
		g.changeUnits("")
		p.row(s.unitsName())
		return nil
	case text == plainAnswer:
		g.toAnswer("")
		return nil
	case text == plainClear:
		b.clear()
		return nil
	case text != "":
		b.typed.set(text)
	}
	g.next("")
	if g.fault != "" {
		p.wrong(g.fault)
		g.fault, b.typed = "", had
		return nil
	}
	p.r.learn()
	if len(g.taken) > taken && !g.onAnswer() && g.answer != nil { // in short; all of it is said at the end
		a := g.answer
		rows := append([]answer.Row{a.Headline(s.words, s.sys)}, a.AnewRows(s.words, s.sys)...)
		p.row("")
		for _, line := range answer.Lay(append(rows, a.JudgedRows(s.words, s.sys)...), plainWidth, s.words) {
			p.row(plain(line.Text))
		}
	}
	return nil
}

// proved says what it comes to, and asks whether the readings count.
func (p *dialogue) proved(g *provePage) error {
	s := p.r.s
	p.row("")
	p.readings(g)
	ask := "plain-prove-none"
	if len(g.taken) > 0 {
		ask = "plain-prove-count"
	}
	rows := wrap(s.say(ask), plainWidth)
	p.paragraphs(rows)
	text, err := p.read(s.say("prove-title"), rows)
	switch {
	case err != nil:
		return err
	case text == plainQuit:
		leave(p.r)
	case text == plainBack && len(g.all) > 0:
		g.last("")
	case text == plainUnits:
		g.changeUnits("")
		p.r.learn()
		p.row(s.unitsName())
	case text == plainAnswer && len(g.taken) > 0:
		g.count("")(p.r)
	default:
		back(p.r)
	}
	return nil
}
