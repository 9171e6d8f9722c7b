package question_test

import (
	"testing"

	"boothset/calc/supply"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A compressor in litres or cubic metres is stamped at 1 bar, one in cubic feet and one by its
// motor at 14.696 psia: 10 scfm and the 287 L/min at ANR that they are deliver 1.3 % apart.
func TestACompressorsInletIsByTheUnitTyped(t *testing.T) {
	r := questiontest.Open(t)
	of := func(sys unit.System, typed string) supply.System {
		texts := questiontest.MildDay("clear", "reduced-pressure")
		texts["compressor"], texts["receiver"] = []string{typed}, []string{"60gal"}
		q, faults := r.Plan(r.ReadAll(question.Plan, texts, sys), sys)
		require.Empty(t, faults)
		return q.Shop.System
	}
	for _, x := range []struct {
		sys   unit.System
		typed string
		inlet supply.Inlet
	}{
		{unit.US, "18", supply.SCFMInlet}, {unit.Metric, "18cfm", supply.SCFMInlet}, {unit.US, "5hp", supply.SCFMInlet},
		{unit.US, "500 L/min", supply.ISOInlet}, {unit.Metric, "500", supply.ISOInlet}, {unit.US, "30m3/h", supply.ISOInlet},
	} {
		assert.Equal(t, x.inlet, of(x.sys, x.typed).RatedInlet, x.typed)
	}
	delivered := func(s supply.System) unit.Flow {
		q, err := supply.FreeAir(s.Rated, s.RatedInlet, supply.SCFMInlet)
		require.NoError(t, err)
		return q
	}
	assert.InEpsilon(t, 1.01325, float64(delivered(of(unit.US, "287L/min"))/unit.LPM(287)), 1e-9)
	assert.InEpsilon(t, 1, float64(delivered(of(unit.US, "10cfm"))/unit.SCFM(10)), 1e-9)
	assert.InDelta(t, 20, of(unit.US, "5hp").Rated.SCFM(), 1e-9, "4 cfm a horsepower from 5 hp on")
	assert.InDelta(t, 9, of(unit.US, "3hp").Rated.SCFM(), 1e-9, "3 under it")
}

// Another gun by its class draws the air of that class's stamp.
func TestAnotherGunByItsClass(t *testing.T) {
	r := questiontest.Open(t)
	for typed, want := range map[string]supply.User{
		"reduced-pressure":              {Flow: unit.SCFM(10), Duty: 1},
		"high-volume-low-pressure, 50%": {Flow: unit.SCFM(15), Duty: .5},
		"hvlp":                          {Flow: unit.SCFM(15), Duty: 1},
		"10cfm,50%":                     {Flow: unit.SCFM(10), Duty: .5},
		"6cfm,mask":                     {Flow: unit.SCFM(6), Duty: 1, Mask: true},
	} {
		texts := questiontest.MildDay("clear", "reduced-pressure")
		texts["compressor"], texts["receiver"], texts["other"] = []string{"30cfm"}, []string{"60gal"}, []string{typed}
		q, _ := solved(t, r, texts)
		require.Len(t, q.Shop.System.Others, 1, typed)
		got := q.Shop.System.Others[0]
		assert.InEpsilon(t, float64(want.Flow), float64(got.Flow), 1e-9, typed)
		assert.Equal(t, []any{want.Duty, want.Mask}, []any{got.Duty, got.Mask}, typed)
	}
	for _, bad := range []string{"reduced-pressure,150%", "reduced-pressure,mask", "sander"} {
		texts := questiontest.MildDay("clear", "reduced-pressure")
		texts["compressor"], texts["receiver"], texts["other"] = []string{"30cfm"}, []string{"60gal"}, []string{bad}
		faults := planFaults(r, texts, unit.US)
		require.Len(t, faults, 1, bad)
		assert.Equal(t, "other", faults[0].Field)
	}
}
