package tui

import (
	"errors"
	"slices"
)

// What is typed at the answer to try another value and to begin again, and on a page to
// be done with its fields.
const (
	plainChange = "c"
	plainAgain  = "n"
	plainStage  = "s"
	plainAnswer = "="
)

// bench says the answer and asks what to see, to try or to work out next.
func (p *dialogue) bench(b *bench) error {
	if b.err != nil {
		p.wrong(b.err.Error())
		back(p.r)
		return nil
	}
	p.row("")
	left, right := b.heading()
	p.say(left + ", " + right)
	if !p.answered {
		p.view(b, 0)
		p.row("")
	}
	p.answered = false
	menu := append(b.menu(), wrap(p.r.s.say("plain-menu"), plainWidth)...)
	if b.kept.Request.Day.Assumed {
		menu = append(menu, wrap(p.r.s.say("plain-read"), plainWidth)...)
	}
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

// menu is where keys lead from the answer, each with its key.
func (b *bench) menu() []string {
	var names []string
	for _, d := range b.destinations() {
		names = append(names, d.key+" "+d.name)
	}
	return flow(names, ", ", plainWidth)
}

// do is what was typed at the answer.
func (p *dialogue) do(b *bench, text string, menu []string) error {
	to, known := b.destination(text)
	switch {
	case text == plainChange:
		return p.change(b)
	case text == plainUnits:
		b.changeUnits("")
		p.row(p.r.s.unitsName())
		if b.marked.text != "" {
			p.say(b.marked.text)
		}
		p.view(b, 0)
	case text == plainStage && len(b.kept.Stages) > 1:
		if follow := b.nextStage(""); follow != nil {
			follow(p.r)
		}
		p.row(b.kept.StageName(p.r.s.words))
		p.view(b, 0)
	case text == plainRead && b.kept.Request.Day.Assumed:
		b.asRead("")
		p.view(b, 0)
	case text == plainAgain:
		restart(p.r)
	case p.common(text):
	case known && to.page != nil:
		open(to.page)(p.r)
	case known:
		p.row(to.name)
		p.view(b, to.view)
	default:
		p.wrong(p.r.s.say("plain-menu"))
		p.paragraphs(menu[:len(b.menu())])
	}
	return nil
}

// view says what a view shows.
func (p *dialogue) view(b *bench, n int) { p.blocks(b.views[n].inWords(b, plainWidth)) }

func (p *dialogue) blocks(all [][]string) {
	for i, block := range all {
		if i > 0 && len(block) > 0 {
			p.row("")
		}
		p.paragraphs(block)
	}
}

// alwaysSaid is how many of the first view's blocks are said of what is tried even where
// they are as they were: the verdict, what speaks against it, what to do first, the settings.
const alwaysSaid = 4

// sayTried says what is tried: of what was said before only what is not the same.
func (p *dialogue) sayTried(b *bench, before [][]string) {
	var all [][]string
	for i, block := range b.views[0].inWords(b, plainWidth) {
		if i < alwaysSaid || i >= len(before) || !slices.Equal(block, before[i]) {
			all = append(all, block)
		}
	}
	p.blocks(all)
}
