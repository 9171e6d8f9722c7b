//go:build unix

package main

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"boothset/presets/last"

	"github.com/creack/pty"
	"github.com/stretchr/testify/require"
)

// seed is what everything is drawn from that happens to the program on its terminal.
var seed = flag.Uint64("seed", 0, "draw TestAnythingOnATerminal from this seed; 0 is any")

// Whatever is typed, clicked and pasted, however the window changes and whatever signals
// come, in a shop or without one, the program draws nothing raw, answers to the next change of
// its window, leaves the terminal as it was and the kept answers whole. A failure says its seed, and writes what
// happened to the folder of artifacts.
func TestAnythingOnATerminal(t *testing.T) {
	if *seed == 0 {
		*seed = rand.Uint64()
		defer func() { *seed = 0 }()
	}
	w := &walk{t: t, Rand: rand.New(rand.NewPCG(*seed, 0)), home: t.TempDir()}
	defer func() {
		if !t.Failed() {
			return
		}
		file := filepath.Join(t.ArtifactDir(), "acts.txt")
		err := os.WriteFile(file, []byte(strings.Join(w.acts, "\n")+"\n"), 0o600)
		t.Logf("-seed %d; what happened is in %s (%v)", *seed, file, err)
	}()
	if w.IntN(2) == 0 {
		out, err := exec.Command(program, "demo", filepath.Join(w.home, ".local", "share", "boothset", "shop")).CombinedOutput()
		require.NoError(t, err, "%s", out)
	}
	for range 3 { // each comes back to what the one before it left
		w.run()
	}
}

// walk is what happens to the program in one home.
type walk struct {
	*rand.Rand
	t     *testing.T
	home  string
	acts  []string // all that has happened
	lines bool     // the assistant is lines of text
	s     *session
}

// one is one of some.
func one[T any](w *walk, of ...T) T { return of[w.IntN(len(of))] }

// run is the program from its start to its end.
func (w *walk) run() {
	args := strings.Fields(one(w, "", "", "--lang es", "--units metric", "--no-mouse", "--colours contrast", "--card", "--lang es --units metric"))
	env := one(w, "TERM=xterm-256color", "TERM=xterm-256color", "TERM=linux", "NO_COLOR=1", "COLORFGBG=0;15", "LANG=C", "LANG=es_ES.UTF-8")
	if w.lines = w.IntN(6) == 0; w.lines {
		args = append(args, "--plain")
	}
	width, height := w.window()
	w.did("start %q %s in %dx%d", args, env, width, height)
	cmd := exec.Command(program, args...)
	cmd.Env = []string{"HOME=" + w.home, "TMPDIR=" + w.home, env}
	w.s = onTerminal(w.t, width, height, nil, cmd, func(*exec.Cmd) {})
	w.s.mu.Lock()
	w.s.blind = true // what is sent is looked at
	w.s.mu.Unlock()
	w.awaitSent(func(sent string) bool { return w.lines && sent != "" || strings.Contains(sent, entered) }, "it starts")
	if w.IntN(3) > 0 {
		for i := range w.IntN(len(toAnswer) / 2) {
			w.types(toAnswer[2*i+1])
			w.settle()
		}
	}
	for range 10 + w.IntN(50) {
		if w.act(); w.ended() {
			w.over(0, 3, 130)
			return
		}
	}
	w.requireAnswers()
	w.end()
}

// window is a size of a window, mostly a usual one.
func (w *walk) window() (width, height int) {
	if w.IntN(2) == 0 {
		return one(w, 80, 60, 120, 200), one(w, 24, 40, 50)
	}
	return w.IntN(300), w.IntN(100)
}

// act is one thing that a person, a cat or the system does.
func (w *walk) act() {
	switch w.IntN(20) {
	case 0, 1, 2, 3, 4:
		w.types(one(w, "\r", "\r", "\r", "\x1b", "\x1b[A", "\x1b[B", "\x1b[C", "\x1b[D", "\x1b[1;2C", "\x1b[1;2D", "\x1b[5~", "\x1b[6~",
			"\x1b[H", "\x1b[F", "\t", "\x1b[Z", "\x7f", "\x1b[3~", "\x1bOQ", "\x15", "\x0c", "\x1a"))
	case 5, 6, 7:
		w.types(strconv.Itoa(w.IntN(10)))
	case 8:
		w.types(string("abcdefghijklmnopqrstuvwxyz?!=+-<>,. "[w.IntN(36)]))
	case 9, 10:
		w.types(one(w, "75", "24c", "24ºC", "45%", "90psi", "6 bar", "25,3/8", "-300C", "nan", "0x10", "1e9", "1,5", "1.500m", "+", "200ft", "hood", "4:1:1", "９０", strings.Repeat("9", 5000)) + one(w, "", "\r"))
	case 11:
		w.types("\x1b[200~" + one(w, "75F\r", "\x1b[31m", "\u202e9\u200b", strings.Repeat("long ", 1000), w.bytes()) + one(w, "\x1b[201~", ""))
	case 12:
		w.types(fmt.Sprintf("\x1b[<%d;%d;%d%c", one(w, 0, 0, 0, 2, 64, 65, 35, 1<<20), w.IntN(310), w.IntN(110), one(w, 'M', 'm')))
	case 13:
		w.types(w.bytes())
	case 14:
		var burst strings.Builder
		for range 5 + w.IntN(100) {
			burst.WriteString(one(w, "\r", "\x1b[A", "\x1b[B", "\x1b[C", "\x1b[D", "\x1b", strconv.Itoa(w.IntN(10)), "u", "=", "n"))
		}
		w.types(burst.String())
	case 15, 16:
		width, height := w.window()
		if w.IntN(30) == 0 {
			width, height = 65535, 65535
		}
		w.resize(width, height)
	case 17:
		w.signal(one(w, syscall.SIGWINCH, syscall.SIGCONT, syscall.SIGTSTP, syscall.SIGPIPE, syscall.SIGURG))
	case 18:
		w.signal(syscall.SIGSTOP)
		if w.IntN(2) == 0 {
			w.types("\r")
		}
		w.signal(syscall.SIGCONT)
	default:
		w.settle()
	}
}

