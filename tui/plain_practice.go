package tui

import "errors"

// told says what was practised, and asks for another.
func (p *dialogue) told(page *toldPage) error {
	s := p.r.s
	p.row("")
	p.paragraphs(page.lines(plainWidth))
	l := s.listOf("practice-", practiseAnother, practiseHome, practiseLeave)
	err := p.choose(&l, s.say(page.title), func(string) move {
		switch l.id() {
		case practiseAnother:
			return page.another("")
		case practiseLeave:
			return leave
		}
		return page.d.home
	})
	var ended *InputError
	if errors.As(err, &ended) { // what was asked for was said
		leave(p.r)
		return nil
	}
	return err
}

// What can be done once something was practised.
const (
	practiseAnother = "another"
	practiseHome    = "home"
)
