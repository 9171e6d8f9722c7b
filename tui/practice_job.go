package tui

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/practice"
)

// The fields of the page that asks what a job is set to, by their sentences.
const (
	guessVerdict  = "guess-verdict"
	guessWall     = "guess-wall"
	guessClosed   = "guess-closed" // turns of the valve, as its knob is counted
	guessOpened   = "guess-opened"
	guessDistance = "guess-distance"
)

// nextJob is the page of the next job; nil where there is none.
func (d *drill) nextJob() page {
	j := d.Deck.Job()
	if j == nil {
		return nil
	}
	p := newEntryPage(d.s, "guess", "guess-title", "do-judge")
	p.fill = func() {
		if p.all == nil {
			p.all = d.guessBoxes(j)
		}
	}
	p.words, p.least = practiceWords, 2
	p.over = func(w int) []string { return d.s.jobRows(j, w) }
	p.enough = func() bool { return !practice.Sprays(guessed(p)) }
	p.take = func() (move, string) {
		judged, fault := d.judge(p, j)
		if fault != "" {
			return nil, fault
		}
		return func(r *root) {
			d.learned(r, d.judgedPage(j, judged), func(of *practice.Record) { of.Judged(j, judged) })
		}, ""
	}
	return p
}

// guessBoxes is the fields of a job: its verdict, and what is set where it is sprayed.
func (d *drill) guessBoxes(j *practice.Job) []box {
	var verdicts []catalogue.Choice
	for v := calc.VerdictGo; v <= calc.VerdictStop; v++ {
		verdicts = append(verdicts, d.s.choice(v.String(), "verdict-"+v.String()))
	}
	all := []box{entryBox(guessVerdict, verdicts)}
	for _, of := range j.Asks() {
		all = append(all, entryBox(settingField(j, of), nil))
	}
	return all
}

// settingField is the field that a setting is asked for by.
func settingField(j *practice.Job, of practice.Setting) string {
	switch {
	case of == practice.Wall:
		return guessWall
	case of == practice.Distance:
		return guessDistance
	case j.Setup.Valve.CountsFromShut:
		return guessOpened
	}
	return guessClosed
}

// guessed is the verdict that is marked.
func guessed(p *entryPage) calc.Verdict {
	return calc.Verdict(p.all[0].picked) // its choices are the verdicts, in their order
}

// judge reads what was entered and judges it, or says which field will not do.
func (d *drill) judge(p *entryPage, j *practice.Job) (*practice.Judged, string) {
	g := practice.Guess{Verdict: guessed(p)}
	if !practice.Sprays(g.Verdict) {
		return j.Judge(g), ""
	}
	for _, of := range j.Asks() {
		name := settingField(j, of)
		if fault := j.Read(&g, of, p.text(name), d.s.sys); fault != nil {
			p.at = slices.IndexFunc(p.all, func(b box) bool { return b.Name == name })
			return nil, d.s.text("guess-missing", calc.TextFigure("field", p.label(&p.all[p.at])), calc.TextFigure("want", fault.Want()))
		}
	}
	return j.Judge(g), ""
}

// jobRows is a job as it is given: what is sprayed, with what, on which day, down which line.
func (s *session) jobRows(j *practice.Job, w int) (rows []string) {
	r := j.Request
	add := func(label, text string) {
		rows = append(rows, hang(s.theme.Title.Render(s.say(label))+" ", plain(text), w)...)
	}
	coat := r.Coat.Name
	if stage := j.StageName(s.words); len(r.Stages) > 1 {
		coat += ", " + stage
	}
	gun := "guess-gun-rated"
	if r.Gauge == calc.NoGauge {
		gun = "guess-gun-gauge"
	}
	day := "guess-day-at"
	if r.Day.Altitude > 0 {
		day = "guess-day-high"
	}
	add("guess-coat", coat)
	add("guess-gun", s.text(gun, calc.TextFigure("gun", r.Gun.Name), calc.BriefFigure("inlet", calc.FigureGauge, r.Gun.Stamp.Inlet), calc.BriefFigure("flow", calc.FigureFlow, r.Gun.Stamp.Flow)))
	add("guess-day", s.text(day, calc.FigureOf("air", calc.FigureTemp, r.Day.Air), calc.FigureOf("humidity", calc.FigureShare, r.Day.Humidity),
		calc.FigureOf("panel", calc.FigureTemp, r.Day.Panel), calc.FigureOf("altitude", calc.FigureRun, r.Day.Altitude)))
	add("guess-air", s.text("guess-air-at", calc.BriefFigure("supply", calc.FigureGauge, r.Supply)))
	add("guess-line", j.Booth.Name+": "+strings.Join(s.partNames(j), ", "))
	return rows
}

// partNames is the parts of a job's line, in the order air meets them, hoses with their size.
func (s *session) partNames(j *practice.Job) (names []string) {
	for i := range j.Request.Line {
		p := &j.Request.Line[i]
		name := p.Name
		if p.Kind == line.HoseKind {
			name += " (" + unit.Run.Text(s.sys, float64(p.Hose.Length), unit.Usual) + ", " + unit.Bore.Text(s.sys, float64(p.Hose.Bore), unit.Usual) + ")"
		}
		names = append(names, name)
	}
	return names
}
