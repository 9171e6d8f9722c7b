package catalogue

import (
	"math"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// restrictionEntry is what a part passes: its sonic conductance, or the imperial flow
// coefficient Cv that it is then estimated from, and its critical ratio.
type restrictionEntry struct {
	Conductance     float64 `toml:"conductance"` // dm3/(s bar)
	FlowCoefficient float64 `toml:"flow-coefficient"`
	Ratio           float64 `toml:"ratio"`
}

// Coupling is a coupling.
type Coupling struct {
	origin
	Bore length `toml:"bore"`
	restrictionEntry
}

// Hose is a hose of a bore.
type Hose struct {
	origin
	Bore length `toml:"bore"`
	End  length `toml:"end"`
}

// Regulator is a regulator.
type Regulator struct {
	origin
	restrictionEntry
	Droop     pressure `toml:"droop"`
	LockUp    pressure `toml:"lock-up"`
	RatedFlow flow     `toml:"rated-flow"`
}

// Filter is a filter.
type Filter struct {
	origin
	restrictionEntry
}

// Dryer is a dryer.
type Dryer struct {
	origin
	restrictionEntry
	DewPoint temperature `toml:"dew-point"` // at its own pressure
}

// Valve is a valve that a hand turns, other than the gun's own.
type Valve struct {
	origin
	valveEntry
}

// Restriction is what the part passes.
func (e *restrictionEntry) Restriction() line.Restriction {
	return line.Restriction{C: unit.DM3PerSBar(e.conductance()), B: e.Ratio}
}

// conductance is the part's own, else the one that its flow coefficient gives.
func (e *restrictionEntry) conductance() float64 {
	if e.Conductance == 0 && e.FlowCoefficient > 0 {
		return line.FromValveFlow(e.FlowCoefficient, e.Ratio).DM3PerSBar()
	}
	return e.Conductance
}

// Restriction is what the coupling passes.
func (e *Coupling) Restriction() line.Restriction {
	passes := e.passes()
	return passes.Restriction()
}

// passes is what a coupling passes: what its bore does where nothing else is given.
func (e *Coupling) passes() restrictionEntry {
	passes := e.restrictionEntry
	if passes.Conductance == 0 && passes.FlowCoefficient == 0 && e.Bore.V > 0 {
		passes.Conductance = line.OfBore(e.Bore.V, line.FullBore).DM3PerSBar()
	}
	return passes
}

// Regulator is the regulator that the entry describes.
func (e *Regulator) Regulator() line.Regulator {
	return line.Regulator{
		Seat:   e.Restriction(),
		Droop:  line.DroopOf(unit.Drop(e.Droop.V), e.RatedFlow.V),
		LockUp: unit.Drop(e.LockUp.V),
	}
}

// EndFitting is the fitting at the ends of the hose.
func (e *Hose) EndFitting() line.Restriction { return hoseEnd(e.End.V) }

// HoseEnd is the fitting at the ends of a hose of a bore: in the same proportion as the
// nearest bore of the catalogue.
func (c *Catalogue) HoseEnd(bore unit.Length) line.Restriction {
	end, best := bore, math.Inf(1)
	for _, h := range c.Hoses {
		if off := math.Abs(float64(bore/h.Of.Bore.V) - 1); off < best {
			best, end = off, bore*(h.Of.End.V/h.Of.Bore.V)
		}
	}
	return hoseEnd(end)
}

// hoseEnd is an end fitting of a bore.
func hoseEnd(bore unit.Length) line.Restriction {
	return line.Restriction{C: line.OfBore(bore, line.FullBore), B: endRatio}
}

// endRatio is the critical ratio of a hose's end fitting: a short smooth bore, the
// upper end of the published 0.3 to 0.5. An estimate.
const endRatio = 0.5

func (e *Regulator) check() *sentence {
	if why := e.restrictionEntry.check(); why != nil {
		return why
	}
	if !(e.Droop.V >= 0 && e.LockUp.V >= 0 && e.RatedFlow.V >= leastFlow) {
		return newSentence("file-droop")
	}
	return nil
}

// The dew points that a dryer may dry to: from below ISO 8573-1's driest class to what no
// dryer is needed for.
const (
	lowestDewPoint  = unit.Temp(unit.ZeroCelsius - 80)
	highestDewPoint = unit.Temp(unit.ZeroCelsius + 30)
)

func (e *Dryer) check() *sentence {
	if why := e.restrictionEntry.check(); why != nil {
		return why
	}
	if !(e.DewPoint.V >= lowestDewPoint && e.DewPoint.V <= highestDewPoint) {
		return newSentence("file-dew-point", withoutUnit(calc.BriefFigure("low", calc.FigureTemp, lowestDewPoint)), calc.BriefFigure("high", calc.FigureTemp, highestDewPoint))
	}
	return nil
}

// check says what is wrong with what a part passes.
func (e *restrictionEntry) check() *sentence {
	if e.FlowCoefficient < 0 || e.Ratio > 1 {
		return newSentence("file-flow-coefficient", calc.BriefFigure("most", calc.FigureRatio, mostRatio))
	}
	return restrictionFault(e.conductance(), e.Ratio)
}

func restrictionFault(c, b float64) *sentence {
	switch {
	case !(c >= leastConductance && c <= mostConductance):
		return newSentence("file-conductance", withoutUnit(calc.BriefFigure("low", calc.FigureRatio, leastConductance)), calc.BriefFigure("high", calc.FigureRatio, mostConductance))
	case !(b >= 0 && b <= mostRatio):
		return newSentence("file-ratio", calc.BriefFigure("most", calc.FigureRatio, mostRatio))
	}
	return nil
}
