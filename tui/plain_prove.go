package tui

import (
	"slices"

	"boothset/presets/answer"
)

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

// gauge asks what a gauge shows, or what is seen.
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
	if b.choices != nil {
		rows = append(rows, numbered(b.choices)...)
	}
	p.paragraphs(rows)
	if own, _ := g.value(b); own != "" {
		p.offer(own)
	}
	had, picked, taken := b.typed, b.picked, len(g.readings)
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
	case text != "" && !b.put(text):
		p.noSuch(len(b.choices))
		return nil
	}
	sees, _ := g.group(b)
	g.next("")
	if g.fault != "" {
		p.wrong(g.fault)
		g.fault, b.typed, b.picked = "", had, picked
		return nil
	}
	p.r.learn()
	if a := g.answer; a != nil && !g.onAnswer() { // in short; all of it is said at the end
		var rows []answer.Row
		switch {
		case len(g.readings) > taken:
			rows = slices.Concat(a.ToldRows(s.words, s.sys), a.AnewRows(s.words, s.sys), a.JudgedRows(s.words, s.sys))
		case sees.sees != nil && text != "":
			rows = a.SeenRowsOf(s.words, s.sys, sees.sees)
		}
		p.said(rows)
	}
	return nil
}

// said says rows, if there are any.
func (p *dialogue) said(rows []answer.Row) {
	if len(rows) == 0 {
		return
	}
	p.row("")
	for _, line := range answer.Lay(rows, plainWidth, p.r.s.words) {
		p.row(plain(line.Text))
	}
}

// proved says what it comes to, and asks whether the readings count.
func (p *dialogue) proved(g *provePage) error {
	s := p.r.s
	p.row("")
	p.readings(g)
	ask := "plain-prove-none"
	if g.counts() {
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
	case text == troubleKey && g.answer != nil && g.answer.Trouble != nil:
		to := g.trace("")
		back(p.r)
		to(p.r)
	case text == plainAnswer && g.counts():
		g.count("")(p.r)
	default:
		back(p.r)
	}
	return nil
}
