package coat_test

import (
	"errors"
	"fmt"
	"reflect"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// bound is the range of one figure as the doc comment of what takes it names it, in the
// unit named there.
type bound struct {
	quantity  string
	low, high float64
	try       func(float64) error
}

// check takes a figure at either end and refuses it a millionth of the range beyond, with
// the bounds in the error. What else may be wrong with it is not its business.
func (b bound) check(t *testing.T) {
	t.Helper()
	span := b.high - b.low
	var out *coat.OutOfRange
	for _, v := range []float64{b.low + 1e-9*span, b.high - 1e-9*span} {
		assert.False(t, errors.As(b.try(v), &out) && out.Quantity == b.quantity, "%s %v", b.quantity, v)
	}
	for _, v := range []float64{b.low - 1e-6*span, b.high + 1e-6*span} {
		if assert.ErrorAs(t, b.try(v), &out, "%s %v", b.quantity, v) {
			assert.Equal(t, b.quantity, out.Quantity)
			assert.InDelta(t, b.low, out.Low, 1e-9*span, b.quantity)
			assert.InDelta(t, b.high, out.High, 1e-9*span, b.quantity)
		}
	}
}

// only is the error of what gives a value as well, which must be zero then.
func only[T any](v T, err error) error {
	if err != nil && !reflect.ValueOf(v).IsZero() {
		panic(fmt.Sprint("a value beside an error: ", v))
	}
	return err
}

func TestRangesOfDropsAndWater(t *testing.T) {
	atomizing := func(change func(*coat.Atomizing, float64)) func(float64) error {
		return func(v float64) error {
			a := coat.Atomizing{
				AirSpeed: 100, AirDensity: 1.2, AirLiquid: 2, Density: 1000, Tension: 0.03, Viscosity: 1e-3,
				Prefilmer: unit.MM(10), Duct: unit.MM(10),
			}
			change(&a, v)
			return only(coat.DropSize(a))
		}
	}
	water := func(c, rh, bar float64) error {
		return only(coat.WaterDrive(unit.Celsius(c), rh, unit.Abs(bar*unit.PascalPerBar)))
	}
	for _, b := range []bound{
		{"air-speed", 10, 600, atomizing(func(a *coat.Atomizing, v float64) { a.AirSpeed = unit.Speed(v) })},
		{"air-density", 0.3, 5, atomizing(func(a *coat.Atomizing, v float64) { a.AirDensity = v })},
		{"air-to-coating", 0.1, 100, atomizing(func(a *coat.Atomizing, v float64) { a.AirLiquid = v })},
		{"density", 600, 2000, atomizing(func(a *coat.Atomizing, v float64) { a.Density = v })},
		{"surface-tension", 5, 80, atomizing(func(a *coat.Atomizing, v float64) { a.Tension = v / 1e3 })},
		{"viscosity", 0.5, 1000, atomizing(func(a *coat.Atomizing, v float64) { a.Viscosity = v / 1e3 })},
		{"prefilmer", 0.1, 20, atomizing(func(a *coat.Atomizing, v float64) { a.Prefilmer = unit.MM(v) })},
		{"air-exit", 0.1, 20, atomizing(func(a *coat.Atomizing, v float64) { a.Duct = unit.MM(v) })},
		{"air-temperature", -10, 60, func(v float64) error { return water(v, 0.5, 1) }},
		{"humidity", 0, 100, func(v float64) error { return water(20, v/100, 1) }},
		{"air-pressure", 0.5, 1.2, func(v float64) error { return water(20, 0.5, v) }},
	} {
		b.check(t)
	}
}

func TestRangesOfViscosity(t *testing.T) {
	nu, c20, c30 := unit.MM2PerS(60), unit.Celsius(20), unit.Celsius(30)
	din := cup(t, "din4")
	at := func(nu unit.Kinematic, from, to unit.Temp, k coat.Slope) error {
		return only(coat.AtTemperature(nu, from, to, k))
	}
	fit := func(nu1 unit.Kinematic, t1 unit.Temp, nu2 unit.Kinematic, t2 unit.Temp) error {
		return only(coat.FitSlope(nu1, t1, nu2, t2))
	}
	band := func(b coat.SlopeBand) error { return only(coat.CorrectReading(din, 30, c20, c30, b)) }
	for _, b := range []bound{
		{"viscosity", 0.1, 1e5, func(v float64) error { return at(unit.MM2PerS(v), c20, c30, 0.05) }},
		{"paint-temperature", -10, 60, func(v float64) error { return at(nu, unit.Celsius(v), c30, 0.05) }},
		{"wanted-temperature", -10, 60, func(v float64) error { return at(nu, c20, unit.Celsius(v), 0.05) }},
		{"slope", 0.5, 15, func(v float64) error { return at(nu, c20, c30, coat.Slope(v/100)) }},
		{"slope", 0.5, 15, func(v float64) error {
			return band(coat.SlopeBand{Typical: coat.Slope(v / 100), Low: 0.03, High: 0.08})
		}},
		{"slope", 0.5, 15, func(v float64) error {
			return band(coat.SlopeBand{Typical: 0.05, Low: coat.Slope(v / 100), High: 0.08})
		}},
		{"slope", 0.5, 15, func(v float64) error {
			return band(coat.SlopeBand{Typical: 0.05, Low: 0.03, High: coat.Slope(v / 100)})
		}},
		{"first-viscosity", 0.1, 1e5, func(v float64) error { return fit(unit.MM2PerS(v), c20, nu, c30) }},
		{"second-viscosity", 0.1, 1e5, func(v float64) error { return fit(nu, c20, unit.MM2PerS(v), c30) }},
		{"first-temperature", -10, 60, func(v float64) error { return fit(nu, unit.Celsius(v), nu, c30) }},
		{"second-temperature", -10, 60, func(v float64) error { return fit(nu, c20, nu, unit.Celsius(v)) }},
		{"cup-time", 1, 1000, func(v float64) error { return only(din.Viscosity(v)) }},
		{"cup-time", 1, 1000, func(v float64) error { return only(coat.CorrectReading(din, v, c20, c30, coat.EstimatedSlope())) }},
		{"paint-temperature", -10, 60, func(v float64) error {
			return only(coat.CorrectReading(din, 30, unit.Celsius(v), c20, coat.EstimatedSlope()))
		}},
		{"wanted-temperature", -10, 60, func(v float64) error {
			return only(coat.CorrectReading(din, 30, c20, unit.Celsius(v), coat.EstimatedSlope()))
		}},
		{"viscosity", 0.1, 1e5, func(v float64) error { return only(din.Seconds(unit.MM2PerS(v))) }},
	} {
		b.check(t)
	}
}

func TestRangesOfThinningAndPotLife(t *testing.T) {
	thinned := func(nu, thinner, add float64) error {
		return only(coat.Thinned(unit.MM2PerS(nu), unit.MM2PerS(thinner), add/100))
	}
	thinner := func(nu, target, thinner float64) error {
		return only(coat.ThinnerFor(unit.MM2PerS(nu), unit.MM2PerS(target), unit.MM2PerS(thinner)))
	}
	life := func(d time.Duration, at, now float64) error {
		return only(coat.PotLifeAt(d, unit.Celsius(at), unit.Celsius(now)))
	}
	for _, b := range []bound{
		{"thinner", 0, 200, func(v float64) error { return thinned(90, 0.83, v) }},
		{"viscosity", 0.1, 1e5, func(v float64) error { return thinned(v, 0.83, 10) }},
		{"thinner-viscosity", 0.1, 1e5, func(v float64) error { return thinned(90, v, 10) }},
		{"viscosity", 0.1, 1e5, func(v float64) error { return thinner(v, 57, 0.83) }},
		{"wanted-viscosity", 1.245, 1e5, func(v float64) error { return thinner(90, v, 0.83) }},
		{"pot-life", 1, 7 * 24 * 60, func(v float64) error { return life(time.Duration(v*float64(time.Minute)), 20, 20) }},
		{"sheet-temperature", 5, 40, func(v float64) error { return life(time.Hour, v, 20) }},
		{"mix-temperature", 5, 40, func(v float64) error { return life(time.Hour, 20, v) }},
	} {
		b.check(t)
	}
	assert.ErrorContains(t, thinner(90, 57, 0.0999), "thinner-viscosity")
}
