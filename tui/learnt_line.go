package tui

import (
	"boothset/calc"
	"boothset/calc/learn"
	"boothset/presets/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// learntLines is what the readings that count left of lines. Where that is not known it is worked
// out behind the keys, and a plan is that of the line as it is described until then.
type learntLines struct {
	shop.Lines
	next    *lineWork // asked for, and not begun yet
	running bool
}

// lineWork is a line whose readings are to be worked.
type lineWork struct {
	described *calc.Request
	kept      *shop.Kept
	request   *learn.Request
}

// leftOf is what they came to.
type leftOf struct {
	lineWork
	left *calc.Learnt
}

// learntOf is what the readings that count left of a plan's line, nil where there are none of it, or
// none that are worked yet.
func (s *session) learntOf(described *calc.Request) *calc.Learnt {
	k, l := s.kept(), &s.lines
	if s.atOnce || len(k.Own)+len(k.Away) == 0 {
		return l.Of(s.reader, described, k)
	}
	x, known := l.Known(described, k)
	if !known {
		l.next = &lineWork{described, k, k.Request(s.reader, described)}
	}
	return x
}

// start works what was asked for, unless something still runs.
func (l *learntLines) start() tea.Cmd {
	if l.next == nil || l.running {
		return nil
	}
	w := *l.next
	l.next, l.running = nil, true
	return func() tea.Msg { return leftOf{w, shop.Left(w.request)} }
}

// hearLeft takes what was worked out of a line, and works out the answer anew with it.
func (r *root) hearLeft(n leftOf) {
	r.s.lines.running = false
	r.s.lines.Keep(n.described, n.kept, n.left)
	if b := r.bench; r.pages[r.at] == page(b) && b.err == nil {
		b.rework(b.tried.answers, b.changed())
	}
}
