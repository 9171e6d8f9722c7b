package presets

import (
	"errors"
	"strings"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// The fields of thin alone.
const (
	FieldCup           = "cup"
	FieldSeconds       = "seconds"
	FieldSheetSeconds  = "sheet-seconds"
	FieldSheetCup      = "sheet-cup"
	FieldSheetTemp     = "sheet-temp"
	FieldSecondSeconds = "second-seconds"
	FieldSecondTemp    = "second-temp"
	FieldMaxThinner    = "max-thinner"
	FieldWarmLimit     = "warm-limit"
)

// ThinFields is what the thinning's question takes.
func ThinFields() []Field {
	return append(planFields(FieldCoat),
		Field{FieldCup, "`cup` the mix was timed in: iso4, din4, ford4, zahn2 ...", false},
		Field{FieldSeconds, "`seconds` it took", false},
		Field{FieldPaint, "paint's own `temperature` as it was timed; the booth's where left out", false},
		Field{FieldTemp, "booth air `temperature`, taken for the paint's where that is left out", false},
		Field{FieldSheetSeconds, "`seconds` the product's sheet asks for, such as 16-18 or 17; the coat's usual where left out", false},
		Field{FieldSheetCup, "`cup` of the sheet's seconds; the one timed in where left out", false},
		Field{FieldSheetTemp, "`temperature` of the sheet's seconds; 20 C (68 F) where left out", false},
		Field{FieldSecondSeconds, "`seconds` of another timing of this mix in this cup, warmer or colder", false},
		Field{FieldSecondTemp, "paint's `temperature` at that timing", false},
		Field{FieldMaxThinner, "most thinner the sheet allows on top of the mix, in `percent`", false},
		Field{FieldWarmLimit, "`temperature` the paint may be warmed to; 25 C (77 F) where left out", false},
	)
}

// What is taken where nothing was typed.
const (
	// usualWarmLimit is the warm end of what products are made for; paint makers print
	// 20 to 25 C.
	usualWarmLimit = Typed("25C")
	// aboutSeconds is how far from a sheet's single figure a reading still passes:
	// judgement, about what two people with a stopwatch differ by.
	aboutSeconds = 1.0
)

// Thin turns what was typed into a request for the thinning. Bare numbers are read in
// the system's units. Every answer that will not do comes as a *FieldError; the request
// is complete only where there is none.
func (c *Catalogue) Thin(s Sheet, sys unit.System) (calc.ThinRequest, []*FieldError) {
	v := resolver{c: c, sys: sys}
	var r calc.ThinRequest
	e, ok := pick(&v, FieldCoat, s[FieldCoat], c.entries.Coat)
	if !ok {
		e = &coatEntry{}
	}
	r.CoatID, r.Coat, r.Waterborne, r.Isocyanate = string(s[FieldCoat]), e.Name, e.Waterborne, e.Isocyanate
	v.reading(s, &r)
	v.sheet(s, e, &r)
	switch t := s[FieldMaxThinner]; {
	case t != "":
		r.MostThinner = calc.Stated[float64]{Value: read(&v, FieldMaxThinner, t, "", parsePercent, struct{}{}), Standing: onSheet}
	case e.Thinner != nil:
		r.MostThinner = calc.Stated[float64]{Value: e.Thinner.Most.v, Standing: e.Thinner.standing()}
	default:
		v.fault(FieldMaxThinner, "", "give the most thinner that the product's sheet allows on top of the mix, such as 10%%")
	}
	r.Warmest = calc.Stated[unit.Temp]{
		Value:    read(&v, FieldWarmLimit, s[FieldWarmLimit], usualWarmLimit, unit.ParseTemp, sys.TempUnit()),
		Standing: calc.Standing{Basis: calc.Estimate, Source: "the warm end of the 20 to 25 C that paint makers' products are made for"},
	}
	if s[FieldWarmLimit] != "" {
		r.Warmest.Standing = onSheet
	}
	v.judged(s, r.Problems)
	return r, v.faults
}

// reading reads the cup and its timings.
func (v *resolver) reading(s Sheet, r *calc.ThinRequest) {
	r.Reading.Cup = v.cup(FieldCup, s[FieldCup])
	r.Reading.Seconds = v.cupSeconds(FieldSeconds, s[FieldSeconds])
	switch {
	case s[FieldPaint] != "":
		r.Reading.At = read(v, FieldPaint, s[FieldPaint], "", unit.ParseTemp, v.sys.TempUnit())
	case s[FieldTemp] != "":
		r.Reading.At = read(v, FieldTemp, s[FieldTemp], "", unit.ParseTemp, v.sys.TempUnit())
	default:
		v.fault(FieldPaint, "", "give the paint's own temperature as it was timed, such as 75F or 24C")
	}
	if s[FieldSecondSeconds] == "" && s[FieldSecondTemp] == "" {
		return
	}
	r.HasSecond = true
	r.Second = calc.Reading{
		Cup: r.Reading.Cup, Seconds: v.cupSeconds(FieldSecondSeconds, s[FieldSecondSeconds]),
		At: read(v, FieldSecondTemp, s[FieldSecondTemp], "", unit.ParseTemp, v.sys.TempUnit()),
	}
}

// sheet reads what the product's sheet asks for, or takes the coat's usual.
func (v *resolver) sheet(s Sheet, e *coatEntry, r *calc.ThinRequest) {
	typed := s[FieldSheetSeconds]
	if typed == "" {
		for _, field := range []string{FieldSheetCup, FieldSheetTemp} {
			if s[field] != "" {
				v.fault(FieldSheetSeconds, "", "needed beside %s: what the product's sheet asks for, such as 16-18", field)
				return
			}
		}
		if e.Cup == nil {
			v.fault(FieldSheetSeconds, "", "give the seconds that the product's sheet asks for, such as 16-18")
			return
		}
		r.Sheet = e.Cup.sheet()
		return
	}
	r.Sheet.Standing = onSheet
	q := &r.Sheet.Value
	q.Cup = r.Reading.Cup
	if t := s[FieldSheetCup]; t != "" {
		q.Cup = v.cup(FieldSheetCup, t)
	}
	q.At = calc.SheetTemp
	if t := s[FieldSheetTemp]; t != "" {
		q.At = read(v, FieldSheetTemp, t, "", unit.ParseTemp, v.sys.TempUnit())
	}
	low, high, isRange := strings.Cut(strings.NewReplacer(" to ", "-", "\u2013", "-").Replace(string(typed)), "-")
	a, err1 := unit.ParseSeconds(low, unit.InSeconds)
	b, err2 := a, error(nil)
	if isRange {
		b, err2 = unit.ParseSeconds(high, unit.InSeconds)
	}
	if errors.Join(err1, err2) != nil || a <= 0 || b < a {
		v.fault(FieldSheetSeconds, typed, "give seconds, the lower figure first, such as 16-18 or 17")
		return
	}
	q.Low, q.High = float64(a), float64(b)
	q.Aim = (q.Low + q.High) / 2
	if !isRange {
		q.Low, q.High = q.Aim-aboutSeconds, q.Aim+aboutSeconds
	}
}

func (v *resolver) cupSeconds(field string, t Typed) float64 {
	s := read(v, field, t, "", unit.ParseSeconds, unit.InSeconds)
	return float64(s)
}

// cup finds a cup by what was typed; the answer to one that fits several asks which.
func (v *resolver) cup(field string, t Typed) coat.Cup {
	cup, err := coat.FindCup(string(t))
	var several *coat.AmbiguousCup
	switch {
	case errors.As(err, &several):
		which := make([]string, len(several.Candidates))
		for i, c := range several.Candidates {
			which[i] = c.ID + " (" + c.Label + ")"
		}
		v.fault(field, t, "which one: %s? Their seconds are not the same", listed(which))
	case err != nil:
		ids := make([]string, 0, 16)
		for _, c := range coat.Cups() {
			ids = append(ids, c.ID)
		}
		v.fault(field, t, "choose %s", listed(ids))
	}
	return cup
}
