package tui

import (
	"slices"

	"boothset/presets/answer"
	"boothset/presets/catalogue"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// pickPage asks for one of a list; a digit picks and goes on.
type pickPage struct {
	overAnswer
	s     *session
	id    string // its sentences are under ask- and why- and this
	title string // the sentence of its heading
	list  list
	over  func(w int) []string         // rows between the question and the list; nil where there are none
	lead  lead                         // of them
	least int                          // the entries that show where they want their room; 0 is all
	about func(picked string) []string // texts about the marked entry; nil where there are none
	more  []binding                    // keys of its own

	hidden func() bool // there is nothing to ask now; nil where there always is
	first  func() bool // no question comes before it; nil where one does
	backTo move        // what going back does; nil where it goes back
	words  string      // what its words are listed under; empty where it has none
	fill   func()      // makes the list
	take   func(picked string) move
}

func (p *pickPage) skip() bool             { return p.hidden != nil && p.hidden() }
func (p *pickPage) press(tea.KeyMsg) move  { return nil }
func (p *pickPage) enter() *question.Fault { p.fill(); return nil }
func (p *pickPage) accept(string) move     { return p.take(p.list.id()) }
func (p *pickPage) heading() (_, _ string) { return p.s.say(p.title), p.s.unitsName() }
func (p *pickPage) ask() string            { return p.s.say(question.SayAsk + p.id) }
func (p *pickPage) why() string            { return p.s.say(question.SayWhy + p.id) }

func (p *pickPage) terms() (page string, of *answer.Plan) { return p.words, p.plan() }

// choiceOf is an entry of a list with a name of its own.
func choiceOf(id, name string) catalogue.Choice { return catalogue.Choice{ID: id, Name: name} }

func (p *pickPage) keys(room size) []binding {
	p.laid(room)
	goBack := bindKey(listBack, "do-back", always(back))
	if p.backTo != nil {
		goBack = bindKey(listBack, "do-later", always(p.backTo))
	}
	if p.first != nil && p.first() { // before the first lies the way out
		goBack = bindKey(listBack, "do-leave", always(open(&finish{s: p.s})))
	}
	all := append([]binding{bindKey(takeKeys, "do-take", p.accept), goBack}, append(p.list.keys(p.accept), p.lead.keys()...)...)
	return append(append(all, p.more...), unitsKey(p.s), quitKey())
}

func (p *pickPage) body(room size) []string {
	rows, _, _ := p.laid(room)
	return rows
}

func (p *pickPage) clicked(x, y int, room size) move {
	_, first, high := p.laid(room)
	return p.list.zones(0, first, size{room.w, high}, p.accept).at(x, y)
}

// laid is the rows of the page, which is the first of the list's and how many it has. Where rows
// are short, what is said of the marked entry goes first, then why it is asked, then what stands
// over the list.
func (p *pickPage) laid(room size) (rows []string, first, high int) {
	s, w := p.s, room.w-2*len(margin)
	rows = each(wrap(p.ask(), w), s.theme.Question.Render)
	high = max(min(len(p.list.items), room.h-len(rows)), 1)
	var over []string
	if p.over != nil {
		over = p.over(w)
	}
	if p.least > 0 {
		high = max(min(high, room.h-len(rows)-len(over)-2), min(high, p.least))
	}
	free := room.h - len(rows) - high
	// behind is a block behind an empty row, nothing where there is no room for it.
	behind := func(block []string) []string {
		if len(block) == 0 || len(block)+1 > free {
			return nil
		}
		free -= len(block) + 1
		return append([]string{""}, block...)
	}
	over = behind(p.lead.window(s, over, size{w, free - 1}))
	why := behind(wrap(p.why(), w))
	rows = append(append(rows, why...), over...)
	if free > 0 {
		rows, free = append(rows, ""), free-1
	}
	first = len(rows)
	rows = append(rows, p.list.rows(s, size{w, high})...)
	about := p.aboutTexts(w)
	for i, text := range about {
		if block := each(wrap(plain(text), w), s.theme.Note.Render); i == 0 {
			rows = append(rows, behind(block)...)
		} else if len(block) <= free {
			rows, free = append(rows, block...), free-len(block)
		}
	}
	return each(rows, indented), first, high
}

// aboutTexts is what is said of the marked entry, what it comes to first where that has no room
// in the list.
func (p *pickPage) aboutTexts(w int) (texts []string) {
	if means := p.list.meaning(p.list.at); means != "" && p.list.meanings(w) == 0 {
		texts = append(texts, means)
	}
	if p.about != nil {
		texts = append(texts, p.about(p.list.id())...)
	}
	return slices.DeleteFunc(texts, func(t string) bool { return t == "" })
}
