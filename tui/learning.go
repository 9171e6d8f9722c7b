package tui

import (
	"slices"
	"time"

	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// learning works out what readings say of a job's line, which takes too long for a key: behind
// the keys on the screen, at once in lines of text.
type learning struct {
	of      learntOf      // what is worked out
	answer  *answer.Prove // nil where nothing could be worked out
	wrong   string        // why
	running bool
}

// learntOf is all that it depends on; the zero value is of no job.
type learntOf struct {
	job     int // the answer's id
	changes int // of the shop's folder
	own     int // readings of this run
	typed   string
}

// learnt is what was worked out.
type learnt struct {
	by     *learning
	of     learntOf
	answer *answer.Prove
	wrong  string
}

// start works out what readings say, unless it is known or something else still runs.
func (l *learning) start(s *session, of learntOf, j *job, typed []question.Value) tea.Cmd {
	if l.running || l.of == of {
		return nil
	}
	q, faults := s.learning(j, typed)
	if len(faults) > 0 {
		l.hear(learnt{l, of, nil, faults[0].Want()})
		return nil
	}
	all, reader, sys := s.counting(j.answers), s.reader, s.sys
	solve := func() learnt {
		found, err := learn.Solve(&q)
		if err == nil {
			return learnt{l, of, &answer.Prove{Learn: answer.Learn{Request: &q, Found: found}}, ""}
		}
		if fault := faultOf(reader.Refused(err, all, sys)); fault != nil {
			return learnt{l, of, nil, fault.Want()}
		}
		return learnt{l, of, nil, err.Error()}
	}
	if s.atOnce {
		l.hear(solve())
		return nil
	}
	l.running = true
	return func() tea.Msg { return solve() }
}

// hear takes what was worked out.
func (l *learning) hear(n learnt) {
	l.of, l.answer, l.wrong, l.running = n.of, n.answer, n.wrong, false
}

// learning is the request of what readings say of a job's line: those that are kept or were taken
// in this run, then those that were typed.
func (s *session) learning(j *job, typed []question.Value) (learn.Request, []*question.Fault) {
	described := j.Request.AsDescribed()
	q, faults := s.reader.LearnOf(described, typed, s.sys)
	before := s.kept().Request(s.reader, described)
	q.Readings, q.Others, q.Elsewhere = append(before.Readings, q.Readings...), before.Others, before.Elsewhere
	return q, faults
}

// readings is those of the booth: kept in the shop's folder, and taken in this run where they are
// not among those yet.
func (s *session) readings() []*shop.GaugeReading {
	d := &s.desk
	all := slices.Clone(d.readings)
	for i := range s.ownReadings {
		own := &s.ownReadings[i]
		kept := slices.ContainsFunc(d.readings, func(x *shop.GaugeReading) bool {
			return x.At.Equal(own.At.Truncate(time.Second)) && x.Gun == own.Gun && x.Text == own.Text
		})
		if own.Booth == d.boothID() && !kept {
			all = append(all, own)
		}
	}
	return all
}

// kept is the readings that may tell of a job's line.
func (s *session) kept() *shop.Kept {
	return &shop.Kept{Own: s.readings(), Away: s.desk.away, Gun: s.otherGun, Plan: s.planElsewhere}
}

// otherGun finds a gun that the line was read with, as the job would have it.
func (s *session) otherGun(id string) *learn.OtherGun {
	if q := describedWith(s.reader, s.counting(s.answers), id); q != nil {
		return &learn.OtherGun{Gun: q.Gun, Gauge: q.Gauge}
	}
	return nil
}

// planElsewhere is any job in another booth with a gun, nil where either is not there.
func (s *session) planElsewhere(booth, gun string) *calc.Request {
	b := s.desk.boothOf(booth)
	if b == nil {
		return nil
	}
	r := s.desk.holds.reader.Over(b.Answers)
	of := question.Answers{}.With(question.Gun, question.Value{Text: gun, ID: gun})
	return describedWith(r, r.AnyJob().Or(s.ofGun(of)), gun)
}

// describedWith is answers with a gun as a job, its line as it is described; nil where the reader
// knows none of the gun's id.
func describedWith(r *question.Reader, a question.Answers, gun string) *calc.Request {
	v := r.Read(question.Gun, gun, unit.Named)
	q, _ := r.Described(a.With(question.Gun, v), unit.US)
	if v.Fault != nil || q.Gun.ID != gun {
		return nil
	}
	return q
}

// learn works out what is not known yet: what the readings that count left of the line, or of the
// page that proves the answer where it is open.
func (r *root) learn() tea.Cmd {
	b := r.bench
	if cmd := r.s.lines.start(); cmd != nil {
		return cmd
	}
	if r.pages[r.at] != page(b) || b.err != nil || b.tried.Stopped() || !slices.Contains(r.over, page(b.prove)) {
		return nil
	}
	cmd := b.prove.start()
	b.prove.follow()
	return cmd
}

// hearLearnt takes what was worked out behind the keys.
func (r *root) hearLearnt(n learnt) {
	n.by.hear(n)
	r.bench.prove.follow()
}
