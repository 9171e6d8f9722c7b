package tui

import (
	"errors"
	"fmt"
	"slices"
	"strconv"

	"boothset/calc"
	"boothset/presets"
)

// What is typed at the answer to try another value and to begin again, and on a page to
// be done with its fields.
const (
	plainChange = "c"
	plainAgain  = "n"
	plainAnswer = "="
)

// bench tells the answer and asks what to see, to try or to work out next.
func (p *teller) bench(b *bench) error {
	if b.err != nil {
		p.wrong(b.err.Error())
		back(p.r)
		return nil
	}
	p.row("")
	left, right := b.heading()
	p.say(left + ", " + right)
	if !p.told {
		p.view(b, 0)
		p.row("")
	}
	p.told = false
	menu := append(b.menu(), wrap(p.r.s.say("plain-menu"), plainWidth)...)
	p.paragraphs(menu)
	for p.r.page() == page(b) && !p.r.done {
		text, err := p.read(left, menu)
		var ended *InputError
		switch {
		case errors.As(err, &ended) || err == nil && text == "":
			leave(p.r)
			return nil
		case err != nil:
			return err
		}
		if err := p.do(b, text, menu); err != nil {
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
func (p *teller) do(b *bench, text string, menu []string) error {
	n, err := strconv.Atoi(text)
	switch {
	case text == plainChange:
		return p.change(b)
	case text == plainUnits:
		b.changeUnits("")
		p.row(p.r.s.unitsName())
		p.view(b, 0)
	case text == plainAgain:
		restart(p.r)
	case p.common(text):
	case slices.Contains(formDigits, text) && formAt(text) < len(b.forms):
		open(b.forms[formAt(text)])(p.r)
	case err == nil && n >= 1 && n <= len(views):
		p.row(p.r.s.say("view-" + views[n-1].id))
		p.view(b, n-1)
	default:
		p.wrong(p.r.s.say("plain-menu"))
		p.paragraphs(menu[:len(b.menu())])
	}
	return nil
}

// view tells what a view shows.
func (p *teller) view(b *bench, n int) { p.blocks(b.inWords(views[n].id, plainWidth)) }

func (p *teller) blocks(all [][]string) {
	for i, block := range all {
		if i > 0 && len(block) > 0 {
			p.row("")
		}
		p.paragraphs(block)
	}
}

// alwaysTold is how many of the first view's blocks are told of what is tried even where
// they are as they were: the verdict, what forbids it, the numbers.
const alwaysTold = 3

// moved tells what is tried: of what was told before only what is not the same.
func (p *teller) moved(b *bench, before [][]string) {
	var all [][]string
	for i, block := range b.inWords(views[0].id, plainWidth) {
		if i < alwaysTold || !slices.Equal(block, before[i]) {
			all = append(all, block)
		}
	}
	p.blocks(all)
}

// inWords is a view without its pictures: all that they show is told.
func (b *bench) inWords(view string, w int) [][]string {
	switch view {
	case "set":
		return [][]string{
			b.verdictRows(w), b.cautions(calc.Stop, w), b.numbersInWords(w), b.nowInWords(w),
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

// numbersInWords is the three, each with what it was where something was moved, its range,
// what it is and its strongest reason.
func (b *bench) numbersInWords(w int) (rows []string) {
	was := b.three(&b.kept)
	for i, n := range b.three(&b.tried) {
		text := n.name + " " + n.printed()
		if n.value != was[i].value {
			text += ", " + b.s.say("mark-was") + " " + was[i].printed()
		}
		for _, t := range n.below() {
			text += "; " + t
		}
		text += "."
		if why := b.first(abouts[i]); why != "" {
			text += " " + b.s.say("plain-why") + " " + why + "."
		}
		rows = append(rows, wrap(text, w)...)
	}
	return rows
}

// nowInWords is what the wall as it stands does.
func (b *bench) nowInWords(w int) (rows []string) {
	for _, r := range b.tried.setup.Reasons {
		if isNow(r.ID) {
			rows = append(rows, wrap(b.s.text(r.ID, r.Figures), w)...)
		}
	}
	return rows
}

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

// form asks the fields of a page one by one and tells its answer.
func (p *teller) form(f *form) error {
	p.told = true
	p.row("")
	p.say(f.ask.Title)
	p.say(p.r.s.say("plain-page"))
	for f.at = 0; f.at < len(f.boxes); {
		if on, err := p.box(f, &f.boxes[f.at]); err != nil || !on {
			return err
		}
		if f.onAnswer() && f.blamed() >= 0 {
			p.wrong(f.wrong())
			f.at = f.blamed()
		}
	}
	p.answer(f)
	back(p.r)
	return nil
}

// answer tells what a page comes to.
func (p *teller) answer(f *form) {
	s := p.r.s
	switch {
	case f.err != nil:
		p.wrong(f.wrong())
		return
	case f.answer.Stopped:
		p.say(s.say("form-stopped"))
	default:
		p.say(s.say("form-answer"))
	}
	p.paragraphs(s.printed(f.answer.Text(plainWidth), plainWidth))
}

// box asks a field of a page until it is left; on is false where the page is, too.
func (p *teller) box(f *form, b *box) (on bool, err error) {
	s := p.r.s
	rows := append(wrap(f.label(b)+": "+f.usage(b), plainWidth), numbered(b.choices)...)
	if f.read != s.sys {
		rows = append(rows, wrap(s.say("form-units"), plainWidth)...)
	}
	p.paragraphs(rows)
	for {
		if v := f.value(b); v != "" {
			p.offer(s.name(b.Name, v))
		}
		text, err := p.read(f.label(b), rows)
		had, of := b.typed, b.picked
		switch {
		case err != nil:
			return false, err
		case text == plainQuit:
			leave(p.r)
			return false, nil
		case text == plainBack && f.at == 0:
			back(p.r)
			return false, nil
		case text == plainBack:
			f.last("")
			return true, nil
		case text == plainUnits:
			f.changeUnits("")
			p.row(s.unitsName())
			continue
		case text == plainClear:
			b.clear()
			continue
		case text == plainAnswer:
			f.solve()
			f.at = len(f.boxes)
			return true, nil
		case text != "" && !f.put(b, text):
			p.noSuch(len(b.choices))
			continue
		}
		if f.leave() {
			f.at++
			return true, nil
		}
		p.wrong(f.wrong())
		b.typed, b.picked = had, of
	}
}
