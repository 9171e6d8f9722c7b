//go:build unix

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"boothset/calc/unit"
	"boothset/cmd/boothset/command"
	"boothset/presets/last"
	"boothset/presets/question"

	"github.com/stretchr/testify/require"
)

// homed is the program on a terminal in a home that other runs share.
func homed(t *testing.T, home string, args ...string) *session {
	t.Helper()
	cmd := exec.Command(program, args...)
	cmd.Env = []string{"HOME=" + home}
	return onTerminal(t, 80, 24, nil, cmd)
}

// keptIn is where a home keeps the last answers.
func keptIn(home string) string {
	return last.File(func(name string) string { return map[string]string{"HOME": home}[name] })
}

// awaitKept waits until the file holds what was typed last.
func awaitKept(t *testing.T, home, at, typed string) {
	t.Helper()
	require.Eventually(t, func() bool {
		d, found, err := last.Load(keptIn(home))
		return err == nil && found && d.At == at && d.Typed == typed
	}, patience, 5*time.Millisecond)
}

// However a run ends, the next one offers what was entered and comes back where it was,
// with what was typed and not taken.
func TestARunThatIsEndedComesBackWhereItWas(t *testing.T) {
	for name, end := range map[string]func(*session){
		"SIGKILL": func(s *session) { s.cmd.Process.Kill() }, //nolint:errcheck // seen by the exit
		"SIGTERM": func(s *session) { s.cmd.Process.Signal(syscall.SIGTERM) },
		"SIGHUP":  func(s *session) { s.cmd.Process.Signal(syscall.SIGHUP) },
		"ctrl+c":  func(s *session) { s.near.WriteString("\x03") },
		"a closed window": func(s *session) {
			s.far.Close()
			s.near.Close()
		},
	} {
		t.Run(name, func(t *testing.T) {
			home := t.TempDir()
			s := homed(t, home)
			s.keys(toAnswer[:10]...)
			s.keys("How humid", "4")
			if name == "SIGKILL" { // nothing is told to it: it must have been kept by then
				awaitKept(t, home, "humidity", "4")
			} else {
				s.await("> humidity  4")
			}
			end(s)
			if name == "SIGKILL" {
				require.Equal(t, -1, s.code())
			} else {
				require.Equal(t, command.ExitStopped, s.code())
			}
			awaitKept(t, home, "humidity", "4")

			s = homed(t, home)
			s.keys("before you spray", "\r", "A moment ago you left", "\r", "How humid", "5\r", "How warm is the panel", "\x03")
			require.Equal(t, command.ExitStopped, s.code())
			s.requireClean()
			d, _, err := last.Load(keptIn(home))
			require.NoError(t, err)
			require.Equal(t, []string{"45%"}, d.Answers["humidity"])
			require.Equal(t, []string{"clear"}, d.Answers["coat"])
		})
	}
}

func TestAJobThatWasAnsweredIsOfferedWithItsPages(t *testing.T) {
	home := t.TempDir()
	s := homed(t, home)
	s.keys(toAnswer...)
	s.keys("INLET VALVE", "8", "seconds: type", "\x1b[A", "as answered", "din4\r", "seconds: ", "22")
	require.Eventually(t, func() bool {
		d, _, err := last.Load(keptIn(home))
		return err == nil && slices.Equal(d.Sheets["thin"]["seconds"], []string{"22"})
	}, patience, 5*time.Millisecond)
	s.cmd.Process.Kill() //nolint:errcheck // seen by the exit
	require.Equal(t, -1, s.code())
	s = homed(t, home)
	s.keys("before you spray", "\r", "A moment ago you answered", "\r", "the answer", "\x1b", "left/right try", "q")
	require.Zero(t, s.code())
	s.requireClean()
}

func TestAFileThatCannotBeKeptIsTold(t *testing.T) {
	home := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(home, ".local"), nil, 0o600)) // where the folder should be
	s := homed(t, home)
	s.keys(toAnswer...)
	s.keys("INLET VALVE", "q")
	require.Zero(t, s.code())
	s.requireClean()
	wrote := s.allWrote()
	require.Contains(t, wrote[strings.LastIndex(wrote, "\x1b[?1049l"):], "The answers cannot be saved in")
}

func TestABrokenFileIsToldOnTheFirstPage(t *testing.T) {
	home := t.TempDir()
	file := keptIn(home)
	require.NoError(t, os.MkdirAll(filepath.Dir(file), 0o700))
	require.NoError(t, os.WriteFile(file, []byte("{"), 0o600))
	s := homed(t, home)
	s.keys("damaged and cannot be used", "\r", "What are you spraying", "\x03")
	require.Equal(t, command.ExitStopped, s.code())
}

