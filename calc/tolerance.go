package calc

import (
	"boothset/calc/gun"
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
	ValveShape                   Tolerance // factor
	HoseBore, HoseEnd            Tolerance // relative; of the end fittings' conductance
	StampFlow, StampCap          Tolerance // relative
	Droop                        Tolerance // relative
	WallGauge, GunGauge          Tolerance // Pa
	Thermometer, HygrometerShare Tolerance // K; fraction of saturation
}

// ToleranceKind is what a tolerance is measured in.
type ToleranceKind uint8

// The kinds: a share (of the value, or of saturation for a hygrometer), a pressure or a
// temperature off an instrument, and a factor either way, whose logarithm is Within.
const (
	RelativeTolerance ToleranceKind = iota
	PressureTolerance
	TemperatureTolerance
	FactorTolerance
)

// dimension is one thing that may be off: which tolerance, and what being off by so much
// does to a perturbed request.
type dimension struct {
	id    string
	kind  ToleranceKind
	of    func(*Tolerances) *Tolerance
	apply func(p *Perturbed, off float64)
}

// Dimensions is how many things may be off at once.
const Dimensions = 13

// dimensions are all that may be off, in the order of Deviations.
var dimensions = [Dimensions]dimension{
	{"coupling", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.Coupling }, func(p *Perturbed, off float64) { p.scaleParts(line.CouplingKind, off) }},
	{"hose-bore", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.HoseBore }, (*Perturbed).scaleBores},
	{"hose-end", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.HoseEnd }, (*Perturbed).scaleEnds},
	{"filter", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.Filter }, func(p *Perturbed, off float64) { p.scaleParts(line.FilterKind, off) }},
	{"valve", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.Valve }, func(p *Perturbed, off float64) { p.r.Gun.Valve.Full.C *= unit.Conductance(factor(off)) }},
	{"stamp-flow", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.StampFlow }, func(p *Perturbed, off float64) { p.stamp.Flow *= unit.Flow(factor(off)) }},
	{"stamp-cap", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.StampCap }, (*Perturbed).scaleCap},
	{"droop", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.Droop }, (*Perturbed).scaleDroops},
	{"wall-gauge", PressureTolerance, func(t *Tolerances) *Tolerance { return &t.WallGauge }, func(p *Perturbed, off float64) { p.wallOff = unit.Drop(off) }},
	{"gun-gauge", PressureTolerance, func(t *Tolerances) *Tolerance { return &t.GunGauge }, func(p *Perturbed, off float64) { p.gunOff = unit.Drop(off) }},
	{"thermometer", TemperatureTolerance, func(t *Tolerances) *Tolerance { return &t.Thermometer }, func(p *Perturbed, off float64) { p.airOff = unit.TempDiff(off) }},
	{"hygrometer", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.HygrometerShare }, func(p *Perturbed, off float64) { p.humidityOff = off }},
	{"valve-shape", FactorTolerance, func(t *Tolerances) *Tolerance { return &t.ValveShape }, func(p *Perturbed, off float64) { p.r.Gun.Valve.Shape *= gun.Shape(factor(off)) }},
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

// ToleranceIDs are the ids of the tolerances, in the order of Deviations.
func ToleranceIDs() (ids [Dimensions]string) {
	for i := range dimensions {
		ids[i] = dimensions[i].id
	}
	return ids
}
