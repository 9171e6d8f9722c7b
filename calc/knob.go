package calc

import (
	"boothset/calc/gun"
	"boothset/calc/unit"
)

// Knob is how far the valve's knob is turned at an opening, as it is counted.
func (v *ValveMargin) Knob(name string, opening float64) Figure {
	if v.CountsFromShut {
		return FigureOf(name, FigureOpened, opening*v.TurnsOf)
	}
	return FigureOf(name, FigureClosed, (1-opening)*v.TurnsOf)
}

// open sets the valve to an opening.
func (v *ValveMargin) open(opening float64, of *gun.Valve) {
	v.Opening, v.Area = opening, of.Shape.Share(opening)
	v.Turns, v.FromShut = (1-opening)*v.TurnsOf, opening*v.TurnsOf
}

// Limit is the floor in turns of the knob, as it is counted: at most so many closed, or at
// least so many opened; the sentence is called limit, the turns it speaks of least.
func (v *ValveMargin) Limit() (sentence, least Figure) {
	if v.CountsFromShut {
		return SentenceFigure("limit", "limit-opened"), FigureOf("least", FigureTurns, v.Floor*v.TurnsOf)
	}
	return SentenceFigure("limit", "limit-closed"), FigureOf("least", FigureTurns, (1-v.Floor)*v.TurnsOf)
}

// setting is the id of the sentence that says how a hand sets the valve, and the turns it
// speaks of: by the gauge where that is behind the valve, else by turns alone, since one
// before the valve hardly moves with it.
func (v *ValveMargin) setting(at GaugePlace) (id string, turns Figure) {
	turns = FigureOf("turns", FigureTurns, v.Turns)
	switch {
	case v.CountsFromShut:
		turns.Value = v.FromShut
		id = [...]string{InHandle: "valve-set-open-handle", AtFoot: "valve-set-open-foot", NoGauge: "valve-set-open-none"}[at]
	case unit.NearestTurns(v.Turns) == 0:
		id = "valve-set-wide"
	default:
		id = [...]string{InHandle: "valve-set-close-handle", AtFoot: "valve-set-close-foot", NoGauge: "valve-set-close-none"}[at]
	}
	return id, turns
}
