package tui

import (
	"slices"

	"boothset/presets/answer"
	"boothset/presets/question"
)

// form is the page of one of the coat's own questions, reached from the answer: its fields
// one below the other and what they come to under them, worked out anew whenever a field is
// left. What was typed stays in it for as long as the assistant runs.
type form struct {
	boxes  // behind the last one lies the answer
	from   *bench
	asks   *question.Question
	answer answer.Answer
	err    error  // why there is no answer
	fault  string // why what was typed was not taken; the next key clears it
	scroll scroll
	drawn  drawing
}

// forms is the page of every question but the plan, in the order they come up at the bench.
func forms(s *session, from *bench) (all []*form) {
	for _, q := range question.Questions() {
		if q != question.Plan {
			all = append(all, newForm(s, from, q))
		}
	}
	return all
}

func newForm(s *session, from *bench, q *question.Question) *form {
	f := &form{boxes: boxesOf(s, q.Fields), from: from, asks: q}
	f.offer, f.note = f.offered, f.origin
	return f
}

// offered is what the answer that the page was opened from rests on for a box. Its hardener is
// that of its own coat alone.
func (f *form) offered(b *box) []question.Value {
	if b.Field == question.Hardener {
		for i := range f.all {
			if coat := &f.all[i]; coat.Field == question.Coat && coat.own() != "" && coat.own() != question.TextOf(f.from.offer(question.Coat)) {
				return nil
			}
		}
	}
	return f.from.offer(b.Field)
}

// origin says of what is offered that it was answered.
func (f *form) origin(b *box) string {
	if len(f.offered(b)) == 0 {
		return ""
	}
	return f.s.say("form-offered")
}

// answers is what counts, field by field.
func (f *form) answers() (a question.Answers) {
	for i := range f.all {
		a = a.With(f.all[i].Field, f.values(&f.all[i])...)
	}
	return a
}

// onAnswer reports whether no box is typed in.
func (f *form) onAnswer() bool { return f.at == len(f.all) }

// name is what the page is called in a word.
func (f *form) name() string { return f.s.say("page-" + f.asks.Name) }

// title is what the page answers.
func (f *form) title() string { return f.s.say("brief-" + f.asks.Name) }

func (f *form) skip() bool { return false }

func (f *form) terms() (page string, of *answer.Plan) { return f.asks.Name, &f.from.tried.Plan }

func (f *form) heading() (left, right string) { return f.title(), f.s.unitsName() }

// enter arrives at the first field in the way of an answer, or at the answer.
func (f *form) enter() *question.Fault {
	f.fault = ""
	f.scroll.top = 0
	f.solve()
	f.at = len(f.all)
	if i := f.blamed(); i >= 0 {
		f.at = i
	}
	return nil
}

// solve asks anew. Bare numbers keep the system they were typed in: it follows the
// assistant's only while nothing is typed.
func (f *form) solve() {
	if len(f.own()) == 0 {
		f.read = f.s.sys
	}
	all := f.answers()
	f.answer, f.err = answer.Ask(f.s.reader, f.asks, all, f.read)
	typed := f.s.reader.ReadAll(f.asks, f.own(), f.read)
	if unused := f.s.reader.Unused(f.asks, typed, all, f.read); f.err == nil && unused != nil {
		f.err = unused
	}
}

// blamed is the box that the fault lies in, -1 where there is none.
func (f *form) blamed() int {
	fault := faultOf(f.err)
	if fault == nil {
		return -1
	}
	return slices.IndexFunc(f.all, func(b box) bool { return b.Name == fault.Field })
}

// leave takes what was typed, or keeps the cursor where it will not do. What the answer
// rests on too is shown with its unit, as it is there.
func (f *form) leave() bool {
	if f.onAnswer() {
		return true
	}
	b := &f.all[f.at]
	if b.choices == nil && b.own() != "" && question.Plan.Has(b.Field) {
		_, text := f.s.completed(b.Field, b.own(), f.read)
		b.typed.set(text)
	}
	f.solve()
	return b.own() == "" || f.blamed() != f.at
}

// next goes on, and behind the last field to the one that is in the way of an answer.
func (f *form) next(string) move {
	switch {
	case f.onAnswer():
		f.at = 0
	case !f.leave():
	case f.at < len(f.all)-1:
		f.at++
	case f.blamed() >= 0:
		f.at = f.blamed()
	default:
		f.toAnswer("")
	}
	return nil
}

// last goes one field back, from a faulty one too.
func (f *form) last(string) move {
	f.leave()
	f.at = max(f.at-1, 0)
	return nil
}

func (f *form) toAnswer(string) move {
	if f.leave() {
		f.at = len(f.all)
		f.scroll.top = 0
	}
	return nil
}
