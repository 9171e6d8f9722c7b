//go:build unix

package tui

import (
	"math/rand/v2"
	"os"
	"os/exec"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
	"github.com/stretchr/testify/require"
)

// onTerminal is set for the program that is the assistant on its standard input and
// output.
const onTerminal = "TUI_ON_TERMINAL"

// TestAssistantOnATerminal is no test but that program.
func TestAssistantOnATerminal(t *testing.T) {
	if os.Getenv(onTerminal) == "" {
		t.Skip("it is started by other tests")
	}
	o := look{}.options(t)
	o.In, o.Out = os.Stdin, os.Stdout
	_, err := Run(o)
	require.NoError(t, err)
}

// emulated is a terminal with the assistant on it.
type emulated struct {
	t      *testing.T
	near   *os.File
	far    *os.File
	mu     sync.Mutex
	screen *vt.Emulator
}

func emulate(t *testing.T, l size) *emulated {
	t.Helper()
	near, far, err := pty.Open()
	require.NoError(t, err)
	e := &emulated{t: t, near: near, far: far, screen: vt.NewEmulator(l.w, l.h)}
	require.NoError(t, pty.Setsize(far, &pty.Winsize{Rows: uint16(l.h), Cols: uint16(l.w)}))
	cmd := exec.Command(os.Args[0], "-test.run=^TestAssistantOnATerminal$")
	cmd.Stdin, cmd.Stdout, cmd.Stderr = far, far, far
	cmd.Env = append(os.Environ(), onTerminal+"=1", "TERM=xterm-256color")
	cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
	require.NoError(t, cmd.Start())
	t.Cleanup(func() {
		cmd.Process.Kill() //nolint:errcheck // it may have ended
		cmd.Wait()         //nolint:errcheck // it says that it was killed
		far.Close()
		near.Close()
	})
	go func() {
		var b [4096]byte
		for {
			n, err := near.Read(b[:])
			e.mu.Lock()
			e.screen.Write(b[:n]) //nolint:errcheck // it takes anything
			e.mu.Unlock()
			if err != nil {
				return
			}
		}
	}()
	go func() { // what the emulator would answer is thrown away
		var b [256]byte
		for {
			if _, err := e.screen.Read(b[:]); err != nil {
				return
			}
		}
	}()
	return e
}

// rows is text without the blanks at the ends of its rows and the empty rows at its end.
func rows(text string) string {
	all := strings.Split(strings.ReplaceAll(text, "\r", ""), "\n")
	for i := range all {
		all[i] = strings.TrimRight(all[i], " ")
	}
	return strings.TrimRight(strings.Join(all, "\n"), "\n")
}

func (e *emulated) shown() string {
	e.mu.Lock()
	defer e.mu.Unlock()
	return rows(e.screen.String())
}

// requireShows waits until the screen is a frame. How long is far above what it takes.
func (e *emulated) requireShows(frame, what string) {
	e.t.Helper()
	for end := time.Now().Add(20 * time.Second); time.Now().Before(end); time.Sleep(2 * time.Millisecond) {
		if e.shown() == rows(frame) {
			return
		}
	}
	require.Equal(e.t, rows(frame), e.shown(), what)
}

func (e *emulated) resize(l size) {
	e.mu.Lock()
	e.screen.Resize(l.w, l.h)
	e.mu.Unlock()
	require.NoError(e.t, pty.Setsize(e.far, &pty.Winsize{Rows: uint16(l.h), Cols: uint16(l.w)}))
}

func (e *emulated) keys(text string) {
	_, err := e.near.WriteString(text)
	require.NoError(e.t, err)
}

// windows is sizes to go through, the smallest, the largest and some that are too small
// among them.
var windows = []size{{40, 12}, {300, 100}, {41, 13}, {120, 40}, {80, 24}, {39, 12}, {60, 20}, {200, 12}, {40, 100}, {79, 23}, {12, 5}, {110, 30}, {40, 12}, {80, 24}}

// After every resize the terminal shows the frame that the model has, on every page.
func TestEveryResizeShowsTheWholeFrame(t *testing.T) {
	e := emulate(t, usualSize)
	r := open80x24(t)
	for _, at := range []struct {
		name, bytes string
		keys        []string
	}{
		{"safety", "", nil},
		{"a list", "\r", []string{"enter"}},
		{"a field", "8" + "2", []string{"8", "2"}},
		{"a refused one", "300F\r", []string{"300F", "enter"}},
		{"the line", "\x1575F\r45\r\r\r90psi\r", []string{"ctrl+u", "75F", "enter", "45", "enter", "enter", "enter", "90psi", "enter"}},
		{"the answer", "1\r\r\r", []string{"1", "enter", "enter", "enter"}},
		{"look", "2", []string{"2"}}, {"the fall", "3", []string{"3"}}, {"the day", "4", []string{"4"}}, {"how sure", "5", []string{"5"}}, {"why", "6", []string{"6"}},
		{"a tried value", "1\x1b[C", []string{"1", "right"}},
		{"put back, a page", "\x1b", []string{"esc"}}, {"a page", "7", []string{"7"}},
		{"keys", "\x1bOP", []string{"f1"}},
	} {
		e.keys(at.bytes)
		press(r, at.keys...)
		e.requireShows(r.View(), at.name)
		for _, l := range windows {
			e.resize(l)
			r.Update(resize(l))
			e.requireShows(r.View(), at.name)
		}
	}
	// A window that is dragged: nobody waits for a frame until it stands.
	chance := rand.New(rand.NewPCG(1, 2))
	for range 20 {
		var l size
		for range 8 {
			l = size{40 + chance.IntN(261), 12 + chance.IntN(89)}
			e.resize(l)
			time.Sleep(time.Millisecond)
		}
		r.Update(resize(l))
		e.requireShows(r.View(), "dragged")
	}
}
