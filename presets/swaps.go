package presets

import (
	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// shorter is the share of a hose's length that is tried in its place.
const shorter = 0.5

// swaps is everything of the catalogue that could stand in a request's line in place
// of what does.
func (c *Catalogue) swaps(r *calc.Request) []calc.Swap {
	e := c.entries
	all := make([]calc.Swap, 0, len(c.order.coupling)+len(c.order.filter)+len(c.order.regulator)+2*len(c.order.hose)+2)
	var coupled, filtered bool
	for i := range r.Line {
		switch p := &r.Line[i]; p.Kind {
		case line.CouplingKind:
			coupled = true
		case line.FilterKind:
			filtered = true
		case line.HoseKind:
			for _, id := range c.order.hose {
				h := e.Hose[id]
				if bore := h.Bore.v; bore > p.Hose.Bore {
					all = append(all, calc.Swap{ID: id, Kind: calc.SwapBore, Index: i, Bore: bore, End: h.end()})
				}
			}
			all = append(all, calc.Swap{Kind: calc.ShortenHose, Index: i, Scale: shorter})
		}
	}
	if coupled {
		for _, id := range c.order.coupling {
			all = append(all, calc.Swap{ID: id, Kind: calc.SwapCouplings, Part: e.Coupling[id].restriction()})
		}
	}
	if filtered {
		all = append(all, calc.Swap{Kind: calc.DropFilter})
		for _, id := range c.order.filter {
			all = append(all, calc.Swap{ID: id, Kind: calc.SwapFilter, Part: e.Filter[id].restriction()})
		}
	}
	if r.RegulatorAt != calc.Nowhere {
		for _, id := range c.order.regulator {
			all = append(all, calc.Swap{ID: id, Kind: calc.SwapRegulator, Regulator: e.Regulator[id].regulator()})
		}
	}
	return all
}

func (e *restrictionEntry) restriction() line.Restriction {
	return line.Restriction{C: unit.DM3PerSBar(e.Conductance), B: e.Ratio}
}

func (e *regulatorEntry) regulator() line.Regulator {
	return line.Regulator{
		Seat:  e.restriction(),
		Droop: line.DroopOf(unit.Drop(e.Droop.v), e.RatedFlow.v),
	}
}

func (e *hoseEntry) end() line.Restriction { return hoseEnd(e.End.v) }
