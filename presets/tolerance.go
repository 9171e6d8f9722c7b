package presets

import (
	"errors"
	"fmt"

	"boothset/calc"
	"boothset/calc/unit"
)

// tolerate reads one tolerance into those that every request carries.
func (c *Catalogue) tolerate(id string, e *toleranceEntry) error {
	to, kind := c.tolerances.Of(id)
	if to == nil {
		return errors.New("no such tolerance")
	}
	within, err := e.within(kind)
	switch {
	case err != nil:
		return fmt.Errorf("within: %w", err)
	case within < 0:
		return errors.New("within must be 0 or more")
	case within > 1 && kind == calc.RelativeTolerance:
		return errors.New("within must be 100% or less")
	}
	*to = calc.Tolerance{Within: within, Standing: e.standing()}
	return nil
}

// within is the tolerance as a share, in Pa or in K, as its kind is.
func (e *toleranceEntry) within(kind calc.ToleranceKind) (float64, error) {
	switch kind {
	case calc.PressureTolerance:
		p, err := unit.ParseGauge(e.Within, 0)
		return float64(p), err
	case calc.TemperatureTolerance:
		d, err := unit.ParseTempDiff(e.Within, 0)
		return float64(d), err
	}
	return unit.ParsePercent(e.Within)
}
