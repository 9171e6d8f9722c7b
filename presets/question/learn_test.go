package question_test

import (
	"testing"

	"boothset/calc/gun"
	"boothset/calc/learn"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A reading of a line of which several parts are out, and of gauges that are on for a test, can be
// typed as its text has it.
func TestAReadingWithSeveralPartsOutCanBeTyped(t *testing.T) {
	pieces := []learn.Piece{{ID: "filter"}, {ID: "coupling-1"}, {ID: "hose"}, {ID: "coupling-2"}}
	o := learn.Option{Kind: learn.Straight, Piece: 2, Change: learn.Change{Without: []int{0, 1, 3}, Swapped: []int{2}}}
	for _, g := range []learn.Gauge{learn.WallGauge, learn.FootGauge, learn.CapGauge, learn.GunGauge} {
		o.Shows = append(o.Shows, learn.Shown{Gauge: g})
	}
	taken := question.TakenAs(&o, pieces, &gun.Valve{}, []unit.Gauge{unit.PSIG(31), unit.PSIG(29), unit.PSIG(18), unit.PSIG(27)})
	text := taken.Seen.Text(unit.US)
	assert.Equal(t, "open wall=31.00 psi foot=29.00 psi cap=18.00 psi gun=27.00 psi without=filter without=coupling-1 without=coupling-2 swapped=hose", text)
	read := questiontest.Open(t).Read(question.GaugeReading, text, unit.US)
	require.Nil(t, read.Fault)
	assert.Equal(t, taken.Seen.Without, read.Seen.Without)
	assert.Equal(t, taken.Seen.Swapped, read.Seen.Swapped)
	assert.Equal(t, text, read.Seen.Text(unit.US))
}

// With the trigger released no air comes to the cap.
func TestACapGaugeIsReadWithTheTriggerPulled(t *testing.T) {
	v := questiontest.Open(t).Read(question.GaugeReading, "still wall=31psi gun=27psi cap=0psi", unit.US)
	require.NotNil(t, v.Fault)
	assert.Equal(t, "want-two-gauges", v.Fault.ID)
}

// No part is out of the line twice.
func TestAPartIsNamedOnceInAReading(t *testing.T) {
	r := questiontest.Open(t)
	for _, parts := range []string{"without=hose swapped=hose", "without=hose without=hose", "swapped=hose swapped=hose"} {
		v := r.Read(question.GaugeReading, "wall=31psi gun=27psi "+parts, unit.US)
		require.NotNil(t, v.Fault, parts)
		assert.Equal(t, "want-two-gauges", v.Fault.ID, parts)
	}
}
