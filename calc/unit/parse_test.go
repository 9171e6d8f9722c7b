package unit_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boothset/calc/unit"
)

// The expected values are worked from the definitions of the units: 1 lbf/in2 is
// 6894.757 Pa, 1 in 0.0254 m, 1 ft 0.3048 m, 1 US gal 3.785411784 L, and so on
// (NIST Special Publication 811, appendix B).
const (
	psi    = 6894.757293168361
	inch   = 0.0254
	foot   = 0.3048
	gallon = 3.785411784e-3
	pound  = 0.45359237
)

func gauge(text string, sys unit.System) (unit.Gauge, error) {
	return unit.Parse[unit.Gauge](unit.Pressure, text, sys)
}

func TestBareNumberTakesTheUnitOfTheSystem(t *testing.T) {
	p, err := gauge("30", unit.US)
	require.NoError(t, err)
	assert.InEpsilon(t, 30*psi, float64(p), 1e-12)

	p, err = gauge("2", unit.Metric)
	require.NoError(t, err)
	assert.InEpsilon(t, 2e5, float64(p), 1e-12)

	_, err = gauge("30", unit.Named)
	assert.Error(t, err, "where a unit must be named one has to be typed")
}

func TestEachQuantityAsTyped(t *testing.T) {
	for _, c := range []struct {
		typed string
		of    *unit.Quantity
		si    float64
	}{
		{"75", unit.Pressure, 75 * psi},
		{"90psi", unit.Pressure, 90 * psi},
		{"  90 PSIG ", unit.Pressure, 90 * psi},
		{"90 psi.", unit.Pressure, 90 * psi},
		{"+28.5psi", unit.Pressure, 28.5 * psi},
		{"6 bar", unit.Pressure, 6e5},
		{"6,25bar", unit.Pressure, 6.25e5},
		{"620 kPa", unit.Pressure, 6.2e5},
		{"0.62MPa", unit.Pressure, 6.2e5},
		{"-0.2 bar", unit.Pressure, -2e4},
		{".5 bar", unit.Pressure, 5e4},
		{"5. bar", unit.Pressure, 5e5},
		{"1.500 bar", unit.Pressure, 1.5e5},
		{"0,500 bar", unit.Pressure, 5e4},
		{"1,50", unit.Pressure, 1.5 * psi},
		{"1,5", unit.Pressure, 1.5 * psi},

		{"75F", unit.Temperature, 297.0388888889},
		{"75", unit.Temperature, 297.0388888889},
		{"75°", unit.Temperature, 297.0388888889},
		{"75 deg F", unit.Temperature, 297.0388888889},
		{"24 C", unit.Temperature, 297.15},
		{"24°C", unit.Temperature, 297.15},
		{"24 ° c", unit.Temperature, 297.15},
		{"-40F", unit.Temperature, 233.15},
		{"-40C", unit.Temperature, 233.15},
		{"5F", unit.TemperatureDifference, 5 / 1.8},
		{"3 C", unit.TemperatureDifference, 3},
		{"3K", unit.TemperatureDifference, 3},
		{"9°", unit.TemperatureDifference, 5},

		{"25ft", unit.Distance, 25 * foot},
		{"25'", unit.Distance, 25 * foot},
		{"25 ft.", unit.Distance, 25 * foot},
		{"3/8in", unit.Distance, 0.375 * inch},
		{"3/8", unit.Distance, 0.375 * inch},
		{`3/8"`, unit.Distance, 0.375 * inch},
		{"3 / 8 in", unit.Distance, 0.375 * inch},
		{"1-1/2 in", unit.Distance, 1.5 * inch},
		{"1 1/2 inches", unit.Distance, 1.5 * inch},
		{"12 1/2 ft", unit.Distance, 12.5 * foot},
		{"7.6 m", unit.Distance, 7.6},
		{"10 mm", unit.Distance, 0.01},
		{"14cm", unit.Distance, 0.14},
		{"5000ft", unit.Distance, 1524},
		{"1500 m", unit.Distance, 1500},
		{"55 um", unit.Distance, 55e-6},
		{"55 microns", unit.Distance, 55e-6},
		{"2 mil", unit.Distance, 50.8e-6},

		{"10 cfm", unit.AirFlow, 10 * foot * foot * foot / 60 * 1.01325},
		{"10 scfm", unit.AirFlow, 10 * foot * foot * foot / 60 * 1.01325},
		{"300 L/min", unit.AirFlow, 0.005},
		{"300 l / MIN", unit.AirFlow, 0.005},
		{"5 dm3/s", unit.AirFlow, 0.005},
		{"0.3 m3/min", unit.AirFlow, 0.005},
		{"18 m3/h", unit.AirFlow, 0.005},

		{"60 gal", unit.Tank, 60 * gallon},
		{"1 qt", unit.Tank, gallon / 4},
		{"32 fl oz", unit.Tank, gallon / 4},
		{"32 fl. oz.", unit.Tank, gallon / 4},
		{"227 L", unit.Tank, 0.227},
		{"600 mL", unit.Tank, 6e-4},

		{"20 sq ft", unit.Surface, 20 * foot * foot},
		{"20ft2", unit.Surface, 20 * foot * foot},
		{"2 m2", unit.Surface, 2},
		{"3.5 lb/gal", unit.VOC, 3.5 * pound / gallon},
		{"420 g/L", unit.VOC, 420},
		{"0.98 kg/L", unit.PaintDensity, 980},
		{"8.2lb/gal", unit.PaintDensity, 8.2 * pound / gallon},

		{"18", unit.CupTime, 18},
		{"18.5 s", unit.CupTime, 18.5},
		{"10min", unit.CupTime, 600},
		{"2 h", unit.CupTime, 7200},

		{"45", unit.Share, 0.45},
		{"45%", unit.Share, 0.45},
		{" 45 % ", unit.Share, 0.45},
		{"35", unit.Share, 0.35},
		{"120", unit.Share, 1.2},

		{"60", unit.Viscosity, 60e-6},
		{"60 cSt", unit.Viscosity, 60e-6},
		{"60mm2/s", unit.Viscosity, 60e-6},

		{"1.3", unit.Tip, 1.3e-3},
		{"150", unit.FluidFlow, 150e-6 / 60},
		{"150 mL per min", unit.FluidFlow, 150e-6 / 60},
		{"5 oz a minute", unit.FluidFlow, 5 * gallon / 128 / 60},
		{"1,2 pies por segundo", unit.Velocity, 1.2 * foot},
		{"0.4 m/s", unit.Velocity, 0.4},
		{"1.3", unit.Velocity, 1.3 * foot},
		{"12", unit.CupVolume, 12 * gallon / 128},
		{"3", unit.Minutes, 180},
		{"3", unit.Hours, 10800},
		{"5hp", unit.Power, 5},
		{"3/4", unit.Turns, 0.75}, {"1 1/4 turns", unit.Turns, 1.25}, {"0,5 vueltas", unit.Turns, 0.5},
	} {
		got, err := unit.Parse[float64](c.of, c.typed, unit.US)
		if assert.NoError(t, err, c.typed) {
			assert.InEpsilon(t, c.si, got, 1e-12, c.typed)
		}
	}
}

