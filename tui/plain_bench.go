package tui

import (
	"errors"
	"fmt"
	"slices"
	"strconv"

	"boothset/calc"
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
