package question_test

import (
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Heitbrink and others 1996 (AIHA Journal 57(3):304-310): on a car body a high-volume gun laid
// 33 % more film a mass of paint than a conventional one. Each class lands between a quarter
// less and a quarter more, so that the two intervals meet.
func TestTransferOfTheClassesOnACarBody(t *testing.T) {
	r := questiontest.Open(t)
	of := func(gun string) (at, low, high float64) {
		q, faults := r.Mix(r.ReadAll(question.Mix, questiontest.Texts("coat", "clear", "gun", gun, "area", "hood"), unit.US), unit.US)
		require.Empty(t, faults)
		c := &q.Held.Class
		assert.Equal(t, calc.Estimate, c.Basis)
		got, err := c.Value.At(c.Value.Pressure, c.Value.Distance)
		require.NoError(t, err)
		return got.Value, got.Low, got.High
	}
	high, highLow, _ := of("high-volume-low-pressure")
	old, _, oldHigh := of("high-pressure")
	assert.InDelta(t, 1.33, high/old, 0.01)
	assert.Less(t, highLow, oldHigh)
}

// Auto Collision Repair & Refinishing, 2022, p. 687: a conventional gun goes at about 1 ft/s, a
// high-volume low-pressure one at about 1 1/2 ft/s.
func TestHandSpeedsOfTheClasses(t *testing.T) {
	r := questiontest.Open(t)
	for gun, want := range map[string]float64{"high-volume-low-pressure": 1.5, "high-pressure": 1} {
		q, faults := r.Film(r.ReadAll(question.Film, questiontest.Texts("coat", "clear", "gun", gun), unit.US), unit.US)
		require.Empty(t, faults)
		assert.InDelta(t, want*0.3048, float64(q.Held.Hand.Value), 1e-9, gun)
		assert.Equal(t, calc.Published, q.Held.Hand.Basis)
	}
}
