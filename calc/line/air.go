package line

import (
	"math"

	"boothset/calc/air"
	"boothset/calc/unit"
)

// Air is what every part needs to know of the air in the line. Make it with NewAir.
type Air struct {
	Ambient unit.Abs  // the pressure around the gun
	Temp    unit.Temp // of the air in the line; no part changes it
	root    float64   // sqrt(T0/T), T0 the ANR temperature
	rt      float64   // R T, J/kg
	mu      float64   // dynamic viscosity, Pa s
}

// NewAir is the air of a line at ambient pressure and temperature t. Throttling an
// ideal gas does not change its temperature, and a hose on the floor takes up the
// shop's, so one temperature serves the whole line.
func NewAir(ambient unit.Abs, t unit.Temp) Air {
	return Air{
		Ambient: ambient, Temp: t,
		root: math.Sqrt(unit.ANRTemperature / float64(t)),
		rt:   air.GasConstant * float64(t),
		mu:   air.Viscosity(t),
	}
}