// bytes is bytes that may be anything, but for those that nonsense is known by, and for ctrl+s,
// at which a terminal that echoes stops.
func (w *walk) bytes() string {
	b := make([]byte, 1+w.IntN(64))
	for i := range b {
		if b[i] = byte(w.IntN(256)); strings.IndexByte("NI%\x13", b[i]) >= 0 {
			b[i] = '?'
		}
	}
	return string(b)
}

// end ends the program in one of the ways there are.
func (w *walk) end() {
	switch way := w.IntN(4); {
	case way == 0:
		w.did("close the window")
		w.s.far.Close()
		w.s.near.Close()
		w.over(130, 0, 3) // it may have been ending
	case way == 1:
		w.signal(syscall.SIGKILL)
		w.over(-1, 130, 0, 3)
	default:
		w.signal(one(w, syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP))
		w.over(130, 0, 3)
	}
}

// types writes to the terminal as fast as the program reads; what it does not read in time is
// lost.
func (w *walk) types(text string) {
	w.did("type %q", text)
	require.NoError(w.t, w.s.near.SetWriteDeadline(time.Now().Add(200*time.Millisecond)))
	if _, err := w.s.near.WriteString(text); err != nil && !os.IsTimeout(err) {
		require.NoError(w.t, err)
	}
}

func (w *walk) resize(width, height int) {
	w.did("resize to %dx%d", width, height)
	require.NoError(w.t, pty.Setsize(w.s.far, &pty.Winsize{Rows: uint16(height), Cols: uint16(width)}))
}

func (w *walk) signal(s syscall.Signal) {
	w.did("signal %v", s)
	w.s.cmd.Process.Signal(s) //nolint:errcheck // it may have ended
}

func (w *walk) did(format string, args ...any) { w.acts = append(w.acts, fmt.Sprintf(format, args...)) }

// settle waits until nothing more is sent for a moment.
func (w *walk) settle() {
	w.did("wait")
	for before := -1; before != len(w.s.wrote()); time.Sleep(20 * time.Millisecond) {
		before = len(w.s.wrote())
	}
}

// awaitSent waits for what is sent to the terminal.
func (w *walk) awaitSent(good func(sent string) bool, what string) {
	w.t.Helper()
	require.Eventually(w.t, func() bool { return good(w.s.wrote()) || w.ended() }, patiently, time.Millisecond, what)
}

// ended tells whether the program has.
func (w *walk) ended() bool {
	select {
	case err := <-w.s.ended:
		w.s.ended <- err
		return true
	default:
		return false
	}
}

// requireAnswers holds that the program still draws when its window changes.
func (w *walk) requireAnswers() {
	w.t.Helper()
	if w.lines {
		return
	}
	w.settle()
	w.resize(81, 24)
	w.settle()
	before := len(w.s.wrote())
	w.resize(80, 24)
	w.awaitSent(func(sent string) bool { return len(sent) > before }, "it draws in a new window")
}

// over holds that the program ended with one of the codes and left everything in order.
func (w *walk) over(codes ...int) {
	w.t.Helper()
	require.Eventually(w.t, w.ended, patiently, time.Millisecond, "it ends")
	code := w.s.code()
	w.did("it ended with %d", code)
	if w.lines {
		codes = append(codes, 1, 2, -1) // lines cannot be read, end, and do not catch a signal
	}
	sent := w.s.wrote()
	if !w.lines {
		sent = w.s.allWrote()
		if code < 0 { // what it was writing is cut off
			sent = sent[:max(0, strings.LastIndexByte(sent, '\x1b'))]
		}
		for _, drawn := range screens(sent) {
			requireDrawn(w.t, drawn)
		}
		if _, err := w.s.far.Stat(); err == nil && code >= 0 {
			w.s.requireClean()
		}
	}
	require.True(w.t, slices.Contains(codes, code), "%d\n%s", code, sent[max(0, len(sent)-4000):])
	require.NotRegexp(w.t, `goroutine \d|panic|runtime error`, sent)
	w.s.near.Close()
	w.s.far.Close()

	_, _, err := last.Load(keptIn(w.home))
	require.NoError(w.t, err)
	aside, err := filepath.Glob(filepath.Join(filepath.Dir(keptIn(w.home)), "last-aside*"))
	require.NoError(w.t, err)
	require.Empty(w.t, aside)
}
