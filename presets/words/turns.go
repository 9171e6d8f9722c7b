package words

import (
	"boothset/calc"
	"boothset/calc/unit"
)

// appendTurns appends turns of a knob to the nearest eighth, with the word for them that
// goes with the number, unless another figure of the sentence has it.
func (w *Words) appendTurns(dst []byte, turns float64, withoutUnit bool) []byte {
	n := string(unit.AppendTurns(nil, turns))
	switch {
	case withoutUnit:
		return append(dst, n...)
	case n == "0" && turns > 0:
		n = string(unit.AppendTurns(nil, 1.0/unit.TurnParts))
		return w.Append(dst, unit.US, "turns-under", calc.Figures{calc.TextFigure("n", n)})
	}
	id := "turns-many"
	switch rounded := unit.NearestTurns(turns); {
	case rounded == 1:
		id = "turns-one"
	case rounded > 0 && rounded < 1:
		id = "turns-part"
	}
	return w.Append(dst, unit.US, id, calc.Figures{calc.TextFigure("n", n)})
}

// appendKnob appends how far a knob is turned, in the sentence of an id.
func (w *Words) appendKnob(dst []byte, sys unit.System, id string, turns float64) []byte {
	if id == "knob-closed" && unit.NearestTurns(turns) == 0 {
		return append(dst, w.Say("knob-wide")...)
	}
	return w.Append(dst, sys, id, calc.Figures{calc.FigureOf("turns", calc.FigureTurns, turns)})
}
