package unit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boothset/calc/unit"
)

// The conversions by the units' definitions (NIST Special Publication 811, appendix B.8), each
// way.
func TestConversionsByDefinition(t *testing.T) {
	for name, c := range map[string][2]float64{
		"psi gauge":   {float64(unit.PSIG(2)), 2 * psi},
		"bar gauge":   {float64(unit.BarG(2)), 2e5},
		"psi drop":    {float64(unit.PSIDrop(2)), 2 * psi},
		"scfm":        {float64(unit.SCFM(2)), 2 * foot * foot * foot / 60 * 1.01325},
		"L/min":       {float64(unit.LPM(2)), 2e-3 / 60},
		"inches":      {float64(unit.Inches(2)), 2 * inch},
		"feet":        {float64(unit.Feet(2)), 2 * foot},
		"mm":          {float64(unit.MM(2)), 2e-3},
		"C":           {float64(unit.Celsius(20)), 293.15},
		"F":           {float64(unit.Fahrenheit(68)), 293.15},
		"litres":      {float64(unit.Litres(2)), 2e-3},
		"gallons":     {float64(unit.USGallons(2)), 2 * gallon},
		"dm3/(s bar)": {float64(unit.DM3PerSBar(2)), 2e-8},
		"mm2/s":       {float64(unit.MM2PerS(2)), 2e-6},

		"to psi gauge":   {unit.Gauge(2 * psi).PSI(), 2},
		"to bar gauge":   {unit.Gauge(2e5).Bar(), 2},
		"to psi abs":     {unit.Abs(2 * psi).PSI(), 2},
		"to bar abs":     {unit.Abs(2e5).Bar(), 2},
		"to psi drop":    {unit.Drop(2 * psi).PSI(), 2},
		"to bar drop":    {unit.Drop(2e5).Bar(), 2},
		"to scfm":        {unit.Flow(2 * foot * foot * foot / 60 * 1.01325).SCFM(), 2},
		"to L/min":       {unit.Flow(2e-3 / 60).LPM(), 2},
		"to inches":      {unit.Length(2 * inch).Inches(), 2},
		"to feet":        {unit.Length(2 * foot).Feet(), 2},
		"to mm":          {unit.Length(2e-3).MM(), 2},
		"to C":           {unit.Temp(293.15).C(), 20},
		"to F":           {unit.Temp(293.15).F(), 68},
		"C degrees":      {unit.TempDiff(2).C(), 2},
		"F degrees":      {unit.TempDiff(2).F(), 3.6},
		"ft/s":           {unit.Speed(2 * foot).FeetPerSecond(), 2},
		"to litres":      {unit.Volume(2e-3).Litres(), 2},
		"to gallons":     {unit.Volume(2 * gallon).USGallons(), 2},
		"to dm3/(s bar)": {unit.Conductance(2e-8).DM3PerSBar(), 2},
		"to mm2/s":       {unit.Kinematic(2e-6).MM2PerS(), 2},

		"mass of ANR":         {float64(unit.Flow(2).Mass()), 2.37},
		"ANR of mass":         {float64(unit.MassFlow(2.37).Flow()), 2},
		"water, a kg a litre": {unit.MassFlow(2).LitresAnHour(), 7200},
		"gauge to absolute":   {float64(unit.Gauge(2e5).Abs(9e4)), 2.9e5},
		"absolute to gauge":   {float64(unit.Abs(2.9e5).Gauge(9e4)), 2e5},
		"ANR's pressure":      {unit.ANRPressure, 1e5},
		"ANR's temperature":   {unit.ANRTemperature, 293.15},
		"ANR's density":       {unit.ANRDensity, 1.185},
		"an atmosphere":       {unit.SCFMPressure, 101325},
		"a mil":               {unit.MetrePerMil, 25.4e-6},
		"ounces in a gallon":  {unit.OuncePerUSGal, 128},
		"a cubic foot":        {unit.CubicFoot, foot * foot * foot},
		"freezing":            {unit.ZeroCelsius, 273.15},
		"a minute":            {unit.SecondPerMinute, 60},
		"an hour":             {unit.SecondPerHour, 3600},
	} {
		assert.InEpsilon(t, c[1], c[0], 1e-12, name)
	}
}

