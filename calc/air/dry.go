package air

import (
	"math"

	"boothset/calc/unit"
)

// Dry air as an ideal gas.
const (
	GasConstant = 287.05 // J/(kg K)
	Gamma       = 1.4    // ratio of specific heats
)

// CriticalRatio is the pressure ratio at which an ideal nozzle just chokes,
// (2/(gamma+1))^(gamma/(gamma-1)). Source: isentropic flow tables, 0.5283 for air.
var CriticalRatio = math.Pow(2/(Gamma+1), Gamma/(Gamma-1))

// Viscosity is the dynamic viscosity of air, Pa s, at temperature t (about 100 to
// 1900 K): 1.458e-6 T^1.5/(T + 110.4). Source: US Standard Atmosphere 1976, from
// Sutherland's formula.
func Viscosity(t unit.Temp) float64 {
	k := float64(t)
	return 1.458e-6 * k * math.Sqrt(k) / (k + 110.4)
}

// Density is the density of dry air, kg/m3, as an ideal gas.
func Density(p unit.Abs, t unit.Temp) float64 {
	return float64(p) / (GasConstant * float64(t))
}

// SoundSpeed is the speed of sound in air, sqrt(gamma R T).
func SoundSpeed(t unit.Temp) unit.Speed {
	return unit.Speed(math.Sqrt(Gamma * GasConstant * float64(t)))
}
