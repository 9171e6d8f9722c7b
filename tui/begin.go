package tui

import (
	"os"
	"slices"
	"time"

	"boothset/calc"
	"boothset/presets/catalogue"
	"boothset/presets/demo"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"
)

// The pages of somebody who begins, as their sentences are called.
const (
	stepBegin = "begin"
	stepOwn   = "own"
)

// How to begin where nothing is set up.
const (
	beginJob  = "job"  // with a job
	beginOwn  = "own"  // with the shop's own booth
	beginDemo = "demo" // in the invented shop
)

// begins reports whether nothing is set up: no answers are kept, and no shop's folder is there.
func (s *session) begins() bool { return s.fresh && !s.picks() }

// beginPage asks somebody who has nothing set up how to begin.
func beginPage(s *session) *pickPage {
	p := &pickPage{s: s, id: stepBegin, title: "begin-title"}
	p.hidden = func() bool { return !s.begins() }
	p.first = func() bool { return true }
	p.fill = func() {
		at := p.list.at
		p.list = s.listOf("begin-", beginJob, beginOwn, beginDemo)
		p.list.at = at
	}
	p.over = func(w int) []string { return wrap(s.notice, w) }
	p.take = func(picked string) move {
		switch picked {
		case beginOwn:
			return open(newOwnPage(s))
		case beginDemo:
			if err := s.enterDemo(); err != nil {
				s.notice = folderError(s.words, err)
				return nil
			}
		}
		return (*root).begin
	}
	return p
}

// enterDemo makes the invented shop in a temporary folder and takes it for the shop's. A job in
// it is no one's: nothing is kept of it.
func (s *session) enterDemo() error {
	// As it ships: what a shop has of its own has no part in an invented one.
	c, err := catalogue.LoadIn(s.words, words.Locale{}, nil, "")
	if err != nil {
		return err
	}
	r, err := question.New(c)
	if err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "boothset-demo-")
	if err != nil {
		return err
	}
	now := s.now()
	if err := demo.Make(dir, r, time.Date(now.Year(), now.Month(), now.Day(), 0, 0, 0, 0, now.Location())); err != nil {
		return err
	}
	s.keep.file = ""
	if w := s.desk.watcher; w != nil {
		w.Close()
	}
	s.desk = desk{where: dir, base: r, invented: true, watched: s.desk.watched}
	s.useReader(r)
	s.openDesk()
	return nil
}

// inventedText says of the invented shop what it is and where.
func (s *session) inventedText() string {
	return s.text("demo-made", calc.PathFigure("file", s.desk.where))
}

// ownFields is what is asked of a shop's first booth besides its name.
var ownFields = []*question.Field{question.Hose, question.Supply}

// newOwnPage asks what the shop's first booth is called and has, and keeps it.
func newOwnPage(s *session) *entryPage {
	p := newEntryPage(s, stepOwn, "begin-title", "do-save")
	p.fill = func() {
		if p.all != nil {
			return
		}
		p.all = []box{entryBox(ownName, nil)}
		for _, f := range ownFields {
			row, _ := question.Plan.Field(f.Name)
			p.all = append(p.all, box{Row: row, picked: -1})
		}
		p.all[0].typed.set(s.say("own-name-usual"))
	}
	p.offer = func(b *box) []question.Value { return s.usual.Get(b.Field) }
	p.over = func(w int) []string {
		return wrap(s.text("own-folder", calc.PathFigure("file", s.desk.where)), w)
	}
	p.take = func() (move, string) {
		if fault := s.saveOwn(p); fault != "" {
			return nil, fault
		}
		return func(r *root) {
			r.over = nil
			r.at = r.first // the booth is picked
			forward(r)
		}, ""
	}
	return p
}

// saveOwn keeps the booth of the page and enters it, or says why not. The rest of its line is
// the usual one, until somebody says another.
func (s *session) saveOwn(p *entryPage) string {
	name := p.text(ownName)
	id := idOf(name)
	if !shop.IsID(id) {
		return s.say("save-no-id")
	}
	var a question.Answers
	for i := range p.all {
		b := &p.all[i]
		if !slices.Contains(ownFields, b.Field) {
			continue
		}
		values := p.values(b)
		if fault := s.reader.Check(b.Field, values, p.read); fault != nil {
			p.at = i
			return s.refusal(fault, b.own())
		}
		a = a.With(b.Field, values...)
	}
	d := &s.desk
	keys := append([]shop.Key{{Name: "name", Value: name}}, shop.KeysOf(d.base, a, p.read)...)
	_, err := s.inFolder(d.where, func(f *shop.Folder) (string, error) { return "", f.SaveBooth(d.base, id, keys...) })
	if err != nil {
		return folderError(s.words, err)
	}
	d.seen = false
	s.openDesk()
	if b := d.boothOf(id); b != nil {
		s.enterBooth(b)
	}
	return ""
}
