//go:build unix

package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"boothset/cmd/boothset/command"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/term"
	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"
	"github.com/stretchr/testify/require"
)

// program is the binary under test, built once.
var program string

func TestMain(m *testing.M) {
	if os.Getenv(panicking) != "" {
		os.Exit(runPanicking())
	}
	dir, err := os.MkdirTemp("", "boothset")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	program = filepath.Join(dir, "boothset")
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		fmt.Fprintf(os.Stderr, "go build: %v\n%s", err, out)
		os.Exit(1)
	}
	for _, sig := range []os.Signal{syscall.SIGHUP, syscall.SIGINT} {
		if signal.Ignored(sig) { // in the background; what is started then hears of it again
			signal.Notify(make(chan os.Signal, 1), sig)
		}
	}
	code := m.Run()
	os.RemoveAll(dir)
	os.Exit(code)
}

// patience is how long anything may take here. It is far above what things take, so
// that a busy machine fails nothing, and below the five seconds that a terminal is
// waited for which does not say what its background is.
const patience = 2 * time.Second

// patiently is how long it may take where only an end is waited for, on a machine that is busy
// for hours.
const patiently = 30 * time.Second

// session is the program on a terminal that shows what it is sent and answers nothing.
type session struct {
	t      *testing.T
	cmd    *exec.Cmd
	near   *os.File // the terminal's own end
	far    *os.File // the program's end, kept open to see what state it is left in
	before *term.State
	ended  chan error

	mu     sync.Mutex
	sent   bytes.Buffer // all that the program wrote to it
	screen *vt.Emulator
	blind  bool // nothing more is drawn on it
}

// open starts the program on a terminal of a size, in a home of its own. Where out is
// given, standard output goes there.
func open(t *testing.T, w, h int, out *bytes.Buffer, args ...string) *session {
	t.Helper()
	cmd := exec.Command(program, args...)
	cmd.Env = []string{"HOME=" + t.TempDir()}
	return onTerminal(t, w, h, out, cmd)
}

// onTerminal starts a command on a terminal, with its environment and what a terminal adds
// to it. What else is to be changed of it, change does.
func onTerminal(t *testing.T, w, h int, out *bytes.Buffer, cmd *exec.Cmd, change ...func(*exec.Cmd)) *session {
	t.Helper()
	blocking, far, err := pty.Open()
	require.NoError(t, err)
	near := pollable(t, blocking)
	t.Cleanup(func() { near.Close(); far.Close() })
	require.NoError(t, pty.Setsize(far, &pty.Winsize{Rows: uint16(h), Cols: uint16(w)}))
	s := &session{t: t, near: near, far: far, screen: vt.NewEmulator(w, h), ended: make(chan error, 1)}
	s.before, err = term.GetState(far.Fd())
	require.NoError(t, err)

	s.cmd = cmd
	s.cmd.Stdin, s.cmd.Stdout, s.cmd.Stderr = far, far, far
	if out != nil {
		s.cmd.Stdout = out
	}
	for _, f := range change {
		f(s.cmd)
	}
	s.cmd.Env = append([]string{"TERM=xterm-256color", "LANG=C.UTF-8"}, s.cmd.Env...)
	s.cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true, Ctty: 2}
	go s.read()
	go func() { // what the emulator would answer is thrown away: nobody is there
		var b [256]byte
		for {
			if _, err := s.screen.Read(b[:]); err != nil {
				return
			}
		}
	}()
	require.NoError(t, s.cmd.Start())
	go func() { s.ended <- s.cmd.Wait() }()
	t.Cleanup(func() {
		if s.cmd.ProcessState == nil {
			s.cmd.Process.Kill() //nolint:errcheck // it may have ended
		}
	})
	return s
}

// pollable is a file whose Close takes effect while it is being read, which a terminal
// opened in the plain way is not.
func pollable(t *testing.T, f *os.File) *os.File {
	t.Helper()
	fd, err := syscall.Dup(int(f.Fd()))
	require.NoError(t, err)
	syscall.CloseOnExec(fd) // else the program holds its own terminal open
	require.NoError(t, f.Close())
	require.NoError(t, syscall.SetNonblock(fd, true))
	return os.NewFile(uintptr(fd), f.Name())
}

func (s *session) read() {
	var b [4096]byte
	for {
		n, err := s.near.Read(b[:])
		s.mu.Lock()
		s.sent.Write(b[:n])
		if !s.blind {
			s.screen.Write(b[:n]) //nolint:errcheck // it takes anything
		}
		s.mu.Unlock()
		if err != nil {
			return
		}
	}
}

// shown is the screen as text, and wrote all the bytes that made it.
func (s *session) shown() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.screen.String()
}

func (s *session) wrote() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.sent.String()
}

