package question

import (
	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
)

// The air line, from the regulator to the gun.
var (
	Supply = &Field{
		Name: "supply", Read: amount, Of: [2]*unit.Quantity{unit.Pressure}, Bounds: [2]*calc.Bound{&calc.SupplyBound},
		Default: ShopOrAsk, Part: PartAir, Begin: [2]string{"90 psi", "6 bar"},
	}
	Regulator   = &Field{Name: "regulator", Read: choice, Entries: catalogue.KindRegulator, Options: []string{None}, Default: ShopOrAsk, Part: PartLine}
	RegulatorAt = &Field{Name: "regulator-at", Read: choice, Options: []string{AtWall, AtGun}, Default: ShopOrAsk, Part: PartLine}
	Filter      = &Field{Name: "filter", Read: choice, Entries: catalogue.KindFilter, Options: []string{None}, OptionsFirst: true, Default: ShopOrAsk, Part: PartLine}
	Hose        = &Field{
		Name: "hose", Read: pair, Of: [2]*unit.Quantity{unit.Run, unit.Bore}, Bounds: [2]*calc.Bound{&calc.HoseLengthBound, &calc.HoseBoreBound},
		Repeats: true, Want: "want-hose", Default: ShopOrOut, Part: PartLine,
	}
	Coupling = &Field{Name: "coupling", Read: choice, Entries: catalogue.KindCoupling, Options: []string{None}, Default: ShopOrAsk, Part: PartLine}
	Gauge    = &Field{Name: "gauge", Read: choice, Options: []string{InHandle, AtFoot, None}, Default: ShopOrAsk, Part: PartLine}
	// GaugeSpan and GaugeClass are of the gauge that the pressure is set by.
	GaugeSpan = &Field{
		Name: "gauge-span", Read: amount, Of: [2]*unit.Quantity{unit.Pressure}, Bounds: [2]*calc.Bound{&calc.GaugeSpanBound}, Default: ShopOrAsk,
	}
	GaugeClass = &Field{Name: "gauge-class", Read: amount, Of: [2]*unit.Quantity{unit.Share}, Bounds: [2]*calc.Bound{&calc.GaugeClassBound}, Default: ShopOrAsk}
	Wall       = &Field{
		Name: "wall", Read: amount, Of: [2]*unit.Quantity{unit.Pressure}, Bounds: [2]*calc.Bound{&calc.SupplyBound},
		Default: LeftOut, Part: PartAir, Step: [2][2]float64{markStep}, Begin: [2]string{"30 psi", "2 bar"},
	}
	Mark = &Field{
		Name: "mark", Read: amount, Of: [2]*unit.Quantity{unit.Pressure}, Bounds: [2]*calc.Bound{&calc.MarkBound},
		Default: ShopOrOut, Step: [2][2]float64{markStep}, Counts: func(q *calc.Request) float64 { return float64(q.Mark) },
	}
)

// airRows is what a plan asks of the air line.
var airRows = []Row{
	{Field: Supply}, {Field: Regulator}, {Field: RegulatorAt}, {Field: Filter}, {Field: Hose}, {Field: Coupling}, {Field: Gauge},
	{Field: GaugeSpan}, {Field: GaugeClass}, {Field: Wall}, {Field: Mark},
}

// markStep is the mark that a wall gauge is taken to have where it is not told, in psi and
// in bar.
var markStep = [2]float64{1, 0.05}

// UsualMark is the mark that a wall gauge is taken to have where it is not told.
func UsualMark(sys unit.System) unit.Drop {
	return unit.Drop(unit.Pressure.Of(sys, markStep[sys]))
}

// air resolves the supply and the line.
func (v *resolver) air(r *calc.Request) {
	r.Supply = si[unit.Gauge](v, Supply)
	regulator, atGun, ok := v.regulator()
	if ok && !atGun {
		r.Line = append(r.Line, regulator)
	}
	v.line(r)
	if ok && atGun {
		r.Line = append(r.Line, regulator)
	}
	gauge, _ := v.value(Gauge)
	r.Gauge = map[string]calc.GaugePlace{InHandle: calc.InHandle, AtFoot: calc.AtFoot, None: calc.NoGauge}[gauge.ID]
	r.Mark = or(v, Mark, UsualMark(v.sys))
	r.Tolerances.WallGauge = calc.GaugeTolerance(bounded[unit.Gauge](v, GaugeSpan), bounded[float64](v, GaugeClass), r.Mark)
	if v.has(Wall) {
		r.HasNow, r.Now = true, si[unit.Gauge](v, Wall)
	}
}

