package tui

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"boothset/calc"
	"boothset/presets/catalogue"
	"boothset/presets/question"
)

// numbered is a list to pick from, each entry with what it comes to.
func (l *list) numbered() []string {
	items := slices.Clone(l.items)
	for i := range items {
		if means := l.meaning(i); means != "" {
			items[i].Name += " (" + means + ")"
		}
	}
	return numbered(items)
}

// numbered is choices to pick from.
func numbered(items []catalogue.Choice) (rows []string) {
	for i, item := range items {
		rows = append(rows, hang(fmt.Sprintf("%3d  ", i+1), plain(item.Name), plainWidth)...)
	}
	return rows
}

// choose reads one of a list by its number, its id or its name and does what taking it
// does. Nothing typed takes the marked one.
func (p *dialogue) choose(l *list, question string, take func(string) move) error {
	rows := l.numbered()
	p.paragraphs(rows)
	p.offer(fmt.Sprintf("%d %s", l.at+1, plain(l.picked().Name)))
	for {
		text, err := p.read(question, rows)
		if err != nil || p.common(text) {
			return err
		}
		at, ok := pickItem(l.items, text)
		switch {
		case text == "":
			at = l.at
		case !ok:
			p.noSuch(len(l.items))
			continue
		}
		l.at = at
		if m := take(""); m != nil {
			m(p.r)
		}
		return nil
	}
}

// pick asks a page that picks one of a list.
func (p *dialogue) pick(page *pickPage) error {
	p.answered = page.from != nil
	p.row("")
	p.say(page.ask())
	p.say(page.why())
	if page.over != nil {
		p.paragraphs(page.over(plainWidth))
	}
	return p.choose(&page.list, page.ask(), page.accept)
}

// noSuch says that what was typed picks nothing of a list of so many.
func (p *dialogue) noSuch(n int) {
	p.wrong(p.r.s.text("plain-pick", calc.CountFigure("most", n)))
}

// pickItem finds an entry by its number, its id or its name.
func pickItem(items []catalogue.Choice, text string) (int, bool) {
	if n, err := strconv.Atoi(text); err == nil && n >= 1 && n <= len(items) {
		return n - 1, true
	}
	for i := range items {
		if strings.EqualFold(items[i].ID, text) || strings.EqualFold(items[i].Name, text) {
			return i, true
		}
	}
	return 0, false
}

// stepOf says which step it is.
func (p *dialogue) stepOf(st *step) {
	s := p.r.s
	n, of := s.position(st.id)
	p.row("")
	p.say(s.text("step-of", calc.CountFigure("n", n), calc.CountFigure("of", of)) + ", " + s.say(st.part.Sentence()))
}

// step asks one step.
func (p *dialogue) step(q *stepPage) error {
	s := p.r.s
	ask := s.sentence(q.step, question.SayAsk)
	p.stepOf(q.step)
	p.say(ask)
	p.say(s.sentence(q.step, question.SayWhy))
	if q.fault != "" {
		p.wrong(q.fault)
	}
	if q.step.typed() {
		return p.typed(q, ask)
	}
	if old := s.age(q.step.field, q.list.id()); old != "" {
		p.row(old)
	}
	return p.choose(&q.list, ask, q.accept)
}

// typed reads the answer to a question that is typed. What will not do leaves the field
// as it was.
func (p *dialogue) typed(q *stepPage, ask string) error {
	rows := q.row(plainWidth)[1:]
	p.paragraphs(rows)
	for {
		had := q.field.String()
		if had != "" {
			p.offer(had)
		}
		text, err := p.read(ask, rows)
		switch {
		case err != nil || p.common(text):
			return err
		case text == plainClear:
			q.field.set("")
			return nil
		case text == plainUnsure:
			p.unsure(q.step.field)
			if m := q.unsure(); m != nil {
				m(p.r)
				return nil
			}
			p.wrong(q.fault)
			continue
		}
		if text != "" {
			q.field.set(text)
		}
		if m := q.accept(""); m != nil {
			m(p.r)
			return nil
		}
		p.wrong(q.fault)
		q.field.set(had)
	}
}
