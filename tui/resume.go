package tui

import (
	"slices"

	"boothset/calc"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// resume offers the answers of the last run, where there are any.
type resume struct {
	s    *session
	run  *lastRun // nil where there is none, or it was taken
	list list
	// others is what other runs left at the time, which can be offered in its place.
	others []*lastRun
}

// offer offers a kept run, after those that were offered before.
func (p *resume) offer(run *lastRun) {
	if p.run == nil {
		p.run = run
		return
	}
	p.others = append(p.others, run)
}

// What can be done with them.
const (
	resumeGoOn  = "go-on" // where it was left
	resumeCoat  = "coat"  // another coat, all else the same
	resumeAgain = "again" // the same answers, from the first question
	resumeOther = "other" // those of another run are offered
	resumeClean = "clean" // none of them
)

func (p *resume) skip() bool                { return p.run == nil }
func (p *resume) heading() (string, string) { return p.s.say("resume-title"), p.s.unitsName() }
func (p *resume) under(size) []string       { return nil }
func (p *resume) press(tea.KeyMsg) move     { return nil }

func (p *resume) enter() *question.Fault {
	what := []string{resumeGoOn, resumeCoat, resumeAgain, resumeOther, resumeClean}
	if len(p.others) == 0 {
		what = slices.DeleteFunc(what, func(id string) bool { return id == resumeOther })
	}
	p.list = p.s.listOf("resume-", what...)
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
	rows = append(rows, s.answersIn(s.desk.nameOf(p.run.Booth), p.run.answers, p.run.Check, w, 3)...)
	return append(rows, wrap(s.say("resume-check"), w)...)
}

func (p *resume) body(room size) []string {
	rows, _ := p.laid(room)
	return each(rows, func(row ...string) string { return margin + row[0] })
}

// laid is the rows of the page, and how many of them at its end are the list's.
func (p *resume) laid(room size) (rows []string, high int) {
	w := room.w - 2*len(margin)
	summary := p.summary(w)
	high = max(min(len(p.list.items), room.h), 1)
	summary = summary[:max(min(len(summary), room.h-high-1), 0)]
	rows = append(append(summary, ""), p.list.rows(p.s, size{w, high})...)
	if len(rows) > room.h {
		rows = rows[len(rows)-room.h:]
	}
	return rows, high
}

func (p *resume) clicked(x, y int, room size) move {
	rows, high := p.laid(room)
	return p.list.zones(0, len(rows)-high, size{room.w, high}, p.take).at(x, y)
}

func (p *resume) keys(size) []binding {
	all := []binding{bindKey(takeKeys, "do-take", p.take)}
	return append(append(all, p.list.keys(p.take)...), quitKey())
}

// take does what was picked.
func (p *resume) take(string) move {
	run, picked := p.run, p.list.picked().ID
	return func(r *root) {
		if picked == resumeOther {
			p.run, p.others = p.others[0], append(p.others[1:], run)
			p.enter()
			return
		}
		p.run = nil
		if p.s.keep != nil {
			p.s.keep.from = run.Run
		}
		if picked == resumeClean {
			r.begin()
			return
		}
		r.take(run)
		if picked != resumeGoOn {
			r.s.walkLine, r.s.asBefore = false, picked == resumeCoat
			r.begin()
			return
		}
		at, known := r.place(run)
		if !known {
			r.begin()
			return
		}
		r.goTo(at)
		r.reopen(run)
	}
}
