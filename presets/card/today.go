package card

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/shop"
	"boothset/presets/words"
)

// Today is what was agreed on for a job, against what it comes to today.
type Today struct {
	Standing []*shop.Setting // several are twins, none: nothing was agreed on
	Band     shop.Band       // of the first
	Plan     *answer.Plan
	Changes  []shop.Change // of the line and the gun since then
	Apart    []calc.Apart  // what makes the wall of today stand above the one agreed on, where Known
	Known    bool
}

// TodayOf holds a plan in a booth to what stands for it there: for the band of its day, else for
// another.
func TodayOf(f *shop.Folder, booth string, p *answer.Plan) (*Today, []*shop.Fault) {
	bands, faults := f.Bands()
	settings, more := f.Settings(booth)
	return TodayIn(bands, settings, p), append(faults, more...)
}

// TodayIn is TodayOf of what was read before: the bands, and all that was agreed on in the booth.
func TodayIn(bands []shop.Band, settings []*shop.Setting, p *answer.Plan) *Today {
	q := p.Request
	t := &Today{Standing: shop.AgreedFor(shop.Standing(settings), shop.SubjectOf(q, bands), bands), Plan: p}
	if len(t.Standing) == 0 {
		return t
	}
	s := t.Standing[0]
	t.Band = shop.BandNamed(bands, s.Band)
	t.Changes = s.Since(q)
	if !p.Stopped() && !p.Setup.Short.Is {
		t.Apart, t.Known = s.Today(q, p.Setup)
	}
	return t
}

// Rows is what was agreed and today's answer, and why they differ; none of a nil one.
func (t *Today) Rows(w *words.Words, sys unit.System) []answer.Row {
	if t == nil {
		return nil
	}
	say := func(role answer.Role, id string, f ...calc.Figure) answer.Row {
		return answer.Row{Role: role, About: answer.AboutWall, ID: id, Text: w.Text(sys, id, f)}
	}
	var rows []answer.Row
	switch {
	case len(t.Standing) == 0:
		rows = append(rows, say(answer.Heading, "agreed-none"))
	case len(t.Standing) > 1:
		rows = append(rows, say(answer.Heading, "agreed-twins"))
	case t.Plan.Stopped():
		rows = append(rows, say(answer.Heading, "agreed-stopped", t.figures(w)...))
	default:
		rows = append(rows, say(answer.Title, "agreed-today", t.figures(w)...))
		for _, x := range t.Apart {
			rows = append(rows, say(answer.Remark, "agreed-by-"+x.Of, append(t.figures(w), answer.By(x.By), answer.Way(x.By))...))
		}
		if len(t.Apart) == 0 {
			id := "agreed-unknown"
			if t.Known {
				id = "agreed-same"
			}
			rows = append(rows, say(answer.Remark, id))
		}
		for _, x := range t.Changes {
			id := "agreed-void"
			if x.Values {
				id = "agreed-older"
			}
			rows = append(rows, say(answer.Remark, id, calc.TextFigure("was", x.Was.Text()), calc.TextFigure("is", x.Is.Text())))
		}
	}
	rows[0].Begins = true
	return rows
}

func (t *Today) figures(w *words.Words) []calc.Figure {
	s, day := t.Standing[0], &t.Plan.Request.Day
	return []calc.Figure{
		calc.FigureOf("wall", calc.FigureGauge, s.Values.Wall), calc.FigureOf("today", calc.FigureGauge, t.Plan.Setup.Wall.Flowing), calc.TextFigure("band", t.Band.Called(w)),
		calc.FigureOf("airThen", calc.FigureTemp, s.Worked.Air), calc.FigureOf("humidityThen", calc.FigureShare, s.Worked.Humidity),
		calc.FigureOf("air", calc.FigureTemp, day.Air), calc.FigureOf("humidity", calc.FigureShare, day.Humidity),
	}
}
