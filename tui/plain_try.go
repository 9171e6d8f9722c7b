package tui

import (
	"errors"
	"fmt"
	"strconv"

	"boothset/calc"
	"boothset/presets"
)

// change tries another value of an input, and keeps it or puts it back.
func (p *teller) change(b *bench) error {
	s := p.r.s
	all := s.complete(b.tried.answers)
	inputs := b.inputs()
	var rows []string
	for i, in := range inputs {
		rows = append(rows, hang(fmt.Sprintf("%3d  ", i+1), s.inputName(in)+"  "+s.inputValue(all, in), plainWidth)...)
	}
	p.paragraphs(rows)
	which := s.say("plain-which")
	p.say(which)
	for {
		text, err := p.read(which, rows)
		if err != nil || text == "" || text == plainBack {
			return err
		}
		n, err := strconv.Atoi(text)
		if err != nil || n < 1 || n > len(inputs) {
			p.noSuch(len(inputs))
			continue
		}
		b.input = n - 1
		before := b.inWords(views[0].id, plainWidth)
		if err := p.value(b, inputs[n-1]); err != nil || !b.changed() {
			return err
		}
		p.moved(b, before)
		return p.keepOrNot(b)
	}
}

// value reads the value that an input is tried at: text, a number of a list, or + and -
// for a step.
func (p *teller) value(b *bench, in presets.Input) error {
	s := p.r.s
	choices := s.catalogue.Choices(in.Field)
	rows := numbered(choices)
	p.paragraphs(rows)
	ask := s.text("plain-value", calc.Figures{named("input", s.inputName(in))})
	p.say(ask)
	for {
		text, err := p.read(ask, rows)
		switch {
		case err != nil || text == "" || text == plainBack:
			return err
		case text == "+" || text == "-":
			by := 1
			if text == "-" {
				by = -1
			}
			if b.move(in, by); b.changed() {
				return nil
			}
			p.wrong(s.say("field-end"))
			continue
		case choices != nil:
			at, ok := pickItem(choices, text)
			if !ok {
				p.noSuch(len(choices))
				continue
			}
			text = choices[at].ID
		}
		if err := b.try(in, text); err != nil {
			p.wrong(err.Error())
			continue
		}
		return nil
	}
}

// try is another value of an input, in text.
func (b *bench) try(in presets.Input, text string) error {
	s := b.s
	a := b.tried.answers
	a.Set(in.Field, complete(in.Field, in.With(s.complete(a), text), s.sys))
	if f := s.catalogue.Fault(s.complete(a), in.Field, s.sys); f != nil {
		return errors.New(f.Want)
	}
	j, err := s.work(a)
	if err == nil {
		b.tried = j
	}
	return err
}

// keepOrNot asks whether what was tried becomes the answers.
func (p *teller) keepOrNot(b *bench) error {
	s := p.r.s
	choice := list{items: []presets.Item{{Name: s.say("do-keep")}, {Name: s.say("do-put-back")}}}
	rows := numbered(choice.items)
	p.row("")
	p.paragraphs(rows)
	for {
		text, err := p.read(s.say("tried"), rows)
		switch {
		case err != nil:
			return err
		case text == "1":
			b.keep("")(p.r)
		case text == "2" || text == plainBack:
			b.putBack("")
		default:
			p.noSuch(len(choice.items))
			continue
		}
		p.paragraphs(append(b.verdictRows(plainWidth), b.numbersInWords(plainWidth)...))
		return nil
	}
}
