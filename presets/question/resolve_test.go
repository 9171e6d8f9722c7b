package question_test

import (
	"testing"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestBareNumbersAreReadInTheSystemsUnits(t *testing.T) {
	r := questiontest.Open(t)
	texts := questiontest.Texts(
		"coat", "clear", "gun", "reduced-pressure", "temp", "30", "humidity", "45", "panel", "28", "altitude", "100",
		"supply", "8", "hose", "8,3/8", "wall", "5", "mark", "0.5",
	)
	us := plan(t, r, texts, unit.US)
	assert.InDelta(t, 30, us.Day.Air.F(), 1e-9)
	assert.InDelta(t, 28, us.Day.Panel.F(), 1e-9)
	assert.InDelta(t, 0.45, us.Day.Humidity, 1e-12)
	assert.InDelta(t, 100, us.Day.Altitude.Feet(), 1e-9)
	assert.InDelta(t, 8, us.Supply.PSI(), 1e-9)
	assert.InDelta(t, 5, us.Now.PSI(), 1e-9)
	assert.InDelta(t, 0.5, us.Mark.PSI(), 1e-9)
	assert.InDelta(t, 8, us.Line[2].Hose.Length.Feet(), 1e-9)
	assert.InDelta(t, 0.375, us.Line[2].Hose.Bore.Inches(), 1e-9)

	metric := plan(t, r, texts, unit.Metric)
	assert.InDelta(t, 30, metric.Day.Air.C(), 1e-9)
	assert.InDelta(t, 28, metric.Day.Panel.C(), 1e-9)
	assert.InDelta(t, 100, float64(metric.Day.Altitude), 1e-9)
	assert.InDelta(t, 8, metric.Supply.Bar(), 1e-9)
	assert.InDelta(t, 5, metric.Now.Bar(), 1e-9)
	assert.InDelta(t, 0.5, metric.Mark.Bar(), 1e-9)
	assert.InDelta(t, 8, float64(metric.Line[2].Hose.Length), 1e-9)
	assert.InDelta(t, 0.375, metric.Line[2].Hose.Bore.Inches(), 1e-9, "a bare fraction is inches in either")
}

func TestMarkIsOnePSIOrATwentiethOfABar(t *testing.T) {
	r := questiontest.Open(t)
	texts := questiontest.MildDay("clear", "reduced-pressure")
	assert.InDelta(t, 1, plan(t, r, texts, unit.US).Mark.PSI(), 1e-9)
	assert.InDelta(t, 0.05, plan(t, r, texts, unit.Metric).Mark.Bar(), 1e-9)
}

// A value typed in the other system of units is taken as it is.
func TestAValueOfTheOtherSystemIsTaken(t *testing.T) {
	r := questiontest.Open(t)
	texts := questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "temp", "24C", "humidity", "45", "supply", "6bar", "hose", "8m,10mm", "mark", "0.05bar")
	assert.Equal(t, plan(t, r, texts, unit.Metric), plan(t, r, texts, unit.US))
}

func TestHosesAsTyped(t *testing.T) {
	r := questiontest.Open(t)
	for _, h := range []struct {
		typed      string
		feet, inch float64
	}{
		{"25ft,3/8in", 25, 0.375},
		{"25', 3/8\"", 25, 0.375},
		{"25,3/8", 25, 0.375},
		{"7,5m,10mm", 7.5 / 0.3048, 10 / 25.4},
		{"8 m , 10 mm", 8 / 0.3048, 10 / 25.4},
	} {
		q := plan(t, r, questiontest.With(questiontest.MildDay("clear", "reduced-pressure"), "hose", h.typed), unit.US)
		assert.InDelta(t, h.feet, q.Line[2].Hose.Length.Feet(), 1e-9, h.typed)
		assert.InDelta(t, h.inch, q.Line[2].Hose.Bore.Inches(), 1e-9, h.typed)
	}
}

// A coupling at either end and between two hoses; every part has a name of its own.
func TestOrderOfTheLine(t *testing.T) {
	r := questiontest.Open(t)
	texts := questiontest.MildDay("clear", "reduced-pressure")
	texts["filter"], texts["coupling"] = []string{"point-of-use"}, []string{"ordinary"}
	texts["hose"] = []string{"25ft,3/8in + 6ft,5/16in + 3ft,1/4in"}
	assert.Equal(t, "25ft,3/8in + 6ft,5/16in + 3ft,1/4in", r.ReadAll(question.Plan, texts, unit.US).Text(question.Hose))
	var names []string
	q := plan(t, r, texts, unit.US)
	for _, p := range q.Line {
		names = append(names, p.Name)
	}
	assert.Equal(t, []string{
		"wall regulator (1/2in)", "filter (point-of-use)", "wall coupling (ordinary)", "main hose", "whip coupling (ordinary)", "whip hose",
		"hose 3 coupling (ordinary)", "hose 3", "gun coupling (ordinary)",
	}, names)
	assert.Equal(t, line.FilterKind, q.Line[1].Kind)

	texts["hose"] = append(texts["hose"], "1ft,3/8in", "1ft,3/8in", "1ft,3/8in", "1ft,3/8in")
	faults := planFaults(r, texts, unit.US)
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Error(), "17 parts from supply to gun; at most 16")
}

func TestRegulatorAnswers(t *testing.T) {
	r := questiontest.Open(t)
	texts := questiontest.With(questiontest.MildDay("clear", "reduced-pressure"), "regulator", "none")
	assert.Equal(t, calc.Nowhere, plan(t, r, texts, unit.US).RegulatorAt())
	texts["regulator"], texts["regulator-at"] = []string{"3/8in"}, []string{"gun"}
	q := plan(t, r, texts, unit.US)
	assert.Equal(t, calc.Foot, q.RegulatorAt())
	assert.Equal(t, "regulator at the gun inlet (3/8in)", q.Line[len(q.Line)-1].Name)
}
