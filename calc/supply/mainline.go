package supply

import (
	"math"

	"boothset/calc/unit"
)

// Main is the pipe from the receiver to the wall regulator. Length counts each elbow,
// tee or valve in as its equivalent (5 ft each is the trade's rule for small pipe).
// Length 0 is a regulator on the receiver.
type Main struct {
	Length unit.Length
	Bore   unit.Length
}

// Bounds of a main.
const (
	LongestMain   = unit.Length(2000)
	NarrowestMain = unit.Length(5e-3)
	WidestMain    = unit.Length(0.2)
)

// leastLeft is the share of its inlet pressure (absolute) that a main must deliver for
// the formula to hold: below it the air speeds up along the pipe, which it leaves out.
const leastLeft = 0.5

func (m Main) check() error {
	if err := within(FieldMainLength, float64(m.Length), 0, float64(LongestMain), "m"); err != nil || m.Length == 0 {
		return err
	}
	return within(FieldMainBore, m.Bore.MM(), NarrowestMain.MM(), WidestMain.MM(), "mm")
}

// loss is p1^2 - p2^2, Pa2, for a flow. The formula for a main is
//
//	dp = 1.6e12 q^1.85 L/(d^5 p1)   kPa, m3/s free air, m, mm, kPa absolute
//
// (a handling-equipment maker's page on air supply lines; an online engineering handbook
// prints the same form with a factor 11 % smaller). Taken over each short length and
// summed along the pipe, so that air which has expanded loses more, it is half of this.
func (m Main) loss(q unit.Flow) float64 {
	if m.Length <= 0 || q <= 0 {
		return 0
	}
	const kPa2 = 1e6
	return 2 * 1.6e12 * math.Pow(float64(q), 1.85) * float64(m.Length) / math.Pow(m.Bore.MM(), 5) * kPa2
}

// outlet is the pressure at the far end, never below floor.
func (m Main) outlet(q unit.Flow, inlet, floor unit.Abs) unit.Abs {
	left := float64(inlet)*float64(inlet) - m.loss(q)
	return max(unit.Abs(math.Sqrt(max(left, 0))), floor)
}

// inletFor is the pressure needed at the near end to have outlet at the far one with the
// formula in its range: it always exists, and grows with flow and length.
func (m Main) inletFor(q unit.Flow, outlet unit.Abs) unit.Abs {
	loss := m.loss(q)
	needed := math.Sqrt(float64(outlet)*float64(outlet) + loss)
	return unit.Abs(max(needed, math.Sqrt(loss/(1-leastLeft*leastLeft))))
}

// Drop is the main's loss for a flow from an inlet pressure, by an empirical formula for
// steel pipe that knows neither roughness nor temperature: an estimate, mostly on the
// safe side. Against tables of steel pipe it reads 8 % low to 20 % high, and against Darcy
// friction on a 45 um wall, 1/2 in to 2 in and 5 to 100 scfm, 6 % low to 24 % high.
//
// Error where the pipe, flow or pressure is out of range, or where less than half of the
// inlet pressure would be left: no such main feeds a booth.
func (m Main) Drop(q unit.Flow, inlet unit.Abs) (unit.Drop, error) {
	err := firstOf(m.check(), checkFlow(FieldMainFlow, q),
		within(FieldMainInlet, inlet.Bar(), 0.5, float64(highestPressure)/unit.PascalPerBar, "bar absolute"))
	if err != nil {
		return 0, err
	}
	out := m.outlet(q, inlet, 0)
	if float64(out) < leastLeft*float64(inlet) {
		return 0, &InputError{FieldMain, "main-too-narrow", m.Bore.MM(), 0, 0, "mm"}
	}
	return unit.Drop(inlet - out), nil
}
