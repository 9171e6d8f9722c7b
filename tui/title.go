package tui

import (
	"sync"

	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
)

// The terminal keeps its window's title and gives it back (xterm's control sequences,
// XTWINOPS 22 and 23). One that keeps none is left with an empty title.
const (
	keepTitle = "\x1b[22;0t"
	giveTitle = "\x1b[23;0t"
)

// titler sets the window's title.
type titler struct {
	send func(string) // to the terminal, nil where it has no title

	mu            sync.Mutex
	wanted, shown string // empty is the terminal's own
}

// set is the command that sets a title, nil where that is the one asked for last. A command that
// comes late finds the title set.
func (t *titler) set(title string) tea.Cmd {
	if t.send == nil {
		return nil
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	if title == t.wanted {
		return nil
	}
	t.wanted = title
	return func() tea.Msg {
		t.show()
		return nil
	}
}

func (t *titler) show() {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.shown == t.wanted {
		return
	}
	kept := ""
	if t.shown == "" {
		kept = keepTitle
	}
	t.shown = t.wanted
	t.send(kept + ansi.SetWindowTitle(t.shown))
}

// giveBack leaves the window with the title that it had.
func (t *titler) giveBack() {
	if t.send == nil {
		return
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.shown != "" {
		t.send(ansi.SetWindowTitle("") + giveTitle)
	}
	t.wanted, t.shown = "", ""
}

// titled reports whether a kind of terminal has a title: the virtual console has none.
func titled(getenv func(string) string) bool { return getenv("TERM") != "linux" }

// title is what the window is called: the coat as soon as it is known, with the verdict where
// there is an answer.
func (r *root) title() string {
	s, b := r.s, r.bench
	if r.pages[r.at] == page(b) && b.err == nil {
		return programName + ": " + s.called(question.Coat, s.counting(b.tried.answers)) + ", " + s.say("verdict-"+b.tried.Setup.Verdict.String())
	}
	if coat := s.called(question.Coat, s.answers); coat != "" {
		return programName + ": " + coat
	}
	return programName
}
