package question_test

import (
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every field that will not do names itself, what was given and what would do, alone
// and while the other fields are still empty.
func TestEveryFieldSaysWhatWouldDo(t *testing.T) {
	r := questiontest.Open(t)
	for _, f := range []struct {
		field       *question.Field
		given, want string
	}{
		{question.Coat, "", questiontest.Choose(r, question.Coat)},
		{question.Coat, "varnish", questiontest.Choose(r, question.Coat)},
		{question.Gun, "", questiontest.Choose(r, question.Gun)},
		{question.Gun, "airless", questiontest.Choose(r, question.Gun)},
		{question.Temp, "", "type a number with F or C"},
		{question.Temp, "warm", "type a number with F or C"},
		{question.Temp, "200F", "outside 14 to 140 F"},
		{question.Temp, "-300C", "above -460 F"},
		{question.Humidity, "", "type a number of percent"},
		{question.Humidity, "damp", "type a number of percent"},
		{question.Humidity, "0", "outside 1 to 100%"},
		{question.Humidity, "101%", "outside 1 to 100%"},
		{question.Panel, "warm", "type a number with F or C"},
		{question.Panel, "70C", "outside 14 to 140 F"},
		{question.Altitude, "high", "type a number with in, ft, mm or m"},
		{question.Altitude, "9000m", "outside -1410 to 16400 ft"},
		{question.Supply, "", "type a number with psi, bar or kPa"},
		{question.Supply, "plenty", "type a number with psi, bar or kPa"},
		{question.Supply, "90 bar", "outside 1 to 300 psi"},
		{question.Supply, "-5psi", "outside 1 to 300 psi"},
		{question.Supply, "1,500", "the comma can be read two ways"},
		{question.Hose, "25ft", "type length and bore, such as 25ft,3/8in or 8m,10mm"},
		{question.Hose, "25psi,3/8in", "type length and bore"},
		{question.Hose, "25ft,", "type length and bore"},
		{question.Hose, ",", "type length and bore"},
		{question.Hose, "long and thin", "type length and bore"},
		{question.Hose, "501ft,3/8in", "outside 0.5 to 500 ft"},
		{question.Hose, "25ft,1mm", "outside 0.118 to 1.57 in"},
		{question.Hose, "25ft,3/8in + 1ft", "type length and bore"},
		{question.Hose, "25ft,3/8in + 501ft,3/8in", "outside 0.5 to 500 ft"},
		{question.Coupling, "huge", questiontest.Choose(r, question.Coupling, question.None)},
		{question.Filter, "coffee", questiontest.Choose(r, question.Filter, question.None)},
		{question.Regulator, "3/4in", questiontest.Choose(r, question.Regulator, question.None)},
		{question.RegulatorAt, "roof", "choose wall or gun"},
		{question.Gauge, "hose", "choose handle, foot or none"},
		{question.Wall, "high", "type a number with psi, bar or kPa"},
		{question.Wall, "400psi", "outside 1 to 300 psi"},
		{question.Mark, "fine", "type a number with psi, bar or kPa"},
		{question.Mark, "0psi", "outside 0.01 to 20 psi"},
	} {
		t.Run(f.field.Name+" "+f.given, func(t *testing.T) {
			texts := questiontest.With(questiontest.MildDay("clear", "reduced-pressure"), f.field.Name, f.given)
			faults := planFaults(r, texts, unit.US)
			require.Len(t, faults, 1)
			assert.Equal(t, f.field.Name, faults[0].Field)
			if f.field != question.Hose {
				assert.Equal(t, f.given, faults[0].Given)
			} else {
				assert.Contains(t, f.given, faults[0].Given)
			}
			assert.Contains(t, faults[0].Want(), f.want)

			alone := r.Check(f.field, r.ReadText(f.field, f.given, unit.US), unit.US)
			require.NotNil(t, alone, "asked for alone")
			assert.Equal(t, faults[0], alone)
		})
	}
}

// Nothing is wrong with a good answer, however wrong the rest is.
func TestCheckLooksAtOneFieldAlone(t *testing.T) {
	r := questiontest.Open(t)
	good := questiontest.Texts(
		"coat", "clear", "gun", "reduced-pressure", "temp", "72F", "humidity", "45", "panel", "70F", "altitude", "100ft", "supply", "90psi",
		"hose", "25ft,3/8in", "coupling", "none", "filter", "none", "regulator", "none", "regulator-at", "gun", "gauge", "none", "wall", "30psi", "mark", "1psi",
	)
	bad := question.Texts{}
	var fields []string
	for name := range good {
		bad[name] = []string{"nonsense"}
		fields = append(fields, name)
	}
	var named []string
	for _, f := range planFaults(r, bad, unit.US) {
		named = append(named, f.Field)
	}
	assert.ElementsMatch(t, fields, named, "all that is wrong is told at once")
	for _, name := range fields {
		row, ok := question.Plan.Field(name)
		require.True(t, ok)
		assert.Nil(t, r.Check(row.Field, r.ReadText(row.Field, good[name][0], unit.US), unit.US), name)
		assert.NotNil(t, r.Check(row.Field, r.ReadText(row.Field, bad[name][0], unit.US), unit.US), name)
		one := questiontest.With(bad, name, good[name][0])
		for _, f := range planFaults(r, one, unit.US) {
			assert.NotEqual(t, name, f.Field)
		}
	}
}

// A fault is said with its field called as flags, requests or pages call it.
func TestAFaultCalledByAnotherName(t *testing.T) {
	r := questiontest.Open(t)
	f := r.Check(question.CutIn, r.ReadText(question.CutIn, "soon", unit.US), unit.US)
	require.NotNil(t, f)
	assert.Equal(t, `cut-in "soon": type a number with psi, bar or kPa, such as 90psi`, f.Error())
	assert.Equal(t, `cut_in "soon": type a number with psi, bar or kPa, such as 90psi`, f.Called(question.CutIn.Key()))
	f = r.Check(question.Supply, nil, unit.US)
	require.NotNil(t, f)
	assert.Equal(t, "supply: type a number with psi, bar or kPa, such as 90psi", f.Error())
}