func TestPercentIsExactlyTheHundredthTyped(t *testing.T) {
	got, err := unit.Parse[float64](unit.Share, "35", unit.US)
	require.NoError(t, err)
	assert.Equal(t, 0.35, got)
}

func TestMinusZeroIsZero(t *testing.T) {
	p, err := gauge("-0", unit.US)
	require.NoError(t, err)
	assert.Equal(t, "0", strings.TrimSuffix(unit.US.Gauge(p, 0), " psi"))
}

func TestBareFractionIsInchesWhereMillimetresAreUsual(t *testing.T) {
	for _, of := range []*unit.Quantity{unit.Bore, unit.Distance, unit.Tip} {
		for _, sys := range []unit.System{unit.US, unit.Metric} {
			l, err := unit.Parse[unit.Length](of, "3/8", sys)
			require.NoError(t, err)
			assert.InEpsilon(t, 9.525, l.MM(), 1e-12)
		}
	}
	l, err := unit.Parse[unit.Length](unit.Run, "1/2", unit.Metric)
	require.NoError(t, err)
	assert.Equal(t, unit.Length(0.5), l)
	l, err = unit.Parse[unit.Length](unit.Bore, "3/8 mm", unit.Metric)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.375e-3, float64(l), 1e-12)
}

func TestRefusedWithWhatWouldDo(t *testing.T) {
	const usage = "want-pressure"
	const marks = "typed-marks"
	for typed, want := range map[string]string{
		"":               usage,
		"abc":            usage,
		"psi":            usage,
		"--5":            usage,
		"+-5":            usage,
		"- 5":            usage,
		"5-":             usage,
		"5 6":            usage,
		"1 500":          usage,
		"3/8":            usage, // no one sets a gauge in fractions
		"90 psia":        usage, // absolute, which no gauge shows
		"90 ft":          usage,
		"nan":            usage,
		"inf":            usage,
		"-Inf":           usage,
		"0x10p0":         usage,
		"1_000":          usage,
		"1e5":            usage,
		".":              usage,
		"½":              usage,
		"٣":              usage,
		"5 b\u0430r":     usage, // a Cyrillic letter
		"1.2.3":          marks,
		"1,500,000":      marks,
		"1.500,5":        marks,
		"1,500":          "typed-two-ways one 1500 other 1.5",
		"2,250 psi":      "typed-two-ways one 2250 other 2.25",
		"2,000 psi":      "typed-two-ways one 2000 other 2",
		"1000000001":     "typed-too-large most 1000000000",
		"-1000000001kPa": "typed-too-large most 1000000000",
	} {
		v, err := gauge(typed, unit.US)
		assert.Zero(t, v, typed)
		says := strings.Fields(want)
		e := &unit.ParseError{Quantity: "pressure", Given: typed, ID: says[0], Usage: usage}
		for i := 1; i < len(says); i += 2 {
			e.Details = append(e.Details, unit.Detail{Name: says[i], Text: says[i+1]})
		}
		assert.Equal(t, e, err, typed)
	}
}

