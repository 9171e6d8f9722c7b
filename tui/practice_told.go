package tui

import (
	"boothset/presets/answer"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// toldPage is what was practised, as it is judged: rows that scroll, and on with another.
type toldPage struct {
	d      *drill
	title  string
	rows   func(room size) []string // on a screen
	lines  func(w int) []string     // in lines of text
	what   string                   // is practised
	plan   *answer.Plan
	scroll scroll
}

func (p *toldPage) enter() *question.Fault { return nil }
func (p *toldPage) skip() bool             { return false }
func (p *toldPage) heading() (_, _ string) { return p.d.s.say(p.title), p.d.s.unitsName() }
func (p *toldPage) under(size) []string    { return nil }
func (p *toldPage) press(tea.KeyMsg) move  { return nil }

func (p *toldPage) terms() (page string, of *answer.Plan) { return practiceWords, p.plan }

func (p *toldPage) body(room size) []string {
	return p.scroll.window(p.d.s, p.rows(room), room)
}

func (p *toldPage) another(string) move { return p.d.deal(p.what) }

func (p *toldPage) keys(room size) []binding {
	all := []binding{bindKey(takeKeys, "do-another", p.another), bindKey(backKeys, "do-back", always(p.d.home))}
	all = append(all, p.scroll.keys(len(p.rows(room)), room)...)
	return append(all, unitsKey(p.d.s), quitKey())
}
