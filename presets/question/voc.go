package question

import (
	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
)

// What thin and mix ask of volatile organic compounds.
var (
	ReadyVOC   = &Field{Name: "voc", Read: amount, Of: [2]*unit.Quantity{unit.VOC}, Bounds: [2]*calc.Bound{&calc.VOCBound}, Default: OfEntry}
	ThinnerVOC = &Field{Name: "thinner-voc", Read: amount, Of: [2]*unit.Quantity{unit.VOC}, Bounds: [2]*calc.Bound{&calc.VOCBound}, Default: Fixed}
	VOCLimit   = &Field{Name: "voc-limit", Read: positive, Of: [2]*unit.Quantity{unit.VOC}, Bounds: [2]*calc.Bound{&calc.VOCBound}, Want: "want-voc", Default: ShopOrOut}
)

// voc resolves the ready mix's, or takes the coat's usual; the thinner's, or that of a usual
// one; and the limit that the shop has set.
func (v *resolver) voc(e *catalogue.Coat) (q calc.VOC) {
	q.Water = e.Waterborne && !v.has(ThinnerVOC)
	switch {
	case v.has(ReadyVOC):
		q.Ready = calc.Stated[unit.Density]{Value: si[unit.Density](v, ReadyVOC), Ground: onSheet}
	case e.VOC != nil:
		q.Ready = calc.Stated[unit.Density]{Value: e.VOC.Ready.V, Ground: e.VOC.Ground()}
	}
	q.Thinner = calc.Stated[unit.Density]{Value: coat.SolventDensity, Ground: calc.Ground{Basis: calc.Estimate, Source: "source-thinner-voc"}}
	if v.has(ThinnerVOC) {
		q.Thinner = calc.Stated[unit.Density]{Value: si[unit.Density](v, ThinnerVOC), Ground: onSheet}
	}
	q.Limit = or(v, VOCLimit, unit.Density(0))
	return q
}