func TestErrorNamesQuantityGivenAndWanted(t *testing.T) {
	_, err := gauge("abc", unit.US)
	assert.EqualError(t, err, `pressure "abc": want-pressure`)
	_, err = gauge("\x1b[2J", unit.US)
	assert.NotContains(t, err.Error(), "\x1b", "nothing typed may steer the terminal")
}

func TestFractionsThatAreSlipsAreRefused(t *testing.T) {
	for _, typed := range []string{"1/0", "0/0", "1-3/2 in", "1-/2", "1.5/8", "1/2/3", "3/", "/8", "1 1 1/2", "1/2.5"} {
		v, err := unit.Parse[unit.Length](unit.Distance, typed, unit.US)
		assert.Zero(t, v, typed)
		assert.Error(t, err, typed)
	}
}

func TestVeryLongInputIsCutInTheMessage(t *testing.T) {
	_, err := gauge(strings.Repeat("9", 1_000_000), unit.US)
	var pe *unit.ParseError
	require.ErrorAs(t, err, &pe)
	assert.Less(t, len(err.Error()), 150)
	_, err = gauge("0."+strings.Repeat("0", 29)+"1", unit.US)
	assert.NoError(t, err, "32 characters are taken")
	_, err = gauge("0."+strings.Repeat("0", 30)+"1", unit.US)
	assert.Error(t, err, "33 are not")
}

func TestBelowAbsoluteZeroIsRefused(t *testing.T) {
	for _, typed := range []string{"-274C", "-273.15C", "-460F", "-1000000F"} {
		_, err := unit.Parse[unit.Temp](unit.Temperature, typed, unit.Metric)
		assert.ErrorContains(t, err, "want-above-absolute-zero", typed)
	}
	_, err := unit.Parse[unit.Temp](unit.Temperature, "-273 C", unit.Metric)
	assert.NoError(t, err)
}

