package question

import (
	"time"

	"boothset/calc"
	"boothset/calc/air"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// What the product's sheet says for this job, in the place of the catalogue.
var (
	Working = &Field{
		Name: "working", Read: amount, Of: [2]*unit.Quantity{unit.Pressure}, Bounds: [2]*calc.Bound{&calc.InletBound}, Default: LeftOut, Part: PartSheet,
		Counts: func(q *calc.Request) float64 { return float64(q.Coat.Working.Start) },
	}
	CapPressure = &Field{Name: "cap", Read: amount, Of: [2]*unit.Quantity{unit.Pressure}, Bounds: [2]*calc.Bound{&calc.CapBound}, Default: LeftOut, Part: PartSheet, Begin: [2]string{"9 psi", "0.6 bar"}}
	// SheetDistance is from the cap to the panel.
	SheetDistance = &Field{Name: "sheet-distance", Read: amount, Of: [2]*unit.Quantity{unit.Distance}, Bounds: [2]*calc.Bound{&calc.DistanceBound}, Default: LeftOut, Part: PartSheet, Begin: [2]string{"6 in", "150 mm"}}
	Flash         = &Field{Name: "flash", Read: amount, Of: [2]*unit.Quantity{unit.Minutes}, Bounds: [2]*calc.Bound{&calc.WaitBound}, Default: LeftOut, Part: PartSheet, Begin: [2]string{"10 min", "10 min"}}
	Recoat        = &Field{Name: "recoat", Read: amount, Of: [2]*unit.Quantity{unit.Minutes}, Bounds: [2]*calc.Bound{&calc.WaitBound}, Default: LeftOut, Part: PartSheet, Begin: [2]string{"240 min", "240 min"}}
)

// sheetRows is what a plan asks of the product's sheet and the gun's.
var sheetRows = []Row{
	{Field: Working}, {Field: CapPressure}, {Field: SheetDistance}, {Field: Flash}, {Field: Recoat}, {Field: PotLife}, {Field: Tip},
}

// ofSheet lays what the sheet says over the stage that is set up.
func (v *resolver) ofSheet(q *calc.Request) {
	c := &q.Coat
	if v.has(Working) && v.has(CapPressure) {
		v.fault(CapPressure, "not-beside-working")
		return
	}
	switch {
	case v.has(Working):
		v.starts(c, bounded[unit.Gauge](v, Working))
	case v.has(CapPressure):
		here := line.NewAir(air.AtAltitude(q.Day.Altitude), q.Day.Air)
		v.starts(c, q.Gun.AtCap(bounded[unit.Gauge](v, CapPressure), here))
	}
	if v.has(SheetDistance) {
		d := bounded[unit.Length](v, SheetDistance)
		c.Stage.Held, c.Farther, c.Stage.Times = calc.Between[unit.Length]{Low: d, Usual: d, High: d, Ground: onSheet}, 0, 0
	}
	if v.has(Flash) {
		c.Stage.Flash = once(v.minutes(Flash))
	}
	if v.has(Recoat) {
		c.Stage.Recoat = once(v.minutes(Recoat))
	}
	if v.has(Tip) {
		t := bounded[unit.Length](v, Tip)
		c.Stage.Tip = once(t)
	}
	q.PotLife, q.PotLifeAt = v.potLife()
	for n := range q.Stages {
		if q.Stages[n].Stage.ID == c.Stage.ID {
			q.Stages[n] = *c
		}
	}
}

// starts takes a working pressure as the sheet says; the coat's band is widened to hold it.
func (v *resolver) starts(c *calc.Coat, at unit.Gauge) {
	w := &c.Working
	*w = calc.Band{Start: at, Low: min(w.Low, at), High: max(w.High, at), Fixed: true, Ground: onSheet}
}

func (v *resolver) minutes(f *Field) time.Duration {
	return time.Duration(bounded[float64](v, f) * float64(time.Second))
}

// once is one figure of the sheet.
func once[T any](x T) calc.Between[T] {
	return calc.Between[T]{Low: x, Usual: x, High: x, Ground: onSheet}
}
