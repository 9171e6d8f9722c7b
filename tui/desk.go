package tui

import (
	"errors"

	"boothset/calc"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"
)

// desk is what the assistant has of the shop's folder: what the folder holds, and the booth that
// the job is in. Nothing is looked up on the disk before the safety page is left, or a job of a
// booth is taken over.
type desk struct {
	where string           // the folder; empty where there is none
	base  *question.Reader // what is usual without a booth
	seen  bool             // the folder was looked into
	holds holding
	booth *shop.Booth // nil where the job is in none of them
	// agreed is all that was agreed on in the booth.
	agreed []*shop.Setting
	// readings is what was read of its gauges, as the folder keeps it.
	readings []*shop.GaugeReading
	away     []*shop.GaugeReading // of other booths
	changes  int                  // how often any of this has changed
	// last is the booth that was picked last, ownGun whether the gun is one that was picked from
	// the shop's, painter the one that was named last, by the id.
	last    string
	ownGun  bool
	painter string
	// invented is whether it is the shop that the program makes to try things in.
	invented bool

	told    string        // what was last said of the folder, for the pages that change it
	watched bool          // whoever changes the folder is heard while the assistant shows
	watcher *shop.Watcher // nil before there is a folder
}

// holding is what a shop's folder holds for a job.
type holding struct {
	found  bool             // the folder is there
	stamp  uint64           // see shop.Stamp
	reader *question.Reader // it knows the guns
	booths []*shop.Booth    // those that are offered, in the order of their ids
	guns   []*shop.Gun
	// allBooths and allGuns have those that are no longer offered too.
	allBooths []*shop.Booth
	allGuns   []*shop.Gun
	bands     []shop.Band
	// painters is who may have sprayed or agreed; none where the shop keeps none.
	painters shop.Painters
	wrong    []string // what of it will not do
}

// lookInto reads what is offered for a job in a shop's folder.
func lookInto(where string, base *question.Reader, w *words.Words) holding {
	h := holding{reader: base}
	if where == "" {
		return h
	}
	f, err := shop.At(where)
	if err != nil {
		h.wrong = []string{folderError(w, err)}
		return h
	}
	defer f.Close()
	h.found, h.stamp = f.Found(), shop.Stamp(where)
	guns, faults := f.Guns(base)
	booths, more := f.Booths(base)
	faults = append(faults, more...)
	h.bands, more = f.Bands()
	faults = append(faults, more...)
	h.painters, more = f.Painters()
	for _, fault := range append(faults, more...) {
		if fault.Weight == shop.Broken {
			h.wrong = append(h.wrong, fault.In(w))
		}
	}
	h.allBooths, h.allGuns = booths, guns
	for _, g := range guns {
		if !g.Retired {
			h.guns = append(h.guns, g)
		}
	}
	for _, b := range booths {
		if !b.Retired {
			h.booths = append(h.booths, b)
		}
	}
	if with, err := shop.WithGuns(base, h.guns...); err == nil { // each was read with them
		h.reader = with
	}
	return h
}

// agreedIn is all that was agreed on in a booth. What of it cannot be read is told by its check.
func agreedIn(where, booth string) []*shop.Setting {
	f, err := shop.At(where)
	if err != nil {
		return nil
	}
	defer f.Close()
	all, _ := f.Settings(booth)
	return all
}

// readingsIn is what was read of a booth's gauges, and of other booths'. What of it cannot be read is
// told by its check.
func readingsIn(where, booth string) (own, away []*shop.GaugeReading) {
	f, err := shop.At(where)
	if err != nil {
		return nil, nil
	}
	defer f.Close()
	own, _ = f.Readings(booth)
	return own, f.AwayReadings(booth)
}

// folderError is an error of the shop's folder in words.
func folderError(w *words.Words, err error) string {
	var own *shop.Error
	var fault *shop.Fault
	switch {
	case errors.As(err, &own):
		return w.Text(0, own.ID, own.Figures())
	case errors.As(err, &fault):
		return fault.In(w)
	}
	return err.Error()
}

