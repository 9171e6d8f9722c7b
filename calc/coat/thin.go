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

// Thinned is the viscosity of a mix of viscosity nu with thinner added by a share of its
// volume, 0 to 2: ln nu mixes over volume fractions (Arrhenius 1887), so that with x the
// thinner's fraction of the whole, x = add/(1 + add), nu' = nu (thinner/nu)^x. The
// thinner's viscosity is taken as fixed; both are estimates, good to start a cup reading
// from. Errors: a figure out of range.
func Thinned(nu, thinner unit.Kinematic, add float64) (unit.Kinematic, error) {
	if err := first(sprayable("viscosity", nu), sprayable("thinner-viscosity", thinner), share("thinner", add, 0, 2)); err != nil {
		return 0, err
	}
	x := add / (1 + add)
	return unit.Kinematic(float64(nu) * math.Pow(float64(thinner/nu), x)), nil
}

// ThinnerFor is the share of thinner that brings a mix from nu to target, the inverse of
// Thinned: ln(nu/target)/ln(target/thinner), 0 where the mix is as thin already. Errors: a
// figure out of range, or a target about as thin as the thinner.
func ThinnerFor(nu, target, thinner unit.Kinematic) (float64, error) {
	if err := first(
		sprayable("viscosity", nu), sprayable("thinner-viscosity", thinner),
		within("wanted-viscosity", target.MM2PerS(), 1.5*thinner.MM2PerS(), 1e5, "mm2/s"),
	); err != nil {
		return 0, err
	}
	if nu <= target {
		return 0, nil
	}
	return math.Log(float64(nu/target)) / math.Log(float64(target/thinner)), nil
}
