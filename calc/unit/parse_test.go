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
)

func TestBareNumberTakesTheUnitOfTheField(t *testing.T) {
	p, err := unit.ParseGauge("30", unit.InPSI)
	require.NoError(t, err)
	assert.InEpsilon(t, 30*psi, float64(p), 1e-12)

	p, err = unit.ParseGauge("2", unit.InBar)
	require.NoError(t, err)
	assert.InEpsilon(t, 2e5, float64(p), 1e-12)

	_, err = unit.ParseGauge("30", 0)
	assert.Error(t, err, "with no bare unit one has to be typed")
}

func TestEachQuantityAsTyped(t *testing.T) {
	gauge := func(s string) (float64, error) { v, err := unit.ParseGauge(s, unit.InPSI); return float64(v), err }
	temp := func(s string) (float64, error) {
		v, err := unit.ParseTemp(s, unit.InFahrenheit)
		return float64(v), err
	}
	diff := func(s string) (float64, error) {
		v, err := unit.ParseTempDiff(s, unit.InFahrenheit)
		return float64(v), err
	}
	length := func(s string) (float64, error) { v, err := unit.ParseLength(s, unit.InInches); return float64(v), err }
	flow := func(s string) (float64, error) { v, err := unit.ParseFlow(s, unit.InSCFM); return float64(v), err }
	volume := func(s string) (float64, error) { v, err := unit.ParseVolume(s, unit.InGallons); return float64(v), err }
	area := func(s string) (float64, error) { v, err := unit.ParseArea(s, unit.InFeet2); return float64(v), err }
	seconds := func(s string) (float64, error) {
		v, err := unit.ParseSeconds(s, unit.InSeconds)
		return float64(v), err
	}
	viscosity := func(s string) (float64, error) { v, err := unit.ParseViscosity(s); return float64(v), err }

	for _, c := range []struct {
		typed string
		parse func(string) (float64, error)
		si    float64
	}{
		{"75", gauge, 75 * psi},
		{"90psi", gauge, 90 * psi},
		{"  90 PSIG ", gauge, 90 * psi},
		{"90 psi.", gauge, 90 * psi},
		{"+28.5psi", gauge, 28.5 * psi},
		{"6 bar", gauge, 6e5},
		{"6,25bar", gauge, 6.25e5},
		{"620 kPa", gauge, 6.2e5},
		{"0.62MPa", gauge, 6.2e5},
		{"-0.2 bar", gauge, -2e4},
		{".5 bar", gauge, 5e4},
		{"5. bar", gauge, 5e5},
		{"1.500 bar", gauge, 1.5e5},
		{"0,500 bar", gauge, 5e4},
		{"1,50", gauge, 1.5 * psi},
		{"1,5", gauge, 1.5 * psi},

		{"75F", temp, 297.0388888889},
		{"75", temp, 297.0388888889},
		{"75°", temp, 297.0388888889},
		{"75 deg F", temp, 297.0388888889},
		{"24 C", temp, 297.15},
		{"24°C", temp, 297.15},
		{"24 ° c", temp, 297.15},
		{"-40F", temp, 233.15},
		{"-40C", temp, 233.15},
		{"5F", diff, 5 / 1.8},
		{"3 C", diff, 3},
		{"3K", diff, 3},
		{"9°", diff, 5},

		{"25ft", length, 25 * foot},
		{"25'", length, 25 * foot},
		{"25 ft.", length, 25 * foot},
		{"3/8in", length, 0.375 * inch},
		{"3/8", length, 0.375 * inch},
		{`3/8"`, length, 0.375 * inch},
		{"3 / 8 in", length, 0.375 * inch},
		{"1-1/2 in", length, 1.5 * inch},
		{"1 1/2 inches", length, 1.5 * inch},
		{"12 1/2 ft", length, 12.5 * foot},
		{"7.6 m", length, 7.6},
		{"10 mm", length, 0.01},
		{"14cm", length, 0.14},
		{"5000ft", length, 1524},
		{"1500 m", length, 1500},
		{"55 um", length, 55e-6},
		{"55 microns", length, 55e-6},
		{"2 mil", length, 50.8e-6},

		{"10 cfm", flow, 10 * foot * foot * foot / 60 * 1.01325},
		{"10 scfm", flow, 10 * foot * foot * foot / 60 * 1.01325},
		{"300 L/min", flow, 0.005},
		{"300 l / MIN", flow, 0.005},
		{"5 dm3/s", flow, 0.005},
		{"0.3 m3/min", flow, 0.005},
		{"18 m3/h", flow, 0.005},

		{"60 gal", volume, 60 * gallon},
		{"1 qt", volume, gallon / 4},
		{"32 fl oz", volume, gallon / 4},
		{"32 fl. oz.", volume, gallon / 4},
		{"227 L", volume, 0.227},
		{"600 mL", volume, 6e-4},

		{"20 sq ft", area, 20 * foot * foot},
		{"20ft2", area, 20 * foot * foot},
		{"2 m2", area, 2},

		{"18", seconds, 18},
		{"18.5 s", seconds, 18.5},
		{"10min", seconds, 600},
		{"2 h", seconds, 7200},

		{"45", unit.ParsePercent, 0.45},
		{"45%", unit.ParsePercent, 0.45},
		{" 45 % ", unit.ParsePercent, 0.45},
		{"35", unit.ParsePercent, 0.35},
		{"120", unit.ParsePercent, 1.2},

		{"60", viscosity, 60e-6},
		{"60 cSt", viscosity, 60e-6},
		{"60mm2/s", viscosity, 60e-6},
	} {
		got, err := c.parse(c.typed)
		if assert.NoError(t, err, c.typed) {
			assert.InEpsilon(t, c.si, got, 1e-12, c.typed)
		}
	}
}

