package question_test

import (
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWhatCanBeChosenAsShipped(t *testing.T) {
	r := questiontest.Open(t)
	of := func(kind string) []string { return questiontest.IDs(r.Catalogue.Choices(kind)) }
	for f, want := range map[*question.Field][]string{
		question.Coat:        of(catalogue.KindCoat),
		question.Gun:         of(catalogue.KindGun),
		question.Coupling:    append(of(catalogue.KindCoupling), "none"),
		question.Regulator:   append(of(catalogue.KindRegulator), "none"),
		question.Filter:      append([]string{"none"}, of(catalogue.KindFilter)...),
		question.RegulatorAt: {"wall", "gun"},
		question.Gauge:       {"handle", "foot", "none"},
	} {
		assert.Greater(t, len(want), 1, f.Name)
		assert.Equal(t, want, questiontest.IDs(r.Choices(f)), f.Name)
	}
	assert.Nil(t, r.Choices(question.Temp), "a temperature is typed")
}

func TestEveryChoiceHasANameAndWhatItRestsOn(t *testing.T) {
	bases := []calc.Basis{calc.Published, calc.CommonPractice, calc.Computed, calc.Estimate, calc.OwnReadings}
	r := questiontest.Open(t)
	for _, f := range []*question.Field{question.Coat, question.Gun, question.Coupling, question.Regulator, question.Filter} {
		for _, item := range r.Choices(f) {
			assert.NotEmpty(t, item.Name, "%s %s", f.Name, item.ID)
			if item.ID == question.None {
				continue // not an entry: the part is left out
			}
			assert.Contains(t, bases, item.Ground.Basis, "%s %s", f.Name, item.ID)
			assert.NotEmpty(t, item.Ground.Source, "%s %s", f.Name, item.ID)
		}
	}
}

// Every choice of every list can be answered with, alone and with every coat and gun.
func TestEveryChoiceResolvesAndSolves(t *testing.T) {
	r := questiontest.Open(t)
	solve := func(texts question.Texts, what ...string) {
		_, err := ask(r, question.Plan, texts, unit.US)
		require.NoError(t, err, what)
	}
	for _, coat := range r.Choices(question.Coat) {
		for _, gun := range r.Choices(question.Gun) {
			texts := questiontest.MildDay(coat.ID, gun.ID)
			solve(texts, coat.ID, gun.ID)
			for _, f := range []*question.Field{question.Coupling, question.Regulator, question.Filter, question.RegulatorAt, question.Gauge} {
				for _, choice := range r.Choices(f) {
					solve(questiontest.With(texts, f.Name, choice.ID), coat.ID, gun.ID, f.Name, choice.ID)
				}
			}
		}
	}
}

// The usual line as shipped: 25 ft of 3/8 in hose between large-bore couplings, a
// 1/2 in regulator at the wall, the gauge in the handle; no supply and no altitude.
func TestShippedUsualLine(t *testing.T) {
	r := questiontest.Open(t)
	for f, want := range map[*question.Field]string{
		question.Hose: "25ft,3/8in", question.Coupling: "large-bore", question.Filter: "none",
		question.Regulator: "1/2in", question.RegulatorAt: "wall", question.Gauge: "handle",
		question.Supply: "", question.Altitude: "", question.Mark: "", question.Coat: "",
	} {
		assert.Equal(t, want, r.Usual().Text(f), f.Name)
	}
	assert.Equal(t, unit.US, r.System())

	q := plan(t, r, questiontest.MildDay("clear", "reduced-pressure"), unit.US)
	var names []string
	for _, p := range q.Line {
		names = append(names, p.Name)
	}
	assert.Equal(t, []string{"wall regulator (1/2in)", "wall coupling (large-bore)", "main hose", "gun coupling (large-bore)"}, names)
	assert.Equal(t, calc.Wall, q.RegulatorAt())
	assert.Equal(t, calc.InHandle, q.Gauge)
	assert.InDelta(t, 25, q.Line[2].Hose.Length.Feet(), 1e-9)
	assert.InDelta(t, 0.375, q.Line[2].Hose.Bore.Inches(), 1e-9)
	assert.InDelta(t, 1, q.Mark.PSI(), 1e-9)
	assert.Equal(t, q.Day.Air, q.Day.Panel, "a panel is at the air's temperature unless told")
}

// What no start checks of the line that ships: it can be read, resolved, and means the same
// in either system, as a shop's must.
func TestTheShippedLineWillDo(t *testing.T) {
	questiontest.Shop(t, "# a file, so that all of the line is checked\n")
}
