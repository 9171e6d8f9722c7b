package tui

import (
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// finish is the way out, reached without a letter: from behind the last view, and from
// before the first question.
type finish struct {
	s    *session
	of   *bench // the answer that is left, nil of none
	list list
}

// What can be done there.
const (
	finishLeave = "leave"
	finishStay  = "stay"
	finishAgain = "again"
	finishSay   = "say" // how the job in a booth came out
)

func (p *finish) enter() *question.Fault {
	what := []string{finishLeave, finishStay, finishAgain}
	if p.of != nil && p.of.jobNow() != nil && !p.s.unsaid.said {
		what = append([]string{finishSay}, what...)
	}
	p.list = p.s.listOf("finish-", what...)
	return nil
}

func (p *finish) skip() bool                { return false }
func (p *finish) heading() (string, string) { return p.s.say("finish-title"), p.s.unitsName() }
func (p *finish) under(size) []string       { return nil }
func (p *finish) press(tea.KeyMsg) move     { return nil }
func (p *finish) body(room size) []string {
	rows := append([]string{""}, each(p.list.rows(p.s, finishList(room)), func(row ...string) string { return margin + row[0] })...)
	return rows[:min(len(rows), room.h)]
}

// finishList is the room of the list, under an empty row.
func finishList(room size) size { return size{room.w - 2*len(margin), max(room.h-1, 1)} }

func (p *finish) clicked(x, y int, room size) move {
	return p.list.zones(0, 1, size{room.w, finishList(room).h}, p.take).at(x, y)
}

func (p *finish) keys(size) []binding {
	all := []binding{bindKey(takeKeys, "do-take", p.take), bindKey(listBack, "do-back", always(back))}
	return append(append(all, p.list.keys(p.take)...), quitKey())
}

func (p *finish) take(string) move {
	switch p.list.picked().ID {
	case finishLeave:
		return leave
	case finishAgain:
		return restart
	case finishSay:
		return func(r *root) {
			r.over = nil
			open(outcomePage(p.s, p.of))(r)
		}
	}
	return back
}