// How a value prints below 1, below 10 and from 10 on, in US and metric units: as many
// decimals as it is read to.
func TestUsualDecimals(t *testing.T) {
	for _, c := range []struct {
		of     *unit.Quantity
		us     [3]string
		metric [3]string
		inUS   [3]float64
		inSI   [3]float64
	}{
		{unit.Pressure, [3]string{"0.4 psi", "5.4 psi", "54 psi"}, [3]string{"0.43 bar", "5.43 bar", "54.32 bar"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.432e5, 5.432e5, 54.32e5}},
		{unit.Temperature, [3]string{"0 F", "5 F", "54 F"}, [3]string{"0.4 C", "5.4 C", "54.3 C"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{273.58, 278.58, 327.47}},
		{unit.TemperatureDifference, [3]string{"0.4 F", "5.4 F", "54 F"}, [3]string{"0.4 C", "5.4 C", "54.3 C"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43, 5.43, 54.32}},
		{unit.Distance, [3]string{"0.4 in", "5.4 in", "54.3 in"}, [3]string{"0.4 mm", "5.4 mm", "54 mm"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43e-3, 5.43e-3, 54.32e-3}},
		{unit.Run, [3]string{"0 ft", "5 ft", "54 ft"}, [3]string{"0.4 m", "5.4 m", "54 m"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43, 5.43, 54.32}},
		{unit.Film, [3]string{"0.43 mil", "5.4 mil", "54.3 mil"}, [3]string{"0.4 um", "5.4 um", "54 um"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43e-6, 5.43e-6, 54.32e-6}},
		{unit.AirFlow, [3]string{"0.4 cfm", "5.4 cfm", "54.3 cfm"}, [3]string{"0.4 L/min", "5.4 L/min", "54 L/min"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43e-3 / 60, 5.43e-3 / 60, 54.32e-3 / 60}},
		{unit.FluidFlow, [3]string{"0 mL/min", "5 mL/min", "54 mL/min"}, [3]string{"0 mL/min", "5 mL/min", "54 mL/min"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43e-6 / 60, 5.43e-6 / 60, 54.32e-6 / 60}},
		{unit.Velocity, [3]string{"0.4 ft/s", "5.4 ft/s", "54.3 ft/s"}, [3]string{"0.43 m/s", "5.4 m/s", "54.3 m/s"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43, 5.43, 54.32}},
		{unit.CupVolume, [3]string{"0.4 fl oz", "5.4 fl oz", "54 fl oz"}, [3]string{"0.4 mL", "5.4 mL", "54 mL"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43e-6, 5.43e-6, 54.32e-6}},
		{unit.Tank, [3]string{"55 fl oz", "5.43 gal", "54.3 gal"}, [3]string{"430 mL", "5.43 L", "54.3 L"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43e-3, 5.43e-3, 54.32e-3}},
		{unit.Surface, [3]string{"0.4 ft2", "5.4 ft2", "54 ft2"}, [3]string{"0.43 m2", "5.43 m2", "54.3 m2"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43, 5.43, 54.32}},
		{unit.Viscosity, [3]string{"0.4 mm2/s", "5.4 mm2/s", "54 mm2/s"}, [3]string{"0.4 mm2/s", "5.4 mm2/s", "54 mm2/s"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43e-6, 5.43e-6, 54.32e-6}},
		{unit.Tip, [3]string{"0.4 mm", "5.4 mm", "54 mm"}, [3]string{"0.4 mm", "5.4 mm", "54 mm"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43e-3, 5.43e-3, 54.32e-3}},
		{unit.Share, [3]string{"0%", "5%", "54%"}, [3]string{"0%", "5%", "54%"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.0043, 0.0543, 0.5432}},
		{unit.CupTime, [3]string{"0 s", "5 s", "54 s"}, [3]string{"0 s", "5 s", "54 s"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43, 5.43, 54.32}},
		{unit.Minutes, [3]string{"0 min", "5 min", "54 min"}, [3]string{"0 min", "5 min", "54 min"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43 * 60, 5.43 * 60, 54.32 * 60}},
		{unit.Hours, [3]string{"0 h", "5 h", "54 h"}, [3]string{"0 h", "5 h", "54 h"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43 * 3600, 5.43 * 3600, 54.32 * 3600}},
		{unit.PaintDensity, [3]string{"0.4 lb/gal", "5.4 lb/gal", "54.3 lb/gal"}, [3]string{"0.00 kg/L", "5.43 kg/L", "54.3 kg/L"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43, 5430, 54320}},
		{unit.VOC, [3]string{"0.4 lb/gal", "5.4 lb/gal", "54.3 lb/gal"}, [3]string{"0 g/L", "5 g/L", "54 g/L"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43, 5.43, 54.32}},
		{unit.Weight, [3]string{"0 g", "5 g", "54 g"}, [3]string{"0 g", "5 g", "54 g"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43e-3, 5.43e-3, 54.32e-3}},
		{unit.Power, [3]string{"0 hp", "5 hp", "54 hp"}, [3]string{"0 hp", "5 hp", "54 hp"}, [3]float64{0.43, 5.43, 54.32}, [3]float64{0.43, 5.43, 54.32}},
	} {
		for i := range 3 {
			assert.Equal(t, c.us[i], c.of.Text(unit.US, c.of.Of(unit.US, c.inUS[i]), unit.Usual), "%s %d", c.of.ID, i)
			assert.Equal(t, c.metric[i], c.of.Text(unit.Metric, c.inSI[i], unit.Usual), "%s %d", c.of.ID, i)
		}
	}
	// Where rounding carries a value to ten it prints as ten does.
	assert.Equal(t, "9.9 psi", unit.US.Gauge(unit.PSIG(9.949), unit.Usual))
	assert.Equal(t, "10 psi", unit.US.Gauge(unit.PSIG(9.951), unit.Usual))
	assert.Equal(t, "1.0 mil", unit.US.Film(unit.Length(25.4e-6), unit.Usual))
	assert.Equal(t, "1.00 gal", unit.US.Volume(unit.USGallons(1), unit.Usual))
	assert.Equal(t, "-127 fl oz", unit.US.Volume(unit.USGallons(-0.99), unit.Usual))
	assert.Equal(t, "-1.00 gal", unit.US.Volume(unit.USGallons(-1), unit.Usual))
	for want, v := range map[string]float64{"0.43": 0.432, "9.99": 9.99, "10": 9.996, "54": 54.3} {
		assert.Equal(t, want, string(unit.AppendNumber(nil, v)))
	}
}

// Bores: every sixteenth up to 100 in prints as one, what is off it by rounding too, more is
// not.
func TestBoresThatAreSixteenths(t *testing.T) {
	for in, want := range map[float64]string{
		1.0 / 16: "1/16 in", 100: "100 in", 100 + 1.0/16: "100.062 in", 1.0 / 32: "0.031 in", 0.375 + 0.9e-4/16: "3/8 in", 0.375 + 1.05e-4/16: "0.375 in", 2.25: "2-1/4 in",
	} {
		assert.Equal(t, want, unit.US.Bore(unit.Inches(in)))
	}
	for mm, want := range map[float64]string{8: "8 mm", 8.049: "8 mm", 8.051: "8.1 mm", 7.951: "8 mm", 7.949: "7.9 mm"} {
		assert.Equal(t, want, unit.Metric.Bore(unit.MM(mm)))
	}
}

// A value beside its bound is told to three digits, with its unit or without.
func TestBriefValues(t *testing.T) {
	brief := func(q *unit.Quantity, s unit.System, si float64, with bool) string {
		return string(q.AppendBrief(nil, s, si, with))
	}
	for want, got := range map[string]string{
		"1.23 psi":       brief(unit.Pressure, unit.US, float64(unit.PSIG(1.2345)), true),
		"1.23":           brief(unit.Pressure, unit.US, float64(unit.PSIG(1.2345)), false),
		"0.0851 bar":     brief(unit.Pressure, unit.Metric, float64(unit.PSIG(1.2345)), true),
		"12300 psi":      brief(unit.Pressure, unit.US, float64(unit.PSIG(12345)), true),
		"0 F":            brief(unit.Temperature, unit.US, float64(unit.Fahrenheit(0)), true),
		"-17.8 C":        brief(unit.Temperature, unit.Metric, float64(unit.Fahrenheit(0)), true),
		"55 fl oz":       brief(unit.Tank, unit.US, float64(unit.USGallons(0.43)), true),
		"695 fl oz":      brief(unit.Tank, unit.US, float64(unit.USGallons(5.43)), true),
		"0.43 L":         brief(unit.Tank, unit.Metric, 0.43e-3, true),
		"0.0000000001 m": brief(unit.Run, unit.Metric, 1e-10, true),
	} {
		assert.Equal(t, want, got)
	}
	assert.Equal(t, "123000000", string(unit.AppendDigits(nil, 123456789)))
	assert.Equal(t, "-0.00123", string(unit.AppendDigits(nil, -0.0012345)))
	assert.Equal(t, "1797693134862315", string(unit.AppendDigits(nil, 1.7976931348623157e308))[:16])
}

// What JSON is given: US and metric at once, with the names of the units.
func TestPairs(t *testing.T) {
	for _, c := range []struct {
		of           *unit.Quantity
		si           float64
		us, metric   string
		inUS, inSome float64
	}{
		{unit.Pressure, 2 * psi, "psi", "bar", 2, 2 * psi / 1e5}, {unit.Temperature, 293.15, "f", "c", 68, 20},
		{unit.TemperatureDifference, 2, "f", "c", 3.6, 2}, {unit.Distance, inch, "in", "mm", 1, 25.4}, {unit.Run, foot, "ft", "m", 1, foot},
		{unit.Film, 25.4e-6, "mil", "um", 1, 25.4}, {unit.AirFlow, float64(unit.SCFM(1)), "cfm", "l_min", 1, 28.692044785464387},
		{unit.Velocity, foot, "ft_s", "m_s", 1, foot}, {unit.Tank, gallon, "fl_oz", "ml", 128, gallon * 1e6}, {unit.CupVolume, gallon, "fl_oz", "ml", 128, gallon * 1e6},
		{unit.Surface, foot * foot, "ft2", "m2", 1, foot * foot}, {unit.Share, 0.45, "percent", "percent", 45, 45},
		{unit.FluidFlow, 3e-6, "ml_min", "ml_min", 180, 180}, {unit.Viscosity, 60e-6, "mm2_s", "mm2_s", 60, 60},
		{unit.CupTime, 30, "s", "s", 30, 30}, {unit.Minutes, 120, "min", "min", 2, 2}, {unit.Hours, 7200, "h", "h", 2, 2}, {unit.Power, 5, "hp", "hp", 5, 5},
		{unit.PaintDensity, 119.82642731689663, "lb_gal", "kg_l", 1, 0.11982642731689663}, {unit.VOC, 420, "lb_gal", "g_l", 420 * gallon / pound, 420}, {unit.Weight, 0.5, "g", "g", 500, 500},
	} {
		us, inUS, metric, inMetric := c.of.Pair(c.si)
		assert.Equal(t, []string{c.us, c.metric}, []string{us, metric}, c.of.ID)
		assert.InEpsilon(t, c.inUS, inUS, 1e-9, c.us)
		assert.InEpsilon(t, c.inSome, inMetric, 1e-9, c.metric)
	}
}

// What a hand changes a value by, in the unit shown.
func TestStepsOfTheQuantities(t *testing.T) {
	for q, want := range map[*unit.Quantity][2]float64{
		unit.Pressure: {1, 0.1}, unit.Temperature: {2, 1}, unit.Run: {5, 1}, unit.AirFlow: {1, 50}, unit.Tank: {10, 50},
		unit.Share: {5, 5}, unit.Minutes: {1, 1}, unit.Power: {1, 1}, unit.Bore: {}, unit.Distance: {}, unit.Film: {},
	} {
		assert.Equal(t, want, q.Step, q.ID)
	}
	for _, c := range []struct {
		count, size float64
		by          int
		want        float64
	}{{30, 5, 1, 35}, {31, 5, 1, 35}, {31, 5, -1, 30}, {30, 5, -1, 25}, {30, 5, -2, 20}, {31, 5, 2, 40}, {0.3, 0.1, 1, 0.4}, {-3, 5, 1, 0}, {29.9999999, 5, 1, 35}, {30.00002, 5, -1, 30}} {
		assert.InDelta(t, c.want, unit.Pressure.Steps(unit.US, float64(unit.PSIG(c.count)), c.size, c.by), 1e-6, "%v", c)
	}
	for size, want := range map[float64]int{1: 0, 50: 0, 0.5: 1, 0.1: 1, 0.05: 2, 0.25: 2} {
		decimals, plain := unit.Decimals(size)
		assert.Equal(t, want, decimals, "%v", size)
		assert.True(t, plain, "%v", size)
	}
	for _, size := range []float64{0.125, 0.005, 1.0 / 3} {
		decimals, plain := unit.Decimals(size)
		assert.Equal(t, 2, decimals)
		assert.False(t, plain, "%v", size)
	}
	assert.Equal(t, 1, unit.Pressure.Fine(unit.US))
	assert.Equal(t, 2, unit.Pressure.Fine(unit.Metric))
}

func TestLabelsAndNumbers(t *testing.T) {
	assert.Equal(t, "psi", unit.Pressure.Unit(unit.US))
	assert.Equal(t, "bar", unit.Pressure.Unit(unit.Metric))
	assert.Equal(t, "%", unit.Share.Unit(unit.US))
	assert.Equal(t, "fl oz", unit.Tank.Label(unit.US, float64(unit.USGallons(0.5))))
	assert.Equal(t, "gal", unit.Tank.Label(unit.US, float64(unit.USGallons(1))))
	assert.Equal(t, "64", unit.Tank.Number(unit.US, float64(unit.USGallons(0.5)), unit.Usual))
	assert.Equal(t, "30 psi", unit.Pressure.CountText(unit.US, 30, unit.Usual))
}

// What is typed at its limits: 32 characters, 1e9, and fractions where a length is meant.
func TestTypingAtItsLimits(t *testing.T) {
	for text, want := range map[string]float64{
		"1000000000": 1e9, "30.": 30, "\t30\tPSI ": 30, "+30": 30, "-0": 0,
	} {
		v, err := unit.Parse[float64](unit.Pressure, text, unit.US)
		require.NoError(t, err, text)
		assert.InDelta(t, want*psi, v, 1e-6*psi, text)
	}
	for _, text := range []string{"1000000001", "30..", "3/8", "--3", "", "psi", "30 psi psi"} {
		r, err := unit.Pressure.Read(text, unit.US)
		assert.Error(t, err, text)
		assert.Zero(t, r)
	}
	for _, q := range []*unit.Quantity{unit.Distance, unit.Run, unit.Bore, unit.Tip, unit.Film, unit.Velocity} {
		r, err := q.Read("1 1/2 in", unit.US)
		require.NoError(t, err, q.ID)
		assert.InEpsilon(t, 1.5*inch, r.SI, 1e-12)
	}
	// A fraction without a unit is inches where millimetres are usual, not metres.
	r, err := unit.Bore.Read("3/8", unit.Metric)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.375*inch, r.SI, 1e-12)
	r, err = unit.Run.Read("1/2", unit.Metric)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.5, r.SI, 1e-12)
	_, err = unit.Temperature.Read("-459.67 F", unit.US)
	var parse *unit.ParseError
	require.ErrorAs(t, err, &parse)
	assert.Equal(t, "want-above-absolute-zero", parse.ID)
	_, err = unit.Temperature.Read("-459.6 F", unit.US)
	assert.NoError(t, err)
	long := "000000000000000000000000000000030" // 33 characters
	_, err = unit.Pressure.Read(long, unit.US)
	require.ErrorAs(t, err, &parse)
	assert.Equal(t, "typed-too-long", parse.ID)
	assert.Equal(t, long[:32]+"...", parse.Given)
	_, err = unit.Pressure.Read(long[1:], unit.US)
	assert.NoError(t, err)
}
