package presets_test

import (
	"encoding/json"
	"testing"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestBareNumbersAreReadInTheSystemsUnits(t *testing.T) {
	c := shippedCatalogue(t)
	a := presets.Answers{
		Coat: "clear", Gun: "reduced-pressure", Temp: "30", Humidity: "45", Panel: "28", Altitude: "100",
		Supply: "8", Hose: []presets.Typed{"8,3/8"}, Wall: "5", Mark: "0.5",
	}
	us, faults := c.Resolve(a, unit.US)
	require.Empty(t, faults)
	assert.InDelta(t, 30, us.Day.Air.F(), 1e-9)
	assert.InDelta(t, 28, us.Day.Panel.F(), 1e-9)
	assert.InDelta(t, 0.45, us.Day.Humidity, 1e-12)
	assert.InDelta(t, 100, us.Day.Altitude.Feet(), 1e-9)
	assert.InDelta(t, 8, us.Supply.PSI(), 1e-9)
	assert.InDelta(t, 5, us.Now.PSI(), 1e-9)
	assert.InDelta(t, 0.5, us.Mark.PSI(), 1e-9)
	assert.InDelta(t, 8, us.Line[1].Hose.Length.Feet(), 1e-9)
	assert.InDelta(t, 0.375, us.Line[1].Hose.Bore.Inches(), 1e-9)

	metric, faults := c.Resolve(a, unit.Metric)
	require.Empty(t, faults)
	assert.InDelta(t, 30, metric.Day.Air.C(), 1e-9)
	assert.InDelta(t, 28, metric.Day.Panel.C(), 1e-9)
	assert.InDelta(t, 100, float64(metric.Day.Altitude), 1e-9)
	assert.InDelta(t, 8, metric.Supply.Bar(), 1e-9)
	assert.InDelta(t, 5, metric.Now.Bar(), 1e-9)
	assert.InDelta(t, 0.5, metric.Mark.Bar(), 1e-9)
	assert.InDelta(t, 8, float64(metric.Line[1].Hose.Length), 1e-9)
	assert.InDelta(t, 0.375, metric.Line[1].Hose.Bore.Inches(), 1e-9, "a bare fraction is inches in either")
}

func TestMarkIsOnePSIOrATwentiethOfABar(t *testing.T) {
	c := shippedCatalogue(t)
	a := mildDay("clear", "reduced-pressure")
	us, err := c.Request(a, unit.US)
	require.NoError(t, err)
	assert.InDelta(t, 1, us.Mark.PSI(), 1e-9)
	metric, err := c.Request(a, unit.Metric)
	require.NoError(t, err)
	assert.InDelta(t, 0.05, metric.Mark.Bar(), 1e-9)
}

// Every field that will not do names itself, what was given and what would do, alone
// and while the other fields are still empty.
func TestEveryFieldSaysWhatWouldDo(t *testing.T) {
	c := shippedCatalogue(t)
	for _, f := range []struct{ field, given, want string }{
		{presets.FieldCoat, "", "choose epoxy-primer, surfacer, sealer, solvent-base, metallic-base, waterborne-base, single-stage or clear"},
		{presets.FieldCoat, "varnish", "choose epoxy-primer,"},
		{presets.FieldGun, "", "choose high-volume-low-pressure, reduced-pressure or high-pressure"},
		{presets.FieldGun, "airless", "choose high-volume-low-pressure, reduced-pressure or high-pressure"},
		{presets.FieldTemp, "", "type a number with F or C"},
		{presets.FieldTemp, "warm", "type a number with F or C"},
		{presets.FieldTemp, "200F", "outside 14 to 140 F"},
		{presets.FieldTemp, "-300C", "above -460 F"},
		{presets.FieldHumidity, "", "type a number of percent"},
		{presets.FieldHumidity, "damp", "type a number of percent"},
		{presets.FieldHumidity, "0", "outside 1 to 100%"},
		{presets.FieldHumidity, "101%", "outside 1 to 100%"},
		{presets.FieldPanel, "warm", "type a number with F or C"},
		{presets.FieldPanel, "70C", "outside 14 to 140 F"},
		{presets.FieldAltitude, "high", "type a number with in, ft, mm or m"},
		{presets.FieldAltitude, "9000m", "outside -1410 to 16400 ft"},
		{presets.FieldSupply, "", "type a number with psi, bar or kPa"},
		{presets.FieldSupply, "plenty", "type a number with psi, bar or kPa"},
		{presets.FieldSupply, "90 bar", "outside 1 to 300 psi"},
		{presets.FieldSupply, "-5psi", "outside 1 to 300 psi"},
		{presets.FieldSupply, "1,500", "the comma can be read two ways"},
		{presets.FieldHose, "25ft", "type length and bore, such as 25ft,3/8in or 8m,10mm"},
		{presets.FieldHose, "25psi,3/8in", "type length and bore"},
		{presets.FieldHose, "25ft,", "type length and bore"},
		{presets.FieldHose, ",", "type length and bore"},
		{presets.FieldHose, "long and thin", "type length and bore"},
		{presets.FieldHose, "501ft,3/8in", "outside 0.5 to 500 ft"},
		{presets.FieldHose, "25ft,1mm", "outside 0.118 to 1.57 in"},
		{presets.FieldHose, "25ft,3/8in + 1ft", "type length and bore"},
		{presets.FieldCoupling, "huge", "choose large-bore, ordinary, slim or none"},
		{presets.FieldFilter, "coffee", "choose point-of-use, clogged or none"},
		{presets.FieldRegulator, "3/4in", "choose 1/4in, 3/8in, 1/2in or none"},
		{presets.FieldRegulatorAt, "roof", "choose wall or gun"},
		{presets.FieldGauge, "hose", "choose handle, foot or none"},
		{presets.FieldWall, "high", "type a number with psi, bar or kPa"},
		{presets.FieldWall, "400psi", "outside 1 to 300 psi"},
		{presets.FieldMark, "fine", "type a number with psi, bar or kPa"},
		{presets.FieldMark, "0psi", "outside 0.01 to 20 psi"},
	} {
		t.Run(f.field+" "+f.given, func(t *testing.T) {
			a := mildDay("clear", "reduced-pressure")
			a.Set(f.field, f.given)
			_, faults := c.Resolve(a, unit.US)
			require.Len(t, faults, 1)
			assert.Equal(t, f.field, faults[0].Field)
			if f.field != presets.FieldHose {
				assert.Equal(t, f.given, faults[0].Given)
			} else {
				assert.Contains(t, f.given, faults[0].Given)
			}
			assert.Contains(t, faults[0].Want, f.want)
			_, err := c.Request(a, unit.US)
			assert.Equal(t, faults[0], err)

			var alone presets.Answers
			alone.Set(f.field, f.given)
			got := c.Fault(alone, f.field, unit.US)
			require.NotNil(t, got, "asked for alone")
			assert.Equal(t, faults[0], got)
		})
	}
}

// Nothing is wrong with a good answer, however wrong the rest is.
func TestFaultLooksAtOneFieldAlone(t *testing.T) {
	c := shippedCatalogue(t)
	good := presets.Answers{
		Coat: "clear", Gun: "reduced-pressure", Temp: "72F", Humidity: "45", Panel: "70F", Altitude: "100ft", Supply: "90psi",
		Hose: []presets.Typed{"25ft,3/8in"}, Coupling: "none", Filter: "none", Regulator: "none", RegulatorAt: "gun", Gauge: "none", Wall: "30psi", Mark: "1psi",
	}
	fields := []string{
		presets.FieldCoat, presets.FieldGun, presets.FieldTemp, presets.FieldHumidity, presets.FieldPanel, presets.FieldAltitude, presets.FieldSupply,
		presets.FieldHose, presets.FieldCoupling, presets.FieldFilter, presets.FieldRegulator, presets.FieldRegulatorAt, presets.FieldGauge, presets.FieldWall, presets.FieldMark,
	}
	var bad presets.Answers
	for _, f := range fields {
		bad.Set(f, "nonsense")
	}
	_, faults := c.Resolve(bad, unit.US)
	var named []string
	for _, f := range faults {
		named = append(named, f.Field)
	}
	assert.ElementsMatch(t, fields, named, "all that is wrong is told at once")
	for _, f := range fields {
		one := bad
		one.Set(f, good.Field(f))
		assert.Nil(t, c.Fault(one, f, unit.US), f)
		assert.NotNil(t, c.Fault(bad, f, unit.US), f)
	}
}

func TestHosesAsTyped(t *testing.T) {
	c := shippedCatalogue(t)
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
		a := mildDay("clear", "reduced-pressure")
		a.Set(presets.FieldHose, h.typed)
		r, err := c.Request(a, unit.US)
		require.NoError(t, err, h.typed)
		assert.InDelta(t, h.feet, r.Line[1].Hose.Length.Feet(), 1e-9, h.typed)
		assert.InDelta(t, h.inch, r.Line[1].Hose.Bore.Inches(), 1e-9, h.typed)
	}
}

