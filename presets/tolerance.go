package presets

import (
	"errors"
	"fmt"

	"boothset/calc"
	"boothset/calc/unit"
)

// tolerate reads one tolerance into those that every request carries.
func (c *Catalogue) tolerate(id string, e *toleranceEntry) (err error) {
	var within float64
	percent := func() { within, err = unit.ParsePercent(e.Within) }
	pressure := func() {
		var p unit.Gauge
		p, err = unit.ParseGauge(e.Within, 0)
		within = float64(p)
	}
	t := &c.tolerances
	var to *calc.Tolerance
	switch id {
	case "coupling":
		to = &t.Coupling
		percent()
	case "filter":
		to = &t.Filter
		percent()
	case "valve":
		to = &t.Valve
		percent()
	case "hose-bore":
		to = &t.HoseBore
		percent()
	case "hose-end":
		to = &t.HoseEnd
		percent()
	case "stamp-flow":
		to = &t.StampFlow
		percent()
	case "stamp-cap":
		to = &t.StampCap
		percent()
	case "droop":
		to = &t.Droop
		percent()
	case "hygrometer":
		to = &t.HygrometerShare
		percent()
	case "wall-gauge":
		to = &t.WallGauge
		pressure()
	case "gun-gauge":
		to = &t.GunGauge
		pressure()
	case "thermometer":
		to = &t.Thermometer
		var d unit.TempDiff
		d, err = unit.ParseTempDiff(e.Within, 0)
		within = float64(d)
	default:
		return errors.New("no such tolerance")
	}
	switch {
	case err != nil:
		return fmt.Errorf("within: %w", err)
	case within < 0:
		return errors.New("within must be 0 or more")
	case within > 1 && to != &t.WallGauge && to != &t.GunGauge && to != &t.Thermometer:
		return errors.New("within must be 100% or less")
	}
	*to = calc.Tolerance{Within: within, Standing: e.standing()}
	return nil
}
