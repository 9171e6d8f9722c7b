package tui

import (
	"slices"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// provePage proves the answer at the gun: the gauges are read one pair after another, then what is
// seen there; each is judged, and the settings are worked anew from the gauges. Behind the last box
// lies what it comes to. What was typed stays for as long as the assistant runs, or until it counts.
type provePage struct {
	overAnswer
	boxes
	learning
	groups   []proveGroup // in the order of their boxes
	grouped  grouped      // what they were last made after
	readings []question.Value
	seen     question.Answers
	left     *question.Field // what was seen in the box that was left last, nil where it was a gauge
	fault    string          // why what was typed was not taken; the next key clears it
	scroll   scroll
}

// grouped is all that the groups depend on.
type grouped struct {
	of   learntOf
	fell bool // the gun's gauge fell, and what falls is asked for
}

func newProvePage(s *session, from *bench) *provePage {
	p := &provePage{}
	p.s, p.from, p.tab = s, from, p
	p.offer = func(*box) []question.Value { return nil }
	p.note = p.expected
	return p
}

// enter arrives at the first gauge that is not read yet.
func (p *provePage) enter() *question.Fault {
	p.fault, p.scroll, p.read = "", scroll{}, p.s.sys
	p.take()
	p.toEmpty()
	return nil
}

// take takes what is typed, and judges it by what was worked out.
func (p *provePage) take() {
	p.readings, p.seen = p.typed()
	if p.answer == nil {
		return
	}
	s, plan := p.s, p.from.tried.Request.AsDescribed()
	q, _ := s.reader.LearnOf(plan, p.readings, s.sys)
	seen, _ := s.reader.Seen(p.seen.Or(p.coating()), q.Readings, s.sys) // its faults are those of what is not typed yet
	p.answer.See(seen, q.Readings)
	p.answer.Before = shop.LastSeen(s.reader, plan, s.readings(), s.sys)
}

// coating is what the film is worked from: as its own page has it, where it was used.
func (p *provePage) coating() question.Answers {
	for _, f := range p.from.forms {
		if f.asks == question.Film && len(f.own()) > 0 && f.err == nil {
			return f.answers().With(question.Wet)
		}
	}
	return p.s.counting(p.from.tried.answers)
}

// toEmpty goes to the first box that nothing is typed in, behind the last where there is none.
func (p *provePage) toEmpty() {
	if p.at = slices.IndexFunc(p.all, func(b box) bool { return b.own() == "" }); p.at < 0 {
		p.at = len(p.all)
	}
}

func (p *provePage) skip() bool             { return false }
func (p *provePage) heading() (_, _ string) { return p.s.say("prove-title"), p.s.unitsName() }

func (p *provePage) terms() (page string, of *answer.Plan) { return "prove", p.plan() }

// onAnswer reports whether no box is typed in.
func (p *provePage) onAnswer() bool { return p.at >= len(p.all) }

// start works out what was taken, where that is not known.
func (p *provePage) start() tea.Cmd {
	of := learntOf{job: p.from.tried.id, changes: p.s.desk.changes, own: len(p.s.ownReadings)}
	for _, v := range p.readings {
		of.typed += v.Seen.Text(unit.US) + "\n"
	}
	return p.learning.start(p.s, of, &p.from.tried, p.readings)
}

// follow judges by what was worked out, and asks for what is to be read and seen as that has it.
func (p *provePage) follow() {
	if p.answer == nil {
		return
	}
	if p.grouped.of != p.of {
		p.take()
	}
	fell := p.answer.Judged.Fall != nil && p.answer.Judged.Fall.Is
	if now := (grouped{p.of, fell}); p.grouped != now {
		first, onAnswer := p.all == nil, p.onAnswer() && len(p.all) > 0
		p.grouped, p.scroll = now, scroll{}
		p.ask()
		switch {
		case onAnswer:
			p.at = len(p.all)
		case first:
			p.toEmpty()
		}
	}
}

// leave takes what was typed in the marked box; false where it will not do.
func (p *provePage) leave() bool {
	if p.onAnswer() {
		return true
	}
	b := &p.all[p.at]
	if g, _ := p.group(b); g != nil {
		p.left = g.sees
	}
	if v := p.values(b); len(v) > 0 {
		if fault := p.s.reader.Check(b.Field, v, p.read); fault != nil {
			p.fault = fault.Called(p.label(b))
			return false
		}
		if b.choices == nil && b.Of[0] != unit.Turns { // which are the same in any units
			_, text := p.s.completed(b.Field, b.own(), p.read)
			b.typed.set(text)
		}
	}
	p.take()
	return true
}

func (p *provePage) next(string) move {
	if p.fault = ""; p.leave() {
		p.at = min(p.at+1, len(p.all))
		p.scroll = scroll{}
	}
	return nil
}

// last goes one gauge back, from a faulty one too.
func (p *provePage) last(string) move {
	p.leave()
	p.fault = ""
	p.at = max(p.at-1, 0)
	return nil
}

func (p *provePage) toAnswer(string) move {
	if p.fault = ""; p.leave() {
		p.at, p.scroll = len(p.all), scroll{}
	}
	return nil
}

// counts reports whether there is anything to count.
func (p *provePage) counts() bool { return len(p.readings) > 0 || !p.seen.Empty() }

// away goes back to the answer. What is typed stays, and counts on the page alone.
func (p *provePage) away(string) move {
	p.leave()
	p.fault = ""
	return back
}

func (p *provePage) changeUnits(pressed string) move {
	p.from.changeUnits(pressed)
	p.read = p.s.sys
	p.take()
	return nil
}

// choose picks the next choice of a box, or the one before.
func (p *provePage) choose(pressed string) move {
	b := &p.all[p.at]
	b.picked = neighbour(pressed, b.picked, len(b.choices))
	p.take()
	return nil
}

// trace goes to what makes the pattern that was seen.
func (p *provePage) trace(string) move {
	t := p.from.trouble
	t.begin(p.answer.Trouble.Request.Signs[0])
	return open(t)
}

// count takes the readings as such that count from now on, and what was seen: for this run, and in
// a booth of the shop's they are kept there.
func (p *provePage) count(string) move {
	s, plan := p.s, p.from.tried.Request.AsDescribed()
	booth := s.desk.boothID()
	fresh := shop.ReadingsOf(plan, booth, plan.Gun.ID, p.readings, s.now(), unit.US)
	counts, kept, n := "prove-counts", "prove-kept", calc.CountFigure("readings", len(fresh))
	if len(fresh) == 0 {
		counts, kept = "prove-seen-stays", "prove-seen-kept"
	}
	fresh = append(fresh, shop.SeenOf(s.reader, plan, booth, p.seen, s.now(), p.read)...)
	s.ownReadings = append(s.ownReadings, fresh...)
	p.groups, p.all, p.readings, p.seen, p.at, p.grouped, p.left = nil, nil, nil, question.Answers{}, 0, grouped{}, nil
	told := s.text(counts, n)
	getenv := s.getenv
	return func(r *root) {
		back(r)
		r.bench.rework(r.bench.tried.answers, r.bench.changed())
		if booth == "" {
			r.bench.notice = told
			return
		}
		r.toFolder("", func(f *shop.Folder) (string, error) {
			m, err := shop.MachineOf(getenv)
			if err != nil {
				return "", err
			}
			return s.text(kept, n, calc.TextFigure("booth", plain(s.desk.nameOf(booth)))), f.KeepReadings(m, booth, fresh)
		})
	}
}

func (p *provePage) keys(room size) []binding {
	if p.onAnswer() {
		var all []binding
		if p.counts() && !p.running {
			all = append(all, bindExplained(takeKeys, "do-count", p.count))
		}
		if p.answer != nil && p.answer.Trouble != nil {
			all = append(all, bindExplained(digit(troubleKey), "do-pattern", p.trace))
		}
		all = append(all, bindExplained(backKeys, "do-back-answer", p.away))
		if len(p.all) > 0 {
			all = append(all, bindKey(lastKeys, "do-last-field", p.last))
		}
		all = append(all, bindExplained(unitsKeys, "do-units", p.changeUnits), quitKey())
		rows, rest := p.answerRows(room)
		return append(all, p.scroll.keys(len(rows), rest)...)
	}
	all := []binding{bindExplained(nextKeys, "do-next", p.next), bindExplained(escKeys, "do-back-answer", p.away), bindExplained(answerKeys, "do-answer", p.toAnswer)}
	if p.at > 0 {
		all = append(all, bindExplained(beforeKeys, "do-before", p.last))
	}
	b := &p.all[p.at]
	if b.choices != nil {
		all = append(all, bindKey(nudgeKeys, "do-choose", p.choose))
	}
	if b.own() != "" {
		all = append(all, bindKey(clearKeys, "do-empty", func(string) move { b.clear(); return nil }))
	}
	return all
}

func (p *provePage) press(k tea.KeyMsg) move {
	if p.fault = ""; p.onAnswer() {
		return nil
	}
	if b := &p.all[p.at]; b.choices == nil && !p.s.typeInto(&b.typed, b.Field, k) {
		p.fault = p.s.say("field-runes")
	}
	return nil
}
