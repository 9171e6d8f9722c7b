package question

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/trouble"
	"boothset/calc/unit"
	"boothset/presets/signs"
)

// What is asked of a gun that sprays badly, besides the job.
var (
	// Sign is what is seen, by its id or by what it is called in any language.
	Sign = &Field{Name: "sign", Read: sign, Repeats: true, Missing: "want-sign"}
	// Found is what a check found, as check=finding.
	Found = &Field{Name: "found", Read: found, Repeats: true, Default: LeftOut}
	// Grade is how fast the thinner or hardener in the mix is.
	Grade = &Field{
		Name: "grade", Read: choice, Default: LeftOut,
		Options: []string{string(calc.GradeFast), string(calc.GradeStandard), string(calc.GradeSlow), string(calc.GradeSlowest)},
	}
)

// ofMix and ofFilm are what of the question is asked about the mix and about the film.
var (
	ofMix  = []*Field{Coat, Hardener, Temp, Cup, Seconds, Paint, SheetSeconds, SheetCup, SheetTemp, MaxThinner}
	ofFilm = []*Field{Coat, Hardener, Solids, Wet}
)

// Trouble asks what makes a gun spray badly. Of the job as much is told as is known.
var Trouble = &Question{Name: "trouble", Fields: slices.Concat([]Row{{Field: Sign}, {Field: Found}}, Plan.Fields, []Row{
	{GaugeReading, "usage-trouble-reading"}, {Distance, "usage-trouble-distance"}, {Field: Grade}, {Field: Wet}, {Field: Solids},
	{Cup, "usage-thin-cup"}, {Field: Seconds}, {Paint, "usage-thin-paint"}, {Field: SheetSeconds}, {Field: SheetCup}, {Field: SheetTemp}, {Field: MaxThinner},
})}

// Skipped is what is given in the place of a finding where a check was passed by.
const Skipped = "skip"

// ofSetup is whether a field of the question tells of the setup, so that all of that is asked.
func ofSetup(f *Field) bool {
	return f == Distance || f == Grade || f == GaugeReading || Plan.Has(f) && !slices.Contains(ofMix, f) && f != Stage && f != Tip
}

// Trouble turns answers into a complete request, as Plan does.
func (r *Reader) Trouble(a Answers, sys unit.System) (q trouble.Request, faults []*Fault) {
	v := &resolver{Reader: r, a: a, sys: sys}
	v.signs(&q)
	v.found(&q)
	for _, row := range Trouble.Fields {
		if f := row.Field; f != Sign && f != Found && f != Coat && a.Has(f) && !a.Has(Coat) {
			v.fault(Coat, "needed-job-beside", calc.TextFigure("field", f.Name))
			break
		}
	}
	faults = v.faults
	if slices.ContainsFunc(Trouble.Fields, func(row Row) bool { return ofSetup(row.Field) && a.Has(row.Field) }) {
		plan, more := r.Plan(a.Of(Plan), sys)
		q.Plan, faults = plan, append(faults, more...)
		of := &resolver{Reader: r, a: a, sys: sys}
		q.Held = or(of, Distance, unit.Length(0))
		if of.has(Distance) {
			bounded[unit.Length](of, Distance)
		}
		if of.has(Grade) {
			x, _ := of.value(Grade)
			q.Grade = calc.Grade(x.ID)
		}
		faults = append(faults, of.faults...)
	}
	if a.Has(Seconds) {
		mix, more := r.Thin(a.only(ofMix), sys)
		q.Mix, faults = &mix, append(faults, more...)
	}
	if a.Has(Wet) {
		film, more := r.Film(a.only(ofFilm), sys)
		q.Film, faults = &film, append(faults, more...)
	}
	return q, faults
}

// only is the answers to some fields alone.
func (a Answers) only(fields []*Field) (of Answers) {
	for _, f := range fields {
		if all := a.Get(f); len(all) > 0 {
			of = of.With(f, all...)
		}
	}
	return of
}

// signs resolves what is seen, each once.
func (v *resolver) signs(q *trouble.Request) {
	if !v.has(Sign) {
		v.value(Sign)
	}
	for _, x := range v.a.Get(Sign) {
		switch {
		case x.Fault != nil:
			v.faults = append(v.faults, x.Fault)
		case !slices.Contains(q.Signs, x.ID):
			q.Signs = append(q.Signs, x.ID)
		}
	}
}

// found resolves what checks found; of one that is told twice the later counts.
func (v *resolver) found(q *trouble.Request) {
	for _, x := range v.a.Get(Found) {
		if x.Fault != nil {
			v.faults = append(v.faults, x.Fault)
			continue
		}
		f := trouble.Found{Check: x.Kind, Finding: x.ID}
		q.Found = slices.DeleteFunc(q.Found, func(o trouble.Found) bool { return o.Check == f.Check })
		q.Found = append(q.Found, f)
	}
}

// sign reads what is seen.
func sign(r *Reader, f *Field, t string, sys unit.System) Value {
	if id := signs.Find(t); id != "" {
		return Value{ID: id}
	}
	if strings.TrimSpace(t) == "" {
		return r.wanted(f, t, sys, "want-sign")
	}
	may := signs.Search(t)
	switch len(may) {
	case 0:
		return r.wanted(f, t, sys, "choose-sign", r.names(signIDs()))
	case 1:
		return Value{ID: may[0]}
	}
	return r.wanted(f, t, sys, "which-sign", r.names(may))
}

func signIDs() (ids []string) {
	for _, s := range signs.Book().Signs {
		ids = append(ids, s.ID)
	}
	return ids
}

// found reads what a check found, "check=finding"; the check's kind is its id.
func found(r *Reader, f *Field, t string, sys unit.System) Value {
	check, finding, ok := strings.Cut(t, "=")
	c := signs.Book().Check(strings.ToLower(strings.TrimSpace(check)))
	if c == nil {
		var ids []string
		for _, c := range signs.Book().Checks {
			ids = append(ids, c.ID)
		}
		return r.wanted(f, t, sys, "choose-check", r.names(ids))
	}
	finding = strings.ToLower(strings.TrimSpace(finding))
	if !ok || c.Finding(finding) == nil && finding != Skipped {
		var ids []string
		for _, x := range c.Findings {
			ids = append(ids, x.ID)
		}
		return r.wanted(f, t, sys, "choose-finding", calc.TextFigure("check", c.ID), r.names(append(ids, Skipped)))
	}
	return Value{Kind: c.ID, ID: finding}
}
