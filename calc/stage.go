package calc

import (
	"time"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Between is a value with how far it may be moved, and what it rests on; without a basis
// nothing is known of it.
type Between[T any] struct {
	Low, Usual, High T
	Ground
}

// Known reports whether there is a value.
func (b *Between[T]) Known() bool { return b.Basis != "" }

// Stage is one of the stages that a coat is laid in, such as the wet coats of a metallic and
// the drop coat over them.
type Stage struct {
	ID      string
	Coats   Stated[int]            // 0 where not known
	Film    Between[unit.Length]   // dry, of one coat; Usual is not used
	Overlap Between[float64]       // share of the fan on the pass before, 0..1
	Flash   Between[time.Duration] // after each coat, on the reference day
	Recoat  Between[time.Duration] // at the latest, on the reference day; of a product's sheet
	Tip     Between[unit.Length]   // of the gun's fluid tip
	Held    Between[unit.Length]   // from the panel, where not as the gun's class; Usual is not used
	Times   float64                // of the class's distance, 0 for once
}

// Dries reports whether the coat dries at all; a lamp cures one that does not.
func (c *Coat) Dries() bool { return c.Waterborne || c.Solvent.ID != "" }

// Held is the nearest and the farthest that the coat is held.
func (r *Request) Held() (nearest, farthest unit.Length) { return held(&r.Coat, &r.Gun) }

// held is the nearest and the farthest that a coat is held with a gun.
func held(c *Coat, g *Gun) (nearest, farthest unit.Length) {
	if s := &c.Stage; s.Held.Known() {
		return s.Held.Low, s.Held.High
	}
	times := unit.Length(c.Stage.times())
	return g.Nearest * times, g.Farthest * times
}

// times is how many times the class's distance the stage is held at.
func (s *Stage) times() float64 {
	if s.Times == 0 {
		return 1
	}
	return s.Times
}

// onDay is a drying time on a day that dries so many times as fast as the reference day, by
// the same rule as the day's: as one over it. A sheet's one figure is told with what the
// instruments' errors make of it, drying from slowest to fastest.
func onDay(b Between[time.Duration], drying, slowest, fastest float64) Between[time.Duration] {
	of := func(d time.Duration, drying float64) time.Duration {
		return time.Duration(float64(d) * coat.FlashFactor(drying))
	}
	if b.Low < b.High {
		slowest, fastest = drying, drying
	}
	return Between[time.Duration]{of(b.Low, fastest), of(b.Usual, drying), of(b.High, slowest), b.Ground}
}

// times works out the stage's flash-off and recoat times for today.
func (s *Setup) times(r *Request) {
	of := &r.Coat.Stage
	slowest, fastest := s.Weather.Drying, s.Weather.Drying
	if of.Recoat.Known() || of.Flash.Low == of.Flash.High {
		off, damp := unit.Temp(r.Tolerances.Thermometer.Within), r.Tolerances.HygrometerShare.Within
		slowest, fastest = s.dryingOff(r, -off, damp), s.dryingOff(r, off, -damp)
	}
	s.Flash = onDay(of.Flash, s.Weather.Drying, slowest, fastest)
	s.Recoat = onDay(of.Recoat, s.Weather.Drying, slowest, fastest)
}

// dryingOff is the drying with the air warmer and damper by so much; the day's where that is
// past what the models reach.
func (s *Setup) dryingOff(r *Request, warmer unit.Temp, damper float64) float64 {
	d := r.Day
	d.Air, d.Humidity = d.Air+warmer, min(max(d.Humidity+damper, HumidityBound.Low), 1)
	v, err := drying(r.Coat, d, s.Weather.Ambient)
	if err != nil {
		return s.Weather.Drying
	}
	return v
}

// At is the request with another of its stages, by its place in Stages.
func (r *Request) At(stage int) *Request {
	other := *r
	other.Coat = r.Stages[stage]
	return &other
}
