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
	Panels = &Field{Name: "panels", Read: whole, Bounds: [2]*calc.Bound{&calc.PanelsBound}, Want: "want-panels", Default: Fixed}
	// PotLife is asked by day and mix, each of which says in its own words what it may be.
	PotLife = &Field{Name: "pot-life", Read: amount, Of: [2]*unit.Quantity{unit.Hours}, Bounds: [2]*calc.Bound{&potLifeBound}, Default: LeftOut}
	Started = &Field{Name: "started", Read: clock, Default: LeftOut}
)

var potLifeBound = calc.Bound{Low: calc.PotLifeBound.Low, High: calc.PotLifeBound.High}

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
	q.PotLife = v.potLife()
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

// potLife is the pot life, 0 where it was not answered; what no request can hold is 1 s,
// which its check refuses.
func (v *resolver) potLife() time.Duration {
	if !v.has(PotLife) {
		return 0
	}
	life := si[unit.Seconds](v, PotLife)
	if life <= 0 {
		return time.Second
	}
	return time.Duration(float64(min(life, 1e7)) * float64(time.Second))
}
