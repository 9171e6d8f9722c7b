package tui

import (
	"io"
	"sync"

	"github.com/charmbracelet/x/term"
)

// tty is the terminal that the screen is drawn on. The library writes a frame at once; what is
// sent besides stands between two frames and tears none.
type tty struct {
	mu  sync.Mutex
	out io.Writer
}

func (t *tty) Write(b []byte) (int, error) {
	t.mu.Lock()
	defer t.mu.Unlock()
	return t.out.Write(b)
}

// send writes a sequence that shows nothing. A terminal that fails is seen by who draws on it.
func (t *tty) send(sequence string) { _, _ = t.Write([]byte(sequence)) }

// ttyFile is a terminal that is a file, which the library asks for its size.
type ttyFile struct {
	*tty
	file term.File
}

func (f ttyFile) Read(b []byte) (int, error) { return f.file.Read(b) }
func (f ttyFile) Close() error               { return f.file.Close() }
func (f ttyFile) Fd() uintptr                { return f.file.Fd() }

// writer is what the library draws on.
func (t *tty) writer() io.Writer {
	if f, ok := t.out.(term.File); ok {
		return ttyFile{t, f}
	}
	return t
}
