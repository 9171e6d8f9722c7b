package question

import (
	"slices"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Plan asks for the wall, the distance and the valve.
var Plan = &Question{Name: "plan", Fields: slices.Concat([]Row{{Field: Coat}, {Field: Stage}, {Field: Hardener}, {Field: Gun}}, weatherRows, airRows, supplyRows, sheetRows)}

// Plan turns answers into a complete request, with the shop's usual line where they have
// none, and gives every answer that will not do. The request is complete only where there
// is none. A line that has readings of its own is as they left it.
func (r *Reader) Plan(a Answers, sys unit.System) (*calc.Request, []*Fault) {
	q, faults := r.Described(a, sys)
	if r.learnt == nil || len(faults) > 0 {
		return q, faults
	}
	if x := r.learnt(q); x != nil {
		q = x.Of(q)
	}
	return q, nil
}

// Described is Plan with the line as it is described, whatever was read of it.
func (r *Reader) Described(a Answers, sys unit.System) (*calc.Request, []*Fault) {
	v := &resolver{Reader: r, a: a.Or(r.usual), sys: sys, lineOfShop: !a.Has(Line)}
	q := &calc.Request{Tolerances: r.Tolerances}
	q.Stages = v.coatAndGun(&q.Coat, &q.Gun)
	v.weather(&q.Day)
	v.ofSheet(q)
	v.air(q)
	v.supply(q)
	q.Assumed = v.assumed()
	say := r.Words().Say
	q.Parts = calc.GunParts{Valve: say("part-valve"), Passages: say("part-passages"), Cap: say("part-cap")}
	if len(v.faults) > 0 {
		return q, v.faults
	}
	v.valveOfLine(q)
	q.Swaps = r.swaps(q)
	for _, p := range q.Problems() {
		if p.Field == Panel.Name && !v.has(Panel) {
			continue // it is the air's, and told there
		}
		if ofUsualLine(p.Field) && Whole(v.a) {
			p.Field = Line.Name
		}
		v.faults = append(v.faults, r.problem(&p, v.a, sys))
	}
	return q, v.faults
}

// assumed is what was answered by what is usual, besides the day's readings, which the verdict
// speaks of.
func (v *resolver) assumed() (all []calc.Assumption) {
	for _, row := range Plan.Fields {
		values := v.a.Get(row.Field)
		known := !slices.ContainsFunc(values, func(x Value) bool { return x.Assumed })
		if known || slices.Contains(Readings, row.Field) || !Applies(row.Field, v.a) {
			continue
		}
		all = append(all, calc.Assumption{Name: row.Sentence(SayLabel), Value: v.Shown(row.Field, values, v.sys), Measure: row.Sentence(SayHow)})
	}
	return all
}

// Applies reports whether a field of the plan counts as the others are answered: nothing of
// a regulator does without one, nothing of the supply without a compressor.
func Applies(f *Field, a Answers) bool {
	switch {
	case ofUsualLine(f.Name) && Whole(a):
		return false
	case f == Line:
		return Whole(a)
	case f == RegulatorAt || f == Wall || f == Mark:
		return regulated(a)
	case f.Part == PartSupply && f != Compressor:
		return Supplied(a)
	}
	return true
}

// Assumed is what is taken where nothing is answered, as figures: usages and the assistant
// speak of them.
func Assumed(sys unit.System) calc.Figures {
	decimals, _ := unit.Decimals(markStep[sys])
	return calc.Figures{
		calc.BriefFigure("cutSpan", calc.FigureGauge, cutSpan),
		calc.BriefFigure("receiverAbove", calc.FigureTempDiff, receiverAbove),
		calc.BriefFigure("sheetTemp", calc.FigureTemp, calc.SheetTemp),
		calc.BriefFigure("spraying", calc.FigureMinutes, usualSpraying),
		calc.BriefFigure("pause", calc.FigureMinutes, usualPause),
		calc.BriefFigure("lead", calc.FigureDistance, usualLead),
		calc.BriefFigure("thinnerVOC", calc.FigureVOC, coat.SolventDensity),
		calc.BriefFigure("warmLimit", calc.FigureTemp, usualWarmLimit),
		calc.TextFigure("mark", unit.Pressure.CountText(sys, markStep[sys], decimals)),
	}
}

// UsageFigures is what the sentence of a row's use names, in a system's units: what is
// assumed, and what may be chosen.
func (r *Reader) UsageFigures(row Row, sys unit.System) calc.Figures {
	f := append(Assumed(sys), calc.SentenceFigure("repeatable", "usage-repeatable"), calc.TextFigure("cup", r.UsualCup(sys).ID))
	if row.Listed() {
		f = append(f, r.names(r.ids(row.Field)))
	}
	return f
}
