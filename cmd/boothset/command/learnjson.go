package command

import (
	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/spread"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/words"
)

// appendLearn appends what readings say of a line into an open object.
func appendLearn(j *jsonWriter, l *answer.Learn, sys unit.System, w *words.Words) {
	a := l.Found
	head := l.Headline(w, sys)
	j.text("end", head.ID)
	j.text("text", head.Text)
	appendRows(j, "do", l.MoveRows(w))
	j.count("readings", len(l.Request.Readings))
	gauges := func(name string, r spread.GaugeRange) {
		j.object(name, func() {
			j.gauge("low", r.Low)
			j.gauge("high", r.High)
		})
	}
	j.object("wall", func() {
		j.gauge("flowing", l.Found.Set)
		j.gauge("was", a.Setup.Wall.Flowing)
	})
	gauges("wall_range", a.Sure.Wall)
	gauges("wall_range_was", a.Taken.Wall)
	gauges("static_range", a.Sure.Static)
	gauges("gun_open", a.Gets)
	j.object("opening", func() {
		j.number("low", a.Sure.Opening.Low)
		j.number("high", a.Sure.Opening.High)
	})
	j.number("falls_short", a.Sure.Short)
	j.bool("as_described", a.AsDescribed)
	reads := func(name string, r spread.Range) {
		j.object(name, func() {
			j.drop("low", unit.Drop(r.Low))
			j.drop("high", unit.Drop(r.High))
		})
	}
	reads("wall_gauge_reads_high", a.Wall)
	if l.Request.Plan.Gauge == calc.NoGauge {
		j.null("gun_gauge_reads_high")
	} else {
		reads("gun_gauge_reads_high", a.Gun)
	}
	j.number("nothing_odd", a.Nothing)
	j.array("pieces", func() {
		for i := range a.Pieces {
			if l.Spare(i) {
				continue
			}
			j.object("", func() {
				j.text("piece", a.Pieces[i].ID)
				j.text("name", l.Called(w, i))
				j.number("odd", a.Odd[i])
				if bore := l.Bore(i); bore > 0 {
					j.near("bore", bore)
				} else {
					j.null("bore")
				}
			})
		}
	})
	appendUntold(j, l, sys, w)
	j.array("next", func() {
		for i := range a.Next {
			x := &a.Next[i]
			j.object("", func() {
				j.text("reading", x.Kind.String())
				appendPiece(j, a, &x.Option)
				j.number("minutes", x.Minutes)
				j.gauge("wall", x.Shows[0].Pressure)
				j.drop("wall_range_after", x.Wall)
				j.number("settles", a.Settles(x))
				j.text("text", l.Do(w, sys, &x.Option))
			})
		}
	})
	j.count("draws", l.Request.Draws)
	j.number("draws_counting", a.Counting)
}

// appendLearnt appends what a plan's line is taken as by its own readings, null where there are
// none of it.
func appendLearnt(j *jsonWriter, p *answer.Plan, sys unit.System, w *words.Words) {
	row, ok := p.LearntRow(w, sys)
	if !ok {
		j.null("learnt")
		return
	}
	x := p.Request.Learnt
	j.object("learnt", func() {
		j.text("told", string(x.Told))
		j.count("readings", x.Readings)
		j.count("elsewhere", x.Elsewhere)
		j.drop("wall_gauge_reads_high", x.Middle.WallGauge)
		j.drop("gun_gauge_reads_high", x.Middle.GunGauge)
		j.array("odd", func() {
			for i := range x.Odd {
				j.object("", func() {
					j.text("part", x.Odd[i].Name)
					if x.Odd[i].Bore > 0 {
						j.near("bore", x.Odd[i].Bore)
					} else {
						j.null("bore")
					}
				})
			}
		})
		j.text("text", row.Text)
	})
}

func appendPiece(j *jsonWriter, a *learn.Answer, o *learn.Option) {
	if o.Piece < 0 {
		j.null("piece")
		return
	}
	j.text("piece", a.Pieces[o.Piece].ID)
}

// appendUntold appends what cannot be told yet, and which readings cannot both be right.
func appendUntold(j *jsonWriter, l *answer.Learn, sys unit.System, w *words.Words) {
	a := l.Found
	j.array("untold", func() {
		for i := range a.Untold {
			u := &a.Untold[i]
			j.object("", func() {
				j.array("pieces", func() {
					for _, k := range u.Pieces {
						if j.key("") {
							j.b = appendText(j.b, a.Pieces[k].ID)
						}
					}
				})
				j.text("why", u.Why.String())
				j.text("text", l.Untold(w, sys, u))
			})
		}
	})
	j.array("contradictions", func() {
		for _, c := range a.Contradictions {
			j.object("", func() {
				j.count("first", c.First+1)
				j.count("second", c.Second+1)
				j.drop("apart", c.Apart)
			})
		}
	})
}
