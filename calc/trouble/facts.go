package trouble

import (
	"slices"

	"boothset/calc"
	"boothset/calc/supply"
	"boothset/calc/unit"
)

// From where on the setup's figures say something of a cause. Judgement, but for the day's,
// which are those of its verdict.
const (
	wallOver   = unit.Drop(3 * unit.PascalPerPSI)  // above what is advised
	lossSmall  = unit.Drop(6 * unit.PascalPerPSI)  // of the line with the valve open: it carries
	lossLarge  = unit.Drop(10 * unit.PascalPerPSI) // it starves a gun whose wall is set by habit
	lossHuge   = unit.Drop(20 * unit.PascalPerPSI)
	dewSpare   = unit.TempDiff(2) // above the least margin that a panel may have
	dewFar     = unit.TempDiff(8) // of the panel above the dew point: no water on it
	dampAir    = 0.80             // blushing begins here (FAA-H-8083-31, chapter 8)
	notHot     = unit.Temp(30 + unit.ZeroCelsius)
	filmTooFar = 1.3 // times the thickest that one coat may be
)

// facts gathers what the figures say.
type facts []Fact

// add adds a fact that counts one step near its bound, and two past it.
func (f *facts) add(id string, past bool, figures ...calc.Figure) {
	steps := 1
	if past {
		steps = 2
	}
	*f = append(*f, Fact{ID: id, Steps: steps, Figures: figures})
}

// Facts is what the job's own figures say of the causes; without a setup those of mix and film
// alone.
func (j *Job) Facts() []Fact {
	f := new(facts)
	if j.Setup != nil {
		j.wall(f)
		j.line(f)
		j.supply(f)
		j.day(f)
		j.held(f)
		j.grade(f)
	}
	j.mix(f)
	j.film(f)
	return *f
}

// wall is what the wall as it stands says, beside what it is advised to be.
func (j *Job) wall(f *facts) {
	s := j.Setup
	now := &s.Now
	if !now.Given || s.Short.Is {
		return
	}
	stands, advised := calc.FigureOf("wall", calc.FigureGauge, now.Wall), calc.FigureOf("advised", calc.FigureGauge, s.Wall.Flowing)
	over := unit.Drop(now.Wall - s.Wall.Flowing)
	tight := !s.Valve.None && now.Enough && (now.Choked || now.Opening < s.Valve.Floor)
	switch {
	case !now.Enough:
		f.add("wall-low", true, stands, advised, calc.FigureOf("gets", calc.FigureGauge, now.GunIfOpen))
	case over > wallOver:
		f.add("wall-high", now.GunIfOpen > s.Working.Highest, stands, advised, calc.FigureOf("gets", calc.FigureGauge, now.GunIfOpen))
	case !tight:
		f.add("wall-fits", false, stands, advised)
	}
	if tight && over > 0 {
		f.add("valve-tight", now.Choked, stands, s.Valve.Knob("valve", now.Opening), calc.FigureOf("opening", calc.FigureShare, now.Opening))
	}
}

// line is what the line loses on its way to the open gun.
func (j *Job) line(f *facts) {
	s := j.Setup
	part := calc.TextFigure("part", s.Line[s.Bottleneck].Name)
	if s.Short.Is {
		f.add("line-short", true, part, calc.FigureOf("best", calc.FigureGauge, s.Short.Best), calc.FigureOf("working", calc.FigureGauge, s.Working.Pressure))
		return
	}
	loss := unit.Drop(s.Wall.Open - s.Working.Pressure)
	figure := calc.FigureOf("loss", calc.FigureDrop, loss)
	switch {
	case loss >= lossLarge:
		f.add("line-loses", loss >= lossHuge, part, figure)
	case loss <= lossSmall && !j.read:
		f.add("line-carries", false, figure)
	}
}

// supply is whether the shop's air lasts, and whether water comes with it.
func (j *Job) supply(f *facts) {
	c := &j.Setup.Supplied
	if !c.Checked {
		return
	}
	if c.Verdict.OK {
		f.add("supply-lasts", false)
	} else {
		f.add("supply-short", true, calc.FigureOf("lowest", calc.FigureGauge, c.Verdict.Lowest), calc.FigureOf("needed", calc.FigureGauge, c.Needed))
	}
	if c.Water.Last == supply.AtHose {
		f.add("water-in-hose", true, calc.FigureOf("dew", calc.FigureTemp, c.Water.AtWall))
	} else {
		f.add("dry-line", false, calc.FigureOf("dew", calc.FigureTemp, c.Water.AtWall))
	}
}

// against is whether something speaks against spraying, by one of its ids.
func (j *Job) against(ids ...string) bool {
	return slices.ContainsFunc(j.Setup.Against, func(c calc.Cause) bool { return slices.Contains(ids, c.ID) })
}

