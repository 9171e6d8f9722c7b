package answer

import (
	"slices"

	"boothset/calc"
	"boothset/calc/trouble"
	"boothset/calc/unit"
	"boothset/presets/signs"
	"boothset/presets/words"
)

// Trouble is what makes a gun spray badly, and what to do about it.
type Trouble struct {
	Request *trouble.Request
	Found   *trouble.Answer
}

// Stopped reports whether the job must not be done as it stands.
func (t *Trouble) Stopped() bool { return t.Found.Stopped() }

// Reasons is what the probabilities rest on.
func (t *Trouble) Reasons() []calc.Reason {
	bands := calc.Ground{Basis: calc.Estimate, Source: "source-bands"}
	var all []calc.Reason
	for _, id := range t.Request.Signs {
		all = append(all, calc.Reason{About: "cause", ID: "trouble-why-causes", Figures: calc.Figures{calc.SentenceFigure("sign", signs.Name(id))}, Ground: signs.Book().Sign(id).Ground})
	}
	all = append(all, calc.Reason{About: "cause", ID: "trouble-why-bands", Ground: bands})
	if len(t.Found.Job.Facts()) > 0 {
		all = append(all, calc.Reason{About: "cause", ID: "trouble-why-setup", Ground: bands})
	}
	return append(all, calc.Reason{About: "check", ID: "trouble-why-next", Ground: calc.Ground{Basis: calc.Published, Source: "source-heckerman"}})
}

// Cautions is what protects whoever looks for the cause, and what the plan says besides.
func (t *Trouble) Cautions() []calc.Caution {
	all := []calc.Caution{{Level: calc.Warn, ID: "trouble-zero", Safety: true}, {Level: calc.Warn, ID: "trouble-pull", Safety: true}}
	if s := t.Found.Job.Setup; s != nil {
		for _, c := range s.Cautions {
			if c.Safety {
				all = append(all, c)
			}
		}
	}
	return all
}

// Likeliest is the cause that the most speaks for.
func (t *Trouble) Likeliest() *trouble.Ranked { return &t.Found.Causes[0] }

// Rows is all that is said of it.
func (t *Trouble) Rows(w *words.Words, sys unit.System) []Row {
	o := &speaker{words: w, sys: sys}
	if s := t.Found.Job.Setup; s != nil && s.Verdict != calc.VerdictGo {
		o.verdict(&s.Judgement, PlanGoes)
	}
	for _, id := range t.Request.Signs {
		o.block(Row{Role: Heading, ID: id, Text: t.Seen(w, id)})
	}
	o.block(t.Headline(w, sys))
	if t.Found.End != trouble.Open {
		o.block(t.MoveRows(w, sys)...)
	}
	o.block(t.NextRows(w, sys)...)
	o.block(t.CauseRows(w, sys)...)
	o.block(t.WetRows(w)...)
	o.cautions(t.Cautions())
	o.why(t.Reasons())
	return o.rows
}

// Seen is a sign with what it looks like.
func (t *Trouble) Seen(w *words.Words, id string) string {
	return w.Text(unit.US, "trouble-seen", calc.Figures{calc.SentenceFigure("sign", signs.Name(id)), calc.SentenceFigure("look", "look-sign-"+id)})
}

// Headline is how far it has come: the cause where it is told, what to look at where there is
// more to look at, else that these checks do not tell.
func (t *Trouble) Headline(w *words.Words, sys unit.System) Row {
	a := t.Found
	first := t.Likeliest()
	r := Row{Role: Verdict, Level: calc.Note, ID: a.End.String(), Name: w.Say("trouble-end-" + a.End.String())}
	f := calc.Figures{calc.SentenceFigure("cause", "name-cause-"+first.ID), calc.FigureOf("share", calc.FigureShare, wholePercent(first.P)), calc.FigureOf("none", calc.FigureShare, wholePercent(a.None))}
	switch a.End {
	case trouble.Told:
		r.Text = w.Text(sys, "trouble-told", f)
	case trouble.NotTold:
		r.Level, r.Text = calc.Warn, w.Text(sys, "trouble-not-told", f)
	default:
		r.Text = w.Say("ask-check-" + a.Next.ID)
	}
	return r
}

// wholePercent is a probability as it is told: to the percent, and neither none nor all, which
// nothing here is.
func wholePercent(p float64) float64 {
	return min(max(float64(int(100*p+0.5))/100, 0.01), 0.99)
}

