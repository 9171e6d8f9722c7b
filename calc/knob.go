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

// byHand are the figures that say how a hand sets the valve: the sentence called set, a
// shorter one called hand, and the turns that both speak of. It is set by the gauge where that
// is behind the valve, else by turns alone, since one before the valve hardly moves with it.
func (v *ValveMargin) byHand(at GaugePlace) Figures {
	set, hand, turns := "valve-set-wide", "hand-wide", FigureOf("turns", FigureTurns, v.Turns)
	switch {
	case v.CountsFromShut:
		turns.Value = v.FromShut
		set = [...]string{InHandle: "valve-set-open-handle", AtFoot: "valve-set-open-foot", NoGauge: "valve-set-open-none"}[at]
		hand = [...]string{InHandle: "hand-open-gauge", AtFoot: "hand-open", NoGauge: "hand-open"}[at]
	case unit.NearestTurns(v.Turns) > 0:
		set = [...]string{InHandle: "valve-set-close-handle", AtFoot: "valve-set-close-foot", NoGauge: "valve-set-close-none"}[at]
		hand = [...]string{InHandle: "hand-close-gauge", AtFoot: "hand-close", NoGauge: "hand-close"}[at]
	}
	return Figures{SentenceFigure("set", set), SentenceFigure("hand", hand), turns}
}
