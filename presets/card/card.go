// Package card is the card of a job, to be put up beside the booth's door: the rows of a plan
// that are wanted there, what was agreed on for the booth, the check at the gun, and the two
// pictures that are drawn from the same numbers. Package print puts it on paper.
package card

import (
	"slices"
	"strings"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/words"
)

// Card is a plan on its way to paper.
type Card struct {
	Plan *answer.Plan
	// Booth is what the booth is called, empty where none was named.
	Booth   string
	Agreed  Agreed
	Span    unit.Gauge // of the gauge that the pressure is set by
	Printed time.Time
}

// Title is what the card is called: the coat and the gun.
func (c *Card) Title(w *words.Words) string {
	q := c.Plan.Request
	return w.Text(unit.US, "card-title", calc.Figures{calc.TextFigure("coat", q.Coat.Name), calc.TextFigure("gun", q.Gun.Name)})
}

// Rows is what the card says. Of a job that cannot be done as asked it is the verdict with its
// cure, and what protects people: nothing that could be set.
func (c *Card) Rows(w *words.Words, sys unit.System) []answer.Row {
	all := c.Plan.Rows(w, sys)
	b := builder{}
	b.block(pick(all, func(r *answer.Row) bool { return r.Role == answer.Verdict || r.Role == answer.Against }))
	job := pick(all, func(r *answer.Row) bool { return r.Role == answer.Heading && r.About == "" })
	if c.Booth != "" {
		booth := answer.Row{Role: answer.Heading, Text: w.Text(sys, "card-booth", calc.Figures{calc.TextFigure("booth", c.Booth)})}
		job = append([]answer.Row{booth}, job...)
	}
	b.block(job)
	if !c.Plan.Stopped() {
		settings := pick(all, func(r *answer.Row) bool { return r.Role == answer.Setting })
		agreed, stands := c.Agreed.rows(w, sys, c.Plan)
		b.block(agreed)
		if stands { // what is to be set stands out, the day's own does not
			for i := range settings {
				settings[i].Role = answer.Value
			}
			settings = append([]answer.Row{{Role: answer.Title, ID: "card-today", Text: w.Say("card-today")}}, settings...)
		}
		b.block(pick(all, func(r *answer.Row) bool { return r.Role == answer.First }))
		b.block(settings)
		b.block(pick(all, func(r *answer.Row) bool { return r.Role == answer.Heading && r.About != "" }))
		b.block(slices.Concat(pick(all, gaugesChecked), c.atTheGun(w, sys), pick(all, ranged), knobs(all)))
		b.block(pick(all, func(r *answer.Row) bool { return r.Role == answer.Value }))
		b.block(pick(all, func(r *answer.Row) bool { return isTable(r) && r.About == answer.AboutStage }))
	}
	b.block(pick(all, func(r *answer.Row) bool { return r.Role == answer.Caution }))
	if !c.Plan.Stopped() {
		b.block(pick(all, func(r *answer.Row) bool { return isTable(r) && r.About != answer.AboutStage }))
		b.block(rests(w, all))
	}
	printed := w.Text(sys, "card-printed", calc.Figures{calc.TextFigure("when", c.Printed.Format("2006-01-02 15:04"))})
	b.block(append(answer.GeneralRows(w, sys), answer.Row{Role: answer.Heading, Text: printed}))
	return b.rows
}

// builder puts blocks of rows under each other.
type builder struct{ rows []answer.Row }

func (b *builder) block(rows []answer.Row) {
	for i := range rows {
		rows[i].Begins = i == 0
	}
	b.rows = append(b.rows, rows...)
}

// pick is the rows that are wanted. The head of a table is about what its rows are about.
func pick(all []answer.Row, wanted func(*answer.Row) bool) (rows []answer.Row) {
	for i, r := range all {
		if r.Role == answer.Head && i+1 < len(all) {
			r.About = all[i+1].About
		}
		if wanted(&r) {
			rows = append(rows, r)
		}
	}
	return rows
}

func isTable(r *answer.Row) bool { return r.Role == answer.Head || r.Role == answer.Part }

// gaugesChecked reports whether a row is the check of the gauges, which comes first.
func gaugesChecked(r *answer.Row) bool { return r.ID == "spread-check" }

// ranged reports whether a row is what the values may come to. The check at the gun stands in
// place of how often they fall short.
func ranged(r *answer.Row) bool { return strings.HasPrefix(r.ID, "spread-given-") }

// knobs is how the gun's knobs are set; what that rests on is said with the rest.
func knobs(all []answer.Row) []answer.Row {
	rows := pick(all, func(r *answer.Row) bool {
		return r.Role == answer.Reason && slices.Contains([]string{"setup-fan", "setup-fluid", "setup-air"}, r.ID)
	})
	for i := range rows {
		rows[i].Role, rows[i].Ground = answer.Remark, ""
	}
	return rows
}

// atTheGun is the check to make before the job: what the gun's gauge should read with the
// valve open and the trigger held, and what to do where it reads less.
func (c *Card) atTheGun(w *words.Words, sys unit.System) []answer.Row {
	q, s := c.Plan.Request, c.Plan.Setup
	place := map[calc.Place]string{calc.Wall: "wall", calc.Foot: "foot", calc.Nowhere: "none"}[q.RegulatorAt()]
	if s.Foot.Is {
		place = "feeds"
	}
	id, reads := "check-open-", s.Working.ReadsOpen
	switch {
	case q.Gauge == calc.NoGauge:
		id = "check-blind-"
	case s.Valve.None:
		id, reads = "check-held-", s.Working.Reads
	}
	text := w.Text(sys, id+place, calc.Figures{calc.FigureOf("reads", calc.FigureGauge, reads)})
	return []answer.Row{{Role: answer.Range, About: answer.AboutGauge, ID: id + place, Text: text}}
}

// rests is what each value rests on, by the first reason of each.
func rests(w *words.Words, all []answer.Row) []answer.Row {
	var rows []answer.Row
	for _, of := range []struct{ about, label string }{
		{"gun", "label-gauge"}, {answer.AboutWall, "label-wall"}, {answer.AboutValve, "label-valve"}, {answer.AboutDistance, "label-distance"}, {"setup", "label-knobs"},
	} {
		i := slices.IndexFunc(all, func(r answer.Row) bool { return r.Role == answer.Reason && r.About == of.about && r.Ground != "" })
		if i >= 0 {
			rows = append(rows, answer.Row{Role: answer.Value, Name: w.Say(of.label), Text: all[i].Ground})
		}
	}
	if len(rows) == 0 {
		return nil
	}
	return append([]answer.Row{{Role: answer.Title, ID: "card-rests", Text: w.Say("card-rests")}}, rows...)
}