// A coupling at either end and between two hoses; every part has a name of its own.
func TestOrderOfTheLine(t *testing.T) {
	c := shippedCatalogue(t)
	a := mildDay("clear", "reduced-pressure")
	a.Filter, a.Coupling = "point-of-use", "ordinary"
	a.Set(presets.FieldHose, "25ft,3/8in + 6ft,5/16in + 3ft,1/4in")
	assert.Equal(t, "25ft,3/8in + 6ft,5/16in + 3ft,1/4in", a.Field(presets.FieldHose))
	r, err := c.Request(a, unit.US)
	require.NoError(t, err)
	var names []string
	for _, p := range r.Line {
		names = append(names, p.Name)
	}
	assert.Equal(t, []string{
		"filter (point-of-use)", "wall coupling (ordinary)", "main hose", "whip coupling (ordinary)", "whip hose",
		"hose 3 coupling (ordinary)", "hose 3", "gun coupling (ordinary)",
	}, names)
	assert.Equal(t, line.FilterKind, r.Line[0].Kind)

	a.Hose = append(a.Hose, "1ft,3/8in", "1ft,3/8in", "1ft,3/8in")
	_, faults := c.Resolve(a, unit.US)
	require.Len(t, faults, 1)
	assert.Contains(t, faults[0].Error(), "14 parts between wall and gun; at most 12")
}

