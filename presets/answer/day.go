package answer

import (
	"time"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// Day is what the day does to a coat.
type Day struct {
	Request *calc.DayRequest
	Found   *calc.DayAnswer
}

// Stopped reports whether the coat must not be sprayed as things stand.
func (d *Day) Stopped() bool { return d.Found.Stopped() }

// Reasons is why the day is as it is.
func (d *Day) Reasons() []calc.Reason { return d.Found.Reasons }

// Cautions is what is to be known before spraying.
func (d *Day) Cautions() []calc.Caution { return d.Found.Cautions }

// Rows is all that is said of the day.
func (d *Day) Rows(w *words.Words, sys unit.System) []Row {
	r, a := d.Request, d.Found
	o := &speaker{words: w, sys: sys}
	o.verdict(&a.Judgement, DayGoes)
	o.heading(o.say("day-heading", calc.TextFigure("coat", r.Coat.Name), calc.FigureOf("air", calc.FigureTemp, r.Air), calc.FigureOf("humidity", calc.FigureShare, r.Humidity),
		calc.FigureOf("panel", calc.FigureTemp, r.Panel), calc.FigureOf("paint", calc.FigureTemp, r.Paint)))
	all := []Row{{Role: Value, About: "dew", Name: o.say("label-dew"), Text: sys.Temp(a.DewPoint, unit.Usual), More: d.margin(o)}}
	if r.Coat.Dries() {
		length, beside := d.flash(o)
		all = append(all, Row{Role: Value, About: "flash", Name: o.say("label-flash"), Text: length, More: beside},
			Row{Role: Value, About: "grade", Name: o.say(d.gradeLabel()), Text: o.say("grade-" + string(a.Grade))})
	}
	if pot := &a.PotLife; pot.Known {
		more := ""
		if r.HasStarted {
			more = o.say("day-ends", calc.FigureOf("ends", calc.FigureClock, time.Duration(pot.Ends).Seconds()))
		}
		all = append(all, Row{Role: Value, About: "pot-life", Name: o.say("label-pot-life"), Text: o.about(true, w.Minutes(pot.Life)), More: more})
	}
	o.block(all...)
	o.cautions(a.Cautions)
	o.why(a.Reasons)
	return o.rows
}

// flash is how long flash-off takes, and beside what.
func (d *Day) flash(o *speaker) (length, beside string) {
	id, than, f := calc.FlashOff(d.Found.Flash)
	length = o.say(id, f...)
	if d.Found.Flash >= coat.LongestFlash {
		length = o.say("day-flash-or-more", calc.TextFigure("length", length))
	} else {
		length = o.about(true, length)
	}
	return length, o.say(than, f...)
}

// margin is where the panel is against the dew point.
func (d *Day) margin(o *speaker) string {
	m, id := d.Found.PanelMargin, "day-panel-above"
	if m < 0 {
		m, id = -m, "day-panel-below"
	}
	return o.say(id, calc.FigureOf("margin", calc.FigureTempDiff, m), calc.FigureOf("least", calc.FigureTempDiff, calc.LeastPanelMargin))
}

// gradeLabel names what has the speed: what the coat is let down and hardened with.
func (d *Day) gradeLabel() string {
	if d.Request.Coat.Waterborne {
		return "label-reducer"
	}
	return "label-thinner"
}
