package calc

import (
	"math"

	"boothset/calc/air"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// LeastPanelMargin is how far the panel must be above the dew point: 3 C (5 F),
// ISO 8502-4. A floor, made for steelwork; not a target.
const LeastPanelMargin = unit.TempDiff(3)

// The correction of the working pressure on a drying day. All three are estimates,
// chosen so that common practice for a very hot, very dry day comes out.
const (
	mostCorrection = 0.08                               // of the coat's starting pressure
	fullDrying     = 2.5                                // drying at which all of it is given
	correctionStep = unit.Drop(0.5 * unit.PascalPerPSI) // given in whole steps of this
)

// weather reads the day: dew point, drying relative to the reference day, and what
// of it goes into the pressure.
func weather(r *Request) (w Weather, err error) {
	d := r.Day
	w = Weather{Ambient: air.AtAltitude(d.Altitude), DewPoint: air.DewPoint(d.Air, d.Humidity)}
	w.PanelMargin = unit.TempDiff(d.Panel - w.DewPoint)
	if w.Drying, err = drying(r.Coat, d, w.Ambient); err != nil {
		return w, err
	}
	w.Correction = correction(r.Coat.Working.Start, w.Drying)
	return w, nil
}

// correction lowers the pressure as the day dries faster, in proportion to the
// logarithm of the drying: bigger drops and a slower jet land wetter. It does
// nothing on a slow day, where thick paint is warmed instead.
func correction(start unit.Gauge, drying float64) unit.Drop {
	if drying <= 1 {
		return 0
	}
	share := math.Min(math.Log(drying)/math.Log(fullDrying), 1)
	steps := math.Floor(float64(start)*mostCorrection*share/float64(correctionStep) + 1e-9)
	return -unit.Drop(steps) * correctionStep
}

// drying is how fast a coat dries on a day, relative to the reference day.
func drying(c Coat, d Day, ambient unit.Abs) (float64, error) {
	if c.Waterborne {
		return coat.WaterDrive(d.Air, d.Humidity, ambient)
	}
	return coat.SolventDrive(c.Solvent, d.Air), nil
}
