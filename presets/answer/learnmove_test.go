package answer_test

import (
	"testing"

	"boothset/calc/learn"
	"boothset/calc/line"
	"boothset/presets/answer"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whatever is found odd, there is something to do about it, said once, in every language; where the
// readings contradict there is not.
func TestEveryPieceThatIsOddHasItsMove(t *testing.T) {
	kinds := []line.Kind{line.RegulatorKind, line.FilterKind, line.DryerKind, line.CouplingKind, line.HoseKind, line.ValveKind}
	pieces := []learn.Piece{{Role: learn.InletValve}, {Role: learn.GunItself}}
	for _, k := range kinds {
		pieces = append(pieces, learn.Piece{Role: learn.InLine, Part: line.Part{Kind: k}})
	}
	for _, lang := range words.Languages() {
		w, _ := words.For(lang)
		said := map[string]bool{}
		for i := range pieces {
			l := answer.Learn{Found: &learn.Answer{Pieces: pieces, Finding: learn.Finding{Found: []int{i, i}}}}
			rows := l.MoveRows(w)
			require.Len(t, rows, 1)
			assert.True(t, w.Has(rows[0].ID), rows[0].ID)
			assert.False(t, said[rows[0].Text], rows[0].Text)
			said[rows[0].Text] = true
			l.Found.Contradictions = []learn.Contradiction{{}}
			assert.Empty(t, l.MoveRows(w))
		}
	}
}
