package tui

import (
	"errors"
	"maps"
	"reflect"
	"slices"
	"sync"
	"time"

	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/last"

	tea "github.com/charmbracelet/bubbletea"
)

// keeper keeps what was answered on disk, so that the next start offers it.
type keeper struct {
	file string // nothing is kept where it is empty
	now  func() time.Time

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
		d.Saved = k.now()
		k.err = last.Save(k.file, d)
	}
	return k.err
}

// keepIn keeps the run in a file, and offers what the last one left there.
func (r *root) keepIn(file string) {
	s := r.s
	s.keep = &keeper{file: file, now: s.now}
	d, found, err := last.Load(file)
	var wrong *last.Error
	switch {
	case errors.As(err, &wrong):
		s.notice = s.text(wrong.ID, wrong.Figures())
	case found && answered(&d.Answers):
		d.Fit(s.catalogue)
		r.resume.draft = &d
	}
}

// answered reports whether anything was.
func answered(a *presets.Answers) bool {
	return slices.ContainsFunc(steps, func(st step) bool { return a.Field(st.id) != "" })
}

// atBench is where a draft stands that has come to its answer.
const atBench = "answer"

// draft is the run as it stands.
func (r *root) draft() last.Draft {
	s := r.s
	d := last.Draft{Answers: s.answers, Entered: maps.Clone(s.entered), Units: unitsOf(s.sys), Walk: s.walkLine, Check: s.check, Finished: s.finished, At: atBench}
	if q, ok := r.pages[r.at].(*question); ok {
		d.At, d.Typed = q.step.id, q.field.String()
	}
	for _, f := range r.bench.forms {
		if sheet := f.typed(); len(sheet) > 0 {
			if d.Sheets == nil {
				d.Sheets, d.Read = map[string]presets.Sheet{}, map[string]string{}
			}
			d.Sheets[f.ask.Name], d.Read[f.ask.Name] = sheet, unitsOf(f.read)
		}
	}
	for _, p := range r.over {
		if f, ok := p.(*form); ok {
			d.Page = f.ask.Name
		}
	}
	return d
}

// unitsOf is a system as answers name it.
func unitsOf(sys unit.System) string {
	if sys == unit.Metric {
		return presets.UnitsMetric
	}
	return presets.UnitsUS
}

// started reports whether there is anything worth keeping.
func (r *root) started() bool { return r.at >= r.first }

// take makes a draft the run's own, its answers offered.
func (r *root) take(d *last.Draft) {
	s := r.s
	s.answers, s.walkLine, s.finished = d.Answers, d.Walk, d.Finished
	s.sys = d.System(s.sys)
	if s.entered = maps.Clone(d.Entered); s.entered == nil {
		s.entered = map[string]time.Time{}
	}
	switch d.Check {
	case checkSkip, checkKeep, checkChange:
		s.check = d.Check
	}
	for _, p := range r.pages {
		if q, ok := p.(*question); ok && q.step.typed {
			q.field.set(d.Answers.Field(q.step.id))
			if q.step.id == d.At {
				q.field.set(d.Typed)
			}
		}
	}
	for _, f := range r.bench.forms {
		f.fill(d.Sheets[f.ask.Name], d.SystemOf(f.ask.Name, s.sys))
	}
}

// follow puts the answers that are no longer what they were into their questions.
func (r *root) follow(was presets.Answers) {
	for _, p := range r.pages {
		q, ok := p.(*question)
		if !ok || r.s.answers.Field(q.step.id) == was.Field(q.step.id) {
			continue
		}
		r.s.entered[q.step.id] = r.s.now()
		if q.step.typed {
			q.field.set(r.s.answers.Field(q.step.id))
		} else {
			q.seen = false // it points to its answer anew
		}
	}
}

// place is the page that a draft stood on, the first question where it is not known.
func (r *root) place(d *last.Draft) int {
	for i, p := range r.pages {
		switch p := p.(type) {
		case *question:
			if p.step.id == d.At && !p.skip() {
				return i
			}
		case *bench:
			if d.At == atBench {
				return i
			}
		}
	}
	return r.first
}

// reopen opens the page of the answer that a draft was left on.
func (r *root) reopen(d *last.Draft) {
	for _, f := range r.bench.forms {
		if f.ask.Name == d.Page && r.page() == page(r.bench) && r.bench.err == nil {
			open(f)(r)
		}
	}
}
