package tui

import (
	"errors"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"

	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/words"
	_ "boothset/tui/early" // before the terminal library

	tea "github.com/charmbracelet/bubbletea"
)

// Options is what the assistant runs on.
type Options struct {
	Reader *question.Reader
	Words  *words.Words
	System unit.System // that it opens in
	// Colours is how the screen looks; lines of text have no look.
	Colours Colours
	In      io.Reader // a terminal
	Out     io.Writer // a terminal
	Getenv  func(string) string
	NoMouse bool // the mouse is left to the terminal
	Off     Off
	// Kept is the file that the answers are kept in, as they come; empty keeps nothing.
	Kept string
	// Shop is the shop's folder, which need not be there; empty for none.
	Shop string
	// Practice is what is practised with in place of asking for a job, nil where it is not.
	Practice *Practice
}

// Off is what the person may not do. Nothing is off at the machine's own terminal; who comes from
// another machine has neither the shell nor the files of this one.
type Off struct {
	Pause bool // to give the terminal back to the shell
	// Files is to write files, other than the kept answers and what is kept in the shop's folder.
	Files bool
}

// Result is how the assistant was left.
type Result struct {
	// Plan is the answer that it was left from, nil where it was left from none; System the
	// units it was then shown in.
	Plan   *answer.Plan
	System unit.System
	// Unkept is why the answers could not be kept, nil where they were.
	Unkept error
	// Stopped reports an interrupt: ctrl+c, a signal, a closed window.
	Stopped bool
}

// heapGrowth is by how many percent the heap may grow before it is swept: little, since a
// key makes some hundred kilobytes that nobody needs again, and the machine at the bench
// may be a small one.
const heapGrowth = 20

// framesPerSecond shortens the wait for the first frame.
const framesPerSecond = 120

// Run shows the assistant until the person leaves it. The terminal is then as it was.
func Run(o Options) (Result, error) {
	defer debug.SetGCPercent(debug.SetGCPercent(heapGrowth))
	// The library's own handler would end the program on an interrupt without a word to
	// the model, and not hear of a closed window at all.
	stops, pauses := make(chan os.Signal, 1), make(chan os.Signal, 1)
	signal.Notify(stops, syscall.SIGHUP, syscall.SIGINT, syscall.SIGQUIT, syscall.SIGTERM)
	whenPaused(pauses)
	defer func() {
		signal.Stop(stops)
		signal.Stop(pauses)
	}()
	return show(o, func(p *tea.Program, over <-chan struct{}) {
		for {
			select {
			case <-stops:
				p.Send(stopMsg{})
				return
			case <-pauses:
				p.Send(pauseMsg{})
			case <-over:
				return
			}
		}
	})
}

// show shows the assistant until the person leaves it, or what is told from outside ends it.
func show(o Options, outside func(p *tea.Program, over <-chan struct{})) (Result, error) {
	out := &tty{out: o.Out}
	r := &opening{open: func() *root {
		s := newSession(o.Reader, o.Words, o.System, o.Colours, o.Getenv)
		s.send, s.mouse, s.off = out.send, !o.NoMouse, o.Off
		if titled(o.Getenv) {
			s.title.send = out.send
		}
		s.desk.where, s.desk.watched = o.Shop, true
		r := newRoot(s)
		r.keepIn(o.Kept)
		if o.Practice != nil {
			r.practise(o.Practice)
		}
		return r
	}}
	with := []tea.ProgramOption{tea.WithInput(o.In), tea.WithOutput(out.writer()), tea.WithAltScreen(),
		tea.WithFPS(framesPerSecond), tea.WithoutSignalHandler()}
	if !o.NoMouse {
		with = append(with, tea.WithMouseCellMotion())
	}
	p := tea.NewProgram(r, with...)
	over := make(chan struct{})
	defer close(over)
	go outside(p, over)

	_, err := p.Run()
	if r.root == nil { // the terminal failed before anything was opened
		return Result{}, err
	}
	if w := r.s.desk.watcher; w != nil {
		w.Close()
	}
	r.s.title.giveBack()
	r.s.writing.Wait()
	var unkept error
	if r.started() {
		unkept = r.s.keep.flush(r.draft())
	}
	switch {
	case r.stopped || errors.Is(err, syscall.EIO): // a closed window, seen before its signal
		return Result{Stopped: true, Unkept: unkept}, nil
	case err != nil:
		return Result{Unkept: unkept}, err
	}
	left := r.result()
	left.Unkept = unkept
	return left, nil
}

// opening is a root that is made once the terminal is set up, while the library waits for
// the time of its first frame.
type opening struct {
	*root
	open func() *root
}

func (o *opening) Init() tea.Cmd {
	o.root = o.open()
	return o.root.Init()
}

func (o *opening) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	_, cmd := o.root.Update(msg)
	return o, cmd
}

// result is what the person leaves with.
func (r *root) result() Result {
	if r.pages[r.at] != page(r.bench) || r.bench.err != nil {
		return Result{}
	}
	plan := r.bench.kept.Plan
	return Result{Plan: &plan, System: r.s.sys}
}
