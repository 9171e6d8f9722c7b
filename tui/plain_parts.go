package tui

import (
	"strconv"
	"strings"

	"boothset/calc"
	"boothset/presets/question"
)

// parts goes over the line as a list of its parts, until nothing is typed.
func (p *dialogue) parts(page *partsPage) error {
	s := p.r.s
	ask := s.say("ask-parts")
	p.row("")
	p.say(ask)
	p.say(s.say("why-parts"))
	p.say(s.say("plain-parts"))
	for {
		rows := s.lineRows(s.current(), size{plainWidth, plainTall})
		p.paragraphs(rows)
		text, err := p.read(ask, rows)
		if err != nil || p.common(text) {
			return err
		}
		if page.fault = ""; text != "" {
			page.order(text)
		} else if page.accept(p.r); page.fault == "" {
			return nil
		}
		if page.fault != "" {
			p.wrong(page.fault)
		}
	}
}

// plainTall is more rows than a line has.
const plainTall = 3 * calc.MostParts

// order does to the line what is typed: "+2 coupling=slim" adds a part after the second, "-2"
// takes it out, "2>4" moves it to the fourth place, "2 coupling=slim" puts another in its place.
func (p *partsPage) order(text string) {
	s := p.s
	place := func(t string) (int, bool) {
		n, err := strconv.Atoi(strings.TrimSpace(t))
		return n - 1, err == nil
	}
	where, what, _ := strings.Cut(strings.TrimLeft(text, "+-"), " ")
	part := func() question.Value {
		return s.reader.Completed(question.Line, []question.Value{s.reader.Read(question.Line, s.reader.Expand(question.Line, strings.TrimSpace(what)), s.sys)}, s.sys)[0]
	}
	at, ok := place(where)
	switch from, to, moves := strings.Cut(text, ">"); {
	case moves:
		a, okFrom := place(from)
		b, okTo := place(to)
		if okFrom && okTo {
			p.moveTo(a, b)
			return
		}
		p.fault = s.say("plain-parts")
	case !ok:
		p.fault = s.say("plain-parts")
	case strings.HasPrefix(text, "-"):
		p.remove(at)
	case strings.HasPrefix(text, "+"):
		if v := part(); v.Fault != nil {
			p.fault = v.Fault.Want()
		} else {
			p.add(at, v)
		}
	default:
		p.replace(at, part())
	}
}