// What a person types in Spanish is the same quantity.
func TestSpanishSpellings(t *testing.T) {
	for spanish, english := range map[string]string{
		"3/8 pulg": "3/8 in", "3/8 pulgada": "3/8 in", "5 pulgadas": "5 in", "25 pies": "25 ft", "1 pie": "1 ft",
		"10 milímetros": "10 mm", "10 milimetros": "10 mm", "2 centímetros": "2 cm", "8 metros": "8 m", "1 metro": "1 m",
		"55 micras": "55 um", "2 milésimas": "2 mil", "2 milesimas": "2 mil", "1,5 Pulgadas": "1.5 in",
	} {
		same(t, spanish, english, unit.Distance)
	}
	for spanish, english := range map[string]string{
		"60 galones": "60 gal", "1 galón": "1 gal", "1 galon": "1 gal", "2 litros": "2 L", "1 litro": "1 L", "2 lts": "2 L",
		"350 mililitros": "350 mL", "2 cuartos": "2 qt", "12 onzas": "12 fl oz", "1 onza": "1 fl oz",
	} {
		same(t, spanish, english, unit.Tank)
	}
	for spanish, english := range map[string]string{
		"18 segundos": "18 s", "1 segundo": "1 s", "18 seg": "18 s", "3 minutos": "3 min", "1 minuto": "1 min", "4 horas": "4 h", "1 hora": "1 h",
	} {
		same(t, spanish, english, unit.CupTime)
	}
	for spanish, english := range map[string]string{
		"24 grados C": "24 C", "75 grados F": "75 F", "24 centígrados": "24 C", "24 grados centigrados": "24 C", "1 grado C": "1 C",
	} {
		same(t, spanish, english, unit.Temperature)
	}
	same(t, "90 libras", "90 psi", unit.Pressure)
	same(t, "10 pcm", "10 cfm", unit.AirFlow)
	same(t, "280 litros/min", "280 L/min", unit.AirFlow)
	same(t, "20 pies2", "20 ft2", unit.Surface)
	same(t, "2 metros cuadrados", "2 m2", unit.Surface)
	same(t, "45 por ciento", "45%", unit.Share)
	bare, err := unit.Parse[unit.Temp](unit.Temperature, "24 grados", unit.Metric)
	require.NoError(t, err)
	assert.Equal(t, unit.Celsius(24), bare)
}

func same(t *testing.T, one, other string, of *unit.Quantity) {
	t.Helper()
	a, err := unit.Parse[float64](of, one, unit.Named)
	require.NoError(t, err, one)
	b, err := unit.Parse[float64](of, other, unit.Named)
	require.NoError(t, err, other)
	assert.Equal(t, b, a, one)
}

// A number without a unit, named by the one that it was read in, reads as the same.
func TestCompleteNamesTheUnitThatWasRead(t *testing.T) {
	for _, x := range []struct {
		of    *unit.Quantity
		typed string
		sys   unit.System
		want  string
	}{
		{unit.Pressure, " 90 ", unit.US, "90 psi"},
		{unit.Pressure, "6,2", unit.Metric, "6,2 bar"},
		{unit.Pressure, "90 psi", unit.Metric, "90 psi"},
		{unit.Temperature, "75°", unit.US, "75 F"},
		{unit.Bore, "3/8", unit.US, "3/8 in"},
		{unit.Bore, "3/8", unit.Metric, "3/8 in"}, // a hose is sold so where mm are usual too
		{unit.Bore, "10", unit.Metric, "10 mm"},
		{unit.Tip, "1/16", unit.US, "1/16 in"},
		{unit.Tip, "1.3", unit.US, "1.3 mm"},
		{unit.FluidFlow, "180", unit.US, "180 mL/min"},
		{unit.Velocity, "1.2", unit.Metric, "1.2 m/s"},
	} {
		r, err := x.of.Read(x.typed, x.sys)
		require.NoError(t, err)
		assert.Equal(t, x.want, r.Complete(x.typed))
		for _, sys := range []unit.System{unit.US, unit.Metric, unit.Named} {
			again, err := x.of.Read(r.Complete(x.typed), sys)
			require.NoError(t, err, x.typed)
			assert.Equal(t, r.SI, again.SI, x.typed)
		}
	}
}
