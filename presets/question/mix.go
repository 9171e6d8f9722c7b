package question

import (
	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// What mix asks besides the application.
var (
	Area    = &Field{Name: "area", Read: area, Repeats: true}
	Price   = &Field{Name: "price", Read: price, Repeats: true, Bounds: [2]*calc.Bound{&calc.PriceBound}, Default: LeftOut}
	CupSize = &Field{Name: "cup-size", Read: amount, Of: [2]*unit.Quantity{unit.CupVolume}, Bounds: [2]*calc.Bound{&calc.CupSizeBound}, Default: OfEntry}
	Loss    = &Field{Name: "loss", Read: amount, Of: [2]*unit.Quantity{unit.CupVolume}, Bounds: [2]*calc.Bound{&calc.LossBound}, Default: OfEntry}
)

// BoothTemp is the air's temperature as mix asks for it, for the pot life alone.
var BoothTemp = &Field{Name: Temp.Name, Read: amount, Of: Temp.Of, Bounds: [2]*calc.Bound{&calc.MixTempBound}, Default: Fixed}

// Mix asks how much of a coat a job takes.
var Mix = &Question{Name: "mix", Fields: append(applicationRows[:len(applicationRows):len(applicationRows)],
	Row{Field: Area}, Row{Field: Price}, Row{Field: CupSize}, Row{Field: Loss}, Row{Field: PotLife},
	Row{BoothTemp, "usage-mix-temp"}, Row{FluidRate, "usage-mix-fluid-rate"},
)}

// Mix turns answers into a complete request, as Plan does.
func (r *Reader) Mix(a Answers, sys unit.System) (calc.MixRequest, []*Fault) {
	v := &resolver{Reader: r, a: a, sys: sys}
	q := calc.MixRequest{Application: v.application()}
	if !v.has(Gun) {
		v.fault(Gun, "needed-gun", r.names(r.Guns.IDs()))
	}
	if e, ok := r.Coats.Get(q.CoatID); ok {
		q.Ratio = v.ratio(e)
	}
	if !v.has(Area) {
		v.fault(Area, "want-area", r.names(panelNames()))
	}
	for _, x := range a.Get(Area) {
		if x.Fault != nil {
			v.faults = append(v.faults, x.Fault)
			continue
		}
		q.Panels = append(q.Panels, calc.PanelArea{Name: x.Text, Low: unit.Area(x.SI[0]), High: unit.Area(x.SI[1]), Usual: x.ID != ""})
	}
	for _, x := range a.Get(Price) {
		if x.Fault != nil {
			v.faults = append(v.faults, x.Fault)
		}
		q.Prices = append(q.Prices, x.SI[0])
	}
	v.gunCup(&q)
	q.PotLife = v.potLife()
	q.Booth = or(v, BoothTemp, calc.SheetTemp)
	if v.has(FluidRate) {
		q.Rate = v.fluidRate()
	}
	if len(v.faults) == 0 {
		v.judge(q.Problems())
	}
	return q, v.faults
}

// gunCup resolves the gun's cup and what stays behind in it.
func (v *resolver) gunCup(q *calc.MixRequest) {
	if g, ok := v.Guns.Get(q.GunID); ok {
		if c, ok := g.CupOf(); ok {
			q.Cup = calc.Stated[unit.Volume]{Value: c.Size.V, Ground: c.Ground()}
			q.Loss = calc.Stated[unit.Volume]{Value: c.Loss.V, Ground: c.Ground()}
		}
		if p := g.Pot; p != nil {
			q.FromPot = !v.has(CupSize)
			q.Loss = calc.Stated[unit.Volume]{Value: p.Loss.V, Ground: p.Ground()}
		}
	}
	unknown := q.GunID != "" && q.Loss.Basis == ""
	if v.has(CupSize) || unknown {
		q.Cup = calc.Stated[unit.Volume]{Value: si[unit.Volume](v, CupSize), Ground: calc.AsTyped}
	}
	if v.has(Loss) || unknown {
		q.Loss = calc.Stated[unit.Volume]{Value: si[unit.Volume](v, Loss), Ground: calc.AsTyped}
	}
}

// fluidRate is the flow of coating.
func (v *resolver) fluidRate() coat.FluidRate { return si[coat.FluidRate](v, FluidRate) }
