package calc

import (
	"boothset/calc/air"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// LeastPanelMargin is how far the panel must be above the dew point: 3 C (5 F),
// ISO 8502-4. A floor, made for steelwork; not a target.
const LeastPanelMargin = unit.TempDiff(3)

// weather reads the day: dew point, drying relative to the reference day, and what
// of it goes into the pressure.
func weather(r *Request) (w Weather, err error) {
	d := r.Day
	w = Weather{Ambient: air.AtAltitude(d.Altitude), DewPoint: air.DewPoint(d.Air, d.Humidity)}
	w.PanelMargin = unit.TempDiff(d.Panel - w.DewPoint)
	if w.Drying, err = drying(r.Coat, d, w.Ambient); err != nil {
		return w, err
	}
	if !r.Coat.Dries() {
		return w, nil
	}
	e := newEvaporation(&r.Coat, &r.Gun, d, w.Ambient)
	w.InFlight = e.atStart()
	if r.Coat.Working.Fixed {
		w.InFlight.most = 0
	}
	w.Correction = w.InFlight.correction(w.InFlight.changes)
	return w, nil
}

// drying is how fast a coat dries on a day, relative to the reference day; 1 of one that
// does not dry.
func drying(c Coat, d Day, ambient unit.Abs) (float64, error) {
	if !c.Dries() {
		return 1, nil
	}
	if c.Waterborne {
		return coat.WaterDrive(d.Air, d.Humidity, ambient)
	}
	return coat.SolventDrive(c.Solvent, d.Air, ambient), nil
}
