package answer

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// inOrder is the abouts of the values to set in the order they are set in.
var inOrder = []string{AboutWall, AboutFoot, AboutValve, AboutDistance, AboutGauge}

// Brief is an answer in a few lines, to be left behind: the verdict with the job, the values to
// set, what harms. Where the job cannot be done as asked nothing is set: it is the verdict with
// its cure, and what speaks against spraying most.
func (p *Plan) Brief(w *words.Words, sys unit.System) []Row {
	s := p.Setup
	o := &speaker{words: w, sys: sys}
	head := Headline(w, sys, &s.Judgement, PlanGoes)
	coat := p.Request.Coat.Name
	if len(p.Stages) > 1 {
		coat += " (" + p.StageName(w) + ")"
	}
	head.Text += " " + o.say("brief-job", calc.TextFigure("coat", coat), calc.TextFigure("gun", p.Request.Gun.Name))
	o.add(head)
	if p.Stopped() {
		against := AgainstRows(w, sys, &s.Judgement)
		o.add(against[:min(len(against), 1)]...)
		return o.rows
	}
	var values []string
	rows := p.settings(o)
	for _, about := range inOrder {
		i := slices.IndexFunc(rows, func(r Row) bool { return r.About == about })
		if i < 0 || about == AboutGauge && p.Request.Gauge == calc.NoGauge {
			continue
		}
		values = append(values, strings.ReplaceAll(rows[i].Name+" "+rows[i].Text, " ", words.NoBreak))
	}
	o.add(Row{Role: Together, Text: strings.Join(values, "; ")})
	o.add(Row{Role: Caution, Level: calc.Warn, ID: Hazard(s.Cautions), Text: w.Say(Hazard(s.Cautions))})
	return o.rows
}

// Hazard is what harms in the coat, and what keeps it off, in a line; the id of its sentence.
func Hazard(all []calc.Caution) string {
	const in = "hazard-"
	for _, c := range all {
		if c.Safety && c.Level == calc.Warn {
			return in + c.ID
		}
	}
	return in + string(calc.OnePart)
}

// Card is the whole answer, the general caution at its end.
func (p *Plan) Card(w *words.Words, sys unit.System) []Row {
	return append(p.Rows(w, sys), GeneralRows(w, sys)...)
}