// day is what the verdict on the day rests on, and what lies near it.
func (j *Job) day(f *facts) {
	w, d := &j.Setup.Weather, &j.Request.Day
	margin := calc.FigureOf("margin", calc.FigureTempDiff, w.PanelMargin)
	switch {
	case w.PanelMargin < calc.LeastPanelMargin+dewSpare:
		f.add("near-dew", j.against("dew-near", "dew-on-panel"), margin, calc.FigureOf("dew", calc.FigureTemp, w.DewPoint))
	case w.PanelMargin > dewFar:
		f.add("dry-panel", false, margin)
	}
	if d.Humidity >= dampAir {
		f.add("damp-air", j.against("damp"), calc.FigureOf("humidity", calc.FigureShare, d.Humidity))
	}
	if j.against("cold", "cold-panel", "cold-paint") {
		f.add("too-cold", true, calc.FigureOf("air", calc.FigureTemp, min(d.Air, d.Panel)))
	} else {
		f.add("warm-enough", false, calc.FigureOf("air", calc.FigureTemp, min(d.Air, d.Panel)))
	}
	panel := calc.FigureOf("panel", calc.FigureTemp, max(d.Air, d.Panel))
	switch {
	case j.against("hot-air", "hot-panel"):
		f.add("too-hot", true, panel)
	case d.Panel < notHot:
		f.add("not-hot", false, panel)
	}
	if j.against("lands-drier", "lands-dry") && !j.mended() {
		f.add("lands-dry", j.against("lands-dry"), calc.FigureOf("drier", calc.FigureTimes, w.InFlight.Drier))
	}
}

// mended is whether a thinner that was slowed takes enough off what is lost on the way.
func (j *Job) mended() bool {
	at := slices.IndexFunc(j.Setup.Weather.InFlight.Levers, func(l calc.Lever) bool { return l.ID == "lever-thinner" })
	if !j.slower || at < 0 {
		return false
	}
	in := &j.Setup.Weather.InFlight
	return calc.LandingVerdict(in.Drier*(1-in.Levers[at].Less)) == calc.VerdictGo
}

// held is how far from the panel the gun is held, beside where it should be.
func (j *Job) held(f *facts) {
	if j.Held == 0 {
		return
	}
	d := &j.Setup.Distance
	figures := []calc.Figure{calc.FigureOf("held", calc.FigureDistance, j.Held), calc.FigureOf("target", calc.FigureDistance, d.Target)}
	switch {
	case j.Held > d.High:
		f.add("held-far", j.Held > d.High+Nearer, figures...)
	case j.Held < d.Low:
		f.add("held-near", j.Held < d.Low-Nearer, figures...)
	default:
		f.add("held-right", false, figures...)
	}
}

// grade is how fast the thinner is, beside what the day wants.
func (j *Job) grade(f *facts) {
	is, wants := slices.Index(grades, j.Grade), slices.Index(grades, j.Wanted())
	if is < 0 {
		return
	}
	figures := []calc.Figure{calc.SentenceFigure("is", "grade-"+string(j.Grade)), calc.SentenceFigure("wants", "grade-"+string(j.Wanted()))}
	switch {
	case is < wants:
		f.add("grade-fast", wants-is > 1, figures...)
	case is > wants:
		f.add("grade-slow", is-wants > 1, figures...)
	default:
		f.add("grade-fits", false, figures...)
	}
}

// mix is what a cup says of the mix.
func (j *Job) mix(f *facts) {
	if j.Timed == nil {
		return
	}
	figures := []calc.Figure{calc.FigureOf("seconds", calc.FigureCup, j.Mix.Reading.Seconds), calc.FigureOf("low", calc.FigureCup, j.Timed.Wanted.Low.Seconds), calc.FigureOf("high", calc.FigureCup, j.Timed.Wanted.High.Seconds)}
	switch j.Timed.Remedy {
	case calc.RemedyNone:
		f.add("mix-in", false, figures...)
	case calc.RemedyCool, calc.RemedyUnthinned:
		f.add("mix-under", true, figures...)
	default:
		f.add("mix-over", true, figures...)
	}
}

// film is what the combs say of a coat, beside what one may be.
func (j *Job) film(f *facts) {
	if j.Laid == nil || len(j.Laid.Laid) == 0 || j.Film.Usual.Coats == 0 {
		return
	}
	one, u := j.Laid.Laid[len(j.Laid.Laid)-1].Middle(), &j.Film.Usual
	figures := []calc.Figure{calc.FigureOf("dry", calc.FigureFilm, one), calc.FigureOf("low", calc.FigureFilm, u.Low), calc.FigureOf("high", calc.FigureFilm, u.High)}
	switch {
	case one > u.High:
		f.add("film-over", one > filmTooFar*u.High, figures...)
	case one < u.Low:
		f.add("film-under", one < u.Low/filmTooFar, figures...)
	default:
		f.add("film-in", false, figures...)
	}
}
