package tui

import (
	"fmt"
	"slices"
	"strconv"

	"boothset/calc"
	"boothset/presets"
)

// plainChange is what is typed at the answer to try another value.
const plainChange = "c"

// bench tells the answer and asks what to see, to try or to work out next.
func (p *teller) bench(b *bench) error {
	if b.err != nil {
		p.paragraphs(hang("! ", b.err.Error(), plainWidth))
		back(p.r)
		return nil
	}
	p.row("")
	left, right := b.heading()
	p.row(left + ", " + right)
	p.view(b, 0)
	for p.r.page() == page(b) && !p.r.done {
		p.row("")
		p.paragraphs(b.menu())
		p.say(p.r.s.say("plain-menu"))
		text, err := p.read()
		switch {
		case err == errInputEnded || err == nil && text == "":
			leave(p.r)
			return nil
		case err != nil:
			return err
		}
		if err := p.do(b, text); err != nil {
			return err
		}
	}
	return nil
}

// menu is the views and the pages with their digits.
func (b *bench) menu() []string {
	var names []string
	for i, v := range views {
		names = append(names, fmt.Sprint(i+1)+" "+b.s.say("view-"+v.id))
	}
	for i, f := range b.forms {
		names = append(names, formDigits[i]+" "+f.name())
	}
	return flow(names, ", ", plainWidth)
}

// do is what was typed at the answer.
func (p *teller) do(b *bench, text string) error {
	n, err := strconv.Atoi(text)
	switch {
	case text == plainChange:
		return p.change(b)
	case text == "u":
		b.changeUnits("")
		p.view(b, 0)
	case text == "n":
		restart(p.r)
	case p.common(text):
	case slices.Contains(formDigits, text) && formAt(text) < len(b.forms):
		open(b.forms[formAt(text)])(p.r)
	case err == nil && n >= 1 && n <= len(views):
		p.view(b, n-1)
	default:
		p.row("! " + p.r.s.say("plain-menu"))
	}
	return nil
}

// view tells what a view shows.
func (p *teller) view(b *bench, n int) {
	for i, block := range b.inWords(views[n].id, plainWidth) {
		if i > 0 && len(block) > 0 {
			p.row("")
		}
		p.paragraphs(block)
	}
}

// inWords is a view without its pictures: all that they show is told.
func (b *bench) inWords(view string, w int) [][]string {
	switch view {
	case "set":
		return [][]string{
			b.verdictRows(w), b.cautions(calc.Stop, w), b.numbersInWords(w), b.now(w), b.mainReasons(wideColumns - 1),
			b.cautions(calc.Warn, w), wrap(b.atGun(), w), b.cautions(calc.Note, w),
		}
	case "look":
		return [][]string{wrap(b.dialText(), w), wrap(b.boreText(), w), wrap(b.rulerText(), w)}
	case "line":
		return [][]string{b.lineTold(w), slices.Concat(b.lineText(w)...)}
	case "day":
		return [][]string{b.dayTold(w), b.dayTurns(w)}
	case "sure":
		return [][]string{b.sureTold(w), b.causesInWords(w)}
	}
	return b.whyBlocks(w)
}

// numbersInWords is the three, each with its range and what it is.
func (b *bench) numbersInWords(w int) (rows []string) {
	was := b.three(&b.kept)
	for i, n := range b.three(&b.tried) {
		text := n.name + " " + n.printed()
		if n.value != was[i].value {
			text = n.name + " " + was[i].value + " -> " + n.printed()
		}
		for _, t := range n.below() {
			text += "; " + t
		}
		rows = append(rows, hang("", text+".", w)...)
	}
	return rows
}

// change tries another value of an input, and keeps it or puts it back.
func (p *teller) change(b *bench) error {
	s := p.r.s
	all := s.complete(b.tried.answers)
	inputs := b.inputs()
	for i, in := range inputs {
		p.row(fmt.Sprintf("%3d  %s  %s", i+1, s.inputName(in), s.inputValue(all, in)))
	}
	p.say(s.say("plain-which"))
	text, err := p.read()
	if err != nil || text == "" || text == plainBack {
		return err
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > len(inputs) {
		p.row("! " + s.text("plain-pick", calc.Figures{whole("most", len(inputs))}))
		return nil
	}
	b.input = n - 1
	if err := p.value(b, inputs[n-1]); err != nil || !b.changed() {
		return err
	}
	p.view(b, 0)
	return p.keepOrNot(b)
}

// value reads the value that an input is tried at: text, a number of a list, or + and -
// for a step.
func (p *teller) value(b *bench, in presets.Input) error {
	s := p.r.s
	choices := s.catalogue.Choices(in.Field)
	for i, item := range choices {
		p.row(fmt.Sprintf("%3d  %s", i+1, plain(item.Name)))
	}
	p.say(s.text("plain-value", calc.Figures{named("input", s.inputName(in))}))
	text, err := p.read()
	switch {
	case err != nil || text == "" || text == plainBack:
		return err
	case text == "+":
		b.move(in, 1)
		return nil
	case text == "-":
		b.move(in, -1)
		return nil
	case choices != nil:
		at, ok := pickItem(choices, text)
		if !ok {
			p.row("! " + s.text("plain-pick", calc.Figures{whole("most", len(choices))}))
			return nil
		}
		text = choices[at].ID
	}
	a := b.tried.answers
	whole := in.With(s.complete(a), text)
	a.Set(in.Field, complete(in.Field, whole, s.sys))
	if f := s.catalogue.Fault(s.complete(a), in.Field, s.sys); f != nil {
		p.paragraphs(hang("! ", f.Want, plainWidth))
		return nil
	}
	j, err := s.work(a)
	if err != nil {
		p.paragraphs(hang("! ", err.Error(), plainWidth))
		return nil
	}
	b.tried = j
	return nil
}

// keepOrNot asks whether what was tried becomes the answers.
func (p *teller) keepOrNot(b *bench) error {
	s := p.r.s
	p.row("  1  " + s.say("do-keep"))
	p.row("  2  " + s.say("do-put-back"))
	text, err := p.read()
	if err != nil {
		return err
	}
	if text == "1" {
		b.keep("")(p.r)
	} else {
		b.putBack("")
	}
	p.view(b, 0)
	return nil
}

// form asks the fields of a page one by one and tells its answer.
func (p *teller) form(f *form) error {
	s := p.r.s
	p.row("")
	p.row(f.ask.Title)
	for f.at = 0; f.at < len(f.boxes); {
		b := &f.boxes[f.at]
		p.say(f.label(b) + ": " + f.usage(b))
		for i, c := range b.choices {
			p.row(fmt.Sprintf("%3d  %s", i+1, plain(c.Name)))
		}
		if v := f.value(b); v != "" {
			p.row(s.say("field-offer") + " " + s.name(b.Name, v))
		}
		text, err := p.read()
		switch {
		case err != nil:
			return err
		case text == plainBack && f.at == 0:
			back(p.r)
			return nil
		case text == plainBack:
			f.last("")
			continue
		case text == plainHelp:
			p.help()
			continue
		case text != "":
			if !f.put(b, text) {
				p.row("! " + s.text("plain-pick", calc.Figures{whole("most", len(b.choices))}))
				continue
			}
		}
		if !f.leave() {
			p.paragraphs(f.state(plainWidth))
			continue
		}
		f.at++
	}
	f.solve()
	p.paragraphs(f.state(plainWidth))
	if f.err == nil {
		p.paragraphs(s.printed(f.answer.Text(plainWidth), plainWidth))
	}
	back(p.r)
	return nil
}