// allWrote is all the bytes the program wrote, once it has ended: a mark written behind
// them on the terminal's far side comes through last.
func (s *session) allWrote() string {
	s.t.Helper()
	const mark = "<the program has ended>"
	if _, err := s.far.WriteString(mark); err != nil {
		return s.wrote() // the window is closed: nothing more comes
	}
	for end := time.Now().Add(patiently); time.Now().Before(end); time.Sleep(time.Millisecond) {
		if all, _, ok := strings.Cut(s.wrote(), mark); ok {
			return all
		}
	}
	require.Fail(s.t, "the terminal does not drain")
	return ""
}

// await waits for text on the screen.
func (s *session) await(text string) {
	s.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
		if strings.Contains(s.shown(), text) {
			return
		}
	}
	require.Fail(s.t, "not shown", "%q in\n%s", text, s.shown())
}

// keys types, each burst once the screen shows what it is for.
func (s *session) keys(pairs ...string) {
	s.t.Helper()
	for i := 0; i < len(pairs); i += 2 {
		s.await(pairs[i])
		_, err := s.near.WriteString(pairs[i+1])
		require.NoError(s.t, err)
	}
}

// code waits for the end and is the exit code.
func (s *session) code() int {
	s.t.Helper()
	select {
	case err := <-s.ended:
		var exit *exec.ExitError
		if err != nil && !errors.As(err, &exit) {
			require.NoError(s.t, err)
		}
		return s.cmd.ProcessState.ExitCode()
	case <-time.After(patience):
		require.Fail(s.t, "still running", "%s", s.shown())
		return -1
	}
}

// requireClean holds that the terminal is as it was before the program.
func (s *session) requireClean() {
	s.t.Helper()
	after, err := term.GetState(s.far.Fd())
	require.NoError(s.t, err)
	require.Equal(s.t, s.before, after, "line settings")
	const left, shown, paste = "\x1b[?1049l", "\x1b[?25h", "\x1b[?2004l"
	wrote := s.allWrote()
	for what, pair := range map[string][2]string{
		"the alternate screen": {"\x1b[?1049h", left}, "the cursor": {"\x1b[?25l", shown}, "pasting": {"\x1b[?2004h", paste},
		"the mouse": {"\x1b[?1002h", "\x1b[?1002l"}, "its rows and columns": {"\x1b[?1006h", "\x1b[?1006l"},
	} {
		require.Greater(s.t, strings.LastIndex(wrote, pair[1]), strings.LastIndex(wrote, pair[0]), what)
	}
}

// requireNoQuery holds that the terminal was asked nothing.
func (s *session) requireNoQuery() {
	s.t.Helper()
	for what, query := range map[string]string{
		"background": "]11;?", "foreground": "]10;?", "cursor position": "\x1b[6n", "device": "\x1b[c", "version": "\x1b[>",
	} {
		require.NotContains(s.t, s.wrote(), query, what)
	}
}

// The keys from the start to the answer, each with what is on the screen then.
var toAnswer = []string{
	"before you spray", "\r", "How do you want to begin", "\r", "What are you spraying", "8", "Which gun", "2", "How warm is the air", "75F\r",
	"How humid", "45\r", "How warm is the panel", "\r", "gauge before the regulator", "90psi\r",
	"Is this your air line", "\r", "sheet say otherwise", "\r",
}

func TestNothingWaitsForASilentTerminal(t *testing.T) {
	plan := strings.Fields("plan --coat clear --gun reduced-pressure --temp 75F --humidity 45 --supply 90psi")
	for _, args := range [][]string{plan, append(plan, "--json"), {"--help"}, {"plan", "--help"}, {"version"}} {
		s := open(t, 80, 24, nil, args...)
		require.Zero(t, s.code(), "%v within %v", args, patience)
		s.requireNoQuery()
	}
}

func TestTheFirstFrameDoesNotWaitForASilentTerminal(t *testing.T) {
	s := open(t, 80, 24, nil)
	s.await("before you spray")
	s.requireNoQuery()
}

func TestFromTheFirstKeyToTheSettings(t *testing.T) {
	s := open(t, 80, 24, nil)
	s.keys(toAnswer...)
	s.keys("INLET VALVE", "q")
	require.Zero(t, s.code())
	s.requireClean()
	s.requireNoQuery()
	wrote := s.allWrote()
	left := wrote[strings.LastIndex(wrote, "\x1b[?1049l"):]
	require.Regexp(t, `GO: .*Clearcoat, reduced-pressure gun\.\r\nWALL 31.psi; INLET VALVE .*; DISTANCE 5\.5.in; GUN GAUGE 26\.0.psi\r\n! Isocyanate: .*\r\n$`, left, "the settings stay behind")
	require.NotContains(t, left, "Why")
}

