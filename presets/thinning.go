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
		Field{FieldCup, "usage-thin-cup", false},
		Field{FieldSeconds, "usage-seconds", false},
		Field{FieldPaint, "usage-thin-paint", false},
		Field{FieldTemp, "usage-thin-temp", false},
		Field{FieldSheetSeconds, "usage-sheet-seconds", false},
		Field{FieldSheetCup, "usage-sheet-cup", false},
		Field{FieldSheetTemp, "usage-sheet-temp", false},
		Field{FieldSecondSeconds, "usage-second-seconds", false},
		Field{FieldSecondTemp, "usage-second-temp", false},
		Field{FieldMaxThinner, "usage-max-thinner", false},
		Field{FieldWarmLimit, "usage-warm-limit", false},
	)
}

// What is taken where nothing was typed.
const (
	// usualWarmLimit is the warm end of what products are made for; paint makers print
	// 20 to 25 C.
	usualWarmLimit = unit.Temp(25 + unit.ZeroCelsius)
	// aboutSeconds is how far from a sheet's single figure a reading still passes:
	// judgement, about what two people with a stopwatch differ by.
	aboutSeconds = 1.0
)

// Thin turns what was typed into a request for the thinning. Bare numbers are read in
// the system's units. Every answer that will not do comes as a *FieldError; the request
// is complete only where there is none.
func (c *Catalogue) Thin(s Sheet, sys unit.System) (calc.ThinRequest, []*FieldError) {
	v := newResolver(c, sys)
	var r calc.ThinRequest
	e, ok := pick(&v, FieldCoat, s[FieldCoat], c.entries.Coat)
	if !ok {
		e = &coatEntry{}
	}
	r.CoatID, r.Coat, r.Waterborne, r.Isocyanate = string(s[FieldCoat]), e.name(FieldCoat, string(s[FieldCoat]), c.words), e.Waterborne, e.Isocyanate
	v.reading(s, &r)
	v.sheet(s, e, &r)
	switch t := s[FieldMaxThinner]; {
	case t != "":
		r.MostThinner = calc.Stated[float64]{Value: read(&v, FieldMaxThinner, t, "", parsePercent, struct{}{}), Ground: onSheet}
	case e.Thinner != nil:
		r.MostThinner = calc.Stated[float64]{Value: e.Thinner.Most.v, Ground: e.Thinner.standing()}
	default:
		v.fault(FieldMaxThinner, "", "want-most-thinner")
	}
	r.Warmest = calc.Stated[unit.Temp]{
		Value:  usualWarmLimit,
		Ground: calc.Ground{Basis: calc.Estimate, Source: "source-warm-end"},
	}
	if t := s[FieldWarmLimit]; t != "" {
		r.Warmest = calc.Stated[unit.Temp]{Value: read(&v, FieldWarmLimit, t, "", unit.ParseTemp, sys.TempUnit()), Ground: onSheet}
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
		v.fault(FieldPaint, "", "want-paint")
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
				v.fault(FieldSheetSeconds, "", "needed-sheet-seconds", text("field", field))
				return
			}
		}
		if e.Cup == nil {
			v.fault(FieldSheetSeconds, "", "want-sheet-seconds")
			return
		}
		r.Sheet = e.Cup.sheet()
		return
	}
	r.Sheet.Ground = onSheet
	q := &r.Sheet.Value
	q.Cup = r.Reading.Cup
	if t := s[FieldSheetCup]; t != "" {
		q.Cup = v.cup(FieldSheetCup, t)
	}
	q.At = calc.SheetTemp
	if t := s[FieldSheetTemp]; t != "" {
		q.At = read(v, FieldSheetTemp, t, "", unit.ParseTemp, v.sys.TempUnit())
	}
	low, high, isRange := strings.Cut(strings.NewReplacer(" to ", "-", " a ", "-", "\u2013", "-").Replace(string(typed)), "-")
	a, err1 := unit.ParseSeconds(low, unit.InSeconds)
	b, err2 := a, error(nil)
	if isRange {
		b, err2 = unit.ParseSeconds(high, unit.InSeconds)
	}
	if errors.Join(err1, err2) != nil || a <= 0 || b < a {
		v.fault(FieldSheetSeconds, typed, "want-seconds-range")
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
		v.fault(field, t, "which-cup", v.names(which))
	case err != nil:
		ids := make([]string, 0, 16)
		for _, c := range coat.Cups() {
			ids = append(ids, c.ID)
		}
		v.fault(field, t, "choose", v.names(ids))
	}
	return cup
}
