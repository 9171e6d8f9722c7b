package answer_test

import (
	"testing"

	"boothset/calc"
	"boothset/presets/answer"

	"github.com/stretchr/testify/assert"
)

// A verdict is the worst that is said; what holds of the coat on any day is not held against
// this one.
func TestTheVerdictIsTheWorstThatIsSaid(t *testing.T) {
	said := func(level calc.Level, id string) calc.Caution { return calc.Caution{Level: level, ID: id} }
	standing := calc.Caution{Level: calc.Warn, ID: "isocyanate", Safety: true}
	cold, wet := said(calc.Warn, "cold"), said(calc.Stop, "panel-wet")
	day := func(v calc.Verdict, c ...calc.Caution) *calc.DayAnswer {
		return &calc.DayAnswer{Verdict: v, Cautions: c}
	}
	for name, c := range map[string]struct {
		setup []calc.Caution
		today *calc.DayAnswer
		want  answer.PlanVerdict
		level calc.Level
	}{
		"nothing":                     {nil, day(calc.VerdictGo), answer.PlanGo, calc.Note},
		"a note":                      {[]calc.Caution{said(calc.Note, "safety")}, day(calc.VerdictGo), answer.PlanGo, calc.Note},
		"the coat's own hazard":       {[]calc.Caution{standing}, day(calc.VerdictGo), answer.PlanGo, calc.Note},
		"a warning":                   {[]calc.Caution{standing, cold}, day(calc.VerdictGo), answer.PlanWatch, calc.Warn},
		"a warning of the day":        {nil, day(calc.VerdictGo, cold), answer.PlanWatch, calc.Warn},
		"a day to wait":               {[]calc.Caution{cold}, day(calc.VerdictWait, cold), answer.PlanWait, calc.Warn},
		"a stop":                      {[]calc.Caution{wet, cold}, day(calc.VerdictWait), answer.PlanStop, calc.Stop},
		"no day":                      {[]calc.Caution{cold}, nil, answer.PlanWatch, calc.Warn},
		"no day, and nothing else so": {nil, nil, answer.PlanGo, calc.Note},
	} {
		p := &answer.Plan{Setup: &calc.Setup{Cautions: c.setup}, Today: c.today}
		assert.Equal(t, c.want, p.Verdict(), name)
		assert.Equal(t, c.level, p.Verdict().Level(), name)
	}
}

// The day adds its warnings, and none that the setup has given.
func TestACautionIsGivenOnce(t *testing.T) {
	p := &answer.Plan{
		Setup: &calc.Setup{Cautions: []calc.Caution{{Level: calc.Warn, ID: "cold"}, {Level: calc.Note, ID: "safety"}}},
		Today: &calc.DayAnswer{Cautions: []calc.Caution{{Level: calc.Stop, ID: "panel-wet"}, {Level: calc.Warn, ID: "cold"}, {Level: calc.Warn, ID: "cold-paint"}, {Level: calc.Note, ID: "safety"}}},
	}
	var ids []string
	for _, c := range p.AllCautions() {
		ids = append(ids, c.ID)
	}
	assert.Equal(t, []string{"cold", "safety", "cold-paint"}, ids)
	assert.Len(t, p.Setup.Cautions, 2, "the setup keeps its own")
}
