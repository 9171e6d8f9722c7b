package edit

import (
	"strings"
	"testing"

	"boothset/presets/question"

	"github.com/stretchr/testify/assert"
)

func TestThePieceUnderTheCursor(t *testing.T) {
	for _, x := range []struct {
		field       *question.Field
		text        string // | is the cursor
		part, piece int
	}{
		{question.Temp, "7|2F", 0, 0},
		{question.Hose, "|", 0, 0},
		{question.Hose, "|25ft,3/8in", 0, 0},
		{question.Hose, "25ft|,3/8in", 0, 0},
		{question.Hose, "25ft,|3/8in", 0, 1},
		{question.Hose, "25ft,3/8in| + 6ft,1/4in", 0, 1},
		{question.Hose, "25ft,3/8in +| 6ft,1/4in", 1, 0},
		{question.Hose, "25ft,3/8in + 6ft,1/4in|", 1, 1},
		{question.Hose, "7|,5m,10mm", 0, 0},
		{question.Hose, "7,5|m,10mm", 0, 0},
		{question.Hose, " + + 8m|,10mm", 0, 0},
		{question.Main, "100ft, |3/4in", 0, 1},
		{question.Main, "none|", 0, 0},
		{question.Other, "10cfm|", 0, 0},
		{question.Other, "10cfm,5|0% + 4", 0, 1},
		{question.Other, "10cfm,50% + 4|", 1, 0},
		{question.Other, "é,é|é", 0, 1},
	} {
		before, after, _ := strings.Cut(x.text, "|")
		got := inputAt(x.field, before+after, len([]rune(before)))
		assert.Equal(t, Input{Field: x.field, Part: x.part, Piece: x.piece}, got, x.text)
	}
	assert.Equal(t, Input{Field: question.Hose, Piece: 1}, inputAt(question.Hose, "8m,10mm", 99))
	assert.Equal(t, Input{Field: question.Hose}, inputAt(question.Hose, "8m,10mm", -1))
}
