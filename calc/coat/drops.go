package coat

import (
	"math"

	"boothset/calc/air"
	"boothset/calc/unit"
)

// Atomizing is what makes the drops of an air-atomizing gun: the air where it meets
// the coating, and the coating.
type Atomizing struct {
	AirSpeed   unit.Speed
	AirDensity float64 // kg/m3, of the expanded air
	AirLiquid  float64 // mass flow of air over that of the coating
	Density    float64 // of the coating, kg/m3
	Tension    float64 // surface tension, N/m
	Viscosity  float64 // dynamic, Pa s
	Prefilmer  unit.Length
	Duct       unit.Length // hydraulic mean diameter of the air's exit
}

// DropSize is the Sauter mean diameter by El-Shanawany and Lefebvre's correlation for
// prefilming airblast atomizers (1980):
//
//	D = Duct (1 + 1/ALR) [0.33 (s/(rA U^2 Dp))^0.6 (rL/rA)^0.1 + 0.068 (mu^2/(rL s Dp))^0.5]
//
// with s the surface tension, Dp the prefilmer's diameter, rA and rL the densities of
// air and coating, U the air's speed. It was made with water and kerosenes on larger
// atomizers: an estimate whose change with pressure is of use and whose size is not.
// Errors name a figure out of range: speed 10 to 600 m/s, air 0.3 to 5 kg/m3, ratio
// 0.1 to 100, coating 600 to 2000 kg/m3, tension 5 to 80 mN/m, viscosity 0.5 to 1000
// mPa s, diameters 0.1 to 20 mm.
func DropSize(a Atomizing) (unit.Length, error) {
	if err := first(
		within("air-speed", float64(a.AirSpeed), 10, 600, "m/s"),
		within("air-density", a.AirDensity, 0.3, 5, "kg/m3"),
		within("air-to-coating", a.AirLiquid, 0.1, 100, "kg/kg"),
		within("density", a.Density, 600, 2000, "kg/m3"),
		within("surface-tension", a.Tension*1e3, 5, 80, "mN/m"),
		within("viscosity", a.Viscosity*1e3, 0.5, 1000, "mPa s"),
		within("prefilmer", a.Prefilmer.MM(), 0.1, 20, "mm"),
		within("air-exit", a.Duct.MM(), 0.1, 20, "mm"),
	); err != nil {
		return 0, err
	}
	u, lip := float64(a.AirSpeed), float64(a.Prefilmer)
	waves := 0.33 * math.Exp(0.6*math.Log(a.Tension/(a.AirDensity*u*u*lip))+0.1*math.Log(a.Density/a.AirDensity))
	drag := 0.068 * a.Viscosity / math.Sqrt(a.Density*a.Tension*lip)
	return a.Duct * unit.Length((1+1/a.AirLiquid)*(waves+drag)), nil
}

// Vapour is what leaves a drop, and the air that it leaves into.
type Vapour struct {
	Surface     unit.Abs // pressure of the vapour at the drop's surface
	Far         unit.Abs // of the same vapour in the air around
	MolarMass   float64  // kg/mol
	Diffusivity float64  // in air, m2/s
	Air         unit.Temp
	Pressure    unit.Abs // of the air
}

// Vapour is the solvent leaving drops of a temperature into air that has far of it.
// Drops cross the gap in a millisecond or two, too short to cool much: the paint's own
// temperature is the one to give.
func (s Solvent) Vapour(drop, around unit.Temp, far, pressure unit.Abs) Vapour {
	return Vapour{
		Surface: s.Saturation(drop), Far: far, MolarMass: s.MolarMass(),
		Diffusivity: s.Diffusivity(around, pressure), Air: around, Pressure: pressure,
	}
}

// Flight is a drop's way from the cap to the panel.
type Flight struct {
	Vapour
	Drop     unit.Length // diameter as it leaves
	Exit     unit.Speed  // of the air at the cap
	Core     unit.Length // how far the jet keeps that speed, about 6 diameters of its exit
	Distance unit.Length
	Density  float64 // of what evaporates, as a liquid, kg/m3
	Volatile float64 // part of the drop's volume that can evaporate
}

// slip is how much slower than the air around it a drop is taken to fly, as a part of
// that air's speed. A 50 um drop needs about 8 ms to follow the air (Stokes) and has
// one to three, so half is a fair mean; judgement.
const slip = 0.5

// FlightLoss is the fraction, 0 to 1, of what can evaporate that a drop loses on its
// way: how dry it lands. An estimate for comparing settings; its assumptions are:
//   - the squared diameter falls at a steady rate (the d-squared law) set by Spalding's
//     transfer number of the vapour at the drop's surface, all at the start's conditions;
//   - the air past the drop raises that by Ranz and Marshall's 1 + 0.3 Re^(1/2) Sc^(1/3),
//     the drop being slower than the air by half;
//   - the drop goes with the jet, at half its speed: that of the exit along the core,
//     then falling as one over the distance, as in a free round jet;
//   - one drop of the mean size, alone, of a pure volatile until that is gone.
//
// Closed form, no allocation. Out of range: no distance, nothing that evaporates, or
// air as full of vapour as the surface gives 0; a drop, speed, core or density that is
// not above zero gives 1, as the worst case. Never NaN for finite input.
func FlightLoss(f Flight) float64 {
	if !(f.Distance > 0 && f.Volatile > 0 && f.Surface > f.Far && f.Diffusivity > 0 && f.MolarMass > 0) {
		return 0
	}
	if !(f.Drop > 0 && f.Exit > 0 && f.Core > 0 && f.Density > 0 && f.Pressure > 0 && f.Air > 0) {
		return 1
	}
	rho := air.Density(f.Pressure, f.Air)
	nu := float64(air.Viscosity(f.Air)) / rho
	rate := 8 * rho * f.Diffusivity / f.Density * math.Log1p(f.transferNumber())

	time, wind := jetTimes(float64(f.Exit), float64(f.Core), float64(f.Distance))
	d := float64(f.Drop)
	stir := 0.3 * math.Sqrt(slip*d/nu) * math.Cbrt(nu/f.Diffusivity) * wind
	left := 1 - rate*(time+stir)/(1-slip)/(d*d)
	if !(left > 0) {
		return 1
	}
	return min(1, (1-left*math.Sqrt(left))/f.Volatile)
}

// transferNumber is Spalding's for mass, (Ys - Yf)/(1 - Ys) with the vapour's mass
// fractions at the surface and far away. At boiling it would be without bound: the
// surface is held to 99 % vapour.
func (v Vapour) transferNumber() float64 {
	const airMass = 0.02896 // kg/mol
	massShare := func(p unit.Abs) float64 {
		x := min(max(float64(p/v.Pressure), 0), 0.99)
		return x * v.MolarMass / (x*v.MolarMass + (1-x)*airMass)
	}
	surface := massShare(v.Surface)
	return max(0, surface-massShare(v.Far)) / (1 - surface)
}

// jetTimes integrates along a jet that keeps the speed exit over its core and then
// slows as one over the distance: time is the integral of dx/U, and wind that of
// dx/sqrt(U), both over the whole distance.
func jetTimes(exit, core, distance float64) (time, wind float64) {
	straight := min(distance, core)
	time, wind = straight/exit, straight/math.Sqrt(exit)
	if distance > core {
		time += (distance*distance - core*core) / (2 * exit * core)
		wind += 2.0 / 3 * (distance*math.Sqrt(distance) - core*math.Sqrt(core)) / math.Sqrt(exit*core)
	}
	return time, wind
}
