package presets

import (
	"math"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// The parts of the air line, from the answers to what calc marches along.

func (v *resolver) regulator(id, at Typed) {
	v.r.RegulatorID = string(id)
	switch string(at) {
	case AtWall:
		v.r.RegulatorAt, v.r.RegulatorName = calc.Wall, v.part("part-regulator-wall", string(id))
	case AtGun:
		v.r.RegulatorAt, v.r.RegulatorName = calc.Foot, v.part("part-regulator-foot", string(id))
	default:
		v.fault(FieldRegulatorAt, at, "choose", v.names([]string{AtWall, AtGun}))
	}
	if id == None {
		v.r.RegulatorAt, v.r.RegulatorName = calc.Nowhere, ""
		return
	}
	if e, ok := pick(v, FieldRegulator, id, v.c.entries.Regulator, None); ok {
		v.r.Regulator = e.regulator()
	}
}

func (v *resolver) filter(id Typed) {
	if id == None {
		return
	}
	if e, ok := pick(v, FieldFilter, id, v.c.entries.Filter, None); ok {
		v.r.Line = append(v.r.Line, line.Part{
			Name: v.part("part-filter", v.c.kindOf(FieldFilter, string(id))), Kind: line.FilterKind, Entry: string(id), Restriction: e.restriction(),
		})
	}
}

// hoses lays the hoses with a coupling at either end and between two.
func (v *resolver) hoses(hoses []Typed, id Typed) {
	var coupling *couplingEntry
	if id != None {
		coupling, _ = pick(v, FieldCoupling, id, v.c.entries.Coupling, None)
	}
	couple := func(where string, f ...calc.Figure) {
		if coupling == nil {
			return
		}
		v.r.Line = append(v.r.Line, line.Part{
			Name: v.c.words.Text(v.sys, "part-coupling-"+where, append(f, text("name", v.c.kindOf(FieldCoupling, string(id))))), Kind: line.CouplingKind, Entry: string(id), Restriction: coupling.restriction(),
		})
	}
	couple("wall")
	for i, h := range hoses {
		switch i {
		case 0:
			v.hose(v.c.words.Say("part-hose-main"), h)
		case 1:
			couple("whip")
			v.hose(v.c.words.Say("part-hose-whip"), h)
		default:
			couple("hose", count("number", i+1))
			v.hose(v.c.words.Text(v.sys, "part-hose", calc.Figures{count("number", i+1)}), h)
		}
	}
	couple("gun")
}

// hose reads one hose.
func (v *resolver) hose(name string, typed Typed) {
	length, bore, ok := v.lengthAndBore(typed)
	if !ok {
		v.fault(FieldHose, typed, "want-hose")
		return
	}
	v.r.Line = append(v.r.Line, line.Part{
		Name: name, Kind: line.HoseKind, Entry: string(typed),
		Hose: line.Hose{Length: length, Bore: bore, Roughness: line.SmoothRubber, End: v.c.hoseEnd(bore)},
	})
}

// lengthAndBore reads "25ft,3/8in".
func (v *resolver) lengthAndBore(given Typed) (length, bore unit.Length, ok bool) {
	long, wide, ok := pieces(FieldHose, given)
	if !ok {
		return 0, 0, false
	}
	length, err1 := unit.ParseLength(long, v.sys.LongUnit())
	bore, err2 := unit.ParseLength(wide, v.sys.SmallUnit())
	return length, bore, err1 == nil && err2 == nil
}

// hoseEnd is the fitting at the ends of a hose of a bore: in the same proportion as the
// nearest bore of the catalogue.
func (c *Catalogue) hoseEnd(bore unit.Length) line.Restriction {
	end, best := bore, math.Inf(1)
	for _, h := range c.entries.Hose {
		e := h.e
		if off := math.Abs(float64(bore/e.Bore.v) - 1); off < best {
			best, end = off, bore*(e.End.v/e.Bore.v)
		}
	}
	return hoseEnd(end)
}

// hoseEnd is an end fitting of a bore.
func hoseEnd(bore unit.Length) line.Restriction {
	return line.Restriction{C: line.OfBore(bore, line.FullBore), B: endRatio}
}

// endRatio is the critical ratio of a hose's end fitting: a short smooth bore, the
// upper end of the published 0.3 to 0.5. An estimate.
const endRatio = 0.5
