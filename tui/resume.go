package tui

import (
	"boothset/calc"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// resume offers the answers of the last run, where there are any.
type resume struct {
	s    *session
	run  *lastRun // nil where there is none, or it was taken
	list list
}

// What can be done with them.
const (
	resumeGoOn  = "go-on" // where it was left
	resumeCoat  = "coat"  // another coat, all else the same
	resumeAgain = "again" // the same answers, from the first question
	resumeClean = "clean" // none of them
)

func (p *resume) skip() bool                { return p.run == nil }
func (p *resume) heading() (string, string) { return p.s.say("resume-title"), p.s.unitsName() }
func (p *resume) under(size) []string       { return nil }
func (p *resume) press(tea.KeyMsg) move     { return nil }

func (p *resume) enter() *question.Fault {
	p.list = p.s.listOf("resume-", resumeGoOn, resumeCoat, resumeAgain, resumeClean)
	return nil
}

// summary is whose answers they are: how old, and what they say. Those of a finished job are
// as old as the day's readings: it may have been looked at since.
func (p *resume) summary(w int) (rows []string) {
	s := p.s
	id, at := "resume-half", p.run.Saved
	if p.run.Finished {
		id = "resume-done"
		for _, f := range []*question.Field{question.Temp, question.Humidity} {
			if read := p.run.EnteredAt(f.Name); read.Before(at) {
				at = read
			}
		}
	}
	rows = append(rows, each(wrap(s.text(id, calc.TextFigure("age", s.since(at))), w), s.theme.Question.Render)...)
	rows = append(rows, s.answersIn(p.run.answers, p.run.Check, w, 3)...)
	return append(rows, wrap(s.say("resume-check"), w)...)
}

func (p *resume) body(room size) []string {
	w := room.w - 2*len(margin)
	summary := p.summary(w)
	high := max(min(len(p.list.items), room.h), 1)
	summary = summary[:max(min(len(summary), room.h-high-1), 0)]
	rows := append(append(summary, ""), p.list.rows(p.s, size{w, high})...)
	if len(rows) > room.h {
		rows = rows[len(rows)-room.h:]
	}
	return each(rows, func(row ...string) string { return margin + row[0] })
}

func (p *resume) keys(size) []binding {
	all := []binding{bindKey(takeKeys, "do-take", p.take)}
	return append(append(all, p.list.keys(p.take)...), quitKey())
}

// take does what was picked.
func (p *resume) take(string) move {
	run, picked := p.run, p.list.picked().ID
	return func(r *root) {
		p.run = nil
		if picked == resumeClean {
			r.goTo(r.first)
			return
		}
		r.take(run)
		if picked != resumeGoOn {
			r.s.walkLine, r.s.asBefore = false, picked == resumeCoat
			r.goTo(r.first)
			return
		}
		r.goTo(r.place(run))
		r.reopen(run)
	}
}
