package answer

import (
	"strconv"

	"boothset/calc"
	"boothset/calc/spread"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/words"
)

// Plan is a job and its answer, and its day.
type Plan struct {
	Request *calc.Request
	Setup   *calc.Setup
	Stages  []Staged       // all of the coat's, once they are worked out
	Spread  *spread.Spread // nil until Sure, where the supply is short and where nothing is set
	Day     *calc.DayRequest
	Today   *calc.DayAnswer
}

// AskPlan resolves and solves.
func AskPlan(r *question.Reader, a question.Answers, sys unit.System) (*Plan, error) {
	q, faults := r.Plan(a, sys)
	if len(faults) > 0 {
		return nil, faults[0]
	}
	s, err := calc.Solve(q)
	if err != nil {
		return nil, r.Refused(err, a.Or(r.Usual()), sys)
	}
	p := &Plan{Request: q, Setup: s}
	if err := p.SolveStages(); err != nil {
		return nil, r.Refused(err, a.Or(r.Usual()), sys)
	}
	return p, nil
}

// Sure works out how sure the answer is.
func (p *Plan) Sure() {
	if !p.Stopped() {
		p.Spread = spread.Of(p.Request, p.Setup)
	}
}

// Stopped reports whether the job cannot be done as asked.
func (p *Plan) Stopped() bool { return p.Setup.Stopped() }

// Reasons is why the values are what they are.
func (p *Plan) Reasons() []calc.Reason { return p.Setup.Reasons }

// Cautions is what is to be known before spraying.
func (p *Plan) Cautions() []calc.Caution { return p.Setup.Cautions }

// Rows is the answer as a person would write it on a card.
func (p *Plan) Rows(w *words.Words, sys unit.System) []Row {
	r, s := p.Request, p.Setup
	o := &speaker{words: w, sys: sys}
	o.verdict(&s.Judgement, PlanGoes)
	o.heading(o.say("card-heading", calc.TextFigure("coat", r.Coat.Name), calc.TextFigure("gun", r.Gun.Name),
		calc.FigureOf("air", calc.FigureTemp, r.Day.Air), calc.FigureOf("humidity", calc.FigureShare, r.Day.Humidity), calc.TextFigure("supply", sys.Gauge(r.Supply, unit.Usual))))
	if !p.Stopped() {
		o.block(FirstRows(w, sys, s)...)
		o.block(p.settings(o)...)
		o.block(p.atTheGun(o)...)
		o.add(p.StageRows(w, sys)...)
		o.add(p.SureRows(w, sys)...)
	}
	o.cautions(s.Cautions)
	if p.ShowsLine() {
		o.block(p.line(o)...)
	}
	o.block(p.fixes(o)...)
	o.why(s.Reasons)
	return o.rows
}

// The abouts of the three values that are set, and of a second regulator's.
const (
	AboutWall     = "wall"
	AboutFoot     = "foot"
	AboutDistance = "distance"
	AboutValve    = "valve"
)

// ShowsLine reports whether the parts of the line are told: they stand as they would be set,
// or as far as a short supply goes.
func (p *Plan) ShowsLine() bool { return !p.Stopped() || p.Setup.Short.Is }

// FirstRows is what is to be done before anything else, none where nothing is.
func FirstRows(w *words.Words, sys unit.System, s *calc.Setup) []Row {
	if s.First.ID == "" {
		return nil
	}
	return []Row{{Role: First, About: AboutWall, ID: s.First.ID, Text: TurnText(w, sys, s.First)}}
}

// settings is the three values to set in the order of doing, and that of a second regulator after
// the wall's.
func (p *Plan) settings(o *speaker) []Row {
	s := p.Setup
	wall := "label-wall"
	if p.Request.RegulatorAt() == calc.Foot {
		wall = LabelFoot
	}
	pressure := func(about, label string, w *calc.WallSetting) Row {
		return Row{Role: Setting, About: about, Name: o.say(label), Text: o.sys.Gauge(w.Flowing, unit.Usual), More: o.say("card-static", calc.BriefFigure("static", calc.FigureGauge, w.Static))}
	}
	rows := []Row{pressure(AboutWall, wall, &s.Wall)}
	limit, least := s.Valve.Limit()
	valve := o.say("card-reserve", calc.FigureOf("opening", calc.FigureShare, s.Valve.Opening), calc.FigureOf("reserve", calc.FigureDrop, s.Valve.Reserve), limit, least)
	if s.Foot.Is {
		rows = append(rows, pressure(AboutFoot, p.FootLabel(), &s.Foot.WallSetting))
		valve = o.say("card-foot-sets")
	}
	turned := o.words.FigureText(o.sys, s.Valve.Knob("valve", s.Valve.Opening))
	if s.Valve.None {
		turned, valve = o.say("card-no-valve"), o.say("card-no-valve-sets")
	}
	between := map[calc.Held]string{calc.HeldNearest: "card-nearest", calc.HeldFarthest: "card-farthest", calc.NotHeld: "card-between", calc.HeldBySheet: "card-between"}[s.Distance.Held]
	return append(rows,
		Row{Role: Setting, About: AboutValve, Name: o.say("label-valve"), Text: turned, More: valve},
		Row{Role: Setting, About: AboutDistance, Name: o.say("label-distance"), Text: o.sys.Small(s.Distance.Target, unit.Usual),
			More: o.say(between, calc.FigureOf("low", calc.FigureDistance, s.Distance.Low), calc.FigureOf("high", calc.FigureDistance, s.Distance.High))},
		p.GaugeRow(o.words, o.sys),
	)
}

