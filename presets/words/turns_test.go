package words_test

import (
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
)

// Turns of a knob to the nearest eighth, as a hand counts them.
func TestTurnsAsAHandCountsThem(t *testing.T) {
	kinds := []calc.FigureKind{calc.FigureTurns, calc.FigureClosed, calc.FigureOpened}
	for lang, rows := range map[string]map[float64][3]string{
		"en": {
			0:     {"0 turns", "wide open", "opened 0 turns"},
			0.06:  {"under 1/8 turn", "wide open", "opened under 1/8 turn"},
			0.07:  {"1/8 turn", "closed 1/8 turn", "opened 1/8 turn"},
			0.389: {"3/8 turn", "closed 3/8 turn", "opened 3/8 turn"},
			0.5:   {"1/2 turn", "closed 1/2 turn", "opened 1/2 turn"},
			0.72:  {"3/4 turn", "closed 3/4 turn", "opened 3/4 turn"},
			0.94:  {"1 turn", "closed 1 turn", "opened 1 turn"},
			1.13:  {"1 1/8 turns", "closed 1 1/8 turns", "opened 1 1/8 turns"},
			1.25:  {"1 1/4 turns", "closed 1 1/4 turns", "opened 1 1/4 turns"},
			2:     {"2 turns", "closed 2 turns", "opened 2 turns"},
			11.88: {"11 7/8 turns", "closed 11 7/8 turns", "opened 11 7/8 turns"},
		},
		"es": {
			0.01: {"menos de 1/8 de vuelta", "toda abierta", "abierta menos de 1/8 de vuelta"},
			0.38: {"3/8 de vuelta", "cerrada 3/8 de vuelta", "abierta 3/8 de vuelta"},
			1:    {"1 vuelta", "cerrada 1 vuelta", "abierta 1 vuelta"},
			1.6:  {"1 5/8 vueltas", "cerrada 1 5/8 vueltas", "abierta 1 5/8 vueltas"},
		},
	} {
		w, ok := words.For(lang)
		assert.True(t, ok)
		for turns, want := range rows {
			for i, kind := range kinds {
				assert.Equal(t, want[i], w.FigureText(unit.US, calc.FigureOf("turns", kind, turns)), "%s %g", lang, turns)
			}
		}
	}
	low := calc.FigureOf("low", calc.FigureTurns, 0.25)
	low.WithoutUnit = true
	assert.Equal(t, "1/4", words.English().FigureText(unit.US, low), "the other end of a range has the word")
}
