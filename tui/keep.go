package tui

import (
	"cmp"
	"errors"
	"maps"
	"reflect"
	"slices"
	"sync"
	"time"

	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/last"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// keeper keeps what was answered on disk, so that the next start offers it.
type keeper struct {
	file string // nothing is kept where it is empty
	now  func() time.Time
	run  string // the name of this one
	from string // the kept run that it takes the place of

	mu     sync.Mutex // of what is asked for, never held while the disk is waited for
	latest last.Draft // as last asked for
	asked  int        // how often it was

	disk sync.Mutex // one write at a time
	err  error      // of the last
}

// later is the command that keeps a draft, nil where it is the one asked for last. Writes
// that come late find that a newer one is due and leave it to that.
func (k *keeper) later(d last.Draft) tea.Cmd {
	if k == nil || k.file == "" {
		return nil
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if reflect.DeepEqual(d, k.latest) {
		return nil
	}
	mine := k.ask(d)
	return func() tea.Msg {
		k.write(mine)
		return nil
	}
}

// ask makes a draft the one to be written, and numbers it.
func (k *keeper) ask(d last.Draft) int {
	k.latest = d
	k.asked++
	return k.asked
}

// flush keeps a draft at once, and says what was wrong with the last write.
func (k *keeper) flush(d last.Draft) error {
	if k == nil || k.file == "" {
		return nil
	}
	k.mu.Lock()
	mine := k.ask(d)
	k.mu.Unlock()
	return k.write(mine)
}

// write waits for its turn and writes the draft of a number, where no newer one is due.
func (k *keeper) write(mine int) error {
	k.disk.Lock()
	defer k.disk.Unlock()
	k.mu.Lock()
	d, due := k.latest, mine == k.asked
	k.mu.Unlock()
	if due {
		d.Run, d.From, d.Saved = k.run, k.from, k.now()
		k.err = last.Save(k.file, d)
	}
	return k.err
}

// keepIn keeps the run in a file, and offers what the last one left there, and others did.
func (r *root) keepIn(file string) {
	s := r.s
	s.keep = &keeper{file: file, now: s.now, run: last.NewRun()}
	all, err := last.LoadAll(file)
	var wrong *last.Error
	if errors.As(err, &wrong) {
		s.notice = s.text(wrong.ID, wrong.Figures()...)
	}
	s.recall(all)
	s.fresh = s.offers && err == nil && len(all) == 0
	for _, d := range all {
		if len(d.Answers) > 0 {
			r.resume.offer(s.read(d))
		}
	}
}

// lastRun is a draft that was kept, its answers read.
type lastRun struct {
	last.Draft
	answers question.Answers
}

// read reads the answers of a draft. Those that will not do by themselves are left out, such
// as a coat of a shop's file that is gone: they are asked again.
func (s *session) read(d last.Draft) *lastRun {
	if d.Shop != s.desk.where { // its booth is another shop's
		d.Booth = ""
	}
	if d.Booth != "" || s.ofNoClass(d.Answers[question.Gun.Name]) {
		s.openDesk()
		s.desk.last = cmp.Or(s.desk.last, d.Booth)
	}
	sys := systemOf(d.Units, s.sys)
	all := s.reader.ReadAll(question.Plan, question.Texts(d.Answers), sys)
	run := &lastRun{Draft: d}
	for _, row := range question.Plan.Fields {
		if values := all.Get(row.Field); len(values) > 0 && s.reader.Check(row.Field, values, sys) == nil {
			values = s.reader.Completed(row.Field, values, sys)
			if slices.Contains(d.Assumed, row.Name) {
				values = unread(values)
			}
			run.answers = run.answers.With(row.Field, values...)
		}
	}
	return run
}

// ofNoClass reports whether a gun that was kept is none of the catalogue's: the shop may have it.
func (s *session) ofNoClass(kept []string) bool {
	return len(kept) > 0 && s.reader.Read(question.Gun, kept[0], s.sys).Fault != nil
}

// atBench is where a draft stands that has come to its answer.
const atBench = "answer"

// draft is the run as it stands.
func (r *root) draft() last.Draft {
	s := r.s
	d := last.Draft{Answers: last.Texts(s.answers.Texts()), Entered: maps.Clone(s.entered), Units: catalogue.SystemName(s.sys), Walk: s.walkLine, Check: s.check, Finished: s.finished, At: atBench}
	switch p := r.pages[r.at].(type) {
	case asking:
		d.At, d.Typed = p.draft()
	case *pickPage:
		d.At = p.id
	}
	d.Jobs = r.bench.unsaidJobs(r.pages[r.at] == page(r.bench))
	if b := s.desk.booth; b != nil {
		d.Shop, d.Booth = s.desk.where, b.ID
	}
	for _, row := range question.Plan.Fields {
		if v, _ := s.answers.One(row.Field); v.Assumed {
			d.Assumed = append(d.Assumed, row.Name)
		}
	}
	for _, f := range r.bench.forms {
		if own := f.own(); len(own) > 0 {
			if d.Sheets == nil {
				d.Sheets, d.Read = map[string]last.Texts{}, map[string]string{}
			}
			d.Sheets[f.asks.Name], d.Read[f.asks.Name] = last.Texts(own), catalogue.SystemName(f.read)
		}
	}
	for _, p := range r.over {
		if f, ok := p.(*form); ok {
			d.Page = f.asks.Name
		}
	}
	return d
}

// systemOf is the system of a name in a draft, or another one where it is none.
func systemOf(name string, other unit.System) unit.System {
	if sys, ok := catalogue.SystemOf(name); ok {
		return sys
	}
	return other
}

// started reports whether there is anything worth keeping.
func (r *root) started() bool { return r.at >= r.first }

// take makes a kept run the run's own, its answers offered.
func (r *root) take(run *lastRun) {
	s := r.s
	s.enterBooth(s.desk.boothOf(run.Booth))
	s.desk.ownGun = s.ofShop(run.answers.ID(question.Gun))
	s.goOnWith(run)
	s.old, s.answers, s.walkLine, s.finished = run, run.answers, run.Walk, run.Finished
	s.sys = systemOf(run.Units, s.sys)
	if s.entered = maps.Clone(run.Entered); s.entered == nil {
		s.entered = map[string]time.Time{}
	}
	switch run.Check {
	case checkSkip, checkKeep, checkChange:
		s.check = run.Check
	}
	for _, p := range r.pages {
		if p, ok := p.(asking); ok {
			p.resume(s.answers, run.At, run.Typed)
		}
	}
	for _, f := range r.bench.forms {
		f.fill(question.Texts(run.Sheets[f.asks.Name]), systemOf(run.UnitsOf(f.asks.Name), s.sys))
	}
}

// follow puts the answers that are no longer what they were into their questions.
func (r *root) follow(was question.Answers) {
	for _, p := range r.pages {
		if p, ok := p.(asking); ok {
			p.follow(was, r.s.answers)
		}
	}
}

// place is the page that a kept run stood on; false where it is not known.
func (r *root) place(run *lastRun) (at int, known bool) {
	for i, p := range r.pages {
		switch p := p.(type) {
		case asking:
			if p.asks(run.At) && !p.skip() {
				return i, true
			}
		case *bench:
			if run.At == atBench {
				return i, true
			}
		}
	}
	return 0, false
}

// reopen opens the page of the answer that a kept run was left on.
func (r *root) reopen(run *lastRun) {
	for _, f := range r.bench.forms {
		if f.asks.Name == run.Page && r.page() == page(r.bench) && r.bench.err == nil {
			open(f)(r)
		}
	}
}