// LabelFoot is the sentence that names a setting at the gun's foot.
const LabelFoot = "label-foot"

// FootLabel is the sentence that names the setting of a second regulator by where it sits.
func (p *Plan) FootLabel() string {
	if _, sets := p.Request.Regulators(); calc.PlaceOf(p.Request.Line, sets) == calc.Foot {
		return LabelFoot
	}
	return "label-second"
}

// AboutGauge is the about of what the gun's gauge shows.
const AboutGauge = "gauge"

// GaugeRow is what the gun's gauge shows once all is set, or how the gun is set without one.
func (p *Plan) GaugeRow(w *words.Words, sys unit.System) Row {
	r, s := p.Request, p.Setup
	row := Row{Role: Setting, About: AboutGauge, Name: w.Say("label-gauge")}
	if r.Gauge == calc.NoGauge {
		id, open := s.WithoutGauge(r)
		row.Text, row.More = w.Say("card-gauge-none"), w.Text(sys, id, calc.Figures{open})
		return row
	}
	row.Text = sys.Gauge(s.Working.Reads, unit.Pressure.Fine(sys))
	id := "card-gauge-handle"
	switch {
	case s.OverStamp(r):
		id = "card-gauge-over"
	case r.Gauge == calc.AtFoot && !s.Valve.None:
		id = "card-gauge-foot"
	}
	row.More = w.Text(sys, id, calc.Figures{calc.FigureOf("stamp", calc.FigureGauge, r.Gun.Stamp.Inlet)})
	return row
}

// atTheGun is what the gun gets, and where it gets too little, what it wants.
func (p *Plan) atTheGun(o *speaker) []Row {
	s := p.Setup
	id := "card-gun"
	switch {
	case s.Short.Is && s.Valve.None:
		id = "card-gun-wants-no-valve"
	case s.Short.Is:
		id = "card-gun-wants"
	case s.Valve.None:
		id = "card-gun-no-valve"
	}
	rows := []Row{{Role: Heading, About: "gun", Text: o.say(id, calc.FigureOf("working", calc.FigureGauge, s.Working.Pressure), calc.FigureOf("flow", calc.FigureFlow, s.Working.Flow), calc.FigureOf("cap", calc.FigureGauge, s.Working.Cap))}}
	if s.Short.Is {
		rows = append(rows, Row{Role: Heading, About: "gun", Text: o.say("card-gun-gets", calc.FigureOf("best", calc.FigureGauge, s.Short.Best))})
	}
	return rows
}

// line is the parts of the line as a table. What costs most is marked.
func (p *Plan) line(o *speaker) []Row {
	s := p.Setup
	rows := []Row{{Role: Head, Cells: []string{o.say("card-parts"), o.say("card-in"), o.say("card-out"), o.say("card-loss"), o.say("card-share"), o.say("card-mach")}}}
	fine := unit.Pressure.Fine(o.sys)
	for i := range s.Line {
		part := &s.Line[i]
		share, id := "", "card-part-figures"
		if part.Share > 0 {
			share, id = unit.PercentText(part.Share, 0), "card-part-shared"
		}
		mach := strconv.FormatFloat(part.Mach, 'f', 2, 64)
		rows = append(rows, Row{
			Role: Part, About: "line", Marked: i == s.Bottleneck,
			Cells: []string{part.Name, o.sys.Gauge(part.In, fine), o.sys.Gauge(part.Out, fine), o.sys.Drop(part.Loss, unit.Usual), share, mach},
			Text: o.say(id, calc.TextFigure("part", part.Name), calc.FigureOf("in", calc.FigureGauge, part.In), calc.FigureOf("out", calc.FigureGauge, part.Out),
				calc.FigureOf("loss", calc.FigureDrop, part.Loss), calc.FigureOf("share", calc.FigureShare, part.Share), calc.TextFigure("mach", mach)),
		})
	}
	return rows
}

// fixes is what would help, none where nothing wins enough.
func (p *Plan) fixes(o *speaker) []Row {
	if len(p.Setup.Fixes) == 0 || !p.ShowsLine() {
		return nil
	}
	return append([]Row{{Role: Title, ID: "card-help", Text: o.say("card-help")}}, FixRows(o.words, o.sys, p.Setup.Fixes)...)
}

// FixRows is what would help, a row each.
func FixRows(w *words.Words, sys unit.System, fixes []calc.Fix) []Row {
	rows := make([]Row, len(fixes))
	for i := range fixes {
		f := &fixes[i]
		rows[i] = Row{Role: Remark, About: "line", ID: f.ID(), Text: w.Text(sys, f.ID(), f.Figures())}
	}
	return rows
}
