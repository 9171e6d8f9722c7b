package tui

import (
	"fmt"

	"boothset/calc"
	"boothset/presets/question"
	"boothset/presets/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// deskNews is what the shop's folder holds anew: after something was written in it, which is
// told, or because it was changed from elsewhere.
type deskNews struct {
	told   string     // empty where nothing is
	enters string     // the booth that the job is in from then on, empty where that stays
	page   *entryPage // that wrote it, which is left where all went well
	wrong  string     // why it was not written
	holds  holding
	booth  string // the booth whose settings and readings these are
	agreed []*shop.Setting
	read   []*shop.GaugeReading
	away   []*shop.GaugeReading
}

// toFolder writes something in the shop's folder and looks into that anew. The screen does not
// wait for the disk; leaving does. In lines of text it is done when it is told. The job is then in
// the booth that it enters, where one is named.
func (r *root) toFolder(enters string, write func(*shop.Folder) (told string, err error)) {
	s, look := r.s, r.look()
	where, words := s.desk.where, s.words
	r.bench.notice = s.say("desk-writing")
	r.disk(func() tea.Msg {
		told, err := s.inFolder(where, write)
		if err != nil {
			told, enters = folderError(words, err), ""
		}
		n := look()
		n.told, n.enters = told, enters
		return n
	})
}

// keepEntry writes what a page asked for, and leaves it, or says on it why that will not do.
func (r *root) keepEntry(p *entryPage, write func(*shop.Folder) (told string, err error)) {
	s, look := r.s, r.look()
	where, words := s.desk.where, s.words
	p.fault = s.say("desk-writing")
	r.disk(func() tea.Msg {
		told, err := s.inFolder(where, write)
		n := look()
		n.page, n.told = p, told
		if err != nil {
			n.wrong, n.told = folderError(words, err), ""
		}
		return n
	})
}

// look looks into the shop's folder anew, as what the assistant shows may change meanwhile.
func (r *root) look() func() deskNews {
	d, words := &r.s.desk, r.s.words
	where, base, booth := d.where, d.base, d.boothID()
	return func() deskNews {
		n := deskNews{holds: lookInto(where, base, words), booth: booth, agreed: agreedIn(where, booth)}
		n.read, n.away = readingsIn(where, booth)
		return n
	}
}

// stirred is told when the folder was changed.
type stirred struct{}

// watch begins to watch the shop's folder once there is one: nil where it is watched already, or
// not at all.
func (r *root) watch() tea.Cmd {
	d := &r.s.desk
	if !d.watched || d.watcher != nil || !d.holds.found {
		return nil
	}
	d.watcher = shop.Watch(d.where, d.holds.stamp)
	return r.await()
}

// await waits until the folder is changed.
func (r *root) await() tea.Cmd {
	w := r.s.desk.watcher
	return func() tea.Msg {
		if !w.Wait() {
			return nil
		}
		return stirred{}
	}
}

// reread looks into the folder anew where it was changed since: in lines of text, before each
// page.
func (r *root) reread() {
	if d := &r.s.desk; d.holds.found && shop.Stamp(d.where) != d.holds.stamp {
		r.hear(r.look()())
	}
}

// disk does what waits for the disk, and takes what came of it. Leaving waits for it.
func (r *root) disk(do func() tea.Msg) {
	s := r.s
	if s.atOnce {
		if n, ok := do().(deskNews); ok {
			r.hear(n)
		}
		return
	}
	done := make(chan tea.Msg, 1)
	s.writing.Add(1)
	go func() {
		defer s.writing.Done()
		done <- do()
	}()
	r.do(func() tea.Msg { return <-done })
}

func inFolder(where string, write func(*shop.Folder) (string, error)) (told string, err error) {
	f, err := shop.At(where)
	if err != nil {
		return "", err
	}
	defer f.Close()
	return write(f)
}

// hear takes what the folder holds anew. A booth that is no longer offered stays the job's.
func (r *root) hear(n deskNews) {
	s, d := r.s, &r.s.desk
	d.told = n.told
	switch {
	case n.wrong != "":
		n.page.fault = n.wrong
	case n.page != nil:
		if n.page.fault = ""; r.page() == page(n.page) {
			back(r)
		}
	}
	if n.told != "" {
		r.bench.notice = n.told
	}
	was, answers := s.usual, s.answers
	lineWas := d.lineText()
	d.holds = n.holds
	d.changes++
	if b := d.boothOf(n.enters); b != nil {
		s.enterBooth(b)
	}
	if d.booth != nil {
		if b := d.boothOf(d.booth.ID); b != nil {
			d.booth = b
		}
		s.useReader(d.holds.reader.Over(d.booth.Answers))
	} else {
		s.useReader(d.holds.reader)
	}
	if d.booth != nil && d.booth.ID == n.booth {
		d.agreed, d.readings, d.away = n.agreed, n.read, n.away
	}
	for _, f := range question.ShopFields() { // what was taken as the booth had it follows the booth
		if was.Has(f) && s.answers.Text(f) == was.Text(f) && s.usual.Text(f) != was.Text(f) {
			s.answers = s.answers.Changed(f)
		}
	}
	if n.told == "" && d.lineText() != lineWas {
		r.bench.notice = s.text("desk-changed", calc.TextFigure("booth", plain(d.booth.Name)))
	}
	r.follow(answers)
	r.refill()
}

// lineText is all that the booth of the job says of its line, in one text; empty in none.
func (d *desk) lineText() string {
	if d.booth == nil {
		return ""
	}
	return fmt.Sprint(d.booth.ID, d.booth.Answers.Texts())
}

// refill shows what was heard: the answer where it shows or lies below, and the page over it.
func (r *root) refill() {
	if r.pages[r.at] == page(r.bench) && r.bench.err == nil {
		tried, changed := r.bench.tried.answers, r.bench.changed()
		r.bench.rework(tried, changed)
	}
	switch p := r.page().(type) {
	case *pickPage:
		at := p.list.id()
		p.fill()
		p.list.point(at)
	case *entryPage:
		if p.refresh != nil {
			p.refresh()
		}
	}
}
