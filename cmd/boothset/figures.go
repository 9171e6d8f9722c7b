package main

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// figure is a figure of a sentence, its value in the unit of its kind.
func figure[V ~float64 | ~int](name string, kind calc.FigureKind, value V) calc.Figure {
	return calc.Figure{Name: name, Kind: kind, Value: float64(value)}
}

// said is a figure of a sentence that is in words already.
func said(name, text string) calc.Figure { return calc.Figure{Name: name, Text: text} }

// spoken is a sentence whose figures have no units.
func spoken(w *words.Words, id string, f ...calc.Figure) string { return w.Text(unit.US, id, f) }
