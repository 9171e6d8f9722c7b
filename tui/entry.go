package tui

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/presets/answer"
	"boothset/presets/catalogue"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// entryPage asks for several things on one page that belong to no question: how a setting is
// agreed on, what a booth is called. Enter takes all of them.
type entryPage struct {
	overAnswer
	boxes
	id       string // its sentences are under ask- and why- and this
	title    string // the sentence of its heading
	does     string // what Enter does, as its key says it
	words    string // what the words of the page are listed under; empty where it has none
	over     func(w int) []string
	lead     lead   // of what stands over it
	explains bool   // what the marked field is for has its rows before the other fields do
	fault    string // why what was entered was not taken; the next key clears it

	fill    func()                        // makes the boxes
	refresh func()                        // makes them anew with what was entered, where the shop's folder has changed; nil where they stay
	enough  func() bool                   // what is entered so far leaves nothing to enter; nil where all is
	take    func() (m move, fault string) // takes them, or says why not
}

// entryBox is a box of such a page: to choose from, where it has choices, else to type in.
func entryBox(name string, choices []catalogue.Choice) box {
	b := box{Row: question.Row{Field: &question.Field{Name: name}}, choices: choices, picked: -1}
	if choices != nil {
		b.picked = 0
	}
	return b
}

func newEntryPage(s *session, id, title, does string) *entryPage {
	p := &entryPage{id: id, title: title, does: does}
	p.s = s
	p.offer = func(*box) []question.Value { return nil }
	p.note = func(*box) string { return "" }
	return p
}

func (p *entryPage) skip() bool             { return false }
func (p *entryPage) heading() (_, _ string) { return p.s.say(p.title), p.s.unitsName() }
func (p *entryPage) ask() string            { return p.s.say(question.SayAsk + p.id) }

func (p *entryPage) enter() *question.Fault {
	p.fault, p.read = "", p.s.sys
	p.fill()
	p.at = min(p.at, len(p.all)-1)
	return nil
}

func (p *entryPage) terms() (page string, of *answer.Plan) { return p.words, p.plan() }

// text is what was typed or picked in the box of a name.
func (p *entryPage) text(name string) string {
	i := slices.IndexFunc(p.all, func(b box) bool { return b.Name == name })
	if i < 0 {
		return ""
	}
	return p.all[i].own()
}

func (p *entryPage) keys(room size) []binding {
	p.laid(room)
	all := []binding{bindKey(takeKeys, p.does, p.accept), bindKey(escKeys, "do-back", always(back)), bindKey(fieldKeys, "do-choose", p.walk)}
	b := &p.all[p.at]
	switch {
	case b.choices != nil:
		all = append(all, bindKey(nudgeKeys, "do-change", p.nudge), unitsKey(p.s), quitKey())
	case b.own() != "":
		all = append(all, bindKey(clearKeys, "do-empty", func(string) move { b.clear(); return nil }))
	}
	return append(all, p.lead.keys()...)
}

func (p *entryPage) walk(pressed string) move {
	p.fault = ""
	by := 1
	if pressed == "up" || pressed == "shift+tab" {
		by = -1
	}
	p.at = min(max(p.at+by, 0), len(p.all)-1)
	return nil
}

func (p *entryPage) nudge(pressed string) move {
	p.fault = ""
	b := &p.all[p.at]
	b.picked = neighbour(pressed, b.picked, len(b.choices))
	return nil
}

func (p *entryPage) press(k tea.KeyMsg) move {
	p.fault = ""
	if b := &p.all[p.at]; b.choices == nil && !p.s.typeInto(&b.typed, b.Field, k) {
		p.fault = p.s.say("field-runes")
	}
	return nil
}

func (p *entryPage) accept(string) move {
	m, fault := p.take()
	p.fault = fault
	return m
}

func (p *entryPage) body(room size) []string {
	rows, _, _ := p.laid(room)
	return rows
}

// clicked marks the field that a click is on.
func (p *entryPage) clicked(_, y int, room size) move {
	_, first, high := p.laid(room)
	at := p.boxAt(y, first, high)
	if at < 0 || at == p.at {
		return nil
	}
	return func(*root) { p.at = at }
}

// laid is the rows of the page, which is the first of the fields' and how many those have. Where
// rows are short, what the marked field is for goes first, then what stands over them.
func (p *entryPage) laid(room size) (rows []string, first, high int) {
	s, w := p.s, room.w-2*len(margin)
	rows = each(wrap(p.ask(), w), s.theme.Question.Render)
	fault := each(hang("! ", p.fault, w), s.theme.level[calc.Warn].Render)
	high = max(min(len(p.all), room.h-len(rows)-len(fault)), 1)
	about := each(wrap(p.isFor(&p.all[p.at]), w), s.theme.Note.Render)
	var over []string
	if p.over != nil {
		over = p.over(w)
	}
	beside := 1
	if p.explains {
		beside += len(about) + 1
	}
	high = p.lead.entries(high, len(over), room.h-len(rows)-len(fault)-beside)
	free := room.h - len(rows) - len(fault) - high
	if over = p.lead.window(s, over, size{w, free - 1}); len(over) > 0 {
		rows, free = append(rows, over...), free-len(over)
	}
	if free > 0 {
		rows, free = append(rows, ""), free-1
	}
	first = len(rows)
	rows = append(rows, p.list(size{w, high})...)
	if len(fault) == 0 && len(about) > 0 && len(about) < free {
		rows = append(append(rows, ""), about...)
	}
	return each(append(rows, fault...), indented), first, high
}

// isFor is what a field is for.
func (p *entryPage) isFor(b *box) string {
	if key, own := strings.CutPrefix(b.Name, ownField); own {
		return p.s.say(question.SayWhy + ownField + key)
	}
	if why := p.s.say(question.SayWhy + b.Name); why != "" || b.Read == nil {
		return why
	}
	return p.usage(b)
}
