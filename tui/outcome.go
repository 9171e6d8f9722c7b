package tui

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/last"
	"boothset/presets/question"
	"boothset/presets/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// unsaid is the jobs in the shop's booths of which nobody has said yet how they came out.
type unsaid struct {
	own    []shop.Record // of this run, those before the one that the answer is of
	others []shop.Record // that earlier runs left, the latest first
	now    shop.Record   // that of the answer, without an id where there is none
	of     int           // the answer that now is of, by its id
	// said: how that came out was said, as it was answered then. What is said from then on is said
	// of it later.
	said   bool
	saidOf question.Answers
}

// jobNow is the job of the answer in the booth, nil where it is none that can be sprayed.
func (b *bench) jobNow() *shop.Record {
	s := b.s
	d, u := &s.desk, &s.unsaid
	if d.booth == nil || b.err != nil || b.kept.Setup == nil || b.kept.Stopped() || b.kept.Setup.Short.Is {
		return nil
	}
	if u.of != b.kept.id {
		id, at := u.now.ID, u.now.At
		if id == "" {
			made, err := shop.NewID()
			if err != nil {
				return nil
			}
			id, at = made, s.now()
		}
		asked := s.counting(b.kept.answers)
		u.now = shop.JobOf(d.booth.ID, s.reader, asked, b.kept.Request, b.kept.Setup, d.holds.bands, s.sys)
		u.now.ID, u.now.At, u.of = id, at, b.kept.id
	}
	return &u.now
}

// setAside begins another job: what was not said of the one of the answer is asked later.
func (b *bench) setAside() {
	u := &b.s.unsaid
	if job := b.jobNow(); job != nil && !u.said && u.now.ID != "" {
		u.own = append(u.own, *job)
		u.own = u.own[max(len(u.own)-mostUnsaid, 0):]
	}
	u.now, u.of, u.said = shop.Record{}, 0, false
}

// arrive begins another job where the one of which it was said how it came out was answered
// otherwise.
func (b *bench) arrive() {
	if u := &b.s.unsaid; u.said && !sameAnswers(u.saidOf, b.s.answers) {
		b.setAside()
	}
}

// mostUnsaid is how many jobs are kept that nobody has said anything of.
const mostUnsaid = 8

// unsaidJobs is the jobs that are asked for at the next start.
func (b *bench) unsaidJobs(atAnswer bool) (jobs []last.Job) {
	u := &b.s.unsaid
	all := u.own
	if atAnswer && !u.said {
		if job := b.jobNow(); job != nil {
			all = append(slices.Clone(all), *job)
		}
	}
	for i := range all {
		jobs = append(jobs, shop.KeptJob(&all[i], b.s.sys))
	}
	return jobs
}

// recall takes over the jobs that earlier runs left unsaid, but those of which something stands
// in the log by now.
func (s *session) recall(drafts []last.Draft) {
	seen := map[string]bool{}
	logs := map[string][]*shop.Record{}
	for _, d := range drafts {
		for i := range d.Jobs {
			job, ok := shop.JobKept(s.reader, &d.Jobs[i])
			if !ok || seen[job.ID] {
				continue
			}
			seen[job.ID] = true
			if _, read := logs[job.Booth]; !read {
				logs[job.Booth] = logOf(s.desk.where, job.Booth)
			}
			if !shop.Logged(logs[job.Booth], job.ID) {
				s.unsaid.others = append(s.unsaid.others, job)
			}
		}
	}
	if len(s.unsaid.others) > 0 {
		s.openDesk() // its names are told
	}
	slices.SortFunc(s.unsaid.others, func(a, b shop.Record) int { return b.At.Compare(a.At) })
}

func logOf(where, booth string) []*shop.Record {
	f, err := shop.At(where)
	if err != nil {
		return nil
	}
	defer f.Close()
	log, _ := f.Log(booth)
	return log
}

// forget takes a job out of those that nobody has said anything of.
func (s *session) forget(id string) {
	gone := func(r shop.Record) bool { return r.ID == id }
	u := &s.unsaid
	u.own, u.others = slices.DeleteFunc(u.own, gone), slices.DeleteFunc(u.others, gone)
	if u.now.ID == id {
		u.said, u.saidOf = true, s.answers
	}
}

// unask takes a job out of what earlier runs left. Where that fails it is asked once more.
func (s *session) unask(id string) {
	if s.keep != nil {
		_ = last.Said(s.keep.file, id)
	}
}

// goOnWith makes the job that a run was left at the one of the answer, where nobody has said
// anything of it.
func (s *session) goOnWith(run *lastRun) {
	u := &s.unsaid
	if n := len(run.Jobs); n > 0 && run.At == atBench {
		id := run.Jobs[n-1].ID
		if i := slices.IndexFunc(u.own, func(r shop.Record) bool { return r.ID == id }); i >= 0 {
			u.now, u.of, u.said = u.own[i], 0, false
			u.own = slices.Delete(u.own, i, i+1)
		}
	}
}

// The outcomes' page, as its sentences are called, and what may be picked beside an outcome.
const (
	outcomeID  = "outcome"
	neverDone  = "/never"
	askedLater = "/later"
)

// outcomePage is the page over the answer that asks how the job came out.
func outcomePage(s *session, from *bench) *pickPage {
	p := s.askOutcome(from.jobNow, func(r *root) { r.over = nil })
	p.from, p.tab = from, p
	return p
}

