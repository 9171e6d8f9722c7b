package tui

import (
	"slices"

	"boothset/calc"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// usualOf is what is usual for a field: the shop's, else, of one that must be answered, where
// counting begins, which nobody has read.
func (s *session) usualOf(f *question.Field) []question.Value {
	if all := s.usualWith(s.answers).Get(f); len(all) > 0 {
		return all
	}
	if begin := f.Begin[s.sys]; !f.Optional() && begin != "" {
		return unread(s.reader.ReadText(f, begin, s.sys))
	}
	return nil
}

// offered is what Enter takes for a field where nothing is typed: its answer, else what is
// usual.
func (s *session) offered(f *question.Field) []question.Value {
	if all := s.answers.Get(f); len(all) > 0 {
		return all
	}
	return s.usualOf(f)
}

// unread is values as nobody has read them.
func unread(values []question.Value) []question.Value {
	values = slices.Clone(values)
	for i := range values {
		values[i].Assumed = true
	}
	return values
}

// take takes values as the answer to a field, or gives what is wrong with them.
func (s *session) take(f *question.Field, values []question.Value) *question.Fault {
	a := s.answers.Changed(f, values...)
	if len(values) > 0 || !f.Optional() {
		if fault := s.fault(f, a); fault != nil {
			return fault
		}
	}
	if len(values) > 0 || s.answers.Has(f) {
		s.answers = a
		s.entered[f.Name] = s.now()
	}
	return nil
}

// takeUnsure takes for a field what Enter would, as something that nobody has read.
func (s *session) takeUnsure(f *question.Field) *question.Fault {
	return s.take(f, unread(s.offered(f)))
}

// readNow is answers with those to some fields, as they stand, read now.
func (s *session) readNow(a question.Answers, fields ...*question.Field) question.Answers {
	for _, f := range fields {
		values := slices.Clone(a.Get(f))
		for i := range values {
			values[i].Assumed = false
		}
		a = a.With(f, values...)
		s.entered[f.Name] = s.now()
	}
	return a
}

// dated is answers with the day's readings that were taken on another day marked as assumed.
// One that is only tried is as good as read.
func (s *session) dated(a question.Answers) question.Answers {
	for _, f := range question.Readings {
		if a.Has(f) && a.Text(f) == s.answers.Text(f) && !s.today(f) {
			a = a.With(f, unread(a.Get(f))...)
		}
	}
	return a
}

// today reports whether the answer to a field was taken on this day.
func (s *session) today(f *question.Field) bool {
	now := s.now()
	y, m, d := now.Date()
	atY, atM, atD := s.entered[f.Name].In(now.Location()).Date()
	return y == atY && m == atM && d == atD
}

// taken says how an answer came to be: how long ago, or that it is assumed.
func (s *session) taken(f *question.Field, text string) string {
	if age := s.age(f, text); age != "" {
		return age
	}
	if v, _ := s.answers.One(f); v.Assumed {
		return s.say("taken-assumed")
	}
	return ""
}

// readBindings is the key that takes the day's readings as read now, where they are assumed.
func (b *bench) readBindings() []binding {
	if !b.kept.Request.Day.Assumed {
		return nil
	}
	return []binding{bindExplained(readKeys, "do-read", b.asRead)}
}

// asRead takes the day's readings as they stand as read now; what is tried stays tried.
func (b *bench) asRead(string) move {
	s, changed := b.s, b.changed()
	tried := s.readNow(b.tried.answers, question.Readings...)
	s.answers = s.readNow(s.answers, question.Readings...)
	b.rework(tried, changed)
	return nil
}

// unsurePage says how a field is measured, and what is taken meanwhile.
type unsurePage struct {
	s     *session
	field *question.Field
	take  func() move
}

func (p *unsurePage) enter() *question.Fault    { return nil }
func (p *unsurePage) skip() bool                { return false }
func (p *unsurePage) heading() (string, string) { return p.s.say("unsure-title"), p.s.unitsName() }
func (p *unsurePage) under(size) []string       { return nil }
func (p *unsurePage) press(tea.KeyMsg) move     { return nil }

func (p *unsurePage) keys(size) []binding {
	take := func(r *root) {
		r.over = r.over[:len(r.over)-1]
		if m := p.take(); m != nil {
			m(r)
		}
	}
	return []binding{bindKey(takeKeys, "do-meanwhile", func(string) move { return take }), bindKey(backKeys, "do-back", always(back))}
}

func (p *unsurePage) body(room size) []string {
	s, w := p.s, room.w-2*len(margin)
	rows := append([]string{""}, each(wrap(s.say(p.field.Sentence(question.SayAsk)), w), s.theme.Question.Render)...)
	rows = append(append(rows, ""), wrap(s.say(p.field.Sentence(question.SayHow)), w)...)
	rows = append(append(rows, ""), wrap(s.meanwhile(p.field), w)...)
	return each(rows[:min(len(rows), room.h)], indented)
}

// meanwhile is what is taken for a field that is not known.
func (s *session) meanwhile(f *question.Field) string {
	values := s.offered(f)
	if len(values) == 0 {
		return s.say(f.Sentence(question.SayEmpty))
	}
	return s.text("unsure-meanwhile", calc.TextFigure("value", s.reader.Shown(f, values, s.sys)))
}