// A script starts from the same place every time and leaves nothing behind.
func TestAScriptNeitherKeepsNorIsOffered(t *testing.T) {
	home := t.TempDir()
	s := homed(t, home)
	s.keys(toAnswer...)
	s.keys("INLET VALVE", "q")
	require.Zero(t, s.code())
	before, err := os.ReadFile(keptIn(home))
	require.NoError(t, err)

	cmd := exec.Command(program, "--plain")
	cmd.Env = []string{"HOME=" + home, "LANG=C.UTF-8"}
	cmd.Stdin = strings.NewReader("7\n2\n70F\n45\n\n\n90psi\n1\n\n\n\n\n")
	out, err := cmd.Output()
	require.NoError(t, err)
	require.Contains(t, string(out), "Single stage, reduced-pressure gun.")
	require.NotContains(t, string(out), "ago you")
	after, err := os.ReadFile(keptIn(home))
	require.NoError(t, err)
	require.Equal(t, string(before), string(after))

	empty := t.TempDir()
	cmd = exec.Command(program, "--plain")
	cmd.Env = []string{"HOME=" + empty}
	cmd.Stdin = strings.NewReader("7\n")
	require.Error(t, cmd.Run())
	require.Equal(t, command.ExitBadInput, cmd.ProcessState.ExitCode())
	_, err = os.Stat(keptIn(empty))
	require.ErrorIs(t, err, os.ErrNotExist)
}

// A terminal that cannot be drawn on gets the lines, and no escape among them; there the
// answers are kept and offered.
func TestADumbTerminalGetsLines(t *testing.T) {
	home := t.TempDir()
	dumb := func() *session {
		cmd := exec.Command(program)
		cmd.Env = []string{"HOME=" + home, "TERM=dumb"}
		return onTerminal(t, 80, 200, nil, cmd)
	}
	s := dumb()
	s.keys("How do you want to begin?", "\n", "What are you spraying?", "8\n", "Which gun", "2\n", "How warm is the air", "75F\n", "How humid", "<\n")
	s.await("Left empty: 75F")
	awaitKept(t, home, "temp", "")
	d, _, err := last.Load(keptIn(home))
	require.NoError(t, err)
	require.Equal(t, []string{"75F"}, d.Answers["temp"])
	s.cmd.Process.Kill() //nolint:errcheck // seen by the exit
	require.Equal(t, -1, s.code())

	s = dumb()
	s.keys("A moment ago you left", "\n", "Left empty: 75F", "\n", "How humid", "45\n", "How warm is the panel", "\n", "How high", "\n", "gauge before the regulator", "90psi\n",
		"Is this your air line", "\n", "wall regulator read now", "\n", "compressor too", "\n", "sheet say otherwise", "\n", "Type a digit", "\n")
	require.Zero(t, s.code())
	wrote := s.allWrote()
	require.NotContains(t, wrote, "\x1b")
	require.Contains(t, wrote, "\r\nWALL 31")
}

// panicking is set for the program whose page panics.
const panicking = "BOOTHSET_PANICS"

// runPanicking is the assistant with a page that panics when it is opened.
func runPanicking() int {
	question.Seconds.Read = func(*question.Reader, *question.Field, string, unit.System) question.Value {
		panic("programmer error")
	}
	return run(nil, command.Stdio{In: os.Stdin, Out: os.Stdout, Err: os.Stderr}, os.Getenv)
}

// A fault of the program itself leaves the terminal as it was too, and what was answered
// is kept. After SIGKILL the terminal is as the program had it: nothing can be done then.
func TestAPanicLeavesTheTerminalClean(t *testing.T) {
	home := t.TempDir()
	cmd := exec.Command(os.Args[0])
	cmd.Env = []string{"HOME=" + home, panicking + "=1"}
	s := onTerminal(t, 80, 24, nil, cmd)
	s.keys(toAnswer...)
	s.keys("INLET VALVE", "8")
	require.Equal(t, command.ExitFailed, s.code())
	s.requireClean()
	require.Contains(t, s.allWrote(), "programmer error")
	d, found, err := last.Load(keptIn(home))
	require.NoError(t, err)
	require.True(t, found)
	require.Equal(t, []string{"clear"}, d.Answers["coat"])
}

// An input that ends is named by the question it ended at, in both languages.
func TestTheQuestionThatTheInputEndedAtIsNamed(t *testing.T) {
	for args, want := range map[string]string{
		"":          "boothset: the input ended at this question: How warm is the air in the booth?\n",
		"--lang=es": "boothset: la entrada terminó en esta pregunta: ¿A qué temperatura está el aire de la cabina?\n",
	} {
		r := boothset("8\r\n2", strings.Fields("--plain "+args)...)
		require.Equal(t, command.ExitBadInput, r.code)
		require.Equal(t, want, r.err)
	}
}
