package tui

import (
	"boothset/calc"
	"boothset/presets"
	"boothset/presets/last"

	tea "github.com/charmbracelet/bubbletea"
)

// resume offers the answers of the last run, where there are any.
type resume struct {
	s     *session
	draft *last.Draft // nil where there is none, or it was taken
	list  list
}

// What can be done with them.
const (
	resumeGoOn  = "go-on" // where it was left
	resumeAgain = "again" // the same answers, from the first question
	resumeClean = "clean" // none of them
)

func (p *resume) skip() bool                { return p.draft == nil }
func (p *resume) heading() (string, string) { return p.s.say("resume-title"), p.s.unitsName() }
func (p *resume) under(size) []string       { return nil }
func (p *resume) press(tea.KeyMsg) move     { return nil }

func (p *resume) enter() *presets.FieldError {
	p.list = p.s.listOf("resume-", resumeGoOn, resumeAgain, resumeClean)
	return nil
}

// told is whose answers they are: how old, and what they say. Those of a finished job are
// as old as the day's readings: it may have been looked at since.
func (p *resume) told(w int) (rows []string) {
	s := p.s
	id, at := "resume-half", p.draft.Saved
	if p.draft.Finished {
		id = "resume-done"
		for _, field := range []string{presets.FieldTemp, presets.FieldHumidity} {
			if read := p.draft.EnteredAt(field); read.Before(at) {
				at = read
			}
		}
	}
	rows = append(rows, each(wrap(s.text(id, calc.Figures{named("age", s.since(at))}), w), s.theme.Question.Render)...)
	rows = append(rows, s.answersIn(p.draft.Answers, p.draft.Check, w, 3)...)
	return append(rows, wrap(s.say("resume-check"), w)...)
}

func (p *resume) body(room size) []string {
	w := room.w - 2*len(margin)
	told := p.told(w)
	high := max(min(len(p.list.items), room.h), 1)
	told = told[:max(min(len(told), room.h-high-1), 0)]
	rows := append(append(told, ""), p.list.rows(p.s, size{w, high})...)
	if len(rows) > room.h {
		rows = rows[len(rows)-room.h:]
	}
	return each(rows, func(row ...string) string { return margin + row[0] })
}

func (p *resume) keys(size) []binding {
	all := []binding{bound(takeKeys, "do-take", p.take)}
	return append(append(all, p.list.keys(p.take)...), quitKey())
}

// take does what was picked.
func (p *resume) take(string) move {
	d, picked := p.draft, p.list.picked().ID
	return func(r *root) {
		if picked == resumeClean {
			p.draft = nil
			r.goTo(r.first)
			return
		}
		r.take(d)
		r.s.old = d
		p.draft = nil
		if picked == resumeAgain {
			r.s.walkLine = false
			r.goTo(r.first)
			return
		}
		r.goTo(r.place(d))
		r.reopen(d)
	}
}
