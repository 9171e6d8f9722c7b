package command

import (
	"time"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

func dayQuestion() question {
	return question{
		name: "day", brief: "brief-day",
		help: help{intro: "day-intro", schema: "boothset.day/1", examples: []string{
			"boothset day --coat clear --temp 75F --humidity 45",
			"boothset day --coat clear --temp 75F --humidity 60 --panel 66F --pot-life 4h --started 14:30",
		}},
		fields: presets.DayFields(),
		ask:    asks((*presets.Catalogue).Day, calc.SolveDay, func(r *calc.DayRequest, a *calc.DayAnswer) reply { return &dayReply{r, a} }),
	}
}

type dayReply struct {
	r *calc.DayRequest
	a *calc.DayAnswer
}

func (d *dayReply) stopped() bool { return d.a.Stopped() }

// turn is the sentence of what turns the day.
func (d *dayReply) turn(sys unit.System, w *words.Words) string {
	t := &d.a.Remedy
	if t.ID == "" {
		return w.Text(sys, "turn-none", nil)
	}
	return w.Text(sys, t.Sentence(), t.Figures())
}

func (d *dayReply) print(p *printer) {
	r, a := d.r, d.a
	p.paragraph(p.say("day-heading", said("coat", r.Coat), calc.FigureOf("air", calc.FigureTemp, r.Air), calc.FigureOf("humidity", calc.FigureShare, r.Humidity),
		calc.FigureOf("panel", calc.FigureTemp, r.Panel), calc.FigureOf("paint", calc.FigureTemp, r.Paint)))
	p.line("")
	p.hang("  "+p.say("verdict-"+string(a.Verdict)), d.turn(p.sys, p.words))
	p.line("")
	all := []row{
		{p.say("label-dew"), p.sys.Temp(a.DewPoint, unit.Usual), d.margin(p)},
		{p.say("label-flash"), d.flash(p), p.say("day-flash-of")},
		{p.say(d.gradeLabel()), p.say("grade-" + string(a.Grade)), ""},
	}
	if pot := &a.PotLife; pot.Known {
		more := ""
		if r.HasStarted {
			more = p.say("day-ends", calc.FigureOf("ends", calc.FigureClock, time.Duration(pot.Ends).Seconds()))
		}
		all = append(all, row{p.say("label-pot-life"), p.about(true, p.words.Minutes(pot.Life)), more})
	}
	p.rows(leastValue, all...)
	p.line("")
	p.cautions(a.Cautions)
	p.line("")
	p.reasons(a.Reasons)
}

// flash is how long flash-off takes.
func (d *dayReply) flash(p *printer) string {
	times := calc.FigureOf("times", calc.FigureTimes, d.a.Flash)
	if d.a.Flash >= coat.LongestFlash {
		return p.say("day-flash-or-more", times)
	}
	return p.about(true, p.say("day-flash", times))
}

// margin is where the panel is against the dew point.
func (d *dayReply) margin(p *printer) string {
	m, id := d.a.PanelMargin, "day-panel-above"
	if m < 0 {
		m, id = -m, "day-panel-below"
	}
	return p.say(id, calc.FigureOf("margin", calc.FigureTempDiff, m), calc.FigureOf("least", calc.FigureTempDiff, calc.LeastPanelMargin))
}

// gradeLabel names what has the speed: what the coat is let down and hardened with.
func (d *dayReply) gradeLabel() string {
	if d.r.Waterborne {
		return "label-reducer"
	}
	return "label-thinner"
}

func (d *dayReply) appendJSON(j *jsonWriter, sys unit.System, w *words.Words) {
	r, a := d.r, d.a
	j.object("input", func() {
		j.text("coat", r.CoatID)
		j.temp("temp", r.Air)
		j.number("humidity", r.Humidity)
		j.temp("panel", r.Panel)
		j.temp("paint", r.Paint)
		j.run("altitude", r.Altitude)
		j.count("panels", r.Panels)
		j.text("units", systemName(sys))
	})
	j.text("verdict", string(a.Verdict))
	d.appendTurn(j, sys, w)
	j.temp("dew_point", a.DewPoint)
	j.temp("wet_bulb", a.WetBulb)
	j.degrees("panel_margin", a.PanelMargin)
	j.number("drying", a.Drying)
	j.object("flash_off", func() {
		j.number("factor", a.Flash)
		j.bool("or_more", a.Flash >= coat.LongestFlash)
	})
	j.text("grade", string(a.Grade))
	d.appendPotLife(j)
	appendWords(j, a.Reasons, a.Cautions, sys, w)
}

// appendTurn appends what turns the day, null on a day that goes.
func (d *dayReply) appendTurn(j *jsonWriter, sys unit.System, w *words.Words) {
	t := &d.a.Remedy
	if t.ID == "" {
		j.null("turn")
		return
	}
	j.object("turn", func() {
		j.text("id", t.ID)
		j.text("text", d.turn(sys, w))
		j.temp("to", t.To)
		j.degrees("by", t.By)
		if t.Least > 0 {
			j.temp("least", t.Least)
		}
		j.number("humidity", t.Humidity)
		j.number("drying", t.Drying)
		if t.Lift > 0 {
			j.number("lift", t.Lift)
		}
	})
}

// appendPotLife appends the pot life, null where none was given or can be told.
func (d *dayReply) appendPotLife(j *jsonWriter) {
	p := &d.a.PotLife
	if !p.Known {
		j.null("pot_life")
		return
	}
	j.object("pot_life", func() {
		j.number("sheet_s", d.r.PotLife.Seconds())
		j.temp("at", p.At)
		j.number("life_s", p.Life.Seconds())
		j.number("safe_s", p.Safe.Seconds())
		j.number("last_fill_s", p.LastFill.Seconds())
		if d.r.HasStarted {
			appendClock(j, "started", d.r.Started)
			appendClock(j, "fill_by", p.FillBy)
			appendClock(j, "ends", p.Ends)
		}
	})
}

// appendClock appends a time of day, with how many days on it is.
func appendClock(j *jsonWriter, name string, c calc.Clock) {
	const day = 24 * time.Hour
	at := time.Duration(c).Round(time.Minute)
	j.object(name, func() {
		j.text("clock", time.Time{}.Add(at).Format("15:04"))
		j.count("days_on", int(at/day))
	})
}