func TestRegulatorAnswers(t *testing.T) {
	c := shippedCatalogue(t)
	a := mildDay("clear", "reduced-pressure")
	a.Regulator = "none"
	r, err := c.Request(a, unit.US)
	require.NoError(t, err)
	assert.Equal(t, calc.Nowhere, r.RegulatorAt)
	a.Regulator, a.RegulatorAt = "3/8in", "gun"
	r, err = c.Request(a, unit.US)
	require.NoError(t, err)
	assert.Equal(t, calc.Foot, r.RegulatorAt)
	assert.Equal(t, "regulator at the gun's foot (3/8in)", r.RegulatorName)
}

func TestAnswersFromJSONTakeTextNumbersAndNull(t *testing.T) {
	var a presets.Answers
	require.NoError(t, json.Unmarshal([]byte(`{"coat":"clear","temp":72.5,"humidity":45,"supply":-3,"wall":null,"hose":["25ft,3/8in"],"panel":"6\u0038F"}`), &a))
	assert.Equal(t, presets.Answers{Coat: "clear", Temp: "72.5", Humidity: "45", Supply: "-3", Panel: "68F", Hose: []presets.Typed{"25ft,3/8in"}}, a)
	for _, bad := range []string{`{"coat":true}`, `{"coat":{}}`, `{"coat":["clear"]}`, `{"hose":"25ft,3/8in"}`} {
		var kind *json.UnmarshalTypeError
		require.ErrorAs(t, json.Unmarshal([]byte(bad), &a), &kind, bad)
		assert.Contains(t, bad, `"`+kind.Field+`"`, "the field is named")
	}
}
