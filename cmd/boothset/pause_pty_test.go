//go:build unix

package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"boothset/cmd/boothset/command"

	"github.com/charmbracelet/x/term"
	"github.com/creack/pty"
	"github.com/stretchr/testify/require"
)

// prompt is what the shell of a test shows where it waits.
const prompt = "SHELL>"

// shell is an interactive shell on a terminal, which stops and continues jobs.
func shell(t *testing.T) *session {
	t.Helper()
	sh, err := exec.LookPath("sh") // POSIX has it everywhere
	require.NoError(t, err)
	cmd := exec.Command(sh, "-i")
	cmd.Env = []string{"HOME=" + t.TempDir(), "PS1=" + prompt, "PATH=" + os.Getenv("PATH"), "ENV="}
	s := onTerminal(t, 80, 24, nil, cmd)
	s.await(prompt)
	return s
}

// requireBack holds that the shell has the terminal as it had it.
func (s *session) requireBack(had *term.State) {
	s.t.Helper()
	require.Eventually(s.t, func() bool {
		has, err := term.GetState(s.far.Fd())
		return err == nil && *has == *had
	}, patience, 5*time.Millisecond, "line settings")
	wrote := s.wrote()
	for what, on := range map[string]string{"the alternate screen": "1049", "pasting": "2004", "the mouse": "1002", "its rows and columns": "1006"} {
		require.Greater(s.t, strings.LastIndex(wrote, "\x1b[?"+on+"l"), strings.LastIndex(wrote, "\x1b[?"+on+"h"), what)
	}
	require.Greater(s.t, strings.LastIndex(wrote, "\x1b[?25h"), strings.LastIndex(wrote, "\x1b[?25l"), "the cursor")
	require.Greater(s.t, strings.LastIndex(wrote, "\x1b[23;0t"), strings.LastIndex(wrote, "\x1b[22;0t"), "the title")
}

// ctrl+z and a signal from outside give the shell its terminal back; fg draws again, in raw mode
// and with the mouse, as often as it is done.
func TestPausingGivesTheShellItsTerminal(t *testing.T) {
	for name, pause := range map[string]func(s *session, pid int){
		"ctrl+z":  func(s *session, _ int) { s.near.WriteString("\x1a") },
		"SIGTSTP": func(_ *session, pid int) { syscall.Kill(pid, syscall.SIGTSTP) }, //nolint:errcheck // seen by what follows
	} {
		t.Run(name, func(t *testing.T) {
			s := shell(t)
			had, err := term.GetState(s.far.Fd())
			require.NoError(t, err)
			file := filepath.Join(t.TempDir(), "pid")
			s.keys(prompt, fmt.Sprintf("sh -c 'echo $$ >%s; exec %s'\n", file, program), "before you spray", "\r", "How do you want to begin", "\r")
			s.await("What are you spraying")
			number, err := os.ReadFile(file)
			require.NoError(t, err)
			pid, err := strconv.Atoi(strings.TrimSpace(string(number)))
			require.NoError(t, err)

			for n := range 2 {
				pause(s, pid)
				s.await("topped")
				s.requireBack(had)
				said := fmt.Sprint("back", 2*n)
				s.keys("topped", fmt.Sprintf("echo back$((%d+%d))\n", n, n), said, "fg\n")
				s.await("What are you spraying")
				s.keys("What are you spraying", "\x1b[B")
				s.await(fmt.Sprintf("> %d  ", n+2)) // no enter: it is raw
				require.Eventually(t, func() bool {
					return strings.LastIndex(s.wrote(), "\x1b[?1002h") > strings.LastIndex(s.wrote(), "\x1b[?1002l")
				}, patience, 5*time.Millisecond, "the mouse")
			}
			s.keys("What are you spraying", "\x03", prompt, "exit\n")
			require.Equal(t, command.ExitStopped, s.code(), "the shell's last is the program's")
		})
	}
}

// Where no shell can continue it, ctrl+z does no more than draw anew.
func TestWithoutAShellItGoesOn(t *testing.T) {
	s := open(t, 80, 24, nil)
	s.keys("before you spray", "\r", "How do you want to begin", "\r")
	s.keys("What are you spraying", "\x1a")
	require.Eventually(t, func() bool { return strings.Count(s.wrote(), "\x1b[?1049h") == 2 }, patience, 5*time.Millisecond)
	s.keys("What are you spraying", "8", "Which gun", "\x03")
	require.Equal(t, command.ExitStopped, s.code())
	s.requireClean()
}

// In lines of text ctrl+\ ends the program as ctrl+c does, and dumps nothing.
func TestQuittingInLinesIsAnInterrupt(t *testing.T) {
	for _, key := range []string{"\x03", "\x1c"} {
		s := open(t, 80, 24, nil, "--plain")
		s.keys("How do you want to begin?", key)
		require.Equal(t, -1, s.code())
		status, ok := s.cmd.ProcessState.Sys().(syscall.WaitStatus)
		require.True(t, ok)
		require.Equal(t, syscall.SIGINT, status.Signal(), "%q", key)
		require.NotContains(t, s.allWrote(), "goroutine")
	}
}

// On the screen ctrl+\ and its signal are ctrl+c too.
func TestQuittingOnTheScreenIsAnInterrupt(t *testing.T) {
	for name, quit := range map[string]func(*session){
		"ctrl+\\": func(s *session) { s.near.WriteString("\x1c") },
		"SIGQUIT": func(s *session) { s.cmd.Process.Signal(syscall.SIGQUIT) }, //nolint:errcheck // seen by the exit
	} {
		s := open(t, 80, 24, nil)
		s.keys("before you spray", "\r", "How do you want to begin", "\r")
		s.await("What are you spraying")
		quit(s)
		require.Equal(t, command.ExitStopped, s.code(), name)
		s.requireClean()
	}
}

// peakKB is the most memory that a program had, where the system tells.
func peakKB(t *testing.T, pid int) int {
	t.Helper()
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		t.Skip("only Linux tells of the memory of others")
	}
	found := regexp.MustCompile(`VmHWM:\s+(\d+) kB`).FindSubmatch(status)
	require.NotNil(t, found)
	kb, err := strconv.Atoi(string(found[1]))
	require.NoError(t, err)
	return kb
}

// The largest window that can be named costs no more memory than a large one: the rest is what
// two runs differ by.
func TestAHostileWindowCostsNoMemory(t *testing.T) {
	peak := func(w, h int) int {
		s := open(t, 80, 24, nil)
		s.keys(toAnswer...)
		s.await("INLET VALVE")
		s.mu.Lock()
		s.blind = true
		s.mu.Unlock()
		drawn := len(s.wrote())
		require.NoError(t, pty.Setsize(s.far, &pty.Winsize{Rows: uint16(h), Cols: uint16(w)}))
		require.Eventually(t, func() bool { return len(s.wrote()) > drawn+leastOfAFrame }, patience, time.Millisecond)
		for _, key := range []string{"2", "3", "1", "\x1b[C", "\x1b[D"} { // each is drawn
			drawn = len(s.wrote())
			_, err := s.near.WriteString(key)
			require.NoError(t, err)
			require.Eventually(t, func() bool { return len(s.wrote()) > drawn }, patience, time.Millisecond)
		}
		kb := peakKB(t, s.cmd.Process.Pid)
		s.cmd.Process.Kill() //nolint:errcheck // seen by the exit
		require.Equal(t, -1, s.code())
		return kb
	}
	large := peak(300, 100)
	require.Less(t, float64(peak(65535, 65535)), 1.25*float64(large))
}

// leastOfAFrame is fewer bytes than a frame has in a large window.
const leastOfAFrame = 4000
