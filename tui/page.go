package tui

import (
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// size is room to draw in, in columns and rows.
type size struct{ w, h int }

// page is a place a person can be.
type page interface {
	// enter is called on arrival. An answer that turns out not to do comes back, and the
	// person is taken to its question instead.
	enter() *question.Fault
	// skip reports whether there is nothing to do here now.
	skip() bool
	// heading is what stands at the left and at the right of the top row.
	heading() (left, right string)
	// under is the rows under the heading in a window of a size, two at most.
	under(window size) []string
	// body is at most room.h rows of at most room.w columns.
	body(room size) []string
	// keys is what the keys do here, the most wanted first.
	keys(room size) []binding
	// press takes a key that no binding took: typed text.
	press(k tea.KeyMsg) move
}

// asking is the page of a step.
type asking interface {
	page
	of() *step
	// asks reports whether it asks for a field.
	asks(field string) bool
	// refuse takes the person to the answer to a field that it asks for, which will not do.
	refuse(f *question.Fault)
	// draft is what it stands on and what is typed there, taken or not.
	draft() (at, typed string)
	// resume takes over kept answers, and what was typed and not taken at a place.
	resume(a question.Answers, at, typed string)
	// follow takes over what was changed behind its back.
	follow(was, now question.Answers)
}

// ruled is a page that may draw the rules between the parts of its window itself.
type ruled interface{ ownRules() bool }

// move is where a key takes the person; nil stays.
type move func(*root)

func forward(r *root) { r.step(+1) }
func back(r *root)    { r.back() }
func leave(r *root)   { r.done = true }
func stop(r *root)    { r.done, r.stopped = true, true }

// restart is back to the first question, everything answered kept.
func restart(r *root) {
	if r.pages[r.at] == page(r.bench) {
		r.bench.setAside()
	}
	r.s.walkLine = false
	if r.s.check == checkChange {
		r.s.check = checkKeep
	}
	r.over, r.s.asBefore = nil, false
	for _, p := range r.pages {
		if p, ok := p.(*groupPage); ok {
			p.at = 0
		}
	}
	r.begin()
}

// open puts a page over the one the person is on; back returns.
func open(p page) move {
	return func(r *root) {
		p.enter()
		r.over = append(r.over, p)
	}
}
