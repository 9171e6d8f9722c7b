package tui

import (
	"slices"

	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// provePage proves the answer at the gun: the gauges are read one pair after another, each pair
// is judged, and the settings are worked anew from it. Behind the last box lies what it comes to.
// What was typed stays for as long as the assistant runs, or until it counts.
type provePage struct {
	overAnswer
	boxes
	learning
	groups  []gaugeGroup // in the order of their boxes
	grouped learntOf     // what they were last made after
	taken   []question.Value
	fault   string // why what was typed was not taken; the next key clears it
	scroll  scroll
}

// gaugeGroup is the gauges that are read at one time.
type gaugeGroup struct {
	learn.Worth
	pieces []learn.Piece // of the line that it is of
	step   bool          // one of the list's, which are always asked
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
	p.taken = p.typed()
	p.toEmpty()
	return nil
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

// each gives each group to see, with its boxes.
func (p *provePage) each(see func(g *gaugeGroup, boxes []box)) {
	first := 0
	for i := range p.groups {
		g := &p.groups[i]
		n := len(g.Shows)
		see(g, p.all[first:first+n:first+n])
		first += n
	}
}

// typed is each group that was read whole, as a reading.
func (p *provePage) typed() (all []question.Value) {
	p.each(func(g *gaugeGroup, boxes []box) {
		var shown []unit.Gauge
		for i := range boxes {
			if v := p.values(&boxes[i]); len(v) > 0 && p.s.reader.Check(boxes[i].Field, v, p.read) == nil {
				shown = append(shown, unit.Gauge(v[0].SI[0]))
			}
		}
		if len(shown) < len(boxes) {
			return
		}
		all = append(all, question.TakenAs(&g.Option, g.pieces, &p.from.tried.Request.Gun.Valve, shown))
	})
	return all
}

// start works out what was taken, where that is not known.
func (p *provePage) start() tea.Cmd {
	of := learntOf{job: p.from.tried.id, changes: p.s.desk.changes, own: len(p.s.ownReadings)}
	for _, v := range p.taken {
		of.typed += v.Seen.Text(unit.US) + "\n"
	}
	return p.learning.start(p.s, of, &p.from.tried, p.taken)
}

// follow asks for what is to be read as what was worked out has it: the pairs of the list, and
// once these are read what tells most next.
func (p *provePage) follow() {
	if p.answer == nil || p.grouped == p.of {
		return
	}
	p.grouped, p.scroll = p.of, scroll{}
	onAnswer := p.onAnswer() && len(p.all) > 0
	var groups []gaugeGroup
	var all []box
	whole := true
	add := func(g gaugeGroup, boxes []box) {
		if boxes == nil {
			boxes = p.boxesOf(&g)
		}
		whole = whole && !slices.ContainsFunc(boxes, func(b box) bool { return b.own() == "" })
		groups, all = append(groups, g), append(all, boxes...)
	}
	pieces := p.answer.Found.Pieces
	for _, w := range p.answer.Found.Steps {
		var had []box
		p.each(func(g *gaugeGroup, boxes []box) {
			if g.step && g.Kind == w.Kind {
				had = boxes
			}
		})
		add(gaugeGroup{w, pieces, true}, had)
	}
	p.each(func(g *gaugeGroup, boxes []box) {
		if !g.step && slices.ContainsFunc(boxes, func(b box) bool { return b.own() != "" }) {
			add(*g, boxes)
		}
	})
	if next := p.answer.Found.Next; whole && len(next) > 0 {
		add(gaugeGroup{next[0], pieces, false}, nil)
	}
	first := p.all == nil
	p.groups, p.all = groups, all
	switch {
	case onAnswer:
		p.at = len(p.all)
	case first:
		p.toEmpty()
	}
}

// boxesOf is a box for each gauge of a group.
func (p *provePage) boxesOf(g *gaugeGroup) (all []box) {
	at := p.s.say("prove-at-" + g.Kind.String())
	for _, x := range g.Shows {
		name := [...]string{learn.WallGauge: "wall", learn.FootGauge: "foot", learn.CapGauge: "cap", learn.GunGauge: "gun"}[x.Gauge]
		all = append(all, box{
			Row: question.Row{Field: question.ShownPressure("shown-" + name)}, picked: -1,
			called: p.s.say("prove-gauge-"+name) + ", " + at,
		})
	}
	return all
}

// expected is what a gauge is set to, or should show.
func (p *provePage) expected(b *box) (text string) {
	p.each(func(g *gaugeGroup, boxes []box) {
		for i := range boxes {
			switch {
			case &boxes[i] != b:
			case g.Shows[i].Gauge == learn.WallGauge:
				text = p.s.text("prove-set-to", calc.FigureOf("wall", calc.FigureGauge, g.Shows[i].Pressure))
			case i == len(boxes)-1 && g.Expected.High > 0:
				low := calc.BriefFigure("low", calc.FigureGauge, g.Expected.Low)
				low.WithoutUnit = true
				text = p.s.text("prove-expected", low, calc.BriefFigure("high", calc.FigureGauge, g.Expected.High))
			}
		}
	})
	return text
}

// begins reports whether a box is the first of its group.
func (p *provePage) begins(at int) (is bool) {
	p.each(func(_ *gaugeGroup, boxes []box) { is = is || &boxes[0] == &p.all[at] })
	return is
}

// does is how the reading of the marked box is taken.
func (p *provePage) does() (text string) {
	p.each(func(g *gaugeGroup, boxes []box) {
		for i := range boxes {
			switch {
			case p.onAnswer() || &boxes[i] != &p.all[p.at]:
			case g.step:
				text = p.answer.Step(p.s.words, p.s.sys, &g.Worth).Text
			default:
				text = p.answer.Do(p.s.words, p.s.sys, &g.Option)
			}
		}
	})
	return text
}

// leave takes what was typed in the marked box; false where it will not do.
func (p *provePage) leave() bool {
	if p.onAnswer() {
		return true
	}
	b := &p.all[p.at]
	if v := p.values(b); len(v) > 0 {
		if fault := p.s.reader.Check(b.Field, v, p.read); fault != nil {
			p.fault = fault.Called(p.label(b))
			return false
		}
		_, text := p.s.completed(b.Field, b.own(), p.read)
		b.typed.set(text)
	}
	p.taken = p.typed()
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

// away goes back to the answer. What is typed stays, and counts on the page alone.
func (p *provePage) away(string) move {
	p.leave()
	p.fault = ""
	return back
}

func (p *provePage) changeUnits(pressed string) move {
	p.from.changeUnits(pressed)
	p.read = p.s.sys
	p.taken = p.typed()
	return nil
}

// count takes the readings as such that count from now on: for this run, and in a booth of the
// shop's they are kept there.
func (p *provePage) count(string) move {
	s, plan := p.s, p.from.tried.Request
	booth := s.desk.boothID()
	fresh := shop.ReadingsOf(plan, booth, plan.Gun.ID, p.taken, s.now(), unit.US)
	s.ownReadings = append(s.ownReadings, fresh...)
	p.groups, p.all, p.taken, p.at, p.grouped = nil, nil, nil, 0, learntOf{}
	told := s.text("prove-counts", calc.CountFigure("readings", len(fresh)))
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
			return s.text("prove-kept", calc.CountFigure("readings", len(fresh)), calc.TextFigure("booth", plain(s.desk.nameOf(booth)))), f.KeepReadings(m, booth, fresh)
		})
	}
}

func (p *provePage) keys(room size) []binding {
	if p.onAnswer() {
		var all []binding
		if len(p.taken) > 0 && !p.running {
			all = append(all, bindExplained(takeKeys, "do-count", p.count))
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
	if b := &p.all[p.at]; b.own() != "" {
		all = append(all, bindKey(clearKeys, "do-empty", func(string) move { b.clear(); return nil }))
	}
	return all
}

func (p *provePage) press(k tea.KeyMsg) move {
	if p.fault = ""; p.onAnswer() {
		return nil
	}
	if b := &p.all[p.at]; !p.s.typeInto(&b.typed, b.Field, k) {
		p.fault = p.s.say("field-runes")
	}
	return nil
}