// The card stays behind where it is asked for, no wider than the terminal and not much narrower.
func TestTheCardFitsTheTerminal(t *testing.T) {
	s := open(t, 60, 24, nil, "--card")
	s.keys(toAnswer...)
	s.keys("INLET VALVE", "q")
	require.Zero(t, s.code())
	wrote := s.allWrote()
	card := wrote[strings.LastIndex(wrote, "\x1b[?1049l"):]
	require.Contains(t, card, "WALL")
	require.Contains(t, card, "Why")
	widest := 0
	for _, row := range strings.Split(ansi.Strip(card), "\r\n") {
		widest = max(widest, ansi.StringWidth(row))
	}
	require.LessOrEqual(t, widest, 60)
	require.Greater(t, widest, 50)
}

func TestTheScreenIsOnStandardErrorWhereOutputGoesElsewhere(t *testing.T) {
	var out bytes.Buffer
	s := open(t, 80, 24, &out)
	s.keys(toAnswer...)
	s.keys("INLET VALVE", "q")
	require.Zero(t, s.code())
	s.requireClean()
	require.Contains(t, out.String(), "WALL")
	require.NotContains(t, out.String(), "\x1b", "a file gets no escapes")
}

func TestAJobThatCannotBeDoneExits3(t *testing.T) {
	s := open(t, 80, 24, nil)
	s.keys(toAnswer[:14]...)
	s.keys("gauge before the regulator", "20psi\r", "Is this your air line", "\r", "sheet say otherwise", "\r", "STOP", "q")
	require.Equal(t, command.ExitCannot, s.code())
	s.requireClean()
}

func TestFromTheFirstKeyToTheMix(t *testing.T) {
	s := open(t, 80, 24, nil)
	s.keys(toAnswer...)
	s.keys("INLET VALVE", "7", "GO: temperature and humidity", "\x1b", "left/right try", "8", "seconds: type", "\x1b[A", "as answered", "din4\r", "seconds: ", "22\r")
	s.keys("the answer", "\x1b", "left/right try", "9", "wet and dry film", "\x1b")
	s.keys("left/right try", "0", "area: ", "hood\r", "the answer", "\x1b[6~", "FILLINGS", "\x1b", "left/right try", "q")
	require.Zero(t, s.code())
	s.requireClean()
	s.requireNoQuery()
}

func TestInterruptsLeaveTheTerminalClean(t *testing.T) {
	for name, stop := range map[string]func(*session){
		"ctrl+c":  func(s *session) { s.near.WriteString("\x03") }, //nolint:errcheck // seen by the exit
		"SIGINT":  func(s *session) { s.cmd.Process.Signal(syscall.SIGINT) },
		"SIGTERM": func(s *session) { s.cmd.Process.Signal(syscall.SIGTERM) },
		"SIGHUP":  func(s *session) { s.cmd.Process.Signal(syscall.SIGHUP) },
	} {
		t.Run(name, func(t *testing.T) {
			s := open(t, 80, 24, nil)
			s.keys(toAnswer[:10]...)
			s.await("How humid")
			stop(s)
			require.Equal(t, command.ExitStopped, s.code())
			s.requireClean()
			wrote := s.wrote()
			require.NotContains(t, wrote[strings.LastIndex(wrote, "\x1b[?1049l"):], "WALL", "no card is left behind")
		})
	}
}

func TestAClosedWindowEndsTheProgram(t *testing.T) {
	s := open(t, 80, 24, nil)
	s.await("before you spray")
	require.NoError(t, s.far.Close())
	require.NoError(t, s.near.Close())
	require.Equal(t, command.ExitStopped, s.code())
}

func TestResizing(t *testing.T) {
	s := open(t, 80, 24, nil)
	s.keys(toAnswer[:8]...)
	s.await("How warm is the air")
	size := func(w, h int) {
		s.mu.Lock()
		s.screen.Resize(w, h)
		s.mu.Unlock()
		require.NoError(t, pty.Setsize(s.far, &pty.Winsize{Rows: uint16(h), Cols: uint16(w)}))
	}
	size(30, 8)
	s.await("too small")
	size(120, 40)
	s.keys("How warm is the air", "75F\r", "How humid", "\x03")
	require.Equal(t, command.ExitStopped, s.code())
	s.requireClean()
}

// The mouse marks and takes, and is left alone where that is asked for.
func TestTheMouse(t *testing.T) {
	s := open(t, 80, 24, nil)
	s.keys("before you spray", "\r", "How do you want to begin", "\r")
	s.await("What are you spraying")
	row := 0
	for y, text := range strings.Split(s.shown(), "\n") {
		if strings.Contains(text, "8  clear") {
			row = y + 1
		}
	}
	require.Positive(t, row)
	click := fmt.Sprintf("\x1b[<0;10;%dM\x1b[<0;10;%dm", row, row)
	s.keys("8  clear", click, "> 8  clear", click, "Which gun", "\x03")
	require.Equal(t, command.ExitStopped, s.code())
	s.requireClean()

	s = open(t, 80, 24, nil, "--no-mouse")
	s.keys("before you spray", "q")
	require.Zero(t, s.code())
	require.NotContains(t, s.allWrote(), "\x1b[?1002h")
	require.NotContains(t, s.allWrote(), "\x1b[?1006h")
}
