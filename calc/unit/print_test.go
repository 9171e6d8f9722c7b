package unit_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"boothset/calc/unit"
)

func TestPrintedForPeople(t *testing.T) {
	for want, got := range map[string]string{
		"30 psi":        unit.US.Gauge(unit.PSIG(30), unit.Usual),
		"2.07 bar":      unit.Metric.Gauge(unit.PSIG(30), unit.Usual),
		"30.4 psi":      unit.US.Gauge(unit.PSIG(30.4), 1),
		"9.9 psi":       unit.US.Gauge(unit.PSIG(9.94), unit.Usual),
		"10 psi":        unit.US.Gauge(unit.PSIG(9.96), unit.Usual),
		"-0.3 psi":      unit.US.Gauge(unit.PSIG(-0.3), unit.Usual),
		"2.4 psi":       unit.US.Drop(unit.PSIDrop(2.4), unit.Usual),
		"0.17 bar":      unit.Metric.Drop(unit.PSIDrop(2.4), unit.Usual),
		"5.5 in":        unit.US.Small(unit.Inches(5.5), unit.Usual),
		"140 mm":        unit.Metric.Small(unit.Inches(5.5), unit.Usual),
		"25 ft":         unit.US.Long(unit.Feet(25), unit.Usual),
		"7.6 m":         unit.Metric.Long(unit.Feet(25), unit.Usual),
		"1524 m":        unit.Metric.Long(unit.Feet(5000), unit.Usual),
		"2.2 mil":       unit.US.Film(unit.Length(55e-6), unit.Usual),
		"0.39 mil":      unit.US.Film(unit.Length(10e-6), unit.Usual),
		"55 um":         unit.Metric.Film(unit.Length(55e-6), unit.Usual),
		"75 F":          unit.US.Temp(unit.Fahrenheit(75), unit.Usual),
		"23.9 C":        unit.Metric.Temp(unit.Fahrenheit(75), unit.Usual),
		"0 F":           unit.US.Temp(unit.Fahrenheit(-0.4), unit.Usual),
		"0.0 C":         unit.Metric.Temp(unit.Celsius(-0.04), unit.Usual),
		"5.4 F":         unit.US.TempDiff(3, unit.Usual),
		"3.0 C":         unit.Metric.TempDiff(3, unit.Usual),
		"10.0 cfm":      unit.US.Flow(unit.SCFM(10), unit.Usual),
		"287 L/min":     unit.Metric.Flow(unit.SCFM(10), unit.Usual),
		"1.3 ft/s":      unit.US.Speed(0.4, unit.Usual),
		"0.40 m/s":      unit.Metric.Speed(0.4, unit.Usual),
		"60.0 gal":      unit.US.Volume(unit.USGallons(60), unit.Usual),
		"1.50 gal":      unit.US.Volume(unit.USGallons(1.5), unit.Usual),
		"32 fl oz":      unit.US.Volume(unit.USGallons(0.25), unit.Usual),
		"227.1 L":       unit.Metric.Volume(unit.USGallons(60), unit.Usual),
		"946 mL":        unit.Metric.Volume(unit.USGallons(0.25), unit.Usual),
		"20 ft2":        unit.US.Area(unit.Area(20*foot*foot), unit.Usual),
		"1.86 m2":       unit.Metric.Area(unit.Area(20*foot*foot), unit.Usual),
		"60 mm2/s":      unit.Viscosity.Text(unit.US, 60e-6, unit.Usual),
		"45%":           unit.PercentText(0.45, unit.Usual),
		"12.5%":         unit.PercentText(0.125, 1),
		"0%":            unit.PercentText(-0.001, unit.Usual),
		"3/8 in":        unit.US.Bore(unit.Inches(0.375)),
		"1/4 in":        unit.US.Bore(unit.MM(6.35)),
		"5/16 in":       unit.US.Bore(unit.Inches(0.3125)),
		"1 in":          unit.US.Bore(unit.Inches(1)),
		"1-1/2 in":      unit.US.Bore(unit.Inches(1.5)),
		"0.315 in":      unit.US.Bore(unit.MM(8)),
		"9.5 mm":        unit.Metric.Bore(unit.Inches(0.375)),
		"8 mm":          unit.Metric.Bore(unit.MM(8)),
		"0.000 in":      unit.US.Bore(0),
		"-1.500 in":     unit.US.Bore(unit.Inches(-1.5)),
		"19685.039 in":  unit.US.Bore(500),
		"0.0000000 psi": unit.US.Gauge(unit.PSIG(-1e-9), 7),
	} {
		assert.Equal(t, want, got)
	}
}

