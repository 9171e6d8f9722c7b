package question_test

import (
	"testing"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestDayTakesTheAirForPanelAndPaint(t *testing.T) {
	r := questiontest.Open(t)
	q, _ := day(t, r, unit.US, questiontest.Texts("coat", "clear", "temp", "75", "humidity", "45"))
	assert.InDelta(t, 75, q.Air.F(), 1e-9)
	assert.Equal(t, q.Air, q.Panel)
	assert.Equal(t, q.Air, q.Paint)
	assert.Equal(t, 1, q.Panels)
	assert.Equal(t, calc.Isocyanate, q.Coat.Hardener)
	assert.Equal(t, "butyl-acetate", q.Coat.Solvent.ID)
	q, _ = day(t, r, unit.Metric, questiontest.Texts("coat", "waterborne-base", "temp", "24", "humidity", "45", "panel", "19", "paint", "68F", "altitude", "1500", "panels", "4"))
	assert.True(t, q.Coat.Waterborne)
	assert.InDelta(t, 19, q.Panel.C(), 1e-9)
	assert.InDelta(t, 20, q.Paint.C(), 1e-9)
	assert.InDelta(t, 1500, float64(q.Altitude), 1e-9)
	assert.Equal(t, 4, q.Panels)
}

// The shop's altitude is the day's too.
func TestDayIsAtTheShopsAltitude(t *testing.T) {
	r := questiontest.Shop(t, "[line]\naltitude = \"1500m\"\n")
	q, _ := day(t, r, unit.US, questiontest.Texts("coat", "clear", "temp", "75", "humidity", "45"))
	assert.InDelta(t, 1500, float64(q.Altitude), 1e-9)
}

func TestPotLifeAndClockAsTyped(t *testing.T) {
	r := questiontest.Open(t)
	mild := questiontest.Texts("coat", "clear", "temp", "70F", "humidity", "45", "pot-life", "4h")
	for text, want := range map[string]time.Duration{"4h": 4 * time.Hour, "90min": 90 * time.Minute, "4": 4 * time.Hour, "1,5 h": 90 * time.Minute} {
		q, _ := day(t, r, unit.US, questiontest.With(mild, "pot-life", text))
		assert.Equal(t, want, q.PotLife, text)
		assert.False(t, q.HasStarted)
	}
	for text, want := range map[string]time.Duration{
		"14:30": 14*time.Hour + 30*time.Minute, "2:30pm": 14*time.Hour + 30*time.Minute, "2:30 p.m.": 14*time.Hour + 30*time.Minute,
		"2 PM": 14 * time.Hour, "12am": 0, "12:05pm": 12*time.Hour + 5*time.Minute, "0:00": 0, "23:59": 23*time.Hour + 59*time.Minute, "9:05": 9*time.Hour + 5*time.Minute,
		"1430": 14*time.Hour + 30*time.Minute, "930": 9*time.Hour + 30*time.Minute, "0930": 9*time.Hour + 30*time.Minute, "000": 0, "2359": 23*time.Hour + 59*time.Minute,
		"14.30": 14*time.Hour + 30*time.Minute, "9,30": 9*time.Hour + 30*time.Minute, "230pm": 14*time.Hour + 30*time.Minute, "1205 a.m": 5 * time.Minute, "2.30 p.m.": 14*time.Hour + 30*time.Minute,
	} {
		q, _ := day(t, r, unit.US, questiontest.With(mild, "started", text))
		assert.Equal(t, calc.Clock(want), q.Started, text)
		assert.True(t, q.HasStarted)
	}
}

func TestDayFaults(t *testing.T) {
	r := questiontest.Open(t)
	mild := questiontest.Texts("coat", "clear", "temp", "70F", "humidity", "45", "pot-life", "4h")
	for _, x := range []struct{ field, typed, says string }{
		{"coat", "varnish", "choose epoxy-primer"},
		{"temp", "", "type a number with F or C"},
		{"temp", "200F", "outside 14 to 140 F"},
		{"humidity", "0", "outside 1 to 100%"},
		{"humidity", "wet", "percent"},
		{"panel", "cold", "F or C"},
		{"paint", "100C", "outside"},
		{"altitude", "9000m", "outside"},
		{"panels", "0", "whole number of panels, 1 to 100"},
		{"panels", "1.5", "whole number"},
		{"panels", "101", "1 to 100"},
		{"pot-life", "soon", "s, min or h"},
		{"pot-life", "0h", "60 s to 7 days"},
		{"pot-life", "-3h", "60 s to 7 days"},
		{"pot-life", "9999999h", "60 s to 7 days"},
		{"started", "24:00", "14:30 or 2:30pm"},
		{"started", "13pm", "14:30 or 2:30pm"},
		{"started", "7", "14:30 or 2:30pm"},
		{"started", "7:5", "14:30 or 2:30pm"},
		{"started", "7:60", "14:30 or 2:30pm"},
		{"started", "-1:00", "14:30 or 2:30pm"},
		{"started", "14", "14:30 or 2:30pm"},
		{"started", "14.3", "14:30 or 2:30pm"},
		{"started", "1.5", "14:30 or 2:30pm"},
		{"started", "2400", "14:30 or 2:30pm"},
		{"started", "1260", "14:30 or 2:30pm"},
		{"started", "1330pm", "14:30 or 2:30pm"},
		{"started", "12345", "14:30 or 2:30pm"},
		{"started", "1:2:30", "14:30 or 2:30pm"},
		{"started", "noon", "14:30 or 2:30pm"},
	} {
		_, faults := r.Day(r.ReadAll(question.Day, questiontest.With(mild, x.field, x.typed), unit.US), unit.US)
		require.NotEmpty(t, faults, "%s %q", x.field, x.typed)
		assert.Equal(t, x.field, faults[0].Field, "%q", x.typed)
		assert.Equal(t, x.typed, faults[0].Given)
		assert.Contains(t, faults[0].Want(), x.says)
	}
	_, faults := r.Day(r.ReadAll(question.Day, questiontest.Texts("coat", "clear", "temp", "70F", "humidity", "45", "started", "14:30"), unit.US), unit.US)
	require.Len(t, faults, 1)
	assert.Equal(t, "pot-life", faults[0].Field)
	assert.Contains(t, faults[0].Want(), "needed beside started")
}

// The day of a plan is the question about the day with its coat, gun and weather answered,
// but for how many coats there will be.
func TestDayOfAPlan(t *testing.T) {
	r := questiontest.Open(t)
	texts := questiontest.MildDay("metallic-base", "reduced-pressure")
	q, _ := day(t, r, unit.US, texts)
	of := calc.DayOf(plan(t, r, texts, unit.US))
	of.Coats = q.Coats
	assert.Equal(t, q, *of)
}

// Without a gun the day is that of one that the coat goes on; another one is taken as typed.
func TestTheGunOfADay(t *testing.T) {
	r := questiontest.Open(t)
	texts := questiontest.Texts("coat", "clear", "temp", "75", "humidity", "45")
	q, _ := day(t, r, unit.US, texts)
	assert.True(t, r.GoTogether("clear", q.Gun.ID))
	assert.Positive(t, q.Coat.Working.Start)
	assert.Equal(t, 2, q.Coats)
	q, _ = day(t, r, unit.US, questiontest.With(texts, "gun", "conventional"))
	assert.Equal(t, "high-pressure", q.Gun.ID)
	_, faults := r.Day(r.ReadAll(question.Day, questiontest.With(texts, "gun", "spoon"), unit.US), unit.US)
	require.Len(t, faults, 1)
	assert.Equal(t, "gun", faults[0].Field)
}
