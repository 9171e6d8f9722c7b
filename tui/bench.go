package tui

import (
	"slices"
	"strconv"

	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
	"boothset/tui/draw"

	tea "github.com/charmbracelet/bubbletea"
)

// bench is where the answer stands: what to set, seen in one of several views, and every
// input of it to be moved. What is moved shows at once and is kept only when the painter
// says so.
type bench struct {
	s     *session
	kept  job // as set
	tried job // as it shows
	err   error
	view  int // of views
	leaf  int // of the view's pages
	input int // that is moved
	moves []nudged
	forms []*form
	drawn drawn
}

// nudged is a step that an input was moved by, and the answers before it.
type nudged struct {
	in     presets.Input
	by     int
	before presets.Answers
}

// view is one way to look at the answer.
type view struct {
	id    string                               // its name is under view- and this
	pages func(b *bench, room size) [][]string // each as high as the room at most
}

// views is what the first digits open.
var views = []view{
	{"set", (*bench).setView},
	{"look", (*bench).lookView},
	{"line", (*bench).lineView},
	{"day", (*bench).dayView},
	{"sure", (*bench).sureView},
	{"why", (*bench).whyView},
}

func (b *bench) skip() bool { return false }

func (b *bench) press(tea.KeyMsg) move { return nil }

func (b *bench) heading() (left, right string) {
	s := b.s
	all := s.complete(b.tried.answers)
	return s.name(presets.FieldCoat, all.Field(presets.FieldCoat)) + ", " + s.name(presets.FieldGun, all.Field(presets.FieldGun)), s.unitsName()
}

// enter works the answers out anew. What is moved first is the wall as it stands, which
// is mostly what is wrong.
func (b *bench) enter() *presets.FieldError {
	b.view, b.leaf = 0, 0
	f := b.solve()
	b.s.finished = b.s.finished || b.err == nil
	wall := slices.IndexFunc(b.inputs(), func(in presets.Input) bool { return in.Field == presets.FieldWall })
	b.input = max(wall, 0)
	return f
}

func (b *bench) solve() *presets.FieldError {
	b.kept, b.err = b.s.work(b.s.answers)
	b.tried, b.moves = b.kept, nil
	b.input = min(b.input, max(len(b.inputs())-1, 0))
	return fault(b.err)
}

// fail shows what is wrong where no question is to blame.
func (b *bench) fail(err error) { b.err = err }

// drawn is the pages of a view, which the frame, its help and the keys all ask for.
type drawn struct {
	of    drawing
	pages [][]string
}

// drawing is all that the pages of a view depend on.
type drawing struct {
	view        int
	room        size
	kept, tried int // by their ids
	sys         unit.System
	glyphs      draw.Glyphs
	colour      bool
}

// pages is the pages of the view that shows, at least one.
func (b *bench) pages(room size) [][]string {
	of := drawing{b.view, room, b.kept.id, b.tried.id, b.s.sys, b.s.glyphs, b.s.theme.colour}
	if b.drawn.pages == nil || b.drawn.of != of {
		all := views[b.view].pages(b, room)
		if len(all) == 0 {
			all = [][]string{nil}
		}
		b.drawn = drawn{of, all}
	}
	return b.drawn.pages
}

// open shows a view, or the next page of the one that shows.
func (b *bench) open(n int, room size) {
	if n != b.view {
		b.view, b.leaf = n, 0
		return
	}
	b.leaf = (b.leafOf(room) + 1) % b.leaves(room)
}

// leaves is how many pages the view that shows has in the room of the bench.
func (b *bench) leaves(room size) int { return len(b.pages(b.share(room).view)) }

// leafOf is the page that shows; a window made smaller or larger may have fewer.
func (b *bench) leafOf(room size) int {
	return min(b.leaf, b.leaves(room)-1)
}

// next is the next page, then the next view, and behind the last the way out.
func (b *bench) next(room size) move {
	if b.leafOf(room)+1 < b.leaves(room) {
		b.leaf++
		return nil
	}
	if b.view+1 < len(views) {
		b.view, b.leaf = b.view+1, 0
		return nil
	}
	return open(&finish{s: b.s})
}

// changeUnits solves anew: the marks of the wall's gauge are the system's. What was
// moved stays moved.
func (b *bench) changeUnits(string) move {
	b.s.changeUnits()
	tried := b.tried.answers
	if b.solve() != nil || b.err != nil {
		return nil
	}
	if j, err := b.s.work(tried); err == nil {
		b.tried = j
	}
	return nil
}

func (b *bench) keys(room size) []binding {
	if b.err != nil {
		return []binding{bound(backKeys, "do-back", always(back)), told(againKeys, "do-again", always(restart)), quitKey()}
	}
	onward := bound(onKeys, "do-next-view", func(string) move { return b.next(room) })
	goBack := bound(backKeys, "do-back", always(back))
	if b.changed() {
		onward = told(takeKeys, "do-keep", b.keep)
		goBack = told(backKeys, "do-put-back", b.putBack)
	}
	moves := []binding{told(walkKeys, "do-walk", b.walk), told(nudgeKeys, "do-nudge", b.nudge(1))}
	var all []binding
	if b.changed() {
		all = append([]binding{onward, goBack}, moves...)
	} else {
		all = append(moves, onward, goBack)
	}
	all = append(all, told(digits(len(views)), "do-view", func(pressed string) move {
		if n, err := strconv.Atoi(pressed); err == nil {
			b.open(n-1, room)
		}
		return nil
	}))
	if len(b.forms) > 0 {
		all = append(all, told(formKeys(len(b.forms)), "do-page", func(pressed string) move {
			return open(b.forms[formAt(pressed)])
		}))
	}
	all = append(all, told(unitsKeys, "do-units", b.changeUnits), told(againKeys, "do-again", always(restart)), quitKey(), bound(farKeys, "do-nudge-far", b.nudge(10)))
	if b.leaves(room) > 1 {
		all = append(all, bound(leafKeys, "do-leaf", func(pressed string) move {
			by := 1
			if pressed == "pgup" {
				by = -1
			}
			b.leaf = min(max(b.leafOf(room)+by, 0), b.leaves(room)-1)
			return nil
		}))
	}
	return all
}

// offer is what the answer has for a field of the coat's own questions, empty where it
// has nothing.
func (b *bench) offer(field string) string {
	sys, v := b.s.sys, b.kept.setup
	switch field {
	case presets.FieldPressure:
		if v.Short.Is {
			return sys.Gauge(v.Short.Best, words.PressureDecimals(sys))
		}
		return sys.Gauge(v.Working.Pressure, words.PressureDecimals(sys))
	case presets.FieldDistance:
		return sys.Small(v.Distance.Target, unit.Usual)
	}
	all := b.s.complete(b.s.answers)
	return all.Field(field)
}
