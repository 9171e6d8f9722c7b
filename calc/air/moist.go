package air

import (
	"math"

	"boothset/calc/unit"
)

// Water vapour in air, after the psychrometrics chapter of the ASHRAE Handbook of
// Fundamentals (2017, chapter 1). Relative humidity is a fraction. Temperatures
// are held to the range of the saturation formula, -100 to 200 C, humidities to
// DriestHumidity..1, and pressures to 1 kPa or more, so that finite arguments
// give finite results.
const (
	// DriestHumidity is the lowest relative humidity reckoned with, since air
	// without any water has no dew point.
	DriestHumidity = 0.001

	coldest        = unit.Temp(unit.ZeroCelsius - 100)
	hottest        = unit.Temp(unit.ZeroCelsius + 200)
	freezing       = unit.Temp(unit.ZeroCelsius)
	triplePoint    = unit.Temp(unit.ZeroCelsius + 0.01)
	lowestPressure = unit.Abs(1e3)

	vapourRatio = 0.621945 // molar mass of water to that of dry air, eq. 20
	mostVapour  = 0.99     // largest share of the pressure reckoned to be vapour
	solved      = 1e-10    // K, the step at which an iteration has converged
	mostSteps   = 60
)

// lnTriple is the logarithm of the saturation pressure at the triple point, where
// the formula for ice gives way to the one for water.
var lnTriple, _ = overIce(float64(triplePoint))

// overWater is ln(pws/Pa) over liquid water at k kelvin, and its slope. Equation 6.
func overWater(k float64) (ln, slope float64) {
	const a, b, c, d, e, f = -5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673
	ln = a/k + b + k*(c+k*(d+k*e)) + f*math.Log(k)
	slope = -a/(k*k) + c + k*(2*d+k*3*e) + f/k
	return ln, slope
}

// overIce is ln(pws/Pa) over ice at k kelvin, and its slope. Equation 5.
func overIce(k float64) (ln, slope float64) {
	const a, b, c, d, e, f, g = -5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019
	ln = a/k + b + k*(c+k*(d+k*(e+k*f))) + g*math.Log(k)
	slope = -a/(k*k) + c + k*(2*d+k*(3*e+k*4*f)) + g/k
	return ln, slope
}

// lnSaturation is ln(pws/Pa) and its slope, over ice up to the triple point and
// over water above it. (The handbook changes over at 0 C, where the two formulas
// do not meet.)
func lnSaturation(t unit.Temp) (ln, slope float64) {
	if t <= triplePoint {
		return overIce(float64(t))
	}
	return overWater(float64(t))
}

func holdTemp(t unit.Temp) unit.Temp { return min(max(t, coldest), hottest) }

func holdHumidity(rh float64) float64 { return min(max(rh, DriestHumidity), 1) }

// SaturationPressure is the pressure of the vapour that saturates air at t.
// Equations 5 and 6, after Hyland and Wexler.
func SaturationPressure(t unit.Temp) unit.Abs {
	ln, _ := lnSaturation(holdTemp(t))
	return unit.Abs(math.Exp(ln))
}

// VapourPressure is the partial pressure of the water in air at t and rh.
func VapourPressure(t unit.Temp, rh float64) unit.Abs {
	return unit.Abs(holdHumidity(rh)) * SaturationPressure(t)
}

// RelativeHumidity is the humidity of air at t whose water has the partial
// pressure pv: 1 where it would be more, since the rest condenses.
func RelativeHumidity(t unit.Temp, pv unit.Abs) float64 {
	return holdHumidity(float64(pv / SaturationPressure(t)))
}

// Reheated is the humidity of air of t and rh once it is at t2, with the same
// water in it; 1 where t2 is below the dew point.
func Reheated(t unit.Temp, rh float64, t2 unit.Temp) float64 {
	return RelativeHumidity(t2, VapourPressure(t, rh))
}

// DewPoint is the temperature to which air of t and rh can be cooled before water
// condenses: frost, below the triple point. It is never above t.
func DewPoint(t unit.Temp, rh float64) unit.Temp {
	t = holdTemp(t)
	ln, _ := lnSaturation(t)
	return min(saturatedAt(ln+math.Log(holdHumidity(rh))), t)
}

// VapourDewPoint is the dew point of air whose water has the partial pressure pv,
// whatever the temperature of the air.
func VapourDewPoint(pv unit.Abs) unit.Temp {
	least, most := SaturationPressure(coldest), SaturationPressure(hottest)
	return saturatedAt(math.Log(float64(min(max(pv, least), most))))
}

// PressureDewPoint is the dew point at the pressure line of air whose water has
// the partial pressure pv at the pressure ambient. Partial pressures scale with
// the whole: compressing moist air raises its dew point, often above its own
// temperature, and then water drops out.
func PressureDewPoint(pv, ambient, line unit.Abs) unit.Temp {
	return VapourDewPoint(pv * max(line, lowestPressure) / max(ambient, lowestPressure))
}

// saturatedAt is the temperature whose saturation pressure has the logarithm ln:
// Newton's method on ln pws, which is smooth on either side of the triple point,
// from the Magnus form, which is at most some 5 K off. Two to four steps.
func saturatedAt(ln float64) unit.Temp {
	formula, g := overWater, ln-math.Log(611.2)
	k := unit.ZeroCelsius + 243.12*g/(17.62-g)
	lowest, highest := float64(triplePoint), float64(hottest)
	if ln <= lnTriple {
		formula = overIce
		k = unit.ZeroCelsius + 272.62*g/(22.46-g)
		lowest, highest = float64(coldest), float64(triplePoint)
	}
	for range mostSteps {
		at, slope := formula(k)
		step := (ln - at) / slope
		k = min(max(k+step, lowest), highest)
		if math.Abs(step) < solved {
			break
		}
	}
	return unit.Temp(k)
}

// HumidityRatio is the mass of water to that of the dry air with it, in air of t
// and rh at the pressure p. Equation 20. Vapour is held to 99 % of the pressure.
func HumidityRatio(t unit.Temp, rh float64, p unit.Abs) float64 {
	return VapourRatio(VapourPressure(t, rh), p)
}

// SaturationRatio is the humidity ratio of saturated air.
func SaturationRatio(t unit.Temp, p unit.Abs) float64 { return HumidityRatio(t, 1, p) }

// VapourRatio is the humidity ratio of air whose water has the partial pressure
// pv at the whole pressure p.
func VapourRatio(pv, p unit.Abs) float64 {
	p = max(p, lowestPressure)
	pv = holdVapour(pv, p)
	return vapourRatio * float64(pv/(p-pv))
}

func holdVapour(pv, p unit.Abs) unit.Abs { return min(max(pv, 0), mostVapour*p) }

// MoistDensity is the density of moist air, kg/m3, water and air together.
func MoistDensity(t unit.Temp, rh float64, p unit.Abs) float64 {
	t, p = holdTemp(t), max(p, lowestPressure)
	pv := holdVapour(VapourPressure(t, rh), p)
	return Density(p-(1-vapourRatio)*pv, t)
}
