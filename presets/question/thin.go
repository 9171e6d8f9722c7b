package question

import (
	"errors"
	"strings"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/words"
)

// What thinning asks.
var (
	Cup           = &Field{Name: "cup", Read: cup, Default: Fixed}
	Seconds       = &Field{Name: "seconds", Read: amount, Of: [2]*unit.Quantity{unit.CupTime}}
	SheetSeconds  = &Field{Name: "sheet-seconds", Read: secondsRange, Default: OfEntry}
	SheetCup      = &Field{Name: "sheet-cup", Read: cup, Default: OfOther}
	SheetTemp     = &Field{Name: "sheet-temp", Read: amount, Of: [2]*unit.Quantity{unit.Temperature}, Bounds: [2]*calc.Bound{&calc.AirTempBound}, Default: Fixed}
	SecondSeconds = &Field{Name: "second-seconds", Read: amount, Of: [2]*unit.Quantity{unit.CupTime}, Default: LeftOut}
	SecondTemp    = &Field{Name: "second-temp", Read: amount, Of: [2]*unit.Quantity{unit.Temperature}, Bounds: [2]*calc.Bound{&calc.AirTempBound}, Default: LeftOut}
	MaxThinner    = &Field{Name: "max-thinner", Read: amount, Of: [2]*unit.Quantity{unit.Share}, Bounds: [2]*calc.Bound{&calc.MostThinnerBound}, Default: OfEntry}
	WarmLimit     = &Field{Name: "warm-limit", Read: amount, Of: [2]*unit.Quantity{unit.Temperature}, Bounds: [2]*calc.Bound{&calc.AirTempBound}, Default: Fixed}
)

// Thin asks how to bring a mix to its sheet's viscosity.
var Thin = &Question{Name: "thin", Fields: []Row{
	{Field: Coat}, {Field: Hardener}, {Cup, "usage-thin-cup"}, {Field: Seconds}, {Paint, "usage-thin-paint"}, {Temp, "usage-thin-temp"},
	{Field: SheetSeconds}, {Field: SheetCup}, {Field: SheetTemp}, {Field: SecondSeconds}, {Field: SecondTemp},
	{Field: MaxThinner}, {Field: WarmLimit}, {Field: ReadyVOC}, {Field: ThinnerVOC}, {Field: VOCLimit},
}}

// usualWarmLimit is the warm end of what products are made for; paint makers print 20 to
// 25 C.
const usualWarmLimit = unit.Temp(25 + unit.ZeroCelsius)

// Thin turns answers into a complete request, as Plan does.
func (r *Reader) Thin(a Answers, sys unit.System) (calc.ThinRequest, []*Fault) {
	v := &resolver{Reader: r, a: a.Or(r.usual), sys: sys}
	var q calc.ThinRequest
	e, id, ok := v.family()
	if !ok {
		e = &catalogue.Coat{}
	}
	q.CoatID, q.Coat, q.Waterborne, q.Hardener = id, e.Called(), e.Waterborne, v.hardener(e)
	v.readings(&q)
	q.VOC = v.voc(e)
	v.sheet(e, &q)
	switch {
	case v.has(MaxThinner):
		q.MostThinner = calc.Stated[float64]{Value: si[float64](v, MaxThinner), Ground: onSheet}
	case e.Thinner != nil:
		q.MostThinner = calc.Stated[float64]{Value: e.Thinner.Most.V, Ground: e.Thinner.Ground()}
	default:
		v.fault(MaxThinner, "want-most-thinner")
	}
	q.Warmest = calc.Stated[unit.Temp]{Value: usualWarmLimit, Ground: calc.Ground{Basis: calc.Estimate, Source: "source-warm-end"}}
	if v.has(WarmLimit) {
		q.Warmest = calc.Stated[unit.Temp]{Value: si[unit.Temp](v, WarmLimit), Ground: onSheet}
	}
	if len(v.faults) == 0 {
		v.judge(q.Problems())
	}
	return q, v.faults
}

// readings resolves the cup and its timings.
func (v *resolver) readings(q *calc.ThinRequest) {
	q.Reading.Cup = v.cup()
	q.Reading.Seconds = si[float64](v, Seconds)
	switch {
	case v.has(Paint):
		q.Reading.At = si[unit.Temp](v, Paint)
	case v.has(Temp):
		q.Reading.At = si[unit.Temp](v, Temp)
	default:
		v.fault(Paint, "want-paint")
	}
	if !v.has(SecondSeconds) && !v.has(SecondTemp) {
		return
	}
	q.HasSecond = true
	q.Second = calc.Reading{Cup: q.Reading.Cup, Seconds: si[float64](v, SecondSeconds), At: si[unit.Temp](v, SecondTemp)}
}

// cup is the cup that the mix was timed in, the usual one where none was named.
func (v *resolver) cup() coat.Cup {
	if !v.has(Cup) {
		return v.UsualCup(v.sys)
	}
	c, _ := v.value(Cup)
	return cupOf(c)
}

// UsualCup is the cup that seconds are taken to be in where none is named.
func (r *Reader) UsualCup(sys unit.System) coat.Cup {
	usual, _ := r.UsualAnswers(Cup.Name, sys)
	c, _ := coat.FindCup(usual[0]) // the catalogue's check has found it
	return c
}

// sheet resolves what the product's sheet asks for, or takes the coat's usual.
func (v *resolver) sheet(e *catalogue.Coat, q *calc.ThinRequest) {
	if !v.has(SheetSeconds) {
		for _, f := range []*Field{SheetCup, SheetTemp} {
			if v.has(f) {
				v.fault(SheetSeconds, "needed-sheet-seconds", calc.TextFigure("field", f.Name))
				return
			}
		}
		if e.Cup == nil {
			v.fault(SheetSeconds, "want-sheet-seconds")
			return
		}
		q.Sheet = e.Cup.Sheet()
		return
	}
	q.Sheet.Ground = onSheet
	s := &q.Sheet.Value
	s.Cup = q.Reading.Cup
	if v.has(SheetCup) {
		c, _ := v.value(SheetCup)
		s.Cup = cupOf(c)
	}
	s.At = or(v, SheetTemp, calc.SheetTemp)
	x, _ := v.value(SheetSeconds)
	s.Low, s.High = x.SI[0], x.SI[1]
	s.Aim = (s.Low + s.High) / 2
	if s.High == 0 { // a single figure
		s.Aim = s.Low
		s.Low, s.High = s.Aim-calc.ReadingSeconds, s.Aim+calc.ReadingSeconds
	}
}

// secondsRange reads "16-18", "16 to 18" or a single figure; the upper end is then 0.
func secondsRange(r *Reader, f *Field, t string, sys unit.System) Value {
	low, high, isRange := strings.Cut(dashed(t), "-")
	a, err1 := unit.CupTime.Read(low, sys)
	v := Value{SI: [2]float64{a.SI}}
	var err2 error
	if isRange {
		var b unit.Reading
		b, err2 = unit.CupTime.Read(high, sys)
		v.SI[1] = b.SI
	}
	if errors.Join(err1, err2) != nil || a.SI <= 0 || isRange && v.SI[1] < a.SI {
		return r.wanted(f, t, sys, "want-seconds-range")
	}
	return v
}

// dashed is a text with a hyphen for what people write between the ends of a range.
func dashed(t string) string {
	marks := []string{"\u2013", "-"}
	for _, word := range words.Spellings(words.RangeTo) {
		marks = append(marks, " "+word+" ", "-")
	}
	return strings.NewReplacer(marks...).Replace(t)
}
