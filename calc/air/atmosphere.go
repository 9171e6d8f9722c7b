package air

import (
	"math"

	"boothset/calc/unit"
)

// The standard atmosphere up to 11 km, as in US Standard Atmosphere 1976; ISO 2533
// differs from it by less than one part in a million there.
const (
	SeaLevelPressure    = unit.Abs(101325)
	SeaLevelTemperature = unit.Temp(288.15)

	lapse        = 0.0065                                  // K/m
	barometric   = 9.80665 * 0.0289644 / (8.31432 * lapse) // g0 M0/(R lapse) of the 1976 atmosphere
	lowestPlace  = unit.Length(-500)                       // m
	highestPlace = unit.Length(11000)                      // m
)

// AtAltitude is the usual ambient pressure h above sea level (the geopotential
// height, which up to 5000 m is within 0.1 % of a map's). Heights are held to -500
// to 11000 m. Weather moves the true pressure by up to about 3 %.
func AtAltitude(h unit.Length) unit.Abs {
	return SeaLevelPressure * unit.Abs(math.Pow(float64(TempAtAltitude(h)/SeaLevelTemperature), barometric))
}

// TempAtAltitude is the temperature of the standard atmosphere h above sea level,
// with h held as in AtAltitude.
func TempAtAltitude(h unit.Length) unit.Temp {
	return SeaLevelTemperature - lapse*unit.Temp(min(max(h, lowestPlace), highestPlace))
}
