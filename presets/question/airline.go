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
	v.regulator(r)
	v.line(r)
	gauge, _ := v.value(Gauge)
	r.Gauge = map[string]calc.GaugePlace{InHandle: calc.InHandle, AtFoot: calc.AtFoot, None: calc.NoGauge}[gauge.ID]
	r.Mark = or(v, Mark, UsualMark(v.sys))
	r.Tolerances.WallGauge = calc.GaugeTolerance(bounded[unit.Gauge](v, GaugeSpan), bounded[float64](v, GaugeClass), r.Mark)
	if v.has(Wall) {
		r.HasNow, r.Now = true, si[unit.Gauge](v, Wall)
	}
}

func (v *resolver) regulator(r *calc.Request) {
	at, okAt := v.value(RegulatorAt)
	x, ok := v.value(Regulator)
	switch {
	case !ok || !okAt:
		return
	case x.ID == None:
		r.RegulatorAt = calc.Nowhere
		return
	case at.ID == AtGun:
		r.RegulatorAt, r.RegulatorName = calc.Foot, v.partName("part-regulator-foot", x.ID)
	default:
		r.RegulatorAt, r.RegulatorName = calc.Wall, v.partName("part-regulator-wall", x.ID)
	}
	r.RegulatorID = x.ID
	if e, ok := v.Regulators.Get(x.ID); ok {
		r.Regulator = e.Regulator()
	}
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
// what does.
func (r *Reader) swaps(q *calc.Request) []calc.Swap {
	hoses := (len(q.Line) + 1) / 2 // with a coupling between any two
	all := make([]calc.Swap, 0, len(r.Couplings)+len(r.Filters)+1+len(r.Regulators)+hoses*(len(r.Hoses)+1))
	var coupled, filtered bool
	for i := range q.Line {
		switch p := &q.Line[i]; p.Kind {
		case line.CouplingKind:
			coupled = true
		case line.FilterKind:
			filtered = true
		case line.HoseKind:
			for _, h := range r.Hoses {
				if bore := h.Of.Bore.V; bore > p.Hose.Bore {
					all = append(all, calc.Swap{ID: h.ID, Name: h.ID, Kind: calc.SwapBore, Index: i, Bore: bore, End: h.Of.EndFitting()})
				}
			}
			all = append(all, calc.Swap{Kind: calc.ShortenHose, Index: i, Scale: shorter})
		}
	}
	if coupled {
		for _, p := range r.Couplings {
			all = append(all, calc.Swap{ID: p.ID, Name: p.Of.Variety(), Kind: calc.SwapCouplings, Part: p.Of.Restriction()})
		}
	}
	if filtered {
		all = append(all, calc.Swap{Kind: calc.DropFilter})
		for _, p := range r.Filters {
			all = append(all, calc.Swap{ID: p.ID, Name: p.Of.Variety(), Kind: calc.SwapFilter, Part: p.Of.Restriction()})
		}
	}
	if q.RegulatorAt != calc.Nowhere {
		for _, p := range r.Regulators {
			all = append(all, calc.Swap{ID: p.ID, Name: p.ID, Kind: calc.SwapRegulator, Regulator: p.Of.Regulator()})
		}
	}
	return all
}
