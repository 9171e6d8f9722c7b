package calc

import (
	"fmt"
	"math"
	"strconv"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// problems gathers what is wrong with a request.
type problems []Problem

// within adds a problem where v is not within low and high, all printed by show. What
// is at an edge but for the rounding of its unit is inside.
func (p *problems) within(field string, v, low, high float64, show func(float64) string) {
	const rounding = 1e-12
	if !(v >= low-rounding*math.Abs(low) && v <= high+rounding*math.Abs(high)) {
		*p = append(*p, Problem{field, fmt.Sprintf("%s is outside %s to %s", show(v), show(low), show(high))})
	}
}

// fluid adds a problem where no gun has such a fluid rate.
func (p *problems) fluid(field string, q coat.FluidRate) {
	p.within(field, float64(q), float64(coat.MLPerMin(5)), float64(coat.MLPerMin(1500)), showFluid)
}

// both is a value in two units, to three figures.
func both(a float64, us string, b float64, metric string) string {
	return brief(a) + " " + us + " (" + brief(b) + " " + metric + ")"
}

// brief is a number to three figures, without an exponent.
func brief(v float64) string {
	three, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 3, 64), 64)
	if err != nil {
		three = v // rounded past the largest number there is
	}
	return strconv.FormatFloat(three, 'f', -1, 64)
}

func showFilm(v float64) string  { return both(v/unit.MetrePerMil, "mil", v*1e6, "um") }
func showShare(v float64) string { return brief(v*100) + " %" }
func showCount(v float64) string { return fmt.Sprintf("%.0f", v) }
func showInches(v float64) string {
	return both(unit.Length(v).Inches(), "in", unit.Length(v).MM(), "mm")
}
func showFeet(v float64) string  { return both(unit.Length(v).Feet(), "ft", v, "m") }
func showGauge(v float64) string { return both(unit.Gauge(v).PSI(), "psi", unit.Gauge(v).Bar(), "bar") }
func showFluid(v float64) string { return brief(coat.FluidRate(v).MLPerMin()) + " mL/min" }
func showVolume(v float64) string {
	return both(unit.Volume(v).USGallons()*unit.OuncePerUSGal, "fl oz", unit.Volume(v).Litres(), "L")
}
func showSpan(v float64) string      { return brief(v) + " s" }
func showSpeed(v float64) string     { return both(unit.Speed(v).FeetPerSecond(), "ft/s", v, "m/s") }
func showViscosity(v float64) string { return brief(unit.Kinematic(v).MM2PerS()) + " mm2/s" }
func showArea(v float64) string      { return both(v/(unit.MetrePerFoot*unit.MetrePerFoot), "ft2", v, "m2") }
func showPrice(v float64) string     { return brief(v) + " a litre" }
func showTemp(v float64) string      { return both(unit.Temp(v).F(), "F", unit.Temp(v).C(), "C") }