// amounts are the printed quantities with their SI size per printed unit, from
// the definitions of the units.
var amounts = []struct {
	of    *unit.Quantity
	low   float64
	high  float64
	sizes map[string]float64
}{
	{unit.Pressure, -1e5, 2e6, map[string]float64{"psi": psi, "bar": 1e5}},
	{unit.Distance, -1, 1, map[string]float64{"in": inch, "mm": 1e-3}},
	{unit.Run, -500, 11000, map[string]float64{"ft": foot, "m": 1}},
	{unit.Film, 0, 1e-3, map[string]float64{"mil": inch / 1000, "um": 1e-6}},
	{unit.Bore, 0, 0.1, map[string]float64{"in": inch, "mm": 1e-3}},
	{unit.Tip, 0, 0.003, map[string]float64{"mm": 1e-3}},
	{unit.Temperature, 200, 400, map[string]float64{"F": 5.0 / 9, "C": 1}},
	{unit.TemperatureDifference, -50, 50, map[string]float64{"F": 5.0 / 9, "C": 1}},
	{unit.AirFlow, 0, 0.1, map[string]float64{"cfm": foot * foot * foot / 60 * 1.01325, "L/min": 1e-3 / 60}},
	{unit.FluidFlow, 0, 1e-5, map[string]float64{"mL/min": 1e-6 / 60}},
	{unit.Velocity, 0, 3, map[string]float64{"ft/s": foot, "m/s": 1}},
	{unit.Tank, 0, 0.02, map[string]float64{"gal": gallon, "fl oz": gallon / 128, "L": 1e-3, "mL": 1e-6}},
	{unit.CupVolume, 0, 0.02, map[string]float64{"fl oz": gallon / 128, "mL": 1e-6}},
	{unit.Surface, 0, 30, map[string]float64{"ft2": foot * foot, "m2": 1}},
	{unit.Viscosity, 0, 1e-3, map[string]float64{"mm2/s": 1e-6}},
	{unit.Share, -1, 2, map[string]float64{"%": 0.01}},
	{unit.CupTime, 0, 300, map[string]float64{"s": 1}},
	{unit.Minutes, 0, 3000, map[string]float64{"min": 60}},
	{unit.Hours, 0, 90000, map[string]float64{"h": 3600}},
	{unit.PaintDensity, 0, 3000, map[string]float64{"lb/gal": pound / gallon, "kg/L": 1e3}},
	{unit.VOC, 0, 900, map[string]float64{"lb/gal": pound / gallon, "g/L": 1}},
	{unit.Weight, 0, 9, map[string]float64{"g": 1e-3}},
	{unit.Power, 0, 50, map[string]float64{"hp": 1}},
}

func TestReadingBackWhatWasPrintedIsWithinItsRounding(t *testing.T) {
	for _, a := range amounts {
		t.Run(a.of.Unit(unit.US)+" "+a.of.ID, rapid.MakeCheck(func(t *rapid.T) {
			v := rapid.Float64Range(a.low, a.high).Draw(t, "v")
			decimals := rapid.IntRange(unit.Usual, 4).Draw(t, "decimals")
			s := rapid.SampledFrom([]unit.System{unit.US, unit.Metric}).Draw(t, "system")
			text := a.of.Text(s, v, decimals)

			number := text[:strings.LastIndexAny(text, "0123456789")+1]
			if strings.HasSuffix(text, "2") || strings.HasSuffix(text, "2/s") { // ft2, m2, mm2/s
				number, _, _ = strings.Cut(text, " ")
			}
			label := strings.TrimSpace(text[len(number):])
			require.Contains(t, a.sizes, label)
			step := a.sizes[label]
			if _, places, ok := strings.Cut(number, "."); ok {
				step *= math.Pow10(-len(places))
			}
			back, err := unit.Parse[float64](a.of, text, unit.Named)
			require.NoError(t, err)
			require.InDelta(t, v, back, step/2+1e-9*math.Abs(v), text)
			require.False(t, strings.HasPrefix(text, "-") && !strings.ContainsAny(number, "123456789"), text)
		}))
	}
}

func TestEverySixteenthOfABoreReadsBackExactly(t *testing.T) {
	for n := 1; n <= 64; n++ {
		l := unit.Inches(float64(n) / 16)
		text := unit.US.Bore(l)
		assert.NotContains(t, text, ".")
		back, err := unit.Parse[unit.Length](unit.Bore, text, unit.Named)
		require.NoError(t, err)
		assert.Equal(t, l, back, text)
	}
}

