package gun

import (
	"math"

	"boothset/calc/air"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// Jet is the air as it leaves the cap.
type Jet struct {
	Speed  unit.Speed // at the exit
	Mach   float64    // at the exit, at most 1: the cap's holes do not widen
	Thrust float64    // N: momentum, and the pressure left over where it is choked
}

// JetOf is the jet of flow q from a cap at pressure cap. Its exit speed is isentropic
// from the cap; a choked cap leaves at the speed of sound of its throat with its
// throat's pressure, and the thrust counts the pressure above ambient over the area
// that the flow needs there. Source: isentropic nozzle relations.
func JetOf(q unit.Flow, cap unit.Abs, a line.Air) Jet {
	ratio := float64(a.Ambient) / float64(cap)
	if ratio >= 1 || q <= 0 {
		return Jet{}
	}
	const power = (air.Gamma - 1) / air.Gamma
	exit, cooling := air.CriticalRatio, 2/(air.Gamma+1) // temperature at the exit over that at the cap
	if ratio > exit {
		exit, cooling = ratio, math.Pow(ratio, power)
	}
	m := math.Sqrt(2 / (air.Gamma - 1) * (1/cooling - 1))
	t := float64(a.Temp) * cooling
	v := m * float64(air.SoundSpeed(unit.Temp(t)))
	mass := float64(q.Mass())
	p := exit * float64(cap)
	area := mass * air.GasConstant * t / (p * v)
	return Jet{
		Speed: unit.Speed(v), Mach: math.Min(m, 1),
		Thrust: mass*v + (p-float64(a.Ambient))*area,
	}
}

// Felt is where a hand moving in first meets the firm push of a gun's air, and the
// jet's thrust there.
type Felt struct {
	Distance unit.Length
	Thrust   float64 // N
}

// FeltAt is the push met at a distance with the gun at a working pressure, at sea level
// and 20 C. Both must be above 0.
func (g *Gun) FeltAt(distance unit.Length, working unit.Gauge) Felt {
	q, cap := g.Air(working.Abs(StampAir.Ambient), StampAir)
	return Felt{distance, JetOf(q, cap, StampAir).Thrust}
}

// Reach is the distance at which the push of the jet is felt as firmly as f's. Along a
// free jet the dynamic pressure on the axis falls as thrust over distance squared, so
// equal pushes lie at distances in proportion to the root of the thrust.
func (j Jet) Reach(f Felt) unit.Length {
	return f.Distance * unit.Length(math.Sqrt(j.Thrust/f.Thrust))
}
