package tui

import (
	"slices"

	"boothset/calc"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// sheetPage asks on one page for what the product's sheet says of this job. All of it may be
// left empty and the page passed by.
type sheetPage struct {
	boxes
	step  *step
	fault string // why what was typed was not taken; the next key clears it
}

func newSheetPage(s *session, st *step) *sheetPage {
	p := &sheetPage{boxes: boxesOf(s, sheetRows()), step: st}
	p.offer = func(*box) []question.Value { return nil }
	return p
}

// sheetRows is what the assistant asks of the product's sheet.
func sheetRows() []question.Row {
	return slices.DeleteFunc(slices.Clone(question.Plan.Fields), func(row question.Row) bool { return row.Part != question.PartSheet })
}

func (p *sheetPage) skip() bool                    { return !p.s.asked(p.step) }
func (p *sheetPage) heading() (left, right string) { return p.s.stepHeading(p.step) }
func (p *sheetPage) under(window size) []string    { return p.s.trailUnder(window) }
func (p *sheetPage) of() *step                     { return p.step }

// enter reads bare numbers in the assistant's units.
func (p *sheetPage) enter() *question.Fault {
	p.fault, p.read = "", p.s.sys
	return nil
}

func (p *sheetPage) place(field string) int {
	return slices.IndexFunc(p.all, func(b box) bool { return b.Name == field })
}

func (p *sheetPage) asks(field string) bool { return p.place(field) >= 0 }

func (p *sheetPage) refuse(f *question.Fault) {
	p.at = p.place(f.Field)
	p.fault = f.Called(p.label(&p.all[p.at]))
}

func (p *sheetPage) draft() (at, typed string) {
	b := &p.all[p.at]
	return b.Name, b.typed.String()
}

func (p *sheetPage) resume(a question.Answers, at, typed string) {
	p.fill(question.Texts(a.Texts()), p.s.sys)
	if place := p.place(at); place >= 0 {
		p.at = place
		p.all[place].typed.set(typed)
	}
}

func (p *sheetPage) follow(_, now question.Answers) { p.fill(question.Texts(now.Texts()), p.s.sys) }

// typed reports whether the marked field holds something that was not taken.
func (p *sheetPage) typed() bool {
	b := &p.all[p.at]
	return b.own() != p.s.answers.Text(b.Field)
}

func (p *sheetPage) keys(size) []binding {
	takes := bindKey(takeKeys, "do-take", p.accept)
	if !p.typed() {
		takes.does = "do-go-on"
	}
	all := []binding{takes, bindKey(typedBack, "do-back", always(back)), bindKey(stepKeys, "do-choose", p.walk)}
	if p.all[p.at].own() != "" {
		all = append(all, bindKey(clearKeys, "do-clear", func(string) move { p.fault = ""; p.all[p.at].clear(); return nil }))
	}
	return all
}

func (p *sheetPage) press(k tea.KeyMsg) move {
	p.fault = ""
	if b := &p.all[p.at]; !p.s.typeInto(&b.typed, b.Field, k) {
		p.fault = p.s.say("field-runes")
	}
	return nil
}

// walk takes the marked field, where it will do, and marks the one before or after it.
func (p *sheetPage) walk(pressed string) move {
	p.fault = ""
	by := 1
	if pressed == "up" {
		by = -1
	}
	p.take(p.at)
	p.at = min(max(p.at+by, 0), len(p.all)-1)
	return nil
}

// accept takes the marked field and goes to the next where it was typed in, else goes on with
// the job.
func (p *sheetPage) accept(string) move {
	p.fault = ""
	typed := p.typed()
	if fault := p.take(p.at); fault != nil {
		p.refuse(fault)
		return nil
	}
	if typed && p.at+1 < len(p.all) {
		p.at++
		return nil
	}
	for i := range p.all {
		if fault := p.take(i); fault != nil {
			p.refuse(fault)
			return nil
		}
	}
	return forward
}

// take takes what a field says, or gives what is wrong with it.
func (p *sheetPage) take(at int) *question.Fault {
	s, b := p.s, &p.all[at]
	values, text := s.completed(b.Field, b.own(), p.read)
	a := s.answers.Changed(b.Field, values...)
	if len(values) > 0 {
		if fault := s.fault(b.Field, a); fault != nil {
			return fault
		}
		b.typed.set(text)
	}
	if text != s.answers.Text(b.Field) {
		s.answers = a
		s.entered[b.Name] = s.now()
	}
	return nil
}

// body is the question and the fields, what the marked one takes, and what was wrong with it.
func (p *sheetPage) body(room size) []string {
	s, w := p.s, room.w-2*len(margin)
	rows := each(wrap(s.sentence(p.step, question.SayAsk), w), s.theme.Question.Render)
	usage := each(wrap(p.usage(&p.all[p.at]), w), s.theme.Note.Render)
	if p.fault != "" {
		usage = each(hang("! ", p.fault, w), s.theme.level[calc.Warn].Render)
	}
	free := room.h - len(rows) - len(usage)
	if why := wrap(s.sentence(p.step, question.SayWhy), w); free-len(why)-2 >= len(p.all) {
		rows = append(append(rows, why...), "")
		usage = append([]string{""}, usage...)
		free -= len(why) + 2
	}
	rows = append(append(rows, p.list(size{w, max(free, 1)})...), usage...)
	return each(rows[:min(len(rows), room.h)], indented)
}
