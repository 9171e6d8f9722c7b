package coat

import (
	"math"

	"boothset/calc/air"
	"boothset/calc/unit"
)

// The reference day that drying is relative to: 21 C (70 F), 50 % humidity, sea level.
const (
	ReferenceTemp     = unit.Temp(21 + unit.ZeroCelsius)
	ReferenceHumidity = 0.5
	ReferencePressure = unit.Abs(101325)
)

// SolventDrive is how fast a solvent coat dries at its temperature, in air of pressure p,
// relative to the reference day: the ratio of its reference solvent's vapour pressures, and
// how much more readily thinner air takes them. The film's own cooling and the speed of the
// air over it are taken as the same on both days.
func SolventDrive(s Solvent, paint unit.Temp, p unit.Abs) float64 {
	return float64(s.Saturation(paint)) / float64(s.Saturation(ReferenceTemp)) * thinAir(p)
}

// thinAir is how much more readily air of pressure p takes vapour from a film than at sea
// level. The transfer goes as D^(2/3)/nu^(1/6) for a boundary layer (Chilton and Colburn's
// analogy), and both the diffusivity D and the air's kinematic viscosity nu as 1/p.
func thinAir(p unit.Abs) float64 { return math.Sqrt(float64(ReferencePressure / p)) }

// LongestFlash is the most that FlashFactor gives: slower than that, the film does not
// dry in a working day and no factor means anything.
const LongestFlash = 20.0

// FlashFactor is how many times longer a coat takes to flash off than on the reference
// day, for a drive relative to that day. It is never minutes: film, panel and blowers
// decide those. Drives of 1/LongestFlash and less give LongestFlash.
func FlashFactor(drive float64) float64 {
	return 1 / max(drive, 1/LongestFlash)
}

// wickHeat is the part of the cooling of a freely hanging wet surface that a film
// suffers on the evaporation-rate scale's test paper, the rest being made up by what
// holds it. Fitted to the published rates themselves, so it shows that the ranking
// follows from the physics but proves no value.
const wickHeat = 0.65

// IsothermalRate is the evaporation rate relative to n-butyl acetate at 25 C that the
// vapour pressure alone predicts: p sqrt(M). It is far too high for fast solvents,
// which cool themselves (acetone: 14 against 5.6 measured).
func (s Solvent) IsothermalRate() float64 {
	pull := func(s Solvent) float64 {
		return float64(s.Saturation(rateTemp)) * math.Sqrt(s.MolarMass())
	}
	return pull(s) / pull(butylAcetate)
}

// CooledRate is the rate that follows when the film cools itself: mass transfer at
// the film's own temperature, M p(Ts) D^(2/3), relative to n-butyl acetate. An
// estimate that ranks solvents: within a quarter of the measured rates of 0.7 and
// more, high for water.
func (s Solvent) CooledRate() float64 {
	pull := func(s Solvent) float64 {
		film := rateTemp - unit.Temp(wickHeat*float64(rateTemp-s.WetBulb(rateTemp)))
		return s.MolarMass() * float64(s.Saturation(film)) * math.Pow(s.Diffusivity(rateTemp, ReferencePressure), 2.0/3)
	}
	return pull(s) / pull(butylAcetate)
}

const rateTemp = unit.Temp(25 + unit.ZeroCelsius)

// WetBulb is the temperature that a freely hanging surface wet with the solvent takes
// in air at t with none of its vapour in it: where the heat that the air brings equals
// what evaporation takes, with heat and mass transfer joined by Chilton and Colburn's
// analogy at sea-level pressure. Bounded as Saturation is. For water in dry air it
// agrees with the psychrometric wet bulb to within 0.5 C.
func (s Solvent) WetBulb(t unit.Temp) unit.Temp {
	t = min(max(t, coldest), hottest)
	rho := air.Density(ReferencePressure, t)
	lewis := heatDiffusivity(t) / s.Diffusivity(t, ReferencePressure)
	scale := s.MolarMass() / (gasConstant * float64(t) * rho * airHeat * math.Pow(lewis, 2.0/3))
	low, high := coldest, t
	for range 40 {
		mid := (low + high) / 2
		if s.Latent(mid)*scale*float64(s.Saturation(mid)) > float64(t-mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return low
}

// airHeat is the specific heat of air, J/(kg K), and heatDiffusivity its thermal
// diffusivity, m2/s, for a Prandtl number of 0.71. Source: tables of dry air at 20 C.
const airHeat = 1006.0

func heatDiffusivity(t unit.Temp) float64 {
	return air.Viscosity(t) / air.Density(ReferencePressure, t) / 0.71
}
