package answer

import (
	"math"
	"slices"

	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/prove"
	"boothset/calc/trouble"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/signs"
	"boothset/presets/words"
)

// Prove is what proves a plan at the gun, with what was read and seen there.
type Prove struct {
	Learn
	Seen   prove.Seen
	Judged prove.Judged
	// Trouble is what makes the patterns that were seen, nil where nothing is wrong with them.
	Trouble *Trouble
	// Before is what was seen before, with this gun and coat.
	Before []question.SeenBefore
}

// See takes what was seen at the gun, with the readings that were taken there.
func (p *Prove) See(s prove.Seen, taken []learn.Taken) {
	p.Seen, p.Judged, p.Trouble = s, prove.Judge(p.Request.Plan, p.Found, taken, &s), nil
	of := trouble.Request{Signs: s.Signs(), Plan: p.Found.Since}
	if len(of.Signs) == 0 {
		return
	}
	if found, err := signs.Book().Solve(&of); err == nil {
		p.Trouble = &Trouble{&of, found}
	}
}

// askProve answers what proves a plan at the gun.
func askProve(r *question.Reader, a question.Answers, sys unit.System) (Answer, error) {
	q, faults := r.Learn(a.Of(question.Learn), sys)
	seen, more := r.Seen(a, q.Readings, sys)
	if faults = append(faults, more...); len(faults) > 0 {
		return nil, faults[0]
	}
	found, err := learn.Solve(&q)
	if err != nil {
		return nil, r.Refused(err, a, sys)
	}
	p := &Prove{Learn: Learn{&q, found}}
	p.See(seen, q.Readings)
	return p, nil
}

// Stopped reports whether the job must not be done as it stands, or the readings cannot all be right.
func (p *Prove) Stopped() bool { return p.Learn.Stopped() || p.Found.After.Judgement.Stopped() }

// Cautions is what protects whoever takes the readings, and what the plan says besides: a pattern on
// paper is sprayed paint.
func (p *Prove) Cautions() []calc.Caution {
	all := p.Learn.Cautions()
	for _, c := range p.Found.After.Cautions {
		if c.Safety {
			all = append(all, c)
		}
	}
	return all
}

// Rows is all that is said of it.
func (p *Prove) Rows(w *words.Words, sys unit.System) []Row {
	o := &speaker{words: w, sys: sys}
	if j := &p.Found.After.Judgement; j.Verdict != calc.VerdictGo {
		o.verdict(j, PlanGoes)
	}
	rows := p.GunRows(w, sys)
	rows[0].Begins = len(o.rows) > 0
	return append(o.rows, rows...)
}

// GunRows is Rows without the verdict on the day, for where that stands over it.
func (p *Prove) GunRows(w *words.Words, sys unit.System) []Row {
	o := &speaker{words: w, sys: sys}
	if len(p.Request.Readings) > 0 {
		o.block(p.ToldRows(w, sys)...)
		o.block(append(p.AnewRows(w, sys), p.JudgedRows(w, sys)...)...)
	}
	o.block(p.SeenRows(w, sys)...)
	o.block(p.BeforeRows(w)...)
	if len(p.Request.Readings) > 0 {
		o.block(p.settings(o)...)
		o.block(p.NextRows(w, sys)...)
	}
	o.block(append([]Row{{Role: Title, ID: "prove-heading", Text: o.say("prove-heading")}}, p.StepRows(w, sys)...)...)
	o.cautions(p.Cautions())
	o.why(p.Reasons())
	return o.rows
}

// step is a row of the list of what to do at the gun.
func step(w *words.Words, sys unit.System, id string, f ...calc.Figure) Row {
	return Row{Role: Remark, About: "step", ID: id, Text: w.Text(sys, id, f)}
}

// Step is how a reading is taken, and what the gun's gauge should show: of one of Found.Steps.
func (p *Prove) Step(w *words.Words, sys unit.System, x *learn.Worth) Row {
	id := "prove-still"
	if x.Kind == learn.ReadOpen {
		id = "prove-open"
	}
	return step(w, sys, id, calc.FigureOf("wall", calc.FigureGauge, x.Shows[0].Pressure),
		calc.BriefFigure("low", calc.FigureGauge, x.Expected.Low), calc.BriefFigure("high", calc.FigureGauge, x.Expected.High))
}

// TurnStep is how the inlet valve is set by the gun's gauge, and how far open it should then be;
// false where it is not set so.
func (p *Prove) TurnStep(w *words.Words, sys unit.System) (r Row, ok bool) {
	s, t := p.Found.After, &p.Found.Turning
	if *t == (learn.Turning{}) {
		return r, false
	}
	return step(w, sys, "prove-set", calc.FigureOf("wall", calc.FigureGauge, t.Wall), calc.FigureOf("target", calc.FigureGauge, s.Working.Reads),
		s.Valve.Knob("from", t.Opening.High), s.Valve.Knob("to", t.Opening.Low)), true
}