func TestAppendExtendsAndAllocatesNothing(t *testing.T) {
	buffer := make([]byte, 0, 64)
	for _, a := range amounts {
		for _, s := range []unit.System{unit.US, unit.Metric} {
			v := (a.low + a.high) / 2
			got := a.of.Append(append(buffer[:0], "at "...), s, v, 2)
			assert.Equal(t, "at "+a.of.Text(s, v, 2), string(got), a.of.ID)
			allocs := testing.AllocsPerRun(100, func() { a.of.Append(buffer[:0], s, v, unit.Usual) })
			assert.Zero(t, allocs, a.of.ID)
		}
	}
}

func TestABareNumberIsWhatItPrintsAs(t *testing.T) {
	for _, a := range amounts {
		for _, sys := range []unit.System{unit.US, unit.Metric} {
			r, err := a.of.Read("2", sys)
			require.NoError(t, err)
			assert.True(t, r.Bare)
			assert.InEpsilon(t, 2, a.of.Count(sys, r.SI), 1e-12, a.of.ID)
			assert.Equal(t, a.of.Of(sys, 2), r.SI, a.of.ID)
			named := r.Complete(" 2 ")
			assert.Equal(t, "2"+strings.TrimPrefix(a.of.CountText(sys, 2, 0), "2"), named)
			again, err := a.of.Read(named, unit.Named)
			require.NoError(t, err, named)
			assert.Equal(t, r.SI, again.SI, named)
			assert.Equal(t, named, again.Complete(named))
		}
	}
}

// A value that was rounded to what is printed prints the same, and is what its text reads as.
func TestRoundedIsWhatIsPrinted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := rapid.SampledFrom([]*unit.Quantity{unit.Pressure, unit.Distance, unit.Temperature, unit.Share}).Draw(t, "quantity")
		sys := rapid.SampledFrom([]unit.System{unit.US, unit.Metric}).Draw(t, "system")
		decimals := rapid.IntRange(unit.Usual, 3).Draw(t, "decimals")
		si := q.Of(sys, rapid.Float64Range(1, 500).Draw(t, "count"))
		text := q.Text(sys, si, decimals)
		rounded := q.Rounded(sys, si, decimals)
		read, err := q.Read(text, unit.Named)
		require.NoError(t, err, text)
		assert.InEpsilon(t, read.SI, rounded, 1e-12, text)
	})
	assert.InDelta(t, 5.5*0.0254, unit.Distance.Rounded(unit.US, 5.52*0.0254, unit.Usual), 1e-15)
	assert.InDelta(t, 0.140, unit.Distance.Rounded(unit.Metric, 0.1402, unit.Usual), 1e-15)
}

// A fraction is of an inch in either system, and stays one when its unit is named.
func TestAFractionIsCompletedInInches(t *testing.T) {
	for _, sys := range []unit.System{unit.US, unit.Metric} {
		r, err := unit.Bore.Read("3/8", sys)
		require.NoError(t, err)
		named := r.Complete("3/8")
		assert.Equal(t, "3/8 in", named)
		again, err := unit.Bore.Read(named, unit.Named)
		require.NoError(t, err)
		assert.Equal(t, r.SI, again.SI)
	}
}

func TestAStepGoesToTheNextWholeOne(t *testing.T) {
	for _, c := range []struct {
		si   float64
		by   int
		want float64
	}{{30.4 * psi, 1, 31}, {30.4 * psi, -1, 30}, {30 * psi, 1, 31}, {30 * psi, -3, 27}, {30.4 * psi, 10, 40}} {
		assert.InDelta(t, c.want, unit.Pressure.Steps(unit.US, c.si, 1, c.by), 1e-9)
	}
	assert.InDelta(t, 2.15, unit.Pressure.Steps(unit.Metric, 2.1e5, 0.05, 1), 1e-9)
}

func TestACharacterOfAUnitCanBeTyped(t *testing.T) {
	for _, a := range amounts {
		for _, sys := range []unit.System{unit.US, unit.Metric} {
			for _, c := range a.of.Text(sys, (a.low+a.high)/3, 2) {
				assert.True(t, a.of.Takes(c), "%s %q", a.of.ID, c)
			}
		}
	}
	assert.False(t, unit.Pressure.Takes('z'))
	assert.False(t, unit.Pressure.Takes('/'))
	assert.True(t, unit.Bore.Takes('/'))
}
