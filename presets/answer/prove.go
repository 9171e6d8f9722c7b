package answer

import (
	"math"
	"slices"

	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// Prove is what proves a plan at the gun, with what was read there.
type Prove struct{ Learn }

// Rows is all that is said of it.
func (p *Prove) Rows(w *words.Words, sys unit.System) []Row {
	o := &speaker{words: w, sys: sys}
	if len(p.Request.Readings) > 0 {
		o.block(p.Headline(w, sys))
		o.block(append(p.AnewRows(w, sys), p.JudgedRows(w, sys)...)...)
		o.block(p.settings(o)...)
		o.block(p.NextRows(w, sys)...)
	}
	o.block(append([]Row{{Role: Title, ID: "prove-heading", Text: o.say("prove-heading")}}, p.StepRows(w, sys)...)...)
	o.cautions(p.Cautions())
	o.why(p.Reasons())
	return o.rows
}

// Step is how a reading is taken, and what the gun's gauge should show: of one of Found.Steps.
func (p *Prove) Step(w *words.Words, sys unit.System, x *learn.Worth) Row {
	id := "prove-still"
	if x.Kind == learn.ReadOpen {
		id = "prove-open"
	}
	return Row{Role: Remark, About: "step", ID: id, Text: w.Text(sys, id, calc.Figures{
		calc.FigureOf("wall", calc.FigureGauge, x.Shows[0].Pressure),
		calc.BriefFigure("low", calc.FigureGauge, x.Expected.Low), calc.BriefFigure("high", calc.FigureGauge, x.Expected.High),
	})}
}

// AnewRows is the wall to set since, beside the advised one, and by how much the gun's gauge was
// apart from the wall's when they were last compared.
func (p *Prove) AnewRows(w *words.Words, sys unit.System) (rows []Row) {
	add := func(about, id string, f ...calc.Figure) {
		rows = append(rows, Row{Role: Remark, About: about, ID: id, Text: w.Text(sys, id, f)})
	}
	wall, was := p.Wall(), p.Found.Setup.Wall.Flowing
	id := "prove-wall-other"
	if math.Abs(float64(wall-was)) < float64(p.Request.Plan.Mark)/2 {
		id = "prove-wall-same"
	}
	add("wall", id, calc.FigureOf("wall", calc.FigureGauge, wall), calc.FigureOf("was", calc.FigureGauge, was))
	for _, x := range slices.Backward(p.Request.Readings) {
		at := slices.IndexFunc(x.Shows, func(s learn.Shown) bool { return s.Gauge == learn.WallGauge })
		gun := slices.IndexFunc(x.Shows, func(s learn.Shown) bool { return s.Gauge == learn.GunGauge })
		if !x.Still || at < 0 || gun < 0 {
			continue
		}
		id, apart := "prove-apart-low", unit.Drop(x.Shows[at].Pressure-x.Shows[gun].Pressure)
		switch {
		case math.Abs(float64(apart)) <= float64(learn.ReadingNoise):
			id = "prove-apart-none"
		case apart < 0:
			id, apart = "prove-apart-high", -apart
		}
		add("gun-gauge", id, calc.FigureOf("off", calc.FigureDrop, apart))
		break
	}
	return rows
}

// StepRows is the short list of what to do at the gun.
func (p *Prove) StepRows(w *words.Words, sys unit.System) (rows []Row) {
	s, a := p.Found.Setup, p.Found
	add := func(id string, f ...calc.Figure) {
		rows = append(rows, Row{Role: Remark, About: "step", ID: id, Text: w.Text(sys, id, f)})
	}
	for i := range a.Steps {
		rows = append(rows, p.Step(w, sys, &a.Steps[i]))
	}
	if !s.Valve.None && p.Request.Plan.Gauge == calc.InHandle {
		add("prove-set", calc.FigureOf("target", calc.FigureGauge, s.Working.Pressure), s.Valve.Knob("knob", s.Valve.Opening),
			calc.FigureOf("least", calc.FigureShare, a.Sure.Opening.Low), calc.FigureOf("most", calc.FigureShare, a.Sure.Opening.High))
	}
	add("prove-felt", calc.FigureOf("distance", calc.FigureDistance, s.Distance.Target), calc.FigureOf("nearest", calc.FigureDistance, s.Distance.Low), calc.FigureOf("farthest", calc.FigureDistance, s.Distance.High))
	add("prove-pattern")
	add("prove-comb")
	return rows
}

// Judged is what the last gauge of a reading showed, and what it was to show by what was known
// before; false of one that nothing is foretold of.
func (p *Prove) Judged(reading int) (low, high, shown unit.Gauge, ok bool) {
	shows := p.Request.Readings[reading].Shows
	f := p.Found.Foretold[reading]
	last := shows[len(shows)-1]
	if last.Gauge == learn.WallGauge && len(shows) > 1 {
		last = shows[len(shows)-2] // the wall's is what was set
	}
	return f.Low, f.High, last.Pressure, f.High > 0
}

// JudgedRow is a reading beside what was expected of it; false of one that nothing is foretold of.
func (p *Prove) JudgedRow(w *words.Words, sys unit.System, reading int) (r Row, ok bool) {
	low, high, shown, ok := p.Judged(reading)
	if !ok {
		return r, false
	}
	id, off := "prove-judged", unit.Drop(0)
	switch {
	case shown < low:
		id, off = "prove-judged-low", unit.Drop(low-shown)
	case shown > high:
		id, off = "prove-judged-high", unit.Drop(shown-high)
	}
	return Row{Role: Remark, About: "reading", ID: id, Text: w.Text(sys, id, calc.Figures{
		calc.CountFigure("number", reading+1), calc.FigureOf("shown", calc.FigureGauge, shown), calc.BriefFigure("low", calc.FigureGauge, low), calc.BriefFigure("high", calc.FigureGauge, high), calc.FigureOf("off", calc.FigureDrop, off),
	})}, true
}

// JudgedRows is each reading beside what was expected of it.
func (p *Prove) JudgedRows(w *words.Words, sys unit.System) (rows []Row) {
	for i := range p.Request.Readings {
		if r, ok := p.JudgedRow(w, sys, i); ok {
			rows = append(rows, r)
		}
	}
	return rows
}