// NextRows is the check to make next, why, and how each finding is answered; none where no
// check would tell more.
func (t *Trouble) NextRows(w *words.Words, sys unit.System) []Row {
	n := t.Found.Next
	if n == nil {
		return nil
	}
	say := func(id string, f ...calc.Figure) string { return w.Text(sys, id, f) }
	title := "trouble-next"
	if t.Found.End == trouble.Told {
		title = "trouble-surer"
	}
	rows := []Row{{Role: Title, About: "check", ID: n.ID, Text: say(title)}}
	if t.Found.End != trouble.Open { // it is in the headline there
		rows = append(rows, Row{Role: Remark, About: "check", ID: n.ID, Text: say("ask-check-" + n.ID)})
	}
	for _, f := range n.Findings {
		rows = append(rows, Row{Role: Value, About: "finding", ID: f.ID, Name: n.ID + "=" + f.ID, Text: say(FindingName(n.ID, f.ID))})
	}
	return append(rows, Row{Role: Remark, About: "check", ID: n.ID, Text: say("trouble-moves", calc.FigureOf("takes", calc.FigureMinutes, n.Takes.Seconds()), calc.FigureOf("share", calc.FigureShare, wholePercent(n.Moves)))})
}

// FindingName is the sentence of what a check found.
func FindingName(check, finding string) string { return "finding-" + check + "-" + finding }

// leastShown is the least probability of a cause that is told where it is not among the first
// three.
const leastShown = 0.02

// CauseRows is the causes, the likeliest first, with what of the setup speaks for each.
func (t *Trouble) CauseRows(w *words.Words, sys unit.System) []Row {
	rows := []Row{{Role: Title, ID: "trouble-causes", Text: w.Say("trouble-causes")}}
	share := func(p float64) string { return unit.PercentText(wholePercent(p), 0) }
	for i := range t.Found.Causes {
		c := &t.Found.Causes[i]
		if i >= 3 && c.P < leastShown {
			break
		}
		row := Row{Role: Value, About: "cause", ID: c.ID, Name: share(c.P), Text: w.Text(sys, "name-cause-"+c.ID, nil)}
		row.More = t.Because(w, sys, c)
		rows = append(rows, row)
	}
	return append(rows, Row{Role: Value, About: "cause", ID: "none", Name: share(t.Found.None), Text: w.Say("trouble-none")})
}

// Because is what of the setup and the line speaks for a cause, and what against, empty where
// nothing does.
func (t *Trouble) Because(w *words.Words, sys unit.System, c *trouble.Ranked) (text string) {
	add := func(id string, f calc.Figures) {
		if text != "" {
			text += " "
		}
		text += w.Text(sys, id, f)
	}
	for _, f := range c.Raised {
		add("fact-"+f.ID, f.Figures)
	}
	for _, f := range c.Lowered {
		add("trouble-against", calc.Figures{calc.TextFigure("fact", w.Text(sys, "fact-"+f.ID, f.Figures))})
	}
	for _, odd := range c.Odd {
		if odd.Now <= odd.Prior {
			continue // its readings speak against it
		}
		add("fact-odd", calc.Figures{calc.TextFigure("part", odd.Part), calc.FigureOf("now", calc.FigureShare, wholePercent(odd.Now))})
	}
	return text
}

// MoveRows is what mends the likeliest cause, and what the settings come to with that done.
func (t *Trouble) MoveRows(w *words.Words, sys unit.System) []Row {
	o := &speaker{words: w, sys: sys}
	o.add(Row{Role: Title, ID: "trouble-do", Text: o.say("trouble-do")})
	o.add(t.MoveText(w, sys)...)
	if t.Resolved() {
		o.block(t.afterRows(o)...)
	}
	return o.rows
}

// MoveText is what mends the likeliest cause, and what that comes to on this job.
func (t *Trouble) MoveText(w *words.Words, sys unit.System) []Row {
	o := &speaker{words: w, sys: sys}
	c := t.Likeliest()
	remark := func(text string) { o.add(Row{Role: Remark, About: "move", ID: c.ID, Text: text}) }
	remark(o.say("move-cause-"+c.ID, calc.FigureOf("step", calc.FigureDrop, trouble.Step), calc.FigureOf("near", calc.FigureDistance, trouble.Nearer)))
	t.ofJob(o, c, remark)
	for _, f := range t.Found.Still() {
		remark(o.say("trouble-still", calc.TextFigure("fact", o.say("fact-"+f.ID, f.Figures...))))
	}
	return o.rows
}

// Resolved reports whether the settings were worked out again for the move.
func (t *Trouble) Resolved() bool {
	after := t.Found.After
	return after != nil && after.Setup != t.Found.Job.Setup && !after.Setup.Stopped()
}

