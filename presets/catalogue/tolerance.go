package catalogue

import (
	"math"
	"strconv"

	"boothset/calc"
	"boothset/calc/unit"
)

// toleranceEntry is how far a kind of value may be off, in percent or in the unit of
// the instrument.
type toleranceEntry struct {
	origin
	Within string `toml:"within"`
}

// tolerate reads the tolerances into those that every request carries.
func (c *Catalogue) tolerate(all map[string]*toleranceEntry) {
	for id, e := range all {
		to, kind := c.Tolerances.Of(id)
		within, _ := e.within(kind) // check has read it
		*to = calc.Tolerance{Within: within, Ground: e.Ground()}
	}
}

// check says what is wrong with the tolerance of an id.
func (e *toleranceEntry) check(id string) *sentence {
	var all calc.Tolerances
	to, kind := all.Of(id)
	switch {
	case to == nil:
		return newSentence("file-tolerance")
	case to == &all.WallGauge:
		return newSentence("file-tolerance-gauge")
	}
	within, err := e.within(kind)
	switch {
	case kind == calc.FactorTolerance && (err != nil || !(within >= 0 && within <= math.Log(mostFactor))):
		return newSentence("file-within-factor", calc.BriefFigure("most", calc.FigureRatio, mostFactor))
	case err != nil:
		return because("file-within", err)
	case within < 0:
		return newSentence("file-within-below")
	case within > 1 && kind == calc.RelativeTolerance:
		return newSentence("file-within-above", calc.BriefFigure("most", calc.FigureShare, 1.0))
	}
	return nil
}

// mostFactor is the most that a value may be off by as a factor.
const mostFactor = 10.0

// within is the tolerance as a share, in Pa, K or m, or as a factor's logarithm, as its kind
// is.
func (e *toleranceEntry) within(kind calc.ToleranceKind) (float64, error) {
	if kind == calc.FactorTolerance {
		factor, err := strconv.ParseFloat(e.Within, 64)
		return math.Log(factor), err
	}
	of, sys := unit.Share, unit.US // a percentage needs no sign
	switch kind {
	case calc.PressureTolerance:
		of, sys = unit.Pressure, unit.Named
	case calc.TemperatureTolerance:
		of, sys = unit.TemperatureDifference, unit.Named
	case calc.LengthTolerance:
		of, sys = unit.Distance, unit.Named
	}
	return unit.Parse[float64](of, e.Within, sys)
}
