package shop_test

import (
	"testing"

	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What was seen at the gun comes back as it was last seen, in the units that are asked for: of the
// same gun, coat, stage and line. It is no reading of the gauges.
func TestWhatWasSeenComesBack(t *testing.T) {
	f, m, r := folder(t), machine(t), questiontest.Open(t)
	plan := readLine()
	plan.Gun.ID, plan.Coat.ID, plan.Coat.Stage.ID = "clear-1", "clear", "wet"
	seen := func(field *question.Field, text string) (a question.Answers) {
		return a.With(field, r.ReadText(field, text, unit.US)...)
	}
	keep := func(day int, a question.Answers) {
		require.NoError(t, f.KeepReadings(m, "two", shop.SeenOf(r, plan, "two", a, aDay.AddDate(0, 0, day), unit.US)))
	}
	keep(0, seen(question.Felt, "5"))
	keep(1, seen(question.Felt, "5 1/2"))
	keep(2, seen(question.Pattern, "heavy ends").With(question.Wet, r.ReadText(question.Wet, "2,3", unit.US)...))
	all, faults := f.Readings("two")
	require.Empty(t, faults)
	require.Len(t, all, 4)
	last := shop.LastSeen(r, plan, all, unit.US)
	require.Len(t, last, 3)
	assert.Equal(t, question.Felt, last[0].Field)
	assert.Equal(t, "5.5 in", last[0].Text)
	assert.Equal(t, aDay.AddDate(0, 0, 1), last[0].At)
	assert.Equal(t, "split pattern", last[1].Text)
	assert.Equal(t, "2 mil, 3 mil", last[2].Text)
	taken, _ := shop.History(r, plan, "clear-1", all, func(string) *learn.OtherGun { return nil })
	assert.Empty(t, taken)
	k := &shop.Kept{Own: all, Gun: func(string) *learn.OtherGun { return nil }}
	assert.Nil(t, shop.Left(k.Request(r, plan)))

	for what, change := range map[string]func(*calc.Request){
		"gun":   func(q *calc.Request) { q.Gun.ID = "clear-2" },
		"coat":  func(q *calc.Request) { q.Coat.ID = "single-stage" },
		"stage": func(q *calc.Request) { q.Coat.Stage.ID = "drop" },
		"line":  func(q *calc.Request) { q.Line = q.Line[:2] },
	} {
		other := *plan
		change(&other)
		assert.Empty(t, shop.LastSeen(r, &other, all, unit.US), what)
	}
	require.NoError(t, f.KeepReadings(m, "two", []shop.GaugeReading{{At: aDay.AddDate(0, 0, 3), Gun: "clear-1", Replaced: shop.ReplacedGun}}))
	all, _ = f.Readings("two")
	assert.Empty(t, shop.LastSeen(r, plan, all, unit.US))
}
