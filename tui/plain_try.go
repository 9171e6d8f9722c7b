package tui

import (
	"errors"
	"fmt"
	"strconv"

	"boothset/calc"
	"boothset/presets/catalogue"
	"boothset/presets/edit"
)

// change tries another value of an input, and keeps it or puts it back.
func (p *dialogue) change(b *bench) error {
	s := p.r.s
	all := s.counting(b.tried.answers)
	inputs := b.inputs()
	var rows []string
	for i, in := range inputs {
		rows = append(rows, hang(fmt.Sprintf("%3d  ", i+1), s.inputName(all, in)+"  "+s.inputValue(all, in), plainWidth)...)
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
		before := b.views[0].inWords(b, plainWidth)
		if err := p.value(b, inputs[n-1]); err != nil || !b.changed() {
			return err
		}
		p.sayTried(b, before)
		return p.keepOrNot(b)
	}
}

// value reads the value that an input is tried at: text, a number of a list, or + and -
// for a step.
func (p *dialogue) value(b *bench, in edit.Input) error {
	s := p.r.s
	all := s.counting(b.tried.answers)
	of, _ := in.Of(all)
	choices := s.reader.Choices(of)
	rows := numbered(choices)
	p.paragraphs(rows)
	ask := s.text("plain-value", calc.TextFigure("input", s.inputName(all, in)))
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
func (b *bench) try(in edit.Input, text string) error {
	s, a := b.s, b.tried.answers
	values := in.With(s.reader, s.counting(a), text, s.sys).Get(in.Field)
	if f := s.reader.Check(in.Field, values, s.sys); f != nil {
		return errors.New(f.Want())
	}
	j, err := s.work(a.Changed(in.Field, values...))
	if f := faultOf(err); f != nil && f.Field == in.Field.Name {
		return errors.New(f.Want())
	}
	if err == nil {
		b.tried = j
	}
	return err
}

// keepOrNot asks whether what was tried becomes the answers.
func (p *dialogue) keepOrNot(b *bench) error {
	s := p.r.s
	choice := list{items: []catalogue.Choice{{Name: s.say("do-keep")}, {Name: s.say("do-put-back")}}}
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
		rows := b.verdictRows(plainWidth)
		if !b.tried.Stopped() {
			rows = append(rows, b.allInWords(plainWidth)...)
		}
		p.paragraphs(rows)
		return nil
	}
}
