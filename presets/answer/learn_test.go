package answer_test

import (
	"slices"
	"testing"

	"boothset/calc/learn"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// How a reading is taken names what stays out of the line, each part as it is typed, and the gauges
// that are on.
func TestHowAReadingIsTaken(t *testing.T) {
	r := questiontest.Open(t)
	plan, faults := r.Plan(r.ReadAll(question.Plan, questiontest.MildDay("clear", "reduced-pressure"), unit.US), unit.US)
	require.Empty(t, faults)
	q, faults := r.LearnOf(plan, nil, unit.US)
	require.Empty(t, faults)
	q.Draws = 100
	found, err := learn.Solve(&q)
	require.NoError(t, err)
	a := answer.Learn{Request: &q, Found: found}
	of := func(id string) int {
		return slices.IndexFunc(found.Pieces, func(p learn.Piece) bool { return p.ID == id })
	}
	at := func(g learn.Gauge) learn.Shown { return learn.Shown{Gauge: g, Pressure: unit.PSIG(31)} }
	o := learn.Option{Kind: learn.Bypass, Piece: of("coupling-1"), Odd: learn.Change{Without: []int{of("coupling-2")}, Swapped: []int{of("hose")}}}
	o.Shows = []learn.Shown{at(learn.WallGauge), at(learn.FootGauge), at(learn.GunGauge)}
	en := languages(t)[0]
	assert.Equal(t, "A like one stays in place of main hose (swapped=hose). Gun coupling (large-bore) stays bypassed (without=coupling-2). Wall coupling (large-bore) bypassed (without=coupling-1), valve wide open, wall flowing 31.0 psi: read the gun's gauge. Read the test gauge that is on, too.", a.Do(en, unit.US, &o))
	o.Shows = append(o.Shows, at(learn.CapGauge))
	assert.Contains(t, a.Do(en, unit.US, &o), "Read the test gauges that are on, too.")
	o.Kind = learn.ReadCap
	assert.Contains(t, a.Do(en, unit.US, &o), "Read the test gauge that is on, too.")
}
