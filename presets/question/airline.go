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
	{Field: Supply}, {Field: Regulator}, {Field: RegulatorAt}, {Field: Filter}, {Field: Hose}, {Field: Coupling},
	{Field: Line}, {Field: HoseTemp}, {Field: Gauge},
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
	r.Line = v.lineParts()
	r.HoseAir = or(v, HoseTemp, unit.Temp(0))
	gauge, _ := v.value(Gauge)
	r.Gauge = map[string]calc.GaugePlace{InHandle: calc.InHandle, AtFoot: calc.AtFoot, None: calc.NoGauge}[gauge.ID]
	r.Mark = or(v, Mark, UsualMark(v.sys))
	r.Tolerances.WallGauge = calc.GaugeTolerance(bounded[unit.Gauge](v, GaugeSpan), bounded[float64](v, GaugeClass), r.Mark)
	if v.has(Wall) {
		r.HasNow, r.Now = true, si[unit.Gauge](v, Wall)
	}
}

// shorter is the share of a hose's length that is tried in its place.
const shorter = 0.5

// swaps is everything of the catalogue that could stand in a request's line in place of
// what does: of every coupling at once where all are of one kind, else of each.
func (r *Reader) swaps(q *calc.Request) []calc.Swap {
	parts := q.Line
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
		case line.DryerKind:
			for _, e := range r.Dryers {
				if e.Of.DewPoint.V <= p.DewPoint { // no wetter air is advised
					all = append(all, calc.Swap{ID: e.ID, Name: e.Of.Variety(), Kind: calc.SwapDryer, Index: i, Part: e.Of.Restriction()})
				}
			}
		case line.ValveKind:
			if !q.Gun.Valve.None {
				all = append(all, calc.Swap{Kind: calc.DropValve, Index: i})
			}
			for _, e := range r.Valves {
				all = append(all, calc.Swap{ID: e.ID, Name: e.Of.Variety(), Kind: calc.SwapValve, Index: i, Part: e.Of.Valve().Full})
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
