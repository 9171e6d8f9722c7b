package tui

import (
	"bytes"
	"io"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"boothset/presets/last"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is off has no key, and nothing comes of pressing it or of a signal; what is not off stays.
func TestWhatIsOffHasNoKey(t *testing.T) {
	r := start(t, look{})
	r.s.off = Off{Pause: true, Files: true}
	r.s.writeNew = func(string, []byte) (string, error) {
		t.Error("a file was written")
		return "", nil
	}
	press(r, toAnswer...)
	for _, key := range []string{"w", "ctrl+z"} {
		before := r.View()
		_, found := find(append(r.keys(), r.besides()...), keyOf(key))
		require.False(t, found, key)
		follow(t, r, key)
		require.Equal(t, before, r.View(), key)
	}
	r.Update(pauseMsg{})
	require.False(t, r.paused)
	_, found := find(r.keys(), keyOf("y"))
	require.True(t, found, "the clipboard is the person's own")
	press(r, "?")
	require.NotContains(t, r.View(), "ctrl+z")
}

// farTerminal is a terminal on another machine, as the assistant has it.
type farTerminal struct {
	keys  *io.PipeWriter
	sizes chan Size
	stop  chan struct{}
	left  chan Result

	mu    sync.Mutex
	wrote bytes.Buffer
}

func (f *farTerminal) Write(b []byte) (int, error) {
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.wrote.Write(b)
}

// await waits until a text was written, and types.
func (f *farTerminal) await(t *testing.T, text, keys string) {
	t.Helper()
	require.Eventually(t, func() bool {
		f.mu.Lock()
		defer f.mu.Unlock()
		return strings.Contains(f.wrote.String(), text)
	}, 30*time.Second, 2*time.Millisecond, text)
	if keys != "" {
		_, err := io.WriteString(f.keys, keys)
		require.NoError(t, err)
	}
}

// far runs the assistant for a terminal.
func far(t *testing.T, l look, kept string) *farTerminal {
	t.Helper()
	in, keys := io.Pipe()
	f := &farTerminal{keys: keys, sizes: make(chan Size, 1), stop: make(chan struct{}), left: make(chan Result, 1)}
	o := l.options(t)
	o.In, o.Out, o.Kept = in, f, kept
	go func() {
		left, err := RunRemote(o, Remote{Sizes: f.sizes, Stop: f.stop})
		assert.NoError(t, err)
		f.left <- left
	}()
	f.sizes <- Size{80, 24}
	return f
}

// Terminals of several machines are each shown their own, in their own language and size; who is
// told to stop leaves the terminal clean and the answers kept, and who leaves takes the answer.
func TestTerminalsOfOtherMachines(t *testing.T) {
	dir := t.TempDir()
	one, two := far(t, look{}, filepath.Join(dir, "one.json")), far(t, look{lang: "es"}, filepath.Join(dir, "two.json"))
	one.await(t, "before you spray", "\r")
	two.await(t, "antes de pintar", "\r")
	one.await(t, "What are you spraying", "8")
	two.await(t, "pintar o aplicar", "")
	one.await(t, "Which gun", "2")
	one.await(t, "How warm", "")
	one.sizes <- Size{30, 8}
	one.await(t, "too small", "")
	close(one.stop)
	left := <-one.left
	require.True(t, left.Stopped)
	require.NoError(t, left.Unkept)
	d, found, err := last.Load(filepath.Join(dir, "one.json"))
	require.NoError(t, err)
	require.True(t, found)
	require.Equal(t, []string{"clear"}, d.Answers["coat"])
	for _, off := range []string{"\x1b[?1049l", "\x1b[?2004l", "\x1b[?1002l", "\x1b[?25h"} {
		one.await(t, off, "")
	}

	two.await(t, "pintar o aplicar", "q")
	require.False(t, (<-two.left).Stopped)
}
