package calc

import (
	"boothset/calc/line"
	"boothset/calc/unit"
)

// Tolerance is how far a value may be off, as two standard deviations: relative for
// what is multiplied, in SI for what is read off an instrument.
type Tolerance struct {
	Within float64
	Ground
}

// Tolerances is what each value of a request may be off by. A coupling's or a filter's
// own is in the catalogue entry it came from and goes with its Part; these are the rest.
type Tolerances struct {
	Coupling, Filter, Valve      Tolerance // sonic conductance, relative
	HoseBore, HoseEnd            Tolerance // relative; of the end fittings' conductance
	StampFlow, StampCap          Tolerance // relative
	Droop                        Tolerance // relative
	WallGauge, GunGauge          Tolerance // Pa
	Thermometer, HygrometerShare Tolerance // K; fraction of saturation
}

// ToleranceKind is what a tolerance is measured in.
type ToleranceKind uint8

// The kinds: a share (of the value, or of saturation for a hygrometer), and a pressure or a
// temperature off an instrument.
const (
	RelativeTolerance ToleranceKind = iota
	PressureTolerance
	TemperatureTolerance
)

// dimension is one thing that may be off: which tolerance, and what being off by so much
// does to a perturbed request.
type dimension struct {
	id    string
	kind  ToleranceKind
	of    func(*Tolerances) *Tolerance
	apply func(t *perturbed, off float64)
}

// dimensions are all that is propagated, in the order of their coordinates.
var dimensions = [...]dimension{
	{"coupling", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.Coupling }, func(t *perturbed, off float64) { t.scaleParts(line.CouplingKind, off) }},
	{"hose-bore", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.HoseBore }, (*perturbed).scaleBores},
	{"hose-end", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.HoseEnd }, (*perturbed).scaleEnds},
	{"filter", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.Filter }, func(t *perturbed, off float64) { t.scaleParts(line.FilterKind, off) }},
	{"valve", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.Valve }, func(t *perturbed, off float64) { t.r.Gun.Valve.Full.C *= unit.Conductance(factor(off)) }},
	{"stamp-flow", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.StampFlow }, func(t *perturbed, off float64) { t.stamp.Flow *= unit.Flow(factor(off)) }},
	{"stamp-cap", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.StampCap }, (*perturbed).scaleCap},
	{"droop", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.Droop }, func(t *perturbed, off float64) { t.r.Regulator.Droop *= factor(off) }},
	{"wall-gauge", PressureTolerance, func(t *Tolerances) *Tolerance { return &t.WallGauge }, func(t *perturbed, off float64) { t.wallOff = unit.Drop(off) }},
	{"gun-gauge", PressureTolerance, func(t *Tolerances) *Tolerance { return &t.GunGauge }, func(t *perturbed, off float64) { t.gunOff = unit.Drop(off) }},
	{"thermometer", TemperatureTolerance, func(t *Tolerances) *Tolerance { return &t.Thermometer }, func(t *perturbed, off float64) { t.airOff = unit.TempDiff(off) }},
	{"hygrometer", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.HygrometerShare }, func(t *perturbed, off float64) { t.humidityOff = off }},
}

// Of is the tolerance with an id and what it is measured in, nil where there is none.
func (t *Tolerances) Of(id string) (*Tolerance, ToleranceKind) {
	for i := range dimensions {
		if d := &dimensions[i]; d.id == id {
			return d.of(t), d.kind
		}
	}
	return nil, 0
}

// Dimensions is how many things may be off at once.
const Dimensions = len(dimensions)
