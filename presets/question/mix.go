package question

import (
	"math"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
)

// What mix asks besides the application.
var (
	Area    = &Field{Name: "area", Read: area, Repeats: true}
	Price   = &Field{Name: "price", Read: price, Repeats: true, Bounds: [2]*calc.Bound{&calc.PriceBound}, Default: LeftOut}
	CupSize = &Field{Name: "cup-size", Read: amount, Of: [2]*unit.Quantity{unit.CupVolume}, Bounds: [2]*calc.Bound{&calc.CupSizeBound}, Default: OfEntry}
	// Lead is what is sprayed past the panel at each end of a pass.
	Lead = &Field{Name: "lead", Read: amount, Of: [2]*unit.Quantity{unit.Distance}, Bounds: [2]*calc.Bound{&calc.LeadBound}, Default: Fixed}
	// Density is that of each part of the ratio, or of the ready mix where it has none.
	Density = &Field{Name: "density", Read: positive, Of: [2]*unit.Quantity{unit.PaintDensity}, Repeats: true, Bounds: [2]*calc.Bound{&calc.DensityBound}, Want: "want-density", Default: OfEntry}
	Loss    = &Field{Name: "loss", Read: amount, Of: [2]*unit.Quantity{unit.CupVolume}, Bounds: [2]*calc.Bound{&calc.LossBound}, Default: OfEntry}
)

// BoothTemp is the air's temperature as mix asks for it, for the pot life alone.
var BoothTemp = &Field{Name: Temp.Name, Read: amount, Of: Temp.Of, Bounds: [2]*calc.Bound{&calc.MixTempBound}, Default: Fixed}

// Mix asks how much of a coat a job takes.
var Mix = &Question{Name: "mix", Fields: append(applicationRows[:len(applicationRows):len(applicationRows)],
	Row{Field: Area}, Row{Field: Density}, Row{Field: Price}, Row{Field: CupSize}, Row{Field: Loss}, Row{Field: Lead},
	Row{Field: ReadyVOC}, Row{Field: ThinnerVOC}, Row{Field: VOCLimit}, Row{Field: PotLife},
	Row{BoothTemp, "usage-mix-temp"}, Row{FluidRate, "usage-mix-fluid-rate"},
)}

// usualLead is how far past the edge a pass is sprayed by a hand that triggers before and
// after it: an estimate.
const usualLead = unit.Length(3 * unit.MetrePerInch)

// Mix turns answers into a complete request, as Plan does.
func (r *Reader) Mix(a Answers, sys unit.System) (calc.MixRequest, []*Fault) {
	v := &resolver{Reader: r, a: a.Or(r.usual), sys: sys}
	q := calc.MixRequest{Application: v.application()}
	if !v.has(Gun) {
		v.fault(Gun, "needed-gun", r.names(r.Guns.IDs()))
	}
	if e, ok := r.Coats.Get(q.CoatID); ok {
		q.Ratio = v.ratio(e)
		q.Densities = v.densities(e, q.Ratio.Value)
		q.VOC = v.voc(e)
	}
	q.Thinned = or(v, Thinner, 0.0)
	q.Lead = calc.Stated[unit.Length]{Value: usualLead, Ground: calc.Ground{Basis: calc.Estimate, Source: "source-lead"}}
	if v.has(Lead) {
		q.Lead = calc.Stated[unit.Length]{Value: si[unit.Length](v, Lead), Ground: calc.AsTyped}
	}
	if !v.has(Area) {
		v.fault(Area, "want-area", r.names(panelNames()))
	}
	for _, x := range a.Get(Area) {
		if x.Fault != nil {
			v.faults = append(v.faults, x.Fault)
			continue
		}
		q.Panels = append(q.Panels, panelArea(x))
	}
	for _, x := range a.Get(Price) {
		if x.Fault != nil {
			v.faults = append(v.faults, x.Fault)
		}
		q.Prices = append(q.Prices, x.SI[0])
	}
	v.gunCup(&q)
	q.PotLife, q.PotLifeAt = v.potLife()
	q.Booth = or(v, BoothTemp, calc.SheetTemp)
	if v.has(FluidRate) {
		q.Rate = v.fluidRate()
	}
	if len(v.faults) == 0 {
		v.judge(q.Problems())
	}
	return q, v.faults
}

// panelArea is an area as it was read, with how many panels it is made of.
func panelArea(x Value) calc.PanelArea {
	p := calc.PanelArea{Name: x.Text, Low: unit.Area(x.SI[0]), High: unit.Area(x.SI[1]), Usual: x.ID != "", Count: 1}
	for _, usual := range coat.Panels() {
		if usual.ID == x.ID {
			p.Count = int(math.Round(float64(p.Low / usual.Low)))
		}
	}
	return p
}

// densities resolves that of each part of a ratio, in its order: as typed, else the coat's own
// for the first and usual ones for what it is mixed with. Of three parts and more the last is
// thinner, of two where the coat has no hardener.
func (v *resolver) densities(e *catalogue.Coat, mixed coat.Ratio) (d calc.Stated[[]unit.Density]) {
	if v.has(Density) {
		d.Ground = onSheet
		for _, x := range v.a.Get(Density) {
			if x.Fault != nil {
				v.faults = append(v.faults, x.Fault)
			}
			d.Value = append(d.Value, unit.Density(x.SI[0]))
		}
		return d
	}
	n := len(mixed.Parts)
	if e.Mix == nil || e.Mix.Density.V == 0 || n == 0 {
		return d
	}
	d.Ground = calc.Ground{Basis: calc.Estimate, Source: "source-densities"}
	d.Value = []unit.Density{e.Mix.Density.V}
	h := v.hardener(e)
	hardens := h == calc.Isocyanate || h == calc.Amine
	for i := 1; i < n; i++ {
		thinner := n > 2 && i == n-1 || n == 2 && !hardens
		switch {
		case !thinner:
			d.Value = append(d.Value, coat.HardenerDensity)
		case e.Waterborne:
			d.Value = append(d.Value, coat.WaterDensity)
		default:
			d.Value = append(d.Value, coat.SolventDensity)
		}
	}
	return d
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
