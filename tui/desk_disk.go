package tui

import (
	"boothset/presets/question"
	"boothset/presets/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// deskNews is what the shop's folder holds anew: after something was written in it, which is
// told, or because it was changed from elsewhere.
type deskNews struct {
	told   string // empty where nothing is
	holds  holding
	booth  string // the booth whose settings these are
	agreed []*shop.Setting
}

// toFolder writes something in the shop's folder and looks into that anew. The screen does not
// wait for the disk; leaving does. In lines of text it is done when it is told.
func (r *root) toFolder(write func(*shop.Folder) (told string, err error)) {
	s := r.s
	where, base, words, booth := s.desk.where, s.desk.base, s.words, s.desk.last
	do := func() deskNews {
		told, err := s.inFolder(where, write)
		if err != nil {
			told = folderError(words, err)
		}
		return deskNews{told, lookInto(where, base, words), booth, agreedIn(where, booth)}
	}
	r.bench.notice = s.say("desk-writing")
	r.disk(func() tea.Msg { return do() })
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
	if n.told != "" {
		r.bench.notice = n.told
	}
	was, answers := s.usual, s.answers
	d.holds = n.holds
	d.changes++
	if d.booth != nil {
		if b := d.boothOf(d.booth.ID); b != nil {
			d.booth = b
		}
		s.useReader(d.holds.reader.Over(d.booth.Answers))
	} else {
		s.useReader(d.holds.reader)
	}
	if d.booth != nil && d.booth.ID == n.booth {
		d.agreed = n.agreed
	}
	for _, f := range question.ShopFields() { // what was taken as the booth had it follows the booth
		if was.Has(f) && s.answers.Text(f) == was.Text(f) && s.usual.Text(f) != was.Text(f) {
			s.answers = s.answers.Changed(f)
		}
	}
	r.follow(answers)
	r.refill()
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
		p.enter()
	}
}
