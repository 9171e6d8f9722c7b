package coat

import (
	"math"

	"boothset/calc/unit"
)

// Slope is how fast a coating thins as it warms: the viscosity falls as
// exp(-Slope dT), Slope in 1/K. Materials that are timed in cups change by 3 to 8 %
// a kelvin (a viscometer supplier's figure, published by a finisher).
type Slope float64

// SlopeBand is a slope with how far it may be off. Fitted marks one from two
// readings of this very coating, whose three values are the same.
type SlopeBand struct {
	Typical, Low, High Slope
	Fitted             bool
}

// EstimatedSlope is the band for a coating nobody has timed twice: 5 % a kelvin is
// judgement within the published 3 to 8 %.
func EstimatedSlope() SlopeBand { return SlopeBand{Typical: 0.05, Low: 0.03, High: 0.08} }

// FittedSlope is the band of a slope that was measured.
func FittedSlope(k Slope) SlopeBand { return SlopeBand{k, k, k, true} }

// The slopes that a liquid coating can sensibly have. Wider than the published band,
// since some coatings thin suddenly.
const (
	leastSlope = 0.005
	mostSlope  = 0.15
)

// leastSpan is how far apart two readings must be for a slope: at 3 K and 5 % a
// kelvin the seconds differ by about an eighth, some ten times the error of a
// stopwatch.
const leastSpan = 3.0

func paintTemp(quantity string, t unit.Temp) error {
	return within(quantity, t.C(), -10, 60, "C")
}

func (b SlopeBand) check() error {
	for _, k := range []Slope{b.Typical, b.Low, b.High} {
		if err := share("slope", float64(k), leastSlope, mostSlope); err != nil {
			return err
		}
	}
	return nil
}

func (k Slope) change(from, to unit.Temp) float64 {
	return math.Exp(-float64(k) * float64(to-from))
}

// AtTemperature is the viscosity at temperature to of a coating that has nu at from:
// nu exp(-k (to - from)), the same as Andrade's equation over the few tens of kelvin
// that a booth sees. Both temperatures from -10 to 60 C; k from 0.005 to 0.15 a
// kelvin; else an error. Not for thixotropic waterborne bases, whose cup time depends
// on how they were stirred.
func AtTemperature(nu unit.Kinematic, from, to unit.Temp, k Slope) (unit.Kinematic, error) {
	if err := first(sprayable("viscosity", nu), paintTemp("paint-temperature", from), paintTemp("wanted-temperature", to), FittedSlope(k).check()); err != nil {
		return 0, err
	}
	return unit.Kinematic(float64(nu) * k.change(from, to)), nil
}

// Corrected is a reading brought to another temperature: the viscosity and the
// seconds there. Low and High are what the band of the slope makes of them, to which
// the cup's own spread (where About) comes on top: it mostly cancels, since the same
// cup is read at both temperatures.
type Corrected struct {
	Nu, NuLow, NuHigh  unit.Kinematic
	Seconds, Low, High float64
	About              bool
}

// CorrectReading is what a cup that took seconds at temperature at would show at
// temperature to, for example the 20 C of a data sheet. Errors are those of
// Cup.Viscosity, Cup.Seconds and AtTemperature.
func CorrectReading(c Cup, seconds float64, at, to unit.Temp, band SlopeBand) (Corrected, error) {
	v, err := c.Viscosity(seconds)
	if err != nil {
		return Corrected{}, err
	}
	if err := band.check(); err != nil {
		return Corrected{}, err
	}
	nu, err := AtTemperature(v.Nu, at, to, band.Typical)
	if err != nil {
		return Corrected{}, err
	}
	t, err := c.Seconds(nu)
	if err != nil {
		return Corrected{}, err
	}
	one := float64(v.Nu) * band.Low.change(at, to)
	two := float64(v.Nu) * band.High.change(at, to)
	low, high := unit.Kinematic(min(one, two)), unit.Kinematic(max(one, two))
	return Corrected{
		Nu: nu, NuLow: low, NuHigh: high,
		Seconds: t.Seconds, Low: c.drain(low.MM2PerS()), High: c.drain(high.MM2PerS()),
		About: v.About || t.About,
	}, nil
}

// FitError says that two readings give no slope: they were taken too near each other, or
// their slope is none that a coating has.
type FitError struct {
	ID                string // of the sentence that says so
	Apart, LeastApart unit.TempDiff
	Slope, Low, High  Slope
}

func (e *FitError) Error() string { return "two readings: " + e.ID }

// FitSlope is the slope that joins two readings of the same coating. The readings
// must be 3 K or more apart, and the slope between 0.5 and 15 % a kelvin: outside
// that something else changed between them.
func FitSlope(nu1 unit.Kinematic, t1 unit.Temp, nu2 unit.Kinematic, t2 unit.Temp) (Slope, error) {
	if err := first(sprayable("first-viscosity", nu1), sprayable("second-viscosity", nu2), paintTemp("first-temperature", t1), paintTemp("second-temperature", t2)); err != nil {
		return 0, err
	}
	span := float64(t2 - t1)
	if math.Abs(span) < leastSpan {
		return 0, &FitError{ID: "fit-too-near", Apart: unit.TempDiff(math.Abs(span)), LeastApart: leastSpan}
	}
	k := math.Log(float64(nu1)/float64(nu2)) / span
	if k < leastSlope || k > mostSlope {
		return 0, &FitError{ID: "fit-no-slope", Slope: Slope(k), Low: leastSlope, High: mostSlope}
	}
	return Slope(k), nil
}

// Reaches is the temperature at which a coating that has nu at a temperature has target:
// the inverse of AtTemperature, whose range it does not keep to. Viscosities and slope
// above 0.
func (k Slope) Reaches(nu unit.Kinematic, at unit.Temp, target unit.Kinematic) unit.Temp {
	return at + unit.Temp(math.Log(float64(nu)/float64(target))/float64(k))
}

// ActivationEnergy is the energy, J/mol, of the Arrhenius form ln nu = A + E/(R T)
// that has this slope between t1 and t2: E = k R T1 T2.
func (k Slope) ActivationEnergy(t1, t2 unit.Temp) float64 {
	return float64(k) * gasConstant * float64(t1) * float64(t2)
}

// gasConstant is the molar gas constant, J/(mol K), exact in SI since 2019.
const gasConstant = 8.31446261815324
