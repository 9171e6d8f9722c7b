package command

import (
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"boothset/calc"
	"boothset/presets/words"

	"github.com/charmbracelet/x/term"
)

// metered is an input that counts what was read of it.
type metered struct {
	io.Reader
	read atomic.Int64
}

func (m *metered) Read(p []byte) (int, error) {
	n, err := m.Reader.Read(p)
	m.read.Add(int64(n))
	return n, err
}

// progress is a row on standard error that says how far a batch has come, for as long as it
// runs. None is shown where standard error is no terminal, nor beside answers on one.
type progress struct {
	to      io.Writer // nil where none is shown
	words   *words.Words
	in      *metered
	size    int64 // of the input from where it stood, 0 where it is no plain file
	begun   time.Time
	lines   atomic.Int64
	wide    int
	over    chan struct{}
	waiting sync.WaitGroup
}

const (
	progressFirst = 500 * time.Millisecond // what is over sooner shows none
	progressEvery = 250 * time.Millisecond
)

// showProgress begins to show how far a batch has come with an input.
func (p *Program) showProgress(o opened, in *metered) *progress {
	g := &progress{words: o.words, in: in, begun: time.Now(), over: make(chan struct{})}
	if !IsTerminal(p.Std.Err) || IsTerminal(p.Std.Out) {
		return g
	}
	g.to, g.size = p.Std.Err, sizeLeft(p.Std.In)
	g.waiting.Go(g.run)
	return g
}

// IsTerminal reports whether something read or written is a terminal.
func IsTerminal(v any) bool {
	f, ok := v.(*os.File)
	return ok && term.IsTerminal(f.Fd())
}

// sizeLeft is how much of a plain file is still to be read, 0 of what is none.
func sizeLeft(in io.Reader) int64 {
	f, ok := in.(*os.File)
	if !ok {
		return 0
	}
	info, err := f.Stat()
	if err != nil || !info.Mode().IsRegular() {
		return 0
	}
	at, err := f.Seek(0, io.SeekCurrent)
	if err != nil {
		return 0
	}
	return max(info.Size()-at, 0)
}

// count says that so many lines were answered.
func (g *progress) count(lines int) { g.lines.Store(int64(lines)) }

func (g *progress) run() {
	next := time.NewTimer(progressFirst)
	defer next.Stop()
	for {
		select {
		case <-g.over:
			return
		case <-next.C:
		}
		g.draw(progressText(g.words, int(g.lines.Load()), time.Since(g.begun), g.in.read.Load(), g.size))
		next.Reset(progressEvery)
	}
}

// draw writes a row over the one before. An error is of no matter here.
func (g *progress) draw(text string) {
	wide := len([]rune(text))
	fmt.Fprint(g.to, "\r", text, strings.Repeat(" ", max(g.wide-wide, 0)))
	g.wide = wide
}

// clear takes the row away.
func (g *progress) clear() {
	close(g.over)
	g.waiting.Wait()
	if g.wide > 0 {
		g.draw("")
		fmt.Fprint(g.to, "\r")
	}
}

// progressText says how many lines were answered, how many that is a second and, where the size
// of the input is known, how long the rest of it takes.
func progressText(w *words.Words, lines int, took time.Duration, read, size int64) string {
	rate := float64(lines) / took.Seconds()
	figures := calc.Figures{calc.CountFigure("lines", lines), calc.BriefFigure("rate", calc.FigureRatio, rate)}
	id := "batch-progress"
	if size > 0 && read > 0 {
		id = "batch-progress-left"
		left := took.Seconds() * float64(max(size-read, 0)) / float64(read)
		figures = append(figures, calc.FigureOf("left", calc.FigureMinutes, left))
	}
	return spoken(w, id, figures...)
}
