package calc

import (
	"math"
	"slices"

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
	HoseBore                     Tolerance // m
	HoseEnd                      Tolerance // relative; of the end fittings' conductance
	Friction                     Tolerance // relative; of the hoses
	CriticalRatio                Tolerance // relative; of all parts and the inlet valve
	StampFlow, StampCap          Tolerance // relative
	Droop                        Tolerance // relative
	WallGauge, GunGauge          Tolerance // Pa
	Felt                         Tolerance // relative; of the distance at which the push is met
	Thermometer, HygrometerShare Tolerance // K; fraction of saturation
}

// GaugeTolerance is how far a gauge may be off: by its error class, a share of its whole
// span (EN 837-1, a limit, taken as two standard deviations), and by half a mark in reading
// it, even odds all over.
func GaugeTolerance(span unit.Gauge, class float64, mark unit.Drop) Tolerance {
	return Tolerance{
		math.Hypot(class*float64(span), float64(mark)/math.Sqrt(3)),
		Ground{Published, "source-gauge-wall", &Figures{FigureOf("class", FigureShare, class), gauge("span", span)}},
	}
}

// ToleranceKind is what a tolerance is measured in.
type ToleranceKind uint8

// The kinds: a share (of the value, or of saturation for a hygrometer), a pressure, a
// temperature or a length off an instrument or a rule, and a factor either way, whose
// logarithm is Within.
const (
	RelativeTolerance ToleranceKind = iota
	PressureTolerance
	TemperatureTolerance
	LengthTolerance
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
const Dimensions = 16

// dimensions are all that may be off, in the order of Deviations.
var dimensions = [Dimensions]dimension{
	{"coupling", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.Coupling }, func(p *Perturbed, off float64) { p.scaleParts(line.CouplingKind, off) }},
	{"hose-bore", LengthTolerance, func(t *Tolerances) *Tolerance { return &t.HoseBore }, (*Perturbed).scaleBores},
	{"hose-end", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.HoseEnd }, (*Perturbed).scaleEnds},
	{"friction", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.Friction }, (*Perturbed).scaleFriction},
	{"critical-ratio", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.CriticalRatio }, (*Perturbed).scaleRatios},
	{"filter", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.Filter }, func(p *Perturbed, off float64) { p.scaleParts(line.FilterKind, off) }},
	{"valve", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.Valve }, func(p *Perturbed, off float64) { p.r.Gun.Valve.Full.C *= unit.Conductance(factor(off)) }},
	{"stamp-flow", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.StampFlow }, func(p *Perturbed, off float64) { p.stamp.Flow *= unit.Flow(factor(off)) }},
	{"stamp-cap", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.StampCap }, (*Perturbed).scaleCap},
	{"droop", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.Droop }, (*Perturbed).scaleDroops},
	{"wall-gauge", PressureTolerance, func(t *Tolerances) *Tolerance { return &t.WallGauge }, func(p *Perturbed, off float64) { p.wallOff = unit.Drop(off) }},
	{"gun-gauge", PressureTolerance, func(t *Tolerances) *Tolerance { return &t.GunGauge }, (*Perturbed).missGunGauge},
	{"thermometer", TemperatureTolerance, func(t *Tolerances) *Tolerance { return &t.Thermometer }, func(p *Perturbed, off float64) { p.airOff = unit.TempDiff(off) }},
	{"hygrometer", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.HygrometerShare }, func(p *Perturbed, off float64) { p.humidityOff = off }},
	{"felt", RelativeTolerance, func(t *Tolerances) *Tolerance { return &t.Felt }, func(p *Perturbed, off float64) { p.r.Gun.Felt.Distance *= unit.Length(factor(off)) }},
	{"valve-shape", FactorTolerance, func(t *Tolerances) *Tolerance { return &t.ValveShape }, func(p *Perturbed, off float64) { p.r.Gun.Valve.Shape *= gun.Shape(factor(off)) }},
}

// gunGauge is the place of the gun's gauge among them.
var gunGauge = slices.IndexFunc(dimensions[:], func(d dimension) bool { return d.id == "gun-gauge" })

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
