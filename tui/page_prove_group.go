package tui

import (
	"slices"

	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/unit"
	"boothset/presets/question"
)

// proveGroup is what is asked for at one time: the gauges of a reading, the inlet valve as it was
// set, or one thing that is seen.
type proveGroup struct {
	learn.Worth                 // of a reading
	pieces      []learn.Piece   // of the line that it is of
	turns       bool            // the wall's gauge and the turns of the valve, set by the gun's gauge
	sees        *question.Field // what is seen, nil of the others
	step        bool            // one of the list's, which are always asked
	boxes       int
}

// reads reports whether it is gauges that are read together.
func (g *proveGroup) reads() bool { return g.sees == nil }

// same reports whether two groups ask for the same, of the list's.
func (g *proveGroup) same(o *proveGroup) bool {
	return g.step && o.step && g.turns == o.turns && g.sees == o.sees && (g.sees != nil || g.turns || g.Kind == o.Kind)
}

// each gives each group to see, with its boxes.
func (p *provePage) each(see func(g *proveGroup, boxes []box)) {
	first := 0
	for i := range p.groups {
		g := &p.groups[i]
		see(g, p.all[first:first+g.boxes:first+g.boxes])
		first += g.boxes
	}
}

// group is the one of a box, with its place there.
func (p *provePage) group(of *box) (found *proveGroup, at int) {
	p.each(func(g *proveGroup, boxes []box) {
		for i := range boxes {
			if &boxes[i] == of {
				found, at = g, i
			}
		}
	})
	return found, at
}

// begins reports whether a box is the first of its group.
func (p *provePage) begins(at int) bool {
	_, in := p.group(&p.all[at])
	return in == 0
}

// ask makes the groups anew as what was worked out has it: those of the list, and once its gauges
// are read what tells most next; where that looks for what is odd, it comes before what a line in
// order is to show. What is typed stays, and so does the box that is typed in.
func (p *provePage) ask() {
	var groups []proveGroup
	var all []box
	whole := true
	marked := p.marked()
	add := func(g proveGroup) {
		var boxes []box
		p.each(func(old *proveGroup, had []box) {
			if old.same(&g) {
				boxes = had
			}
		})
		if boxes == nil {
			boxes = p.boxesOf(&g)
		}
		g.boxes = len(boxes)
		whole = whole && !(g.reads() && !g.turns && g.step && slices.ContainsFunc(boxes, isEmpty))
		groups, all = append(groups, g), append(all, boxes...)
	}
	found := p.answer.Found
	for _, w := range found.Steps {
		add(proveGroup{Worth: w, pieces: found.Pieces, step: true})
	}
	asked := p.answer.SeenAsked()
	see := func(held bool) {
		for _, f := range asked {
			if question.OfHeld(f) == held {
				add(proveGroup{sees: f, step: true})
			}
		}
	}
	next := func() {
		if whole && len(found.Next) > 0 {
			add(proveGroup{Worth: found.Next[0], pieces: found.Pieces})
		}
	}
	see(true)
	p.each(func(g *proveGroup, boxes []box) {
		if !g.step && slices.ContainsFunc(boxes, func(b box) bool { return !isEmpty(b) }) {
			groups, all = append(groups, *g), append(all, boxes...)
		}
	})
	if found.Seeks {
		next()
	}
	if found.Turning != (learn.Turning{}) {
		add(proveGroup{turns: true, step: true})
	}
	see(false)
	if !found.Seeks {
		next()
	}
	p.groups, p.all = groups, all
	if at := slices.IndexFunc(p.all, func(b box) bool { return b.Field == marked }); at >= 0 {
		p.at = at
	}
}

// marked is the field of the box that is typed in, nil where nothing is in it yet.
func (p *provePage) marked() *question.Field {
	if p.at < len(p.all) && !isEmpty(p.all[p.at]) {
		return p.all[p.at].Field
	}
	return nil
}

func isEmpty(b box) bool { return b.own() == "" }

