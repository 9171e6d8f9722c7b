package command

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// said is a figure of a sentence that is in words already.
func said(name, text string) calc.Figure { return calc.Figure{Name: name, Text: text} }

// spoken is a sentence whose figures have no units.
func spoken(w *words.Words, id string, f ...calc.Figure) string { return w.Text(unit.US, id, f) }
