package tui

import (
	"boothset/calc"
	"boothset/presets/catalogue"
	"boothset/presets/edit"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// takeLine takes what was picked at the step that shows the line, and goes on that way.
func (s *session) takeLine(way string) move {
	s.walkLine = way != lineKeep
	switch way {
	case lineParts:
		s.answers = edit.WholeLine(s.reader, s.answers, s.sys)
		return open(&partsPage{s: s})
	case lineChange:
		if question.Whole(s.current()) {
			s.answers = edit.UsualLine(s.answers)
			if question.Whole(s.usual) {
				s.answers = s.answers.With(question.Line, question.Value{Text: question.None, ID: question.None})
			}
		}
	}
	return forward
}

// partsPage is the line as a list of its parts, over the step that shows it. What is changed
// is the answers' at once.
type partsPage struct {
	s     *session
	at    int    // of the inputs: a part, of a hose its length or its bore
	fault string // why something was not done; the next key clears it
}

func (p *partsPage) skip() bool             { return false }
func (p *partsPage) under(size) []string    { return nil }
func (p *partsPage) press(tea.KeyMsg) move  { p.fault = ""; return nil }
func (p *partsPage) enter() *question.Fault { p.fault = ""; return nil }

func (p *partsPage) heading() (left, right string) {
	return p.s.say(question.PartAir.Sentence()), p.s.unitsName()
}

// inputs is what can be moved of the line.
func (p *partsPage) inputs() []edit.Input { return p.s.lineInputs(p.s.current()) }

// lineInputs is what can be moved of a line that is given part by part.
func (s *session) lineInputs(a question.Answers) (of []edit.Input) {
	for _, in := range edit.Inputs(s.reader, a) {
		if in.Field == question.Line {
			of = append(of, in)
		}
	}
	return of
}

// part is the place of the marked part in the line.
func (p *partsPage) part() int { return p.inputs()[p.at].Part }

// The keys of the page, digits for one hand.
var (
	addKey    = digit("1")
	removeKey = digit("2")
	upKey     = digit("3")
	downKey   = digit("4")
)

func (p *partsPage) keys(size) []binding {
	return []binding{
		bindKey(takeKeys, "do-take", func(string) move { return p.accept }),
		bindKey(backKeys, "do-back", always(back)),
		bindKey(chooseKeys, "do-choose", p.walk),
		bindExplained(nudgeKeys, "do-swap", p.swap),
		bindExplained(addKey, "do-add", func(string) move { return open(p.kinds()) }),
		bindExplained(removeKey, "do-remove", func(string) move { p.remove(p.part()); return nil }),
		bindExplained(upKey, "do-up", func(string) move { p.moveTo(p.part(), p.part()-1); return nil }),
		bindExplained(downKey, "do-down", func(string) move { p.moveTo(p.part(), p.part()+1); return nil }),
		unitsKey(p.s), quitKey(),
	}
}

// walk marks what comes before or after.
func (p *partsPage) walk(pressed string) move {
	p.fault = ""
	by := 1
	if pressed == "up" || pressed == "k" {
		by = -1
	}
	p.at = min(max(p.at+by, 0), len(p.inputs())-1)
	return nil
}

// swap puts the entry of its kind that comes before or after in the marked one's place, or
// steps its quantity.
func (p *partsPage) swap(pressed string) move {
	by := 1
	if pressed == "left" {
		by = -1
	}
	a, ok := edit.Step(p.s.reader, p.s.current(), nil, p.inputs()[p.at], by, p.s.sys)
	p.changed(a, ok, p.s.say("field-end"))
	return nil
}

// changed takes a line that was changed, or says why not.
func (p *partsPage) changed(a question.Answers, ok bool, why string) {
	p.fault = ""
	if !ok {
		p.fault = why
		return
	}
	s := p.s
	s.answers = s.answers.With(question.Line, a.Get(question.Line)...)
	s.entered[question.Line.Name] = s.now()
	p.at = min(p.at, len(p.inputs())-1)
}

// add adds a part after the one at a place and marks it.
func (p *partsPage) add(after int, part question.Value) {
	a, ok := edit.AddPart(p.s.answers, after, part)
	why := p.noSuch()
	if p.count() == calc.MostParts {
		why = p.s.text("parts-full", calc.CountFigure("most", calc.MostParts))
	}
	p.changed(a, ok, why)
	if ok {
		p.mark(after + 1)
	}
}

func (p *partsPage) remove(at int) {
	a, ok := edit.RemovePart(p.s.answers, at)
	why := p.noSuch()
	if p.count() == 1 {
		why = p.s.say("parts-last")
	}
	p.changed(a, ok, why)
}

// replace puts another part in the place of one.
func (p *partsPage) replace(at int, part question.Value) {
	if part.Fault != nil {
		p.fault = part.Fault.Want()
		return
	}
	a, ok := edit.SwapPart(p.s.answers, at, part)
	p.changed(a, ok, p.noSuch())
}

// count is how many parts the line has, and noSuch says that there is no other.
func (p *partsPage) count() int { return len(p.s.current().Get(question.Line)) }

func (p *partsPage) noSuch() string {
	return p.s.text("plain-pick", calc.CountFigure("most", p.count()))
}

// moveTo moves a part to another place and marks it there.
func (p *partsPage) moveTo(from, to int) {
	a, ok := edit.MovePart(p.s.answers, from, to)
	p.changed(a, ok, p.s.say("field-end"))
	if ok {
		p.mark(to)
	}
}

// mark marks a part.
func (p *partsPage) mark(part int) {
	for i, in := range p.inputs() {
		if in.Part == part {
			p.at = i
			return
		}
	}
}

// accept takes the line and goes on to what comes after it, or says why not and stays.
func (p *partsPage) accept(r *root) {
	if fault := p.s.fault(question.Line, p.s.current()); fault != nil {
		p.fault = fault.Want()
		return
	}
	r.over = r.over[:len(r.over)-1]
	forward(r)
}

// kinds is the page that asks which kind of part to add.
func (p *partsPage) kinds() *kindsPage {
	k := &kindsPage{of: p}
	for _, kind := range question.PartKinds() {
		k.list.items = append(k.list.items, catalogue.Choice{ID: kind, Name: p.s.say(sayPartKind + kind)})
	}
	return k
}

// kindsPage asks which kind of part to add to a line.
type kindsPage struct {
	of   *partsPage
	list list
}

func (k *kindsPage) skip() bool                    { return false }
func (k *kindsPage) under(size) []string           { return nil }
func (k *kindsPage) press(tea.KeyMsg) move         { return nil }
func (k *kindsPage) enter() *question.Fault        { return nil }
func (k *kindsPage) heading() (left, right string) { return k.of.heading() }

func (k *kindsPage) keys(size) []binding {
	all := []binding{bindKey(takeKeys, "do-take", k.take), bindKey(listBack, "do-back", always(back))}
	return append(all, k.list.keys(k.take)...)
}

// take adds a part of the picked kind.
func (k *kindsPage) take(string) move {
	p := k.of
	p.add(p.part(), edit.NewPart(p.s.reader, p.s.current(), k.list.id(), p.s.sys))
	return back
}
