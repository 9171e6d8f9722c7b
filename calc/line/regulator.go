package line

import "boothset/calc/unit"

// Regulator holds a set pressure until its seat is wide open. Its outlet falls at the first
// flow, by what it takes to lift the seat off (lock-up), and from there as flow rises:
// p_flowing = p_set - LockUp - Droop q, the flow-pressure characteristic of ISO 6953 down to
// what the open seat passes from the supply.
type Regulator struct {
	Seat   Restriction
	Droop  float64   // Pa per m3/s ANR
	LockUp unit.Drop // at the first flow
}

// DroopOf makes the droop from a rated point: a fall of drop at flow q.
func DroopOf(drop unit.Drop, q unit.Flow) float64 { return float64(drop) / float64(q) }

// Set is the pressure to set with no air moving so that the gauge reads flowing at q, above 0.
func (r Regulator) Set(flowing unit.Gauge, q unit.Flow) unit.Gauge {
	return flowing + unit.Gauge(r.LockUp) + unit.Gauge(r.Droop*float64(q))
}

// Flowing is what the gauge reads at q, above 0, when set was read with no air moving.
func (r Regulator) Flowing(set unit.Gauge, q unit.Flow) unit.Gauge {
	return set - unit.Gauge(r.LockUp) - unit.Gauge(r.Droop*float64(q))
}