// regulator is the regulator of the line and whether it sits at the gun; ok is false where
// there is none.
func (v *resolver) regulator() (p line.Part, atGun, ok bool) {
	at, okAt := v.value(RegulatorAt)
	x, ok := v.value(Regulator)
	if !ok || !okAt || x.ID == None {
		return p, false, false
	}
	e, _ := v.Regulators.Get(x.ID)
	name := "part-regulator-wall"
	if atGun = at.ID == AtGun; atGun {
		name = "part-regulator-foot"
	}
	p = line.Part{Name: v.partName(name, x.ID), Kind: line.RegulatorKind, Entry: x.ID}
	p.Regulate(e.Regulator())
	return p, atGun, true
}

// partName is what a part of the line is called.
func (v *resolver) partName(id, name string, f ...calc.Figure) string {
	return v.Words().Text(v.sys, id, append(f, calc.TextFigure("name", name)))
}

// line lays the filter and the hoses, with a coupling at either end and between two.
func (v *resolver) line(r *calc.Request) {
	if x, ok := v.value(Filter); ok && x.ID != None {
		e, _ := v.Filters.Get(x.ID)
		name := v.partName("part-filter", e.Variety())
		r.Line = append(r.Line, line.Part{Name: name, Kind: line.FilterKind, Entry: x.ID, Restriction: e.Restriction()})
	}
	couple := func(string, ...calc.Figure) {}
	if x, ok := v.value(Coupling); ok && x.ID != None {
		e, _ := v.Couplings.Get(x.ID)
		couple = func(where string, f ...calc.Figure) {
			name := v.partName("part-coupling-"+where, e.Variety(), f...)
			r.Line = append(r.Line, line.Part{Name: name, Kind: line.CouplingKind, Entry: x.ID, Restriction: e.Restriction()})
		}
	}
	couple("wall")
	for i, h := range v.a.Get(Hose) {
		number := calc.CountFigure("number", i+1)
		name := v.Words().Text(v.sys, "part-hose", calc.Figures{number})
		switch i {
		case 0:
			name = v.Words().Say("part-hose-main")
		case 1:
			couple("whip")
			name = v.Words().Say("part-hose-whip")
		default:
			couple("hose", number)
		}
		if h.Fault != nil {
			v.faults = append(v.faults, h.Fault)
			continue
		}
		bore := unit.Length(h.SI[1])
		r.Line = append(r.Line, line.Part{
			Name: name, Kind: line.HoseKind, Entry: h.Text,
			Hose: line.Hose{Length: unit.Length(h.SI[0]), Bore: bore, Roughness: line.SmoothRubber, End: v.HoseEnd(bore)},
		})
	}
	couple("gun")
}

// shorter is the share of a hose's length that is tried in its place.
const shorter = 0.5

// swaps is everything of the catalogue that could stand in a request's line in place of
// what does: of every coupling at once where all are of one kind, else of each.
func (r *Reader) swaps(parts []line.Part) []calc.Swap {
	all := make([]calc.Swap, 0, 32)
	alike := alikeCouplings(parts)
	for i := range parts {
		switch p := &parts[i]; p.Kind {
		case line.RegulatorKind:
			for _, e := range r.Regulators {
				all = append(all, calc.Swap{ID: e.ID, Name: e.ID, Kind: calc.SwapRegulator, Index: i, Regulator: e.Of.Regulator()})
			}
		case line.FilterKind:
			all = append(all, calc.Swap{Kind: calc.DropFilter, Index: i})
			for _, e := range r.Filters {
				all = append(all, calc.Swap{ID: e.ID, Name: e.Of.Variety(), Kind: calc.SwapFilter, Index: i, Part: e.Of.Restriction()})
			}
		case line.CouplingKind:
			kind := calc.SwapCoupling
			if alike == i {
				kind = calc.SwapCouplings
			} else if alike >= 0 {
				continue
			}
			for _, e := range r.Couplings {
				all = append(all, calc.Swap{ID: e.ID, Name: e.Of.Variety(), Kind: kind, Index: i, Part: e.Of.Restriction()})
			}
		case line.HoseKind:
			for _, h := range r.Hoses {
				if bore := h.Of.Bore.V; bore > p.Hose.Bore {
					all = append(all, calc.Swap{ID: h.ID, Name: h.ID, Kind: calc.SwapBore, Index: i, Bore: bore, End: h.Of.EndFitting()})
				}
			}
			all = append(all, calc.Swap{Kind: calc.ShortenHose, Index: i, Scale: shorter})
		}
	}
	return all
}

// alikeCouplings is the place of the first coupling where all are of one kind, else -1.
func alikeCouplings(parts []line.Part) int {
	first := -1
	for i := range parts {
		switch p := &parts[i]; {
		case p.Kind != line.CouplingKind:
		case first < 0:
			first = i
		case p.Entry != parts[first].Entry:
			return -1
		}
	}
	return first
}