// ofJob says what a move comes to on this job, where that is more than its sentence.
func (t *Trouble) ofJob(o *speaker, c *trouble.Ranked, remark func(string)) {
	j := t.Found.Job
	if turn, ok := t.Found.Turn(); ok {
		remark(TurnText(o.words, o.sys, turn))
	}
	switch {
	case j.Setup != nil && (c.Move == trouble.MoveLower || c.Move == trouble.MoveRaise):
		t.pressed(o, c, remark)
	case c.Move == trouble.MoveThin && j.Timed != nil && j.Timed.Remedy != calc.RemedyNone:
		remark((&Thin{j.Mix, j.Timed}).Advice(o.words, o.sys))
	case c.Move == trouble.MoveFilm && j.Laid != nil && j.Laid.Left > 0:
		remark(o.say("trouble-film", calc.FigureOf("wet", calc.FigureFilm, j.Laid.Each.Wet), calc.FigureOf("dry", calc.FigureFilm, j.Laid.Each.Dry)))
	case c.Move == trouble.MoveDistance && j.Setup != nil:
		d := &j.Setup.Distance
		remark(o.say("trouble-held", calc.FigureOf("target", calc.FigureDistance, d.Target), calc.FigureOf("low", calc.FigureDistance, d.Low), calc.FigureOf("high", calc.FigureDistance, d.High)))
	case c.Move == trouble.MoveGrade && j.Setup != nil:
		remark(o.say("trouble-grade", calc.SentenceFigure("wants", "grade-"+string(j.Wanted()))))
	case c.Move == trouble.MoveLine && j.Setup != nil && len(j.Setup.Fixes) > 0:
		remark(FixRows(o.words, o.sys, j.Setup.Fixes[:1])[0].Text)
	}
}

// pressed says what the plan sets, and where it leaves no room for a step beyond that.
func (t *Trouble) pressed(o *speaker, c *trouble.Ranked, remark func(string)) {
	r, s := t.Found.Job.Request, t.Found.Job.Setup
	if s.Stopped() || s.Short.Is {
		return
	}
	working := calc.FigureOf("working", calc.FigureGauge, s.Working.Pressure)
	remark(o.say("trouble-planned", calc.FigureOf("wall", calc.FigureGauge, s.Wall.Flowing), calc.RegulatorFigure(r.RegulatorAt()), working))
	switch {
	case t.Found.After != nil:
	case c.Move == trouble.MoveRaise:
		remark(o.say("trouble-most", working))
	default:
		remark(o.say("trouble-least", working))
	}
}

// afterRows is the settings with the move made, and what they were.
func (t *Trouble) afterRows(o *speaker) []Row {
	before, after := t.Found.Job, t.Found.After
	title, by := "trouble-after", after.Setup.Working.Wanted-before.Setup.Working.Wanted
	switch {
	case t.Likeliest().Move == trouble.MoveLower && by < 0:
		title = "trouble-after-lower"
	case t.Likeliest().Move == trouble.MoveRaise && by > 0:
		title = "trouble-after-raise"
	}
	rows := []Row{{Role: Title, ID: title, Text: o.say(title, calc.FigureOf("step", calc.FigureDrop, max(by, -by)))}}
	rows = append(rows, (&Plan{Request: after.Request, Setup: after.Setup}).settings(o)...)
	s, wall := before.Setup, before.Setup.Wall.Flowing
	if s.Now.Given {
		wall = s.Now.Wall
	}
	if !s.Stopped() && (wall != after.Setup.Wall.Flowing || s.Distance.Target != after.Setup.Distance.Target) {
		rows = append(rows, Row{Role: Remark, About: "move", ID: "trouble-before", Text: o.say("trouble-before", calc.FigureOf("wall", calc.FigureGauge, wall), calc.FigureOf("distance", calc.FigureDistance, s.Distance.Target))})
	}
	return rows
}

// WetRows is what to do with the panel as it is, none where nothing is on one.
func (t *Trouble) WetRows(w *words.Words) (rows []Row) {
	for _, id := range t.Request.Signs {
		wet := signs.Book().Sign(id).Wet
		if wet == "" || slices.ContainsFunc(rows, func(r Row) bool { return r.ID == "wet-"+wet }) {
			continue
		}
		if len(rows) == 0 {
			rows = append(rows, Row{Role: Title, ID: "trouble-wet", Text: w.Say("trouble-wet")})
		}
		rows = append(rows, Row{Role: Remark, About: "panel", ID: "wet-" + wet, Text: w.Say("wet-" + wet)})
	}
	if len(rows) > 0 {
		rows = append(rows, Row{Role: Remark, About: "panel", ID: "wet-sheet", Text: w.Say("wet-sheet")})
	}
	return rows
}
