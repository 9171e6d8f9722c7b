package coat

import (
	"math"

	"boothset/calc/unit"
)

// Viscosities of what a coat is thinned with, at 20 C.
const (
	// SolventViscosity is that of n-butyl acetate, typical of a medium thinner; from
	// memory, not verified.
	SolventViscosity = unit.Kinematic(0.83e-6)
	// WaterViscosity is that of water. Source: steam tables, 1.004 mm2/s.
	WaterViscosity = unit.Kinematic(1.004e-6)
)

// Thinning is a ready mix and what is wanted of it.
type Thinning struct {
	Viscosity unit.Kinematic // of the mix as it stands
	At        unit.Temp      // its temperature
	Target    unit.Kinematic // wanted at the gun
	Warmest   unit.Temp      // the warmest it may be made; below At means no warming
	Slope     SlopeBand
	Thinner   unit.Kinematic // of the thinner alone
	MaxAdd    float64        // most thinner the coat takes, by volume of the mix as it stands; 0 is none
}

// Remedy is what brings a mix to its viscosity.
type Remedy uint8

// The remedies: nothing (thin enough as it is), warming alone, thinner alone (it is
// at its warmest already), warming as far as allowed and then thinner, or none within
// the limits.
const (
	Ready Remedy = iota
	Warm
	Add
	WarmAndAdd
	Cannot
)

// Advice is how to reach the viscosity: first warm, then thin. With Cannot, WarmTo
// and Add are the most that is allowed and Reached is what they give.
type Advice struct {
	Remedy  Remedy
	WarmTo  unit.Temp      // as it stands where no warming helps
	Add     float64        // thinner, by volume of the mix as it stands
	Reached unit.Kinematic // viscosity after both
	// AddAlone is the thinner that does it without warming, the other half of "warm it
	// or add 4 %"; AddAllowed says that the coat takes that much.
	AddAlone   float64
	AddAllowed bool
}

// Thin works out how to bring a mix to its target: warming comes first since it costs
// neither film nor solids, thinner makes up the rest, up to what the coat takes. What
// cannot be reached is a result, not an error. Mixing is by the logarithms of the
// viscosities over volume fractions (Arrhenius 1887), with the thinner's viscosity
// taken as fixed; both are estimates, good to start a cup reading from. The typical
// slope is used. Errors: a figure out of range, or a target as thin as the thinner.
func Thin(r Thinning) (Advice, error) {
	err := first(
		sprayable("viscosity", r.Viscosity), paintTemp("paint-temperature", r.At),
		sprayable("thinner-viscosity", r.Thinner),
		within("wanted-viscosity", r.Target.MM2PerS(), 1.5*r.Thinner.MM2PerS(), 1e5, "mm2/s"),
		paintTemp("warmest-temperature", r.Warmest), r.Slope.check(), share("most-thinner", r.MaxAdd, 0, 2),
	)
	if err != nil {
		return Advice{}, err
	}
	k := r.Slope.Typical
	a := Advice{WarmTo: r.At, Reached: r.Viscosity, AddAllowed: true}
	if r.Viscosity <= r.Target {
		return a, nil
	}
	a.AddAlone = addFor(r.Viscosity, r.Target, r.Thinner)
	a.AddAllowed = a.AddAlone <= r.MaxAdd
	if t := k.reach(r.Viscosity, r.At, r.Target); t <= r.Warmest {
		a.Remedy, a.WarmTo, a.Reached = Warm, t, r.Target
		return a, nil
	}
	a.Remedy = Add
	warm := r.Viscosity
	if r.Warmest > r.At {
		a.Remedy, a.WarmTo = WarmAndAdd, r.Warmest
		warm = unit.Kinematic(float64(r.Viscosity) * k.change(r.At, r.Warmest))
	}
	a.Add, a.Reached = addFor(warm, r.Target, r.Thinner), r.Target
	if a.Add > r.MaxAdd {
		a.Remedy, a.Add, a.Reached = Cannot, r.MaxAdd, thinned(warm, r.MaxAdd, r.Thinner)
	}
	return a, nil
}

// thinned is the viscosity of a mix of viscosity nu after adding thinner by the given
// share of its volume, by logarithmic mixing.
func thinned(nu unit.Kinematic, add float64, thinner unit.Kinematic) unit.Kinematic {
	x := add / (1 + add)
	return unit.Kinematic(float64(nu) * math.Exp(-x*math.Log(float64(nu)/float64(thinner))))
}

// addFor is the share to add so that a mix of viscosity nu has target: with x the
// thinner's fraction of the whole, x = ln(nu/target)/ln(nu/thinner) and the share is
// x/(1-x).
func addFor(nu, target, thinner unit.Kinematic) float64 {
	return math.Log(float64(nu)/float64(target)) / math.Log(float64(target)/float64(thinner))
}
