package question

import (
	"time"

	"boothset/calc"
	"boothset/calc/unit"
)

// What the day asks besides the weather.
var (
	Paint = &Field{
		Name: "paint", Read: amount, Of: [2]*unit.Quantity{unit.Temperature}, Bounds: [2]*calc.Bound{&calc.AirTempBound}, Default: OfOther,
	}
	// Panels is how many are sprayed one after another.
	Panels = &Field{
		Name: "panels", Read: whole, Bounds: [2]*calc.Bound{&calc.PanelsBound}, Want: "want-panels", Default: Fixed, Part: PartSupply,
		Counts: func(q *calc.Request) float64 { return float64(q.Shop.Panels) },
	}
	// PotLife is asked by several, each of which says in its own words what it may be.
	PotLife = &Field{
		Name: "pot-life", Read: lifeAt, Of: [2]*unit.Quantity{unit.Hours, unit.Temperature}, Apart: "@", SecondLeftOut: true,
		Bounds: [2]*calc.Bound{&calc.PotLifeBound, &calc.PotLifeAtBound}, Default: LeftOut, Want: "want-life-at", Part: PartSheet,
		Begin: [2]string{"4 h", "4 h"},
	}
	Started = &Field{Name: "started", Read: clock, Default: LeftOut}
)

// Day asks what the day does to a coat.
var Day = &Question{Name: "day", Fields: []Row{
	{Field: Coat}, {Field: Stage}, {Field: Hardener}, {Gun, "usage-day-gun"}, {Field: Temp}, {Field: Humidity}, {Field: Panel}, {Field: Paint}, {Field: Altitude},
	{Field: Panels}, {Field: PotLife}, {Field: Started},
}}

// Day turns answers into a complete request, as Plan does.
func (r *Reader) Day(a Answers, sys unit.System) (calc.DayRequest, []*Fault) {
	v := &resolver{Reader: r, a: a.Or(r.usual), sys: sys}
	var q calc.DayRequest
	if !v.has(Gun) { // how dry it lands hardly hangs on the gun
		_, gun := r.goTogether(v.a.ID(Coat), "")
		v.a = v.a.With(Gun, r.Read(Gun, gun, sys))
	}
	v.coatAndGun(&q.Coat, &q.Gun)
	if e, ok := r.Coats.Get(q.Coat.ID); ok && e.Lay != nil {
		q.Coats = e.Lay.Coats
	}
	q.Instruments = calc.Instruments{Thermometer: r.Tolerances.Thermometer, Hygrometer: r.Tolerances.HygrometerShare}
	v.weather(&q.Day)
	q.Paint = or(v, Paint, q.Air)
	q.Panels = 1
	if v.has(Panels) {
		q.Panels = int(si[float64](v, Panels))
	}
	q.PotLife, q.PotLifeAt = v.potLife()
	if v.has(Started) {
		q.Started, q.HasStarted = calc.Clock(time.Duration(si[float64](v, Started))*time.Second), true
		if !v.has(PotLife) {
			v.fault(PotLife, "needed-pot-life", calc.BriefFigure("sheetTemp", calc.FigureTemp, calc.SheetTemp))
		}
	}
	if len(v.faults) == 0 {
		v.judge(q.Problems())
	}
	return q, v.faults
}

// lifeAt reads a pot life and the temperature that it is for, 20 C where that is left out:
// "2h@77F".
func lifeAt(r *Reader, f *Field, t string, sys unit.System) Value {
	v := pair(r, f, t, sys)
	if _, _, both := Parts(f, t); !both {
		v.SI[1], v.Bare[1] = float64(calc.SheetTemp), false
	}
	return v
}

// potLife is the pot life and the temperature that it is for, 0 where it was not answered or
// cannot be.
func (v *resolver) potLife() (time.Duration, unit.Temp) {
	if !v.has(PotLife) {
		return 0, calc.SheetTemp
	}
	x, _ := v.value(PotLife)
	for n, b := range PotLife.Bounds {
		if x.Fault == nil && !b.Holds(x.SI[n]) {
			v.fault(PotLife, b.ID, b.Figures(x.SI[n])...)
			return 0, calc.SheetTemp
		}
	}
	return time.Duration(x.SI[0] * float64(time.Second)), unit.Temp(x.SI[1])
}
