package answer

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// Staged is one stage of the coat with its setup.
type Staged struct {
	Coat  *calc.Coat
	Setup *calc.Setup
}

// SolveStages works out the setups of all the coat's stages; that of the stage that was asked
// for is the plan's own. An error only where a stage cannot be solved though the plan can.
func (p *Plan) SolveStages() error {
	p.Stages = p.Stages[:0]
	for n := range p.Request.Stages {
		of := &p.Request.Stages[n]
		setup := p.Setup
		if of.Stage.ID != p.Request.Coat.Stage.ID {
			var err error
			if setup, err = calc.Solve(p.Request.At(n)); err != nil {
				return err
			}
		}
		p.Stages = append(p.Stages, Staged{of, setup})
	}
	return nil
}

// AboutStage is the about of how the stage is laid.
const AboutStage = "stage"

// StageRows is how the stage is laid, and all of the coat's stages where it has several.
func (p *Plan) StageRows(w *words.Words, sys unit.System) []Row {
	o := &speaker{words: w, sys: sys}
	o.block(p.laid(o)...)
	o.block(p.stages(o)...)
	return o.rows
}

// StageName is what the stage that is set up is called.
func (p *Plan) StageName(w *words.Words) string {
	return (&speaker{words: w}).stageName(&p.Request.Coat.Stage)
}

// laid is how the stage is laid: which it is, its coats, overlap, flash-off and fluid tip.
func (p *Plan) laid(o *speaker) (rows []Row) {
	s := &p.Request.Coat.Stage
	value := func(name, text, more string) {
		rows = append(rows, Row{Role: Value, About: AboutStage, Name: o.say(name), Text: text, More: more})
	}
	between := func(low, high calc.Figure) string {
		low.Name, high.Name = "low", "high"
		return o.say("card-between", low, high)
	}
	value("label-stage", o.stageName(s), p.place(o))
	if s.Coats.Value > 0 {
		value("label-each", o.say("stage-film", calc.FigureOf("low", calc.FigureFilm, s.Film.Low), calc.FigureOf("high", calc.FigureFilm, s.Film.High)),
			o.say("stage-coats", calc.CountFigure("coats", s.Coats.Value)))
	}
	if l := &s.Overlap; l.Known() {
		more := ""
		if l.High > l.Low {
			more = between(calc.FigureOf("", calc.FigureShare, l.Low), calc.FigureOf("", calc.FigureShare, l.High))
		}
		value("label-overlap", unit.PercentText(l.Usual, 0), more)
	}
	if f := &p.Setup.Flash; f.Known() {
		value("label-flash", o.about(true, o.words.Minutes(f.Usual)),
			between(calc.FigureOf("", calc.FigureMinutes, f.Low.Seconds()), calc.FigureOf("", calc.FigureMinutes, f.High.Seconds())))
	} else if p.Request.Coat.Waterborne {
		value("label-flash", o.say("stage-matt"), "")
	} else if !p.Request.Coat.Dries() {
		value("label-flash", o.say("stage-lamp"), "")
	}
	if f := &p.Setup.Recoat; f.Known() {
		value("label-recoat", o.about(true, o.words.Minutes(f.Usual)), between(calc.FigureOf("", calc.FigureMinutes, f.Low.Seconds()), calc.FigureOf("", calc.FigureMinutes, f.High.Seconds())))
	}
	if l := &p.Setup.PotLife; l.Known {
		value("label-pot-life", o.about(true, o.words.Minutes(l.Life)), o.say("stage-pot", calc.FigureOf("fill", calc.FigureMinutes, l.LastFill.Seconds())))
	}
	if t := &s.Tip; t.Known() {
		more := ""
		if t.High > t.Low {
			more = between(calc.FigureOf("", calc.FigureTip, t.Low), calc.FigureOf("", calc.FigureTip, t.High))
		}
		value("label-tip", o.words.FigureText(o.sys, calc.FigureOf("", calc.FigureTip, t.Usual)), more)
	}
	return rows
}

// stageName is what a stage is called.
func (o *speaker) stageName(s *calc.Stage) string {
	if id := "name-stage-" + s.ID; o.words.Has(id) {
		return o.say(id)
	}
	return s.ID
}

// place is which of the coat's stages it is, empty where there is but one.
func (p *Plan) place(o *speaker) string {
	for n := range p.Stages {
		if len(p.Stages) > 1 && p.Stages[n].Setup == p.Setup {
			return o.say("stage-place", calc.CountFigure("number", n+1), calc.CountFigure("of", len(p.Stages)))
		}
	}
	return ""
}

// stages is all stages as a table, the one that is set up marked; none of a coat that has
// but one.
func (p *Plan) stages(o *speaker) []Row {
	if len(p.Stages) < 2 {
		return nil
	}
	rows := []Row{{Role: Head, Cells: []string{o.say("stage-all"), o.say("stage-gun"), o.say("stage-wall"), o.say("stage-valve"), o.say("stage-distance"), o.say("stage-flash")}}}
	for n := range p.Stages {
		st := &p.Stages[n]
		s := st.Setup
		gun, wall, valve, distance, flash := "-", "-", "-", "-", "-"
		if !s.Stopped() {
			gun, wall = o.sys.Gauge(s.Working.Pressure, unit.Usual), o.sys.Gauge(s.Wall.Flowing, unit.Usual)
			valve, distance = o.words.FigureText(o.sys, s.Valve.Knob("valve", s.Valve.Opening)), o.sys.Small(s.Distance.Target, unit.Usual)
		}
		if s.Flash.Known() {
			flash = o.words.Minutes(s.Flash.Usual)
		}
		name := o.stageName(&st.Coat.Stage)
		rows = append(rows, Row{
			Role: Part, About: AboutStage, ID: st.Coat.Stage.ID, Marked: s == p.Setup, Cells: []string{name, gun, wall, valve, distance, flash},
			Text: o.say("stage-line", calc.TextFigure("stage", name), calc.TextFigure("gun", gun), calc.TextFigure("wall", wall), calc.TextFigure("valve", valve),
				calc.TextFigure("distance", distance), calc.TextFigure("flash", flash)),
		})
	}
	return rows
}
