package coat

import "boothset/calc/unit"

// Densities of what a coat is mixed with, at 20 C. All of a solvent is volatile organic
// compound, so that its density is its VOC as well.
const (
	// SolventDensity is that of n-butyl acetate, typical of a medium thinner; from memory, not
	// verified.
	SolventDensity = unit.Density(880)
	// HardenerDensity is that of a polyisocyanate hardener, let down in solvent; from memory, not
	// verified.
	HardenerDensity = unit.Density(1050)
	// WaterDensity is that of water. Source: steam tables.
	WaterDensity = unit.Density(998)
)

// mostVOC is above any solvent there is.
const mostVOC = 1500.0 // g/L

// VOCWith is the VOC of a mix (0 to 1500 g/L) after thinner of its own VOC was added by a
// share of its volume (0 to 2), by the volume of the whole: (voc + add thinner)/(1 + add).
// Volumes are taken to add up. It is not for water, which rules leave out of the volume: a
// VOC told "less water" stays as it is.
func VOCWith(voc, thinner unit.Density, add float64) (unit.Density, error) {
	if err := first(
		within("voc", float64(voc), 0, mostVOC, "g/L"), within("thinner-voc", float64(thinner), 0, mostVOC, "g/L"), share("thinner", add, 0, 2),
	); err != nil {
		return 0, err
	}
	return (voc + thinner*unit.Density(add)) / unit.Density(1+add), nil
}

// Weigh is the masses of volumes, each of its own density, in order.
func Weigh(parts []unit.Volume, densities []unit.Density) ([]unit.Mass, error) {
	if err := within("densities", float64(len(densities)), float64(len(parts)), float64(len(parts)), "densities"); err != nil {
		return nil, err
	}
	out := make([]unit.Mass, len(parts))
	for i, v := range parts {
		if err := within("density", float64(densities[i]), 500, 5000, "kg/m3"); err != nil {
			return nil, err
		}
		out[i] = unit.Mass(float64(v) * float64(densities[i]))
	}
	return out, nil
}
