package question_test

import (
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/require"
)

// An entry of a list is told with what it comes to, in the units in use and with the gun that
// was answered.
func TestWhatEntriesComeTo(t *testing.T) {
	r := questiontest.Open(t)
	on := func(gun string) (a question.Answers) {
		return a.With(question.Gun, r.Read(question.Gun, gun, unit.US))
	}
	for _, c := range []struct {
		field      *question.Field
		id, gun    string
		us, metric string
	}{
		// The shipped coats, guns and parts: presets/catalogue.
		{question.Coat, "clear", "reduced-pressure", "26 psi at the gun", "1.79 bar at the gun"},
		{question.Coat, "clear", "", "26 to 45 psi at the gun", "1.79 to 3.10 bar at the gun"},
		{question.Gun, "high-volume-low-pressure", "", "29 psi inlet, 10 psi cap, 15 cfm", "2.00 bar inlet, 0.69 bar cap, 430 L/min"},
		{question.Coupling, "ordinary", "", "0.217 in bore", "5.5 mm bore"},
		// 5 psi at 60 cfm and 1.5 psi of lock-up, at 10 cfm: 1.5 + 5/6.
		{question.Regulator, "1/4in", "reduced-pressure", "falls 2.3 psi at 10 cfm", "falls 0.16 bar at 287 L/min"},
		// By ISO 6358 with C = 2.5 and b = 0.3 at 287 L/min (ANR) into 3.22 bar absolute: 5.6 psi.
		{question.Filter, "clogged", "reduced-pressure", "takes 5.6 psi at 10 cfm", "takes 0.39 bar at 287 L/min"},
		{question.Filter, question.None, "reduced-pressure", "", ""},
		{question.Gauge, question.AtFoot, "", "", ""},
	} {
		var a question.Answers
		if c.gun != "" {
			a = on(c.gun)
		}
		require.Equal(t, c.us, r.Meaning(c.field, c.id, a, unit.US), c.id)
		require.Equal(t, c.metric, r.Meaning(c.field, c.id, a, unit.Metric), c.id)
	}
	for _, f := range []*question.Field{question.Coat, question.Gun, question.Coupling, question.Regulator, question.Filter} {
		for _, entry := range r.Choices(f) {
			if entry.ID != question.None {
				require.NotEmpty(t, r.Meaning(f, entry.ID, question.Answers{}, unit.US), entry.ID)
			}
		}
	}
}
