package tui

import (
	"slices"

	"boothset/presets/last"
	"boothset/presets/question"
	"boothset/presets/shop"
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
		jobs = append(jobs, shop.KeptJob(b.s.desk.where, &all[i], b.s.sys))
	}
	return jobs
}

// recall takes over the jobs of the shop that earlier runs left unsaid, but those of which
// something stands in the log by now.
func (s *session) recall(drafts []last.Draft) {
	seen := map[string]bool{}
	logs := map[string][]*shop.Record{}
	for _, d := range drafts {
		for i := range d.Jobs {
			job, ok := shop.JobKept(s.reader, &d.Jobs[i])
			if !ok || seen[job.ID] || d.Jobs[i].Shop != s.desk.where {
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
