package question_test

import (
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What was typed and does not count is told, with what keeps it from counting.
func TestWhatDoesNotCountIsTold(t *testing.T) {
	r := questiontest.Open(t)
	for _, x := range []struct {
		q     *question.Question
		texts question.Texts
		says  string
	}{
		{question.Plan, questiontest.Texts("regulator", "none", "regulator-at", "gun"), `regulator-at "gun": does not count beside regulator none; leave one of the two out`},
		{question.Plan, questiontest.Texts("regulator", "none", "wall", "60psi"), `wall "60psi": does not count beside regulator none; leave one of the two out`},
		{question.Plan, questiontest.Texts("compressor", "none", "receiver", "60gal"), `receiver "60gal": does not count beside compressor none; leave one of the two out`},
		{question.Plan, questiontest.Texts("cut-out", "60psi"), `cut-out "60psi": counts only beside compressor; give that too, or leave this out`},
		{question.Plan, questiontest.Texts("compressor", "none"), ""},
		{question.Plan, questiontest.Texts("compressor", "18cfm", "receiver", "60gal"), ""},
		{question.Plan, questiontest.Texts("regulator", "none"), ""}, // the usual place of it may go unused
		{question.Plan, questiontest.Texts("regulator-at", "gun"), ""},
		{question.Thin, questiontest.Texts("temp", "75F", "paint", "70F"), `temp "75F": does not count beside paint 70F; leave one of the two out`},
		{question.Thin, questiontest.Texts("temp", "75F"), ""},
		{question.Film, questiontest.Texts("fluid-rate", "180", "cup-time", "30s"), `cup-time "30s": does not count beside fluid-rate 180; leave one of the two out`},
		{question.Film, questiontest.Texts("viscosity", "57cSt"), `viscosity "57cSt": counts only beside tip; give that too, or leave this out`},
		{question.Film, questiontest.Texts("tip", "1.3mm", "viscosity", "57cSt", "seconds", "18"), `seconds "18": does not count beside viscosity 57cSt; leave one of the two out`},
		{question.Film, questiontest.Texts("tip", "1.3mm", "cup", "din4", "seconds", "18"), ""},
		{question.Mix, questiontest.Texts("temp", "75F"), `temp "75F": counts only beside pot-life; give that too, or leave this out`},
		{question.Mix, questiontest.Texts("temp", "75F", "pot-life", "4h", "fluid-rate", "180"), ""},
		{question.Day, questiontest.Texts("temp", "75F", "paint", "70F"), ""},
	} {
		typed := r.ReadAll(x.q, x.texts, unit.US)
		fault := r.Unused(x.q, typed, typed, unit.US)
		if x.says == "" {
			assert.Nil(t, fault, x.texts)
			continue
		}
		require.NotNil(t, fault, x.texts)
		assert.Equal(t, x.says, fault.Error())
	}
}

// The shop's usual answers count as given, and are no fault where they go unused.
func TestTheShopsUsualMayGoUnused(t *testing.T) {
	r := questiontest.Shop(t, "[line]\nregulator = \"none\"\nregulator-at = \"gun\"\nreceiver = \"60gal\"\n")
	typed := r.ReadAll(question.Plan, questiontest.MildDay("clear", "reduced-pressure"), unit.US)
	assert.Nil(t, r.Unused(question.Plan, typed, typed, unit.US))
	typed = typed.With(question.RegulatorAt, r.Read(question.RegulatorAt, "wall", unit.US))
	assert.EqualError(t, r.Unused(question.Plan, typed, typed, unit.US), `regulator-at "wall": does not count beside regulator none; leave one of the two out`)
}

// No supply stands above the pressure at which its compressor stops.
func TestNoSupplyAboveTheCutOut(t *testing.T) {
	r := questiontest.Open(t)
	job := func(supply string, more ...string) []*question.Fault {
		texts := questiontest.With(questiontest.MildDay("clear", "reduced-pressure"), "supply", supply)
		texts["compressor"], texts["receiver"] = []string{"18cfm"}, []string{"60gal"}
		for i := 0; i < len(more); i += 2 {
			texts[more[i]] = []string{more[i+1]}
		}
		_, faults := r.Plan(r.ReadAll(question.Plan, texts, unit.US), unit.US)
		return faults
	}
	for _, more := range [][]string{{"cut-out", "60psi"}, {"cut-in", "40psi", "cut-out", "60psi"}} {
		faults := job("150psi", more...)
		require.Len(t, faults, 1)
		assert.EqualError(t, faults[0], `cut-out "60psi": the air tank never holds more than the cut-out of 60.0 psi: a supply of 150.0 psi cannot come from it`)
	}
	assert.Empty(t, job("60psi", "cut-in", "40psi", "cut-out", "60psi"))
	assert.Empty(t, job("90psi", "cut-in", "40psi"), "the cut-out is then no lower than the supply")
}
