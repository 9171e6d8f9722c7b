package tui

import tea "github.com/charmbracelet/bubbletea"

// Remote is what comes from a terminal on another machine, which sends this one no signals.
type Remote struct {
	Sizes <-chan Size     // of its window, the first at once; the assistant takes no more than it can lay out
	Stop  <-chan struct{} // closed when the person is to leave, or has left without a word
}

// Size is a window's, in columns and rows.
type Size struct{ Columns, Rows int }

// RunRemote is Run on the terminal of another machine, o.In and o.Out, which sends keys as they
// are typed. Any number can run at a time.
func RunRemote(o Options, from Remote) (Result, error) {
	return show(o, func(p *tea.Program, over <-chan struct{}) {
		for {
			select {
			case s := <-from.Sizes:
				p.Send(tea.WindowSizeMsg{Width: s.Columns, Height: s.Rows})
			case <-from.Stop:
				p.Send(stopMsg{})
				return
			case <-over:
				return
			}
		}
	})
}