// SeenStep is how one of question.SeenFields is looked at, and what it should show.
func (p *Prove) SeenStep(w *words.Words, sys unit.System, f *question.Field) Row {
	d := &p.Found.Setup.Distance
	switch f {
	case question.FirstGun:
		return step(w, sys, "prove-first", calc.FigureOf("scatters", calc.FigureDrop, prove.Scatters))
	case question.FirstWall, question.HeldSupply:
		return step(w, sys, "prove-"+f.Name, calc.FigureOf("needed", calc.FigureGauge, p.needed()))
	case question.Felt:
		push := prove.PushOf(p.Request.Plan, p.Found)
		if !push.Known {
			return step(w, sys, "prove-felt-sheet", calc.FigureOf("target", calc.FigureDistance, d.Target))
		}
		nearest, farthest := p.Request.Plan.Held()
		return step(w, sys, "prove-felt", calc.FigureOf("low", calc.FigureDistance, push.Low), calc.FigureOf("high", calc.FigureDistance, push.High),
			calc.FigureOf("nearest", calc.FigureDistance, nearest), calc.FigureOf("farthest", calc.FigureDistance, farthest))
	case question.Wet:
		if film := p.Judged.Film; film != nil {
			return step(w, sys, "prove-comb", calc.FigureOf("low", calc.FigureFilm, film.Low), calc.FigureOf("high", calc.FigureFilm, film.High))
		}
		return step(w, sys, "prove-comb-sheet")
	}
	return step(w, sys, "prove-"+f.Name)
}

// SeenWithin is what one of question.SeenFields should lie within, called low and high; false of
// one that has no such figures.
func (p *Prove) SeenWithin(f *question.Field) (low, high calc.Figure, ok bool) {
	within := func(kind calc.FigureKind, from, to unit.Length) (calc.Figure, calc.Figure, bool) {
		return calc.FigureOf("low", kind, from), calc.FigureOf("high", kind, to), true
	}
	switch push := prove.PushOf(p.Request.Plan, p.Found); {
	case f == question.Felt && push.Known:
		return within(calc.FigureDistance, push.Low, push.High)
	case f == question.Wet && p.Judged.Film != nil:
		return within(calc.FigureFilm, p.Judged.Film.Low, p.Judged.Film.High)
	}
	return low, high, false
}

// needed is what must be left before the regulator, 0 where nothing fell.
func (p *Prove) needed() unit.Gauge {
	if p.Judged.Fall == nil {
		return 0
	}
	return p.Judged.Fall.Needed
}

// SeenAsked is those of question.SeenFields that are asked for, as far as it has come: what falls
// is asked for where the gun's gauge fell, a film where it is known.
func (p *Prove) SeenAsked() (all []*question.Field) {
	for _, f := range question.SeenFields {
		fell := p.Judged.Fall != nil && p.Judged.Fall.Is
		switch {
		case f == question.FirstGun && p.Request.Plan.Gauge == calc.NoGauge:
		case (f == question.FirstWall || f == question.HeldSupply) && !fell:
		case f == question.Wet && p.Judged.Film == nil:
		default:
			all = append(all, f)
		}
	}
	return all
}

// ToldRows is what the readings say is odd, with what to do about it, and what they do not tell
// yet; none while they tell of gauges alone.
func (p *Prove) ToldRows(w *words.Words, sys unit.System) []Row {
	if p.Found.AsDescribed && !p.Stopped() {
		return nil
	}
	return slices.Concat([]Row{p.Headline(w, sys)}, p.MoveRows(w), p.UntoldRows(w, sys))
}

// AnewRows is the wall to set since, beside the advised one, and by how much the gun's gauge was
// apart from the wall's when they were last compared.
func (p *Prove) AnewRows(w *words.Words, sys unit.System) (rows []Row) {
	add := func(about, id string, f ...calc.Figure) {
		rows = append(rows, Row{Role: Remark, About: about, ID: id, Text: w.Text(sys, id, f)})
	}
	wall, was := p.Found.Set, p.Found.Setup.Wall.Flowing
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
	for i := range p.Found.Steps {
		rows = append(rows, p.Step(w, sys, &p.Found.Steps[i]))
	}
	asked := p.SeenAsked()
	for _, f := range asked {
		if question.OfHeld(f) {
			rows = append(rows, p.SeenStep(w, sys, f))
		}
	}
	if r, ok := p.TurnStep(w, sys); ok {
		rows = append(rows, r)
	}
	for _, f := range asked {
		if !question.OfHeld(f) {
			rows = append(rows, p.SeenStep(w, sys, f))
		}
	}
	if p.Judged.Film == nil {
		rows = append(rows, p.SeenStep(w, sys, question.Wet))
	}
	return rows
}

// Showed is what the last gauge of a reading showed, and what it was to show by what was known
// before; false of one that nothing is foretold of.
func (p *Prove) Showed(reading int) (low, high, shown unit.Gauge, ok bool) {
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
	if t := &p.Found.Turned[reading]; *t != (learn.Turning{}) {
		return p.turnedRow(w, sys, reading), true
	}
	low, high, shown, ok := p.Showed(reading)
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
