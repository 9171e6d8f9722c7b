package answer

import (
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
		o.block(p.JudgedRows(w, sys)...)
		o.block(p.settings(o)...)
	}
	o.block(append([]Row{{Role: Title, ID: "prove-heading", Text: o.say("prove-heading")}}, p.StepRows(w, sys)...)...)
	o.cautions(p.Cautions())
	o.why(p.Reasons())
	return o.rows
}

// StepRows is the short list of what to do at the gun.
func (p *Prove) StepRows(w *words.Words, sys unit.System) (rows []Row) {
	s, a := p.Found.Setup, p.Found
	add := func(id string, f ...calc.Figure) {
		rows = append(rows, Row{Role: Remark, About: "step", ID: id, Text: w.Text(sys, id, f)})
	}
	gauge := func(name string, p unit.Gauge) calc.Figure {
		return calc.BriefFigure(name, calc.FigureGauge, p)
	}
	for i := range a.Steps {
		x := &a.Steps[i]
		id := "prove-still"
		if x.Kind == learn.ReadOpen {
			id = "prove-open"
		}
		add(id, calc.FigureOf("wall", calc.FigureGauge, x.Shows[0].Pressure), gauge("low", x.Expected.Low), gauge("high", x.Expected.High))
	}
	if !s.Valve.None && p.Request.Plan.Gauge == calc.InHandle {
		add("prove-set", calc.FigureOf("target", calc.FigureGauge, s.Working.Pressure), s.Valve.Knob("knob", s.Valve.Opening),
			calc.FigureOf("least", calc.FigureShare, a.Settings.Opening.Low), calc.FigureOf("most", calc.FigureShare, a.Settings.Opening.High))
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

// JudgedRows is each reading beside what was expected of it.
func (p *Prove) JudgedRows(w *words.Words, sys unit.System) (rows []Row) {
	for i := range p.Request.Readings {
		low, high, shown, ok := p.Judged(i)
		if !ok {
			continue
		}
		id, off := "prove-judged", unit.Drop(0)
		switch {
		case shown < low:
			id, off = "prove-judged-low", unit.Drop(low-shown)
		case shown > high:
			id, off = "prove-judged-high", unit.Drop(shown-high)
		}
		rows = append(rows, Row{Role: Remark, About: "reading", ID: id, Text: w.Text(sys, id, calc.Figures{
			calc.CountFigure("number", i+1), calc.FigureOf("shown", calc.FigureGauge, shown), calc.BriefFigure("low", calc.FigureGauge, low), calc.BriefFigure("high", calc.FigureGauge, high), calc.FigureOf("off", calc.FigureDrop, off),
		})})
	}
	return rows
}