// openDesk looks into the shop's folder, once.
func (s *session) openDesk() {
	d := &s.desk
	if d.seen {
		return
	}
	d.seen = true
	d.holds = lookInto(d.where, d.base, s.words)
	if len(d.holds.guns) > 0 {
		s.useReader(d.holds.reader)
	}
}

// boothOf is the booth of an id, nil where none of it is offered.
func (d *desk) boothOf(id string) *shop.Booth {
	for _, b := range d.holds.booths {
		if b.ID == id {
			return b
		}
	}
	return nil
}

// gunOf is the shop's gun of an id, nil where it has none of it.
func (d *desk) gunOf(id string) *shop.Gun {
	for _, g := range d.holds.guns {
		if g.ID == id {
			return g
		}
	}
	return nil
}

// nameOf is what the booth of an id is called, empty where none is offered.
func (d *desk) nameOf(id string) string {
	if b := d.boothOf(id); b != nil {
		return b.Name
	}
	return ""
}

// boothID is the id of the booth that the job is in, empty where it is in none.
func (d *desk) boothID() string {
	if d.booth == nil {
		return ""
	}
	return d.booth.ID
}

// boothName is what the booth is called that the job is in, empty where it is in none.
func (d *desk) boothName() string {
	if d.booth == nil {
		return ""
	}
	return d.booth.Name
}

// useReader makes a reader the one that answers are read and worked out with.
func (s *session) useReader(r *question.Reader) {
	s.reader, s.usual = r.WithLearnt(s.learntOf), question.Answers{}
	for _, row := range question.Plan.Fields {
		s.usual = s.usual.With(row.Field, r.Completed(row.Field, r.Usual().Get(row.Field), r.System())...)
	}
}

// enterBooth takes a booth, or none, as the one that the job is in: what it says is usual.
func (s *session) enterBooth(b *shop.Booth) {
	d := &s.desk
	d.changes++
	if d.booth = b; b == nil {
		d.agreed, d.readings, d.away = nil, nil, nil
		s.useReader(d.holds.reader)
		return
	}
	d.last, d.agreed = b.ID, agreedIn(d.where, b.ID)
	d.readings, d.away = readingsIn(d.where, b.ID)
	s.useReader(d.holds.reader.Over(b.Answers))
}

// moveTo takes another booth for the job. What was answered of the line that the job was on
// counts no more, since that is another's.
func (s *session) moveTo(b *shop.Booth) {
	if was := s.desk.booth; was == b || was != nil && b != nil && was.ID == b.ID {
		return
	}
	for _, f := range question.ShopFields() {
		s.answers = s.answers.Changed(f)
	}
	s.enterBooth(b)
	s.walkLine, s.check = false, checkSkip
	if question.Supplied(s.current()) {
		s.check = checkKeep
	}
}

// ofGun is what is fitted to a shop's gun, which is usual with it.
func (s *session) ofGun(a question.Answers) question.Answers {
	if g := s.desk.gunOf(a.ID(question.Gun)); g != nil {
		return g.Answers
	}
	return question.Answers{}
}

// usualWith is what is usual beside answers: what is fitted to their gun, then what the booth and
// the shop have.
func (s *session) usualWith(a question.Answers) question.Answers { return s.ofGun(a).Or(s.usual) }

// usualBecause says where what is usual for a field comes from.
func (s *session) usualBecause(f *question.Field) string {
	g, b := s.desk.gunOf(s.answers.ID(question.Gun)), s.desk.booth
	switch {
	case g != nil && g.Answers.Has(f):
		return s.text("taken-gun", calc.TextFigure("gun", g.Name))
	case b != nil && b.Answers.Has(f):
		return s.text("taken-booth", calc.TextFigure("booth", b.Name))
	}
	return s.say("taken-usual")
}
