package coat

import (
	"math"
	"time"

	"boothset/calc/unit"
)

// FluidRate is a volume flow of coating, m3/s.
type FluidRate float64

// MLPerMin makes a fluid rate from millilitres a minute.
func MLPerMin(v float64) FluidRate { return FluidRate(v * 1e-6 / unit.SecondPerMinute) }

// MLPerMin is the fluid rate in millilitres a minute.
func (q FluidRate) MLPerMin() float64 { return float64(q) * 1e6 * unit.SecondPerMinute }

func fluid(q FluidRate) error { return within("fluid-rate", q.MLPerMin(), 1, 2000, "mL/min") }

// Rate is a fluid rate with how far it may be off. Estimate marks one that was not
// measured.
type Rate struct {
	Value, Low, High FluidRate
	Estimate         bool
}

// TimedRate is the fluid rate of a gun that sprayed a volume (1 mL to 5 L) in a time
// (1 s to 1 h): the way to know it.
func TimedRate(v unit.Volume, t time.Duration) (Rate, error) {
	if err := first(within("volume-sprayed", v.Litres()*1e3, 1, 5000, "mL"), within("time", t.Seconds(), 1, 3600, "s")); err != nil {
		return Rate{}, err
	}
	q := FluidRate(float64(v) / t.Seconds())
	return Rate{Value: q, Low: q, High: q}, fluid(q)
}

// What a gravity-fed tip is taken to be. All judgement, not published.
const (
	tipSuction  = 5000.0 // Pa that the air around the tip draws with
	tipHead     = 0.10   // m of coating over the tip
	tipLand     = 2e-3   // m, length of the narrow part of the bore
	tipLosses   = 1.5    // velocity heads lost: the jet's own, and half of one going in
	tipSpread   = 0.40   // of the rate, either way
	freeFall    = 9.80665
	laminarTube = 32.0
)

// TipRate estimates the fluid rate of a gravity-fed gun with its needle fully open:
// tip diameter d (0.5 to 3 mm), viscosity nu (5 to 500 mm2/s) and density (600 to
// 2000 kg/m3) of the mix. The head of coating and a fixed suction of the air push
// against laminar friction in the tip's land (Hagen and Poiseuille) and the losses of
// an orifice: 1.5 v2/2 + 32 nu L v/d2 = g h + suction/density. Only its order is sure,
// so it carries a spread of 40 % and Estimate; time a cup instead.
func TipRate(d unit.Length, nu unit.Kinematic, density float64) (Rate, error) {
	if err := first(
		within("tip", d.MM(), 0.5, 3, "mm"),
		within("viscosity", nu.MM2PerS(), 5, 500, "mm2/s"),
		within("density", density, 600, 2000, "kg/m3"),
	); err != nil {
		return Rate{}, err
	}
	push := freeFall*tipHead + tipSuction/density
	drag := laminarTube * float64(nu) * tipLand / float64(d*d)
	v := (math.Sqrt(drag*drag+2*tipLosses*push) - drag) / tipLosses
	q := FluidRate(v * math.Pi / 4 * float64(d*d))
	return Rate{Value: q, Low: q * (1 - tipSpread), High: q * (1 + tipSpread), Estimate: true}, nil
}

// Pass is how a gun is moved over a panel.
type Pass struct {
	Rate     FluidRate
	Transfer float64     // part of the coating that lands, 0.01 to 1
	Fan      unit.Length // width of the fan at the panel
	Overlap  float64     // part of the fan that lies on the pass before, 0 to 0.9
}

func (p Pass) check() error {
	return first(
		fluid(p.Rate), transfer(p.Transfer),
		within("fan-width", p.Fan.MM(), 10, 600, "mm"), share("overlap", p.Overlap, 0, 0.9),
	)
}

// Step is how far the gun moves sideways from one pass to the next.
func (p Pass) Step() (unit.Length, error) {
	return p.Fan * unit.Length(1-p.Overlap), p.check()
}

// WetFilm is the mean wet film of one coat at a gun speed (0.05 to 3 m/s): what lands
// over the area swept, rate x transfer/(step x speed). The next pass's overlap is in
// the step.
func (p Pass) WetFilm(speed unit.Speed) (unit.Length, error) {
	if err := first(p.check(), within("gun-speed", float64(speed), 0.05, 3, "m/s")); err != nil {
		return 0, err
	}
	return unit.Length(p.areaRate() / float64(speed)), nil
}

// areaRate is wet film times speed, m2/s.
func (p Pass) areaRate() float64 {
	return float64(p.Rate) * p.Transfer / (float64(p.Fan) * (1 - p.Overlap))
}

// Passes is how many passes cover a panel of a height (0.01 to 10 m) once: the first
// lays a fan, each further one a step.
func (p Pass) Passes(height unit.Length) (int, error) {
	if err := first(p.check(), within("panel-height", float64(height), 0.01, 10, "m")); err != nil {
		return 0, err
	}
	const rounding = 1e-9
	more := float64((height - p.Fan) / (p.Fan * unit.Length(1-p.Overlap)))
	return 1 + max(0, int(math.Ceil(more-rounding))), nil
}
