package presets

import (
	"boothset/calc"
	"boothset/calc/unit"
)

// tolerate reads the tolerances into those that every request carries.
func (t *tables) tolerate() {
	for _, r := range t.Tolerance {
		to, kind := t.tolerances.Of(r.id)
		within, _ := r.e.within(kind) // check has read it
		*to = calc.Tolerance{Within: within, Ground: r.e.standing()}
	}
}

// check says what is wrong with the tolerance of an id.
func (e *toleranceEntry) check(id string) *said {
	var all calc.Tolerances
	to, kind := all.Of(id)
	if to == nil {
		return sentence("file-tolerance")
	}
	within, err := e.within(kind)
	switch {
	case err != nil:
		return because("file-within", err)
	case within < 0:
		return sentence("file-within-below")
	case within > 1 && kind == calc.RelativeTolerance:
		return sentence("file-within-above", figure("most", calc.FigureShare, 1.0))
	}
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
