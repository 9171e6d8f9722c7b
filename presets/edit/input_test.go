package edit_test

import (
	"fmt"
	"slices"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/edit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWhatCanBeMovedInTheOrderOfTheJob(t *testing.T) {
	r := questiontest.Open(t)
	list := func(texts question.Texts) []string { return named(edit.Inputs(r, read(r, texts, unit.US))...) }
	// inputs is every field of the plan, with how many values there are of some, both
	// quantities of each pair, and some left out.
	inputs := func(values map[*question.Field]int, leftOut ...*question.Field) (all []string) {
		for _, row := range question.Plan.Fields {
			if row.Field == question.Line || slices.Contains(leftOut, row.Field) {
				continue
			}
			for part := range max(values[row.Field], 1) {
				all = append(all, fmt.Sprintf("%s %d.0", row.Name, part))
				if row.Pair() {
					all = append(all, fmt.Sprintf("%s %d.1", row.Name, part))
				}
			}
		}
		return all
	}
	var supply []*question.Field
	for _, row := range question.Plan.Fields {
		if row.Part == question.PartSupply {
			supply = append(supply, row.Field)
		}
	}
	require.Contains(t, supply, question.Compressor)
	assert.Equal(t, inputs(nil, append(supply, question.PotLife)...), list(questiontest.MildDay("clear", "reduced-pressure")))

	bare := questiontest.With(questiontest.With(questiontest.MildDay("clear", "reduced-pressure"), "regulator", "none"), "compressor", "none")
	assert.Equal(t, inputs(nil, append(supply, question.PotLife, question.RegulatorAt, question.Wall, question.Mark)...), list(bare))

	assert.Equal(t, inputs(map[*question.Field]int{question.Hose: 2, question.Other: 2}), list(wholeShop()))

	assert.NotContains(t, list(questiontest.With(wholeShop(), "main", "none")), "main 0.0")
}

// Every field of the plan can be moved as soon as it counts.
func TestEveryFieldCanBeMoved(t *testing.T) {
	r := questiontest.Open(t)
	list := named(edit.Inputs(r, read(r, wholeShop(), unit.US))...)
	for _, row := range question.Plan.Fields {
		if row.Field != question.Line {
			assert.Contains(t, list, row.Name+" 0.0")
		}
	}
}

// Of a line that is given part by part each part can be moved, a hose by its length and by its
// bore, and nothing of the usual line.
func TestEveryPartOfALineCanBeMoved(t *testing.T) {
	r := questiontest.Open(t)
	texts := questiontest.MildDay("clear", "reduced-pressure")
	texts["line"] = []string{"filter=clogged", "coupling=slim", "hose=25ft,3/8in"}
	a := read(r, texts, unit.US)
	list := named(edit.Inputs(r, a)...)
	for _, in := range []string{"line 0.0", "line 1.0", "line 2.0", "line 2.1"} {
		assert.Contains(t, list, in)
	}
	for _, in := range []string{"regulator 0.0", "filter 0.0", "hose 0.0", "coupling 0.0", "wall 0.0", "mark 0.0"} {
		assert.NotContains(t, list, in, "there is no regulator")
	}
	for _, x := range []struct {
		in           edit.Input
		by           int
		before, want string
	}{
		{edit.Input{Field: question.Line}, -1, "clogged", "filter=point-of-use + coupling=slim + hose=25ft,3/8in"},
		{edit.Input{Field: question.Line, Part: 1}, -1, "slim", "filter=clogged + coupling=ordinary + hose=25ft,3/8in"},
		{edit.Input{Field: question.Line, Part: 2}, 1, "25ft", "filter=clogged + coupling=slim + hose=30 ft, 3/8in"},
		{edit.Input{Field: question.Line, Part: 2, Piece: 1}, 1, "3/8in", "filter=clogged + coupling=slim + hose=25ft, 1/2 in"},
	} {
		assert.Equal(t, x.before, x.in.Text(r, a, unit.US))
		b, moved := step(r, a, x.in, x.by, unit.US)
		require.True(t, moved)
		assert.Equal(t, x.want, b.Text(question.Line))
	}
	_, moved := step(r, a, edit.Input{Field: question.Line, Part: 1}, 1, unit.US)
	assert.False(t, moved, "slim is the last of its kind")
	b := edit.Input{Field: question.Line, Part: 2, Piece: 1}.With(r, a, "5/16", unit.US)
	assert.Equal(t, "filter=clogged + coupling=slim + hose=25ft, 5/16", b.Text(question.Line))
}

// The text of an input is that of its quantity, with its unit named; another text in its
// place changes it alone.
func TestTextOfAnInput(t *testing.T) {
	r := questiontest.Open(t)
	a := read(r, questiontest.Texts("temp", "75", "hose", "25,3/8 + 6ft,5/16in", "other", "10cfm + 4,50", "gun", "hvlp"), unit.US)
	for _, x := range []struct {
		in             edit.Input
		text           string
		with, then, as string
	}{
		{edit.Input{Field: question.Temp}, "75 F", "80", "80 F", "80 F"},
		{edit.Input{Field: question.Hose}, "25 ft", "30", "30 ft", "30 ft, 3/8 + 6ft,5/16in"},
		{edit.Input{Field: question.Hose, Piece: 1}, "3/8", "10mm", "10mm", "25 ft, 10mm + 6ft,5/16in"},
		{edit.Input{Field: question.Hose, Part: 1}, "6ft", "2m", "2m", "25,3/8 + 2m, 5/16in"},
		{edit.Input{Field: question.Hose, Part: 1, Piece: 1}, "5/16in", "1/4", "1/4", "25,3/8 + 6ft, 1/4"},
		{edit.Input{Field: question.Other, Piece: 1}, "", "25", "25%", "10cfm, 25% + 4,50"},
		{edit.Input{Field: question.Other, Part: 1}, "4 cfm", "5", "5 cfm", "10cfm + 5 cfm, 50%"},
		{edit.Input{Field: question.Gun}, "hvlp", "reduced-pressure", "reduced-pressure", "reduced-pressure"},
		{edit.Input{Field: question.Humidity}, "", "45", "45%", "45%"},
	} {
		assert.Equal(t, x.text, x.in.Text(r, a, unit.US), named(x.in))
		b := x.in.With(r, a, x.with, unit.US)
		assert.Equal(t, x.then, x.in.Text(r, b, unit.US), named(x.in))
		assert.Equal(t, x.as, b.Text(x.in.Field), named(x.in))
		assert.Equal(t, a.Texts(), b.With(x.in.Field, a.Get(x.in.Field)...).Texts(), "nothing else changes")
	}
	// A usual hose becomes the answer once a quantity of it is changed.
	b := edit.Input{Field: question.Hose, Piece: 1}.With(r, question.Answers{}, "1/2in", unit.US)
	assert.Equal(t, "25ft, 1/2in", b.Text(question.Hose))
	assert.Empty(t, edit.Input{Field: question.Hose, Part: 3}.Text(r, a, unit.US))
}

func TestATextIsMovedWhereTheCursorIs(t *testing.T) {
	r := questiontest.Open(t)
	a := read(r, wholeShop(), unit.US)
	couplings := questiontest.Entries(r, question.Coupling)
	for _, x := range []struct {
		field      *question.Field
		text, want string
		at, by     int
	}{
		{question.Hose, "25,3/8 + 6,1/4", "25,3/8 + 10 ft, 1/4", 10, 1},
		{question.Hose, "25,3/8 + 6,", "20 ft, 3/8 + 6,", 0, -1},
		{question.Hose, "", "30 ft, 3/8in", 0, 1},
		{question.Temp, " 72 ", "74 F", 2, 1},
		{question.Panel, "", "74 F", 0, 1},
		{question.Other, "10,50", "10, 60%", 5, 1},
		{question.Coupling, couplings[2], couplings[1], 0, -1},
		{question.Temp, "hot", "", 0, 1},
		{question.Hose, "25,3/8 + 6,", "", 11, 1},
		{question.Main, "", "50 ft, 3/4 in", 0, 1},
	} {
		got, moved := edit.StepText(r, a, x.field, x.text, x.at, x.by, unit.US)
		assert.Equal(t, x.want != "", moved, x)
		if x.want == "" {
			x.want = x.text
		}
		assert.Equal(t, x.want, got, x)
	}
	assert.Equal(t, read(r, wholeShop(), unit.US), a, "the answers stay as they were")
}

// Every field that may stand empty has somewhere to begin, so that arrows alone fill it.
func TestAnEmptyFieldBeginsSomewhere(t *testing.T) {
	r := questiontest.Open(t)
	a := read(r, questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "temp", "70F", "humidity", "50", "supply", "90psi", "compressor", "18cfm", "receiver", "60gal"), unit.US)
	for _, sys := range bothSystems {
		for _, row := range question.Plan.Fields {
			if row.Listed() || row.Part == "" {
				continue
			}
			text, ok := edit.StepText(r, a, row.Field, "", 0, +1, sys)
			require.True(t, ok, row.Name)
			require.Nil(t, r.Check(row.Field, r.ReadText(row.Field, text, sys), sys), "%s %q", row.Name, text)
		}
	}
}
