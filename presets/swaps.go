package presets

import (
	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// shorter is the share of a hose's length that is tried in its place.
const shorter = 0.5

// swaps is everything of the catalogue that could stand in a request's line in place
// of what does, put into the request's room for it.
func (c *Catalogue) swaps(r *calc.Request) []calc.Swap {
	e := c.entries
	all := r.Swaps[:0]
	var coupled, filtered bool
	for i := range r.Line {
		switch p := &r.Line[i]; p.Kind {
		case line.CouplingKind:
			coupled = true
		case line.FilterKind:
			filtered = true
		case line.HoseKind:
			for _, h := range e.Hose {
				if bore := h.e.Bore.v; bore > p.Hose.Bore {
					all = append(all, calc.Swap{ID: h.id, Name: h.id, Kind: calc.SwapBore, Index: i, Bore: bore, End: h.e.end()})
				}
			}
			all = append(all, calc.Swap{Kind: calc.ShortenHose, Index: i, Scale: shorter})
		}
	}
	if coupled {
		for _, p := range e.Coupling {
			all = append(all, calc.Swap{ID: p.id, Name: c.kindOf(FieldCoupling, p.id), Kind: calc.SwapCouplings, Part: p.e.restriction()})
		}
	}
	if filtered {
		all = append(all, calc.Swap{Kind: calc.DropFilter})
		for _, p := range e.Filter {
			all = append(all, calc.Swap{ID: p.id, Name: c.kindOf(FieldFilter, p.id), Kind: calc.SwapFilter, Part: p.e.restriction()})
		}
	}
	if r.RegulatorAt != calc.Nowhere {
		for _, p := range e.Regulator {
			all = append(all, calc.Swap{ID: p.id, Name: p.id, Kind: calc.SwapRegulator, Regulator: p.e.regulator()})
		}
	}
	return all
}

// restriction is what the part passes.
func (e *restrictionEntry) restriction() line.Restriction {
	return line.Restriction{C: unit.DM3PerSBar(e.conductance()), B: e.Ratio}
}

// conductance is the part's own, else the one that its flow coefficient gives.
func (e *restrictionEntry) conductance() float64 {
	if e.Conductance == 0 && e.FlowCoefficient > 0 {
		return line.FromValveFlow(e.FlowCoefficient, e.Ratio).DM3PerSBar()
	}
	return e.Conductance
}

func (e *couplingEntry) restriction() line.Restriction {
	passes := e.passes()
	return passes.restriction()
}

// passes is what a coupling passes: what its bore does where nothing else is given.
func (e *couplingEntry) passes() restrictionEntry {
	passes := e.restrictionEntry
	if passes.Conductance == 0 && passes.FlowCoefficient == 0 && e.Bore.v > 0 {
		passes.Conductance = line.OfBore(e.Bore.v, line.FullBore).DM3PerSBar()
	}
	return passes
}

func (e *regulatorEntry) regulator() line.Regulator {
	return line.Regulator{
		Seat:  e.restriction(),
		Droop: line.DroopOf(unit.Drop(e.Droop.v), e.RatedFlow.v),
	}
}

func (e *hoseEntry) end() line.Restriction { return hoseEnd(e.End.v) }
