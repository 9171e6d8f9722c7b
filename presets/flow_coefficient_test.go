package presets_test

import (
	"testing"

	"boothset/calc/line"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A sheet that gives a flow coefficient serves in place of a conductance:
// C = 4.729 Cv sqrt(1-b), the small-drop limit of ANSI/(NFPA) T3.21.3.
func TestFlowCoefficientServesForConductance(t *testing.T) {
	c := shop(t, "[coupling.ordinary]\nflow-coefficient = 1.0\n[filter.felt]\nflow-coefficient = 2.0\nratio = 0.2\n"+
		"[regulator.\"1/2in\"]\nflow-coefficient = 3.0\nratio = 0.5\n")
	a := mildDay("clear", "reduced-pressure")
	a.Coupling, a.Filter, a.Regulator = "ordinary", "felt", "1/2in"
	r := request(t, c, a)
	require.Equal(t, line.FilterKind, r.Line[0].Kind)
	assert.InEpsilon(t, 4.7288*2*0.894427, r.Line[0].Restriction.C.DM3PerSBar(), 1e-6)
	assert.InEpsilon(t, 4.7288*0.836660, r.Line[1].Restriction.C.DM3PerSBar(), 1e-6, "over the shipped conductance")
	assert.InEpsilon(t, 4.7288*3*0.707107, r.Regulator.Seat.C.DM3PerSBar(), 1e-6)
}