// boxesOf is a box for each thing that a group asks for.
func (p *provePage) boxesOf(g *proveGroup) (all []box) {
	s := p.s
	add := func(f *question.Field, called string) {
		all = append(all, box{Row: question.Row{Field: f}, picked: -1, choices: s.reader.Choices(f), called: called})
	}
	valve := &p.answer.Found.Setup.Valve
	shown := func(x learn.Gauge, kind learn.OptionKind) {
		name := [...]string{learn.WallGauge: "wall", learn.FootGauge: "foot", learn.CapGauge: "cap", learn.GunGauge: "gun"}[x]
		at := s.say("prove-at-" + kind.String())
		if kind == learn.ReadSet && !g.turns {
			at = s.text("prove-at-knob", valve.Knob("knob", g.Opening))
		}
		add(question.ShownPressure("shown-"+name), s.say("prove-gauge-"+name)+", "+at)
	}
	switch {
	case g.sees != nil:
		add(g.sees, "")
	case g.turns:
		shown(learn.WallGauge, learn.ReadSet)
		add(question.KnobTurns(&p.from.tried.Request.Gun.Valve), s.say("short-knob-turns"))
	default:
		for _, x := range g.Shows {
			shown(x.Gauge, g.Kind)
		}
	}
	return all
}

// typed is what was read and seen: each group that was read whole as a reading.
func (p *provePage) typed() (readings []question.Value, seen question.Answers) {
	p.each(func(g *proveGroup, boxes []box) {
		var si []float64
		for i := range boxes {
			v := p.values(&boxes[i])
			if len(v) == 0 || p.s.reader.Check(boxes[i].Field, v, p.read) != nil {
				return
			}
			if g.sees != nil {
				seen = seen.With(g.sees, v...)
				return
			}
			si = append(si, v[0].SI[0])
		}
		readings = append(readings, p.taken(g, si))
	})
	return readings, seen
}

// taken is a reading of what each of a group's boxes says.
func (p *provePage) taken(g *proveGroup, si []float64) question.Value {
	plan := &p.from.tried
	valve := &plan.Request.Gun.Valve
	option := g.Option
	var shown []unit.Gauge
	if g.turns {
		option = learn.Option{Kind: learn.ReadSet, Piece: -1, Reading: learn.Reading{Opening: question.OpeningAt(valve, si[1]), Shows: []learn.Shown{{Gauge: learn.WallGauge}, {Gauge: learn.GunGauge}}}}
		shown = []unit.Gauge{unit.Gauge(si[0]), plan.Setup.Working.Reads}
	} else {
		for _, v := range si {
			shown = append(shown, unit.Gauge(v))
		}
	}
	return question.TakenAs(&option, g.pieces, valve, shown)
}

// expected is what a gauge is set to, or what a box should say.
func (p *provePage) expected(b *box) string {
	g, at := p.group(b)
	if g == nil || p.answer == nil {
		return ""
	}
	within := func(low, high calc.Figure) string {
		low.WithoutUnit = true
		return p.s.text("prove-expected", low, high)
	}
	found := p.answer.Found
	switch {
	case g.turns && at == 0:
		return p.s.text("prove-set-to", calc.FigureOf("wall", calc.FigureGauge, found.Turning.Wall))
	case g.turns:
		v, t := &found.Setup.Valve, &found.Turning.Opening
		low, high := (1-t.High)*v.TurnsOf, (1-t.Low)*v.TurnsOf
		if v.CountsFromShut {
			low, high = t.Low*v.TurnsOf, t.High*v.TurnsOf
		}
		return within(calc.FigureOf("low", calc.FigureTurns, low), calc.FigureOf("high", calc.FigureTurns, high))
	case g.sees != nil:
		if low, high, ok := p.answer.SeenWithin(g.sees); ok {
			return within(low, high)
		}
	case g.Shows[at].Gauge == learn.WallGauge:
		return p.s.text("prove-set-to", calc.FigureOf("wall", calc.FigureGauge, g.Shows[at].Pressure))
	case at == g.boxes-1 && g.Expected.High > 0:
		return within(calc.BriefFigure("low", calc.FigureGauge, g.Expected.Low), calc.BriefFigure("high", calc.FigureGauge, g.Expected.High))
	}
	return ""
}

// does is how what the marked box asks for is read or looked at.
func (p *provePage) does() string {
	if p.onAnswer() {
		return ""
	}
	b := &p.all[p.at]
	a, s := p.answer, p.s
	switch g, _ := p.group(b); {
	case g.turns:
		row, _ := a.TurnStep(s.words, s.sys)
		return row.Text
	case g.sees != nil:
		return a.SeenStep(s.words, s.sys, g.sees).Text
	case g.step:
		return a.Step(s.words, s.sys, &g.Worth).Text
	default:
		return a.Do(s.words, s.sys, &g.Option)
	}
}
