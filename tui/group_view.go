package tui

import (
	"boothset/calc"
	"boothset/presets/catalogue"
	"boothset/presets/question"

	"github.com/charmbracelet/x/ansi"
)

// choices is what can be chosen for what is no field, and the place of what counts now; none
// and -1 for a field.
func (p *groupPage) choices(f *question.Field) (all []catalogue.Choice, at int) {
	s := p.s
	switch f {
	case wayField:
		l := s.listOf("line-", lineKeep, lineChange, lineParts)
		l.point(s.lineWay())
		return l.items, l.at
	case checkField:
		l := s.listOf("check-", checkSkip, checkChange)
		if question.Supplied(s.current()) {
			l = s.listOf("check-", checkSkip, checkKeep, checkChange)
		}
		l.point(s.check)
		return l.items, l.at
	}
	return nil, -1
}

// body is the question and the fields, what is asked in the marked one, and what was wrong
// with it. Where rows are short the reasons go first.
func (p *groupPage) body(room size) []string {
	rows, _, _ := p.laid(room)
	return rows
}

// clicked marks the field that a click is on, and takes the one that was marked, where it will
// do.
func (p *groupPage) clicked(_, y int, room size) move {
	_, first, high := p.laid(room)
	at := p.boxAt(y, first, high)
	if at < 0 || at == p.at {
		return nil
	}
	return func(*root) { p.mark(at) }
}

// laid is the rows of the page, and which is the first of the fields' and how many those have.
func (p *groupPage) laid(room size) (rows []string, first, high int) {
	s, w := p.s, room.w-2*len(margin)
	ask := each(wrap(s.sentence(p.step, question.SayAsk), w), s.theme.Question.Render)
	var fault []string
	if p.fault != "" {
		fault = each(hang("! ", p.fault, w), s.theme.level[calc.Warn].Render)
	}
	free := room.h - len(ask) - len(p.all) - len(fault)
	about := fault
	for _, block := range p.about(w) {
		if len(block) <= free && len(fault) == 0 {
			about = append(about, block...)
			free -= len(block)
		}
	}
	shown := p.shownLine(size{w, free - 1})
	if len(shown) > 0 {
		free -= len(shown) + 1
	}
	why := wrap(s.sentence(p.step, question.SayWhy), w)
	rows = ask
	if free > len(why)+2 && len(why) > 0 {
		rows = append(append([]string{""}, rows...), append(why, "")...)
		free -= len(why) + 2
	}
	first, high = len(rows), max(min(len(p.all), room.h-len(rows)-len(about)), 1)
	rows = append(rows, p.list(size{w, high})...)
	for _, block := range [][]string{about, shown} {
		if free > 0 && len(block) > 0 {
			rows = append(rows, "")
			free--
		}
		rows = append(rows, block...)
	}
	return each(rows[:min(len(rows), room.h)], indented), first, high
}

// about is what the marked field asks for, why, and what a bare number means; of the sheet what
// it takes.
func (p *groupPage) about(w int) [][]string {
	s, b := p.s, &p.all[p.at]
	quiet := func(text string) []string { return each(wrap(text, w), s.theme.Note.Render) }
	switch {
	case p.step.id == stepSheet:
		return [][]string{quiet(p.usage(b))}
	case b.choices != nil:
		return [][]string{wrap(s.say(b.Sentence(question.SayAsk)), w), quiet(s.say(b.Sentence(question.SayWhy)))}
	}
	return [][]string{wrap(s.say(b.Sentence(question.SayAsk)), w), quiet(s.say(b.Sentence(question.SayWhy))), quiet(s.bare(b.Field))}
}

// shownLine is the line as it stands, on the page that asks whether it is so: a row a part, or
// all of it in a sentence where the window is low, nothing where it is lower; of the supply, the
// same, where its check is marked.
func (p *groupPage) shownLine(room size) (rows []string) {
	if p.place(stepLine) < 0 || room.h < 1 {
		return nil
	}
	s, current := p.s, p.s.current()
	part := question.PartLine
	if p.all[p.at].Name == stepCheck && question.Supplied(current) {
		part = question.PartSupply
	} else if question.Whole(current) {
		return s.lineRows(current, room)
	}
	var short []string
	wide := 0
	var names, values []string
	for _, row := range question.Plan.Fields {
		if row.Part != part || !question.Applies(row.Field, current) || !current.Has(row.Field) {
			continue
		}
		name, value := s.label(row.Field), s.called(row.Field, current)
		names, values = append(names, name), append(values, value)
		wide = max(wide, ansi.StringWidth(name))
		if !row.Listed() {
			value = name + " " + value
		}
		short = append(short, value)
	}
	for i := range names {
		rows = append(rows, hang(pad(names[i], wide)+" ", values[i], room.w)...)
	}
	if len(rows) <= room.h {
		return rows
	}
	if rows = flow(short, ", ", room.w); len(rows) > room.h {
		return nil
	}
	return rows
}
