//go:build unix

package tui

import (
	"io"
	"os"
	"os/signal"
	"syscall"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// canPause: the shell can be given the terminal back, until it says to go on.
const canPause = true

// whenPaused tells of a signal from outside to pause.
func whenPaused(told chan<- os.Signal) { signal.Notify(told, syscall.SIGTSTP) }

// pause stops the program and all of its job. The library has left the terminal as it was when
// it runs this, and takes it back afterwards.
type pause struct{}

func (pause) SetStdin(io.Reader)  {}
func (pause) SetStdout(io.Writer) {}
func (pause) SetStderr(io.Writer) {}

// orphaned is how long it takes to see that nothing stops: a program that no shell started is
// not stopped (POSIX, orphaned process groups), and goes on.
const orphaned = 200 * time.Millisecond

// Run returns when the program goes on. It stops by SIGTTOU: once SIGTSTP was listened for, the
// language's runtime does not give it back its default, and SIGSTOP would stop for good what no
// shell can continue.
func (pause) Run() error {
	continued := make(chan os.Signal, 1)
	signal.Notify(continued, syscall.SIGCONT)
	defer signal.Stop(continued)
	if err := syscall.Kill(0, syscall.SIGTTOU); err != nil {
		return err
	}
	select {
	case <-continued:
	case <-time.After(orphaned):
	}
	return nil
}

// pauseCmd is the command that pauses, and then says that it is over.
func pauseCmd() tea.Cmd {
	return tea.Exec(pause{}, func(error) tea.Msg { return resumedMsg{} })
}