// leftPage is the page that asks how a job came out that an earlier run left.
func leftPage(s *session) *pickPage {
	left := func() *shop.Record {
		if len(s.unsaid.others) == 0 {
			return nil
		}
		return &s.unsaid.others[0]
	}
	var p *pickPage
	after := func(r *root) {
		r.over = nil
		if left() != nil { // the next of them
			p.enter()
			return
		}
		forward(r)
	}
	p = s.askOutcome(left, after)
	p.hidden = func() bool { return left() == nil }
	later := func(r *root) {
		u := &s.unsaid
		u.own, u.others = append(u.others, u.own...), nil // they are asked at the next start
		u.own = u.own[:min(len(u.own), mostUnsaid)]
		forward(r)
	}
	never := func(r *root) {
		id := left().ID
		s.forget(id)
		r.disk(func() tea.Msg { s.unask(id); return nil })
		after(r)
	}
	fill, take := p.fill, p.take
	p.fill = func() {
		fill()
		p.list.items = append(p.list.items, s.choice(neverDone, "said-never"), s.choice(askedLater, "said-later"))
	}
	p.take = func(picked string) move {
		switch picked {
		case neverDone:
			return never
		case askedLater:
			return later
		}
		return take(picked)
	}
	p.more = []binding{bindKey(digit("0"), "do-never", always(never))}
	p.backTo = later
	return p
}

// askOutcome asks how a job came out, then what had to be done, and who sprayed where the shop
// keeps painters; what is said is kept in the log.
func (s *session) askOutcome(of func() *shop.Record, after move) *pickPage {
	p := &pickPage{s: s, id: outcomeID, title: "said-title", words: outcomeID}
	p.over = func(w int) []string {
		if job := of(); job != nil {
			return wrap(s.jobText(job), w)
		}
		return wrap(s.say("said-none"), w)
	}
	p.fill = func() {
		p.list = list{}
		for _, o := range shop.Outcomes() {
			p.list.items = append(p.list.items, choiceOf(string(o), o.In(s.words)))
		}
	}
	p.take = func(outcome string) move {
		job := of()
		if job == nil {
			return nil
		}
		said := *job
		if s.unsaid.said && job == &s.unsaid.now {
			said = shop.LaterOf(job)
			said.At = s.now()
		}
		said.Outcome = []shop.Outcome{shop.Outcome(outcome)}
		return open(s.askThen(p, said, job.ID, after))
	}
	return p
}

// askThen asks what had to be done about what was seen.
func (s *session) askThen(from *pickPage, said shop.Record, id string, after move) *pickPage {
	p := &pickPage{overAnswer: from.overAnswer, s: s, id: "then", title: "said-title", words: outcomeID}
	p.over = func(w int) []string { return wrap(said.Outcome[0].In(s.words), w) }
	p.fill = func() {
		p.list = list{}
		for _, t := range shop.Thens() {
			p.list.items = append(p.list.items, choiceOf(string(t), t.In(s.words)))
		}
	}
	p.take = func(then string) move {
		said.Then = shop.Then(then)
		if s.painterChoices() == nil {
			return s.keepSaid(said, id, after)
		}
		return open(s.askPainter(p, said, id, after))
	}
	return p
}

// askPainter asks who sprayed.
func (s *session) askPainter(from *pickPage, said shop.Record, id string, after move) *pickPage {
	p := &pickPage{overAnswer: from.overAnswer, s: s, id: "painter", title: "said-title"}
	p.fill = func() {
		p.list = list{items: s.painterChoices()}
		p.list.point(s.desk.painter)
	}
	p.take = func(who string) move {
		if s.desk.painter = who; who != pickOther {
			said.Painter = who
		}
		return s.keepSaid(said, id, after)
	}
	return p
}

// keepSaid keeps in the log what was said of a job.
func (s *session) keepSaid(said shop.Record, id string, after move) move {
	getenv, sys := s.getenv, s.sys
	told := said.Outcome[0].In(s.words)
	if said.Then != shop.Nothing {
		told += ", " + said.Then.In(s.words)
	}
	told = s.text("said-kept", calc.TextFigure("outcome", told))
	return func(r *root) {
		s.forget(id)
		after(r)
		r.toFolder("", func(f *shop.Folder) (string, error) {
			m, err := shop.MachineOf(getenv)
			if err == nil {
				_, err = f.Keep(m, said, sys)
			}
			if err == nil {
				s.unask(id)
			}
			return told, err
		})
	}
}

// jobText is which job it is: when it was, the coat with its stage, the gun and the booth, and
// what it was set to.
func (s *session) jobText(job *shop.Record) string {
	var parts []string
	for _, part := range []struct {
		of *question.Field
		id string
	}{{question.Coat, job.Coat}, {question.Gun, job.Gun}} {
		parts = append(parts, plain(s.reader.Called(part.of, question.Value{ID: part.id, Text: part.id})))
	}
	booth := s.desk.nameOf(job.Booth)
	if booth == "" {
		booth = job.Booth
	}
	f := []calc.Figure{
		calc.TextFigure("age", s.since(job.At)), calc.TextFigure("job", strings.Join(parts, ", ")), calc.TextFigure("booth", plain(booth)),
		calc.TextFigure("wall", unit.Pressure.Text(s.sys, float64(job.Answered.Wall), unit.Usual)),
	}
	return s.text("said-of", f...)
}