func TestPercentIsExactlyTheHundredthTyped(t *testing.T) {
	got, err := unit.ParsePercent("35")
	require.NoError(t, err)
	assert.Equal(t, 0.35, got)
}

func TestMinusZeroIsZero(t *testing.T) {
	p, err := unit.ParseGauge("-0", unit.InPSI)
	require.NoError(t, err)
	assert.Equal(t, "0", strings.TrimSuffix(unit.US.Gauge(p, 0), " psi"))
}

func TestBareFractionIsInchesWhereMillimetresAreUsual(t *testing.T) {
	for _, bare := range []unit.LengthUnit{unit.InMM, unit.InCM, unit.InInches} {
		l, err := unit.ParseLength("3/8", bare)
		require.NoError(t, err)
		assert.InEpsilon(t, 9.525, l.MM(), 1e-12)
	}
	l, err := unit.ParseLength("1/2", unit.InMetres)
	require.NoError(t, err)
	assert.Equal(t, unit.Length(0.5), l)
	l, err = unit.ParseLength("3/8 mm", unit.InMM)
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
		v, err := unit.ParseGauge(typed, unit.InPSI)
		assert.Zero(t, v, typed)
		says := strings.Fields(want)
		e := &unit.ParseError{Quantity: "pressure", Given: typed, ID: says[0], Usage: usage}
		for i := 1; i < len(says); i += 2 {
			e.Parts = append(e.Parts, unit.Part{Name: says[i], Text: says[i+1]})
		}
		assert.Equal(t, e, err, typed)
	}
}

func TestErrorNamesQuantityGivenAndWanted(t *testing.T) {
	_, err := unit.ParseGauge("abc", unit.InPSI)
	assert.EqualError(t, err, `pressure "abc": want-pressure`)
	_, err = unit.ParseGauge("\x1b[2J", unit.InPSI)
	assert.NotContains(t, err.Error(), "\x1b", "nothing typed may steer the terminal")
}

func TestFractionsThatAreSlipsAreRefused(t *testing.T) {
	for _, typed := range []string{"1/0", "0/0", "1-3/2 in", "1-/2", "1.5/8", "1/2/3", "3/", "/8", "1 1 1/2", "1/2.5"} {
		v, err := unit.ParseLength(typed, unit.InInches)
		assert.Zero(t, v, typed)
		assert.Error(t, err, typed)
	}
}

