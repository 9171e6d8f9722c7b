package tui

import (
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// Messages from outside.
type (
	stopMsg    struct{} // to end: a signal, a closed window
	pauseMsg   struct{} // to give the terminal back to the shell for a while
	resumedMsg struct{} // that is over
)

// root is where the person is, and the way from a key to that page.
type root struct {
	s      *session
	pages  []page // in the order they are gone through
	first  int    // the first question: what lies before it shows once
	at     int
	over   []page // opened over that, the last one shows
	resume *resume
	bench  *bench
	size   size   // 0 until it is known
	shown  *frame // of the page, as it was last drawn or asked for; nil once something has happened since

	due []tea.Cmd // what the last key is to be followed by

	paused  bool // the terminal is the shell's
	done    bool // to be left
	stopped bool // because it was interrupted
}

func newRoot(s *session) *root {
	r := &root{s: s, bench: newBench(s), resume: &resume{s: s}}
	r.pages = append(r.pages, &safety{s: s}, leftPage(s), r.resume, beginPage(s))
	r.first = len(r.pages)
	r.pages = append(r.pages, boothPage(s), gunPage(s))
	for i := range s.steps {
		st := &s.steps[i]
		if st.field == nil {
			r.pages = append(r.pages, newGroupPage(s, st))
			continue
		}
		r.pages = append(r.pages, &stepPage{s: s, step: st})
	}
	r.pages = append(r.pages, r.bench)
	return r
}

// page is the one that shows.
func (r *root) page() page {
	if n := len(r.over); n > 0 {
		return r.over[n-1]
	}
	return r.pages[r.at]
}

// step goes on or back by one page that has something to ask.
func (r *root) step(by int) {
	for at := r.at + by; at >= 0 && at < len(r.pages); at += by {
		if at < r.first && by < 0 {
			return
		}
		if !r.pages[at].skip() {
			r.goTo(at)
			return
		}
	}
}

// begin goes to the first question.
func (r *root) begin() {
	r.at = r.first - 1
	r.step(+1)
}

func (r *root) back() {
	if n := len(r.over); n > 0 {
		r.over = r.over[:n-1]
		if p, ok := r.page().(asking); ok {
			p.enter() // in units that may have changed
		}
		return
	}
	r.step(-1)
}

// goTo arrives at a page, or at the question whose answer turns out not to do.
func (r *root) goTo(at int) {
	r.at = at
	fault := r.pages[at].enter()
	if fault == nil {
		return
	}
	for i, p := range r.pages {
		p, ok := p.(asking)
		if !ok || !p.asks(fault.Field) {
			continue
		}
		switch p.of().part {
		case question.PartLine:
			r.s.walkLine = true
		case question.PartSupply:
			r.s.check = checkChange
		}
		r.at = i
		p.enter()
		p.refuse(fault)
		return
	}
	r.bench.fail(fault)
}

// Init has nothing to start.
func (r *root) Init() tea.Cmd { return nil }

// Update takes a message. What goes to disk or to the terminal past the frame goes as a command.
func (r *root) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	defer r.happened()
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		if msg.Width > 0 && msg.Height > 0 { // a terminal that does not know says 0
			r.size = size{min(msg.Width, mostWidth), min(msg.Height, mostHeight)}
		}
	case stopMsg:
		stop(r)
	case pauseMsg:
		suspend(r)
	case resumedMsg:
		r.paused = false
		if r.s.mouse {
			r.do(tea.EnableMouseCellMotion)
		}
	case tea.KeyMsg:
		for _, k := range apart(msg) {
			if !r.done {
				r.press(k)
			}
		}
	case tea.MouseMsg:
		r.point(msg)
	case practised:
		msg.hear()
	case learnt:
		r.hearLearnt(msg)
	case leftOf:
		r.hearLeft(msg)
	case taken:
		r.bench.notice = msg.notice
	case deskNews:
		r.hear(msg)
	case stirred:
		look := r.look()
		r.do(func() tea.Msg { return look() })
		r.do(r.await())
	}
	if r.done {
		return r, tea.Quit
	}
	r.do(r.learn())
	cmds := r.due
	r.due = nil
	if !r.paused {
		cmds = append(cmds, r.s.title.set(r.title()))
	}
	if r.started() {
		cmds = append(cmds, r.s.keep.later(r.draft()))
	}
	cmds = append(cmds, r.watch())
	return r, tea.Batch(cmds...)
}

// happened forgets how the page was drawn.
func (r *root) happened() { r.shown = nil }

// frame is that of the page, drawn or not.
func (r *root) frame() frame {
	if r.shown == nil {
		f := frameOf(r.page(), r.size)
		r.shown = &f
	}
	return *r.shown
}

// do follows a key by a command.
func (r *root) do(cmd tea.Cmd) { r.due = append(r.due, cmd) }

func (r *root) press(k tea.KeyMsg) {
	defer r.happened()
	all := append(r.keys(), r.besides()...)
	if tooSmall(r.size) {
		all = append(r.besides(), stopBinding())
	}
	r.bench.notice = ""
	m := func() move {
		if b, found := find(all, k); found {
			return b.act(k.String())
		}
		if tooSmall(r.size) {
			return nil
		}
		return r.page().press(k)
	}()
	if m != nil {
		m(r)
	}
}

// keys is what the keys do now.
func (r *root) keys() []binding {
	p := r.page()
	all := p.keys(r.frame().room)
	if _, is := p.(*keysPage); is {
		return append(all, stopBinding())
	}
	return append(all, r.everywhere()...)
}

// everywhere is the keys that every page has, that of the keys themselves last.
func (r *root) everywhere() []binding {
	return []binding{
		stopBinding(),
		bindExplained(helpKeys, "do-keys", func(string) move {
			return open(&keysPage{s: r.s, of: r.page(), below: append(r.keys(), r.besides()...)})
		}),
	}
}

// stopBinding works everywhere, also where the window is too small.
func stopBinding() binding { return bindKey(stopKeys, "do-stop", always(stop)) }

// besides is the keys that every page has and no row of help: the page of the keys lists them.
func (r *root) besides() []binding {
	if !r.canPause() {
		return nil
	}
	return []binding{bindExplained(pauseKeys, "do-pause", always(suspend))}
}

func (r *root) canPause() bool { return canPause && !r.s.off.Pause }

// suspend gives the terminal back to the shell until that continues the program.
func suspend(r *root) {
	if r.paused || !r.canPause() {
		return
	}
	r.paused = true
	r.s.title.giveBack()
	r.do(pauseCmd())
}

// View is the frame: nothing until the window's size is known.
func (r *root) View() string {
	if r.size == (size{}) {
		return ""
	}
	f := frameOf(r.page(), r.size)
	r.shown = &f
	return r.s.words.Marked(lay(r.s, r.page(), r.keys(), f, r.size))
}