func TestVeryLongInputIsCutInTheMessage(t *testing.T) {
	_, err := unit.ParseGauge(strings.Repeat("9", 1_000_000), unit.InPSI)
	var pe *unit.ParseError
	require.ErrorAs(t, err, &pe)
	assert.Less(t, len(err.Error()), 150)
	_, err = unit.ParseGauge("0."+strings.Repeat("0", 29)+"1", unit.InPSI)
	assert.NoError(t, err, "32 characters are taken")
	_, err = unit.ParseGauge("0."+strings.Repeat("0", 30)+"1", unit.InPSI)
	assert.Error(t, err, "33 are not")
}

func TestBelowAbsoluteZeroIsRefused(t *testing.T) {
	for _, typed := range []string{"-274C", "-273.15C", "-460F", "-1000000F"} {
		_, err := unit.ParseTemp(typed, unit.InCelsius)
		assert.ErrorContains(t, err, "want-above-absolute-zero", typed)
	}
	_, err := unit.ParseTemp("-273 C", unit.InCelsius)
	assert.NoError(t, err)
}

// What a person types in Spanish is the same quantity.
func TestSpanishSpellings(t *testing.T) {
	for spanish, english := range map[string]string{
		"3/8 pulg": "3/8 in", "3/8 pulgada": "3/8 in", "5 pulgadas": "5 in", "25 pies": "25 ft", "1 pie": "1 ft",
		"10 milímetros": "10 mm", "10 milimetros": "10 mm", "2 centímetros": "2 cm", "8 metros": "8 m", "1 metro": "1 m",
		"55 micras": "55 um", "2 milésimas": "2 mil", "2 milesimas": "2 mil", "1,5 Pulgadas": "1.5 in",
	} {
		same(t, spanish, english, func(s string) (unit.Length, error) { return unit.ParseLength(s, 0) })
	}
	for spanish, english := range map[string]string{
		"60 galones": "60 gal", "1 galón": "1 gal", "1 galon": "1 gal", "2 litros": "2 L", "1 litro": "1 L", "2 lts": "2 L",
		"350 mililitros": "350 mL", "2 cuartos": "2 qt", "12 onzas": "12 fl oz", "1 onza": "1 fl oz",
	} {
		same(t, spanish, english, func(s string) (unit.Volume, error) { return unit.ParseVolume(s, 0) })
	}
	for spanish, english := range map[string]string{
		"18 segundos": "18 s", "1 segundo": "1 s", "18 seg": "18 s", "3 minutos": "3 min", "1 minuto": "1 min", "4 horas": "4 h", "1 hora": "1 h",
	} {
		same(t, spanish, english, func(s string) (unit.Seconds, error) { return unit.ParseSeconds(s, 0) })
	}
	for spanish, english := range map[string]string{
		"24 grados C": "24 C", "75 grados F": "75 F", "24 centígrados": "24 C", "24 grados centigrados": "24 C", "1 grado C": "1 C",
	} {
		same(t, spanish, english, func(s string) (unit.Temp, error) { return unit.ParseTemp(s, 0) })
	}
	same(t, "90 libras", "90 psi", func(s string) (unit.Gauge, error) { return unit.ParseGauge(s, 0) })
	same(t, "10 pcm", "10 cfm", func(s string) (unit.Flow, error) { return unit.ParseFlow(s, 0) })
	same(t, "280 litros/min", "280 L/min", func(s string) (unit.Flow, error) { return unit.ParseFlow(s, 0) })
	same(t, "20 pies2", "20 ft2", func(s string) (unit.Area, error) { return unit.ParseArea(s, 0) })
	same(t, "2 metros cuadrados", "2 m2", func(s string) (unit.Area, error) { return unit.ParseArea(s, 0) })
	same(t, "45 por ciento", "45%", unit.ParsePercent)
	bare, err := unit.ParseTemp("24 grados", unit.InCelsius)
	require.NoError(t, err)
	assert.Equal(t, unit.Celsius(24), bare)
}

func same[T ~float64](t *testing.T, one, other string, parse func(string) (T, error)) {
	t.Helper()
	a, err := parse(one)
	require.NoError(t, err, one)
	b, err := parse(other)
	require.NoError(t, err, other)
	assert.Equal(t, b, a, one)
}
