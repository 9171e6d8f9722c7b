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
		"15 psi abs":    unit.US.Abs(101325, unit.Usual),
		"1.01 bar abs":  unit.Metric.Abs(101325, unit.Usual),
		"5.5 in":        unit.US.Small(unit.Inches(5.5), unit.Usual),
		"140 mm":        unit.Metric.Small(unit.Inches(5.5), unit.Usual),
		"25 ft":         unit.US.Long(unit.Feet(25), unit.Usual),
		"7.6 m":         unit.Metric.Long(unit.Feet(25), unit.Usual),
		"1524 m":        unit.Metric.Long(unit.Feet(5000), unit.Usual),
		"2.2 mil":       unit.US.Film(unit.Length(55e-6), unit.Usual),
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
		"60 mm2/s":      unit.KinematicText(unit.MM2PerS(60), unit.Usual),
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
// the definitions of the units, and the way back.
var amounts = []struct {
	name   string
	append func(s unit.System, dst []byte, v float64, decimals int) []byte
	text   func(s unit.System, v float64, decimals int) string
	parse  func(s string) (float64, error)
	low    float64
	high   float64
	sizes  map[string]float64
}{
	{
		"gauge",
		func(s unit.System, dst []byte, v float64, d int) []byte { return s.AppendGauge(dst, unit.Gauge(v), d) },
		func(s unit.System, v float64, d int) string { return s.Gauge(unit.Gauge(v), d) },
		func(s string) (float64, error) { v, err := unit.ParseGauge(s, 0); return float64(v), err },
		-1e5, 2e6, map[string]float64{"psi": psi, "bar": 1e5},
	},
	{
		"drop",
		func(s unit.System, dst []byte, v float64, d int) []byte { return s.AppendDrop(dst, unit.Drop(v), d) },
		func(s unit.System, v float64, d int) string { return s.Drop(unit.Drop(v), d) },
		func(s string) (float64, error) { v, err := unit.ParseGauge(s, 0); return float64(v), err },
		-1e5, 2e6, map[string]float64{"psi": psi, "bar": 1e5},
	},
	{
		"absolute pressure",
		func(s unit.System, dst []byte, v float64, d int) []byte { return s.AppendAbs(dst, unit.Abs(v), d) },
		func(s unit.System, v float64, d int) string { return s.Abs(unit.Abs(v), d) },
		func(s string) (float64, error) {
			v, err := unit.ParseGauge(strings.TrimSuffix(s, " abs"), 0)
			return float64(v), err
		},
		0, 2e6, map[string]float64{"psi abs": psi, "bar abs": 1e5},
	},
	{
		"small length",
		func(s unit.System, dst []byte, v float64, d int) []byte { return s.AppendSmall(dst, unit.Length(v), d) },
		func(s unit.System, v float64, d int) string { return s.Small(unit.Length(v), d) },
		func(s string) (float64, error) { v, err := unit.ParseLength(s, 0); return float64(v), err },
		-1, 1, map[string]float64{"in": inch, "mm": 1e-3},
	},
	{
		"long length",
		func(s unit.System, dst []byte, v float64, d int) []byte { return s.AppendLong(dst, unit.Length(v), d) },
		func(s unit.System, v float64, d int) string { return s.Long(unit.Length(v), d) },
		func(s string) (float64, error) { v, err := unit.ParseLength(s, 0); return float64(v), err },
		-500, 11000, map[string]float64{"ft": foot, "m": 1},
	},
	{
		"film",
		func(s unit.System, dst []byte, v float64, d int) []byte { return s.AppendFilm(dst, unit.Length(v), d) },
		func(s unit.System, v float64, d int) string { return s.Film(unit.Length(v), d) },
		func(s string) (float64, error) { v, err := unit.ParseLength(s, 0); return float64(v), err },
		0, 1e-3, map[string]float64{"mil": inch / 1000, "um": 1e-6},
	},
	{
		"bore",
		func(s unit.System, dst []byte, v float64, _ int) []byte { return s.AppendBore(dst, unit.Length(v)) },
		func(s unit.System, v float64, _ int) string { return s.Bore(unit.Length(v)) },
		func(s string) (float64, error) { v, err := unit.ParseLength(s, 0); return float64(v), err },
		0, 0.1, map[string]float64{"in": inch, "mm": 1e-3},
	},
	{
		"temperature",
		func(s unit.System, dst []byte, v float64, d int) []byte { return s.AppendTemp(dst, unit.Temp(v), d) },
		func(s unit.System, v float64, d int) string { return s.Temp(unit.Temp(v), d) },
		func(s string) (float64, error) { v, err := unit.ParseTemp(s, 0); return float64(v), err },
		200, 400, map[string]float64{"F": 5.0 / 9, "C": 1},
	},
	{
		"temperature difference",
		func(s unit.System, dst []byte, v float64, d int) []byte {
			return s.AppendTempDiff(dst, unit.TempDiff(v), d)
		},
		func(s unit.System, v float64, d int) string { return s.TempDiff(unit.TempDiff(v), d) },
		func(s string) (float64, error) { v, err := unit.ParseTempDiff(s, 0); return float64(v), err },
		-50, 50, map[string]float64{"F": 5.0 / 9, "C": 1},
	},
	{
		"flow",
		func(s unit.System, dst []byte, v float64, d int) []byte { return s.AppendFlow(dst, unit.Flow(v), d) },
		func(s unit.System, v float64, d int) string { return s.Flow(unit.Flow(v), d) },
		func(s string) (float64, error) { v, err := unit.ParseFlow(s, 0); return float64(v), err },
		0, 0.1, map[string]float64{"cfm": foot * foot * foot / 60 * 1.01325, "L/min": 1e-3 / 60},
	},
	{
		"volume",
		func(s unit.System, dst []byte, v float64, d int) []byte {
			return s.AppendVolume(dst, unit.Volume(v), d)
		},
		func(s unit.System, v float64, d int) string { return s.Volume(unit.Volume(v), d) },
		func(s string) (float64, error) { v, err := unit.ParseVolume(s, 0); return float64(v), err },
		0, 0.02, map[string]float64{"gal": gallon, "fl oz": gallon / 128, "L": 1e-3, "mL": 1e-6},
	},
	{
		"area",
		func(s unit.System, dst []byte, v float64, d int) []byte { return s.AppendArea(dst, unit.Area(v), d) },
		func(s unit.System, v float64, d int) string { return s.Area(unit.Area(v), d) },
		func(s string) (float64, error) { v, err := unit.ParseArea(s, 0); return float64(v), err },
		0, 30, map[string]float64{"ft2": foot * foot, "m2": 1},
	},
	{
		"viscosity",
		func(_ unit.System, dst []byte, v float64, d int) []byte {
			return unit.AppendKinematic(dst, unit.Kinematic(v), d)
		},
		func(_ unit.System, v float64, d int) string { return unit.KinematicText(unit.Kinematic(v), d) },
		func(s string) (float64, error) { v, err := unit.ParseViscosity(s); return float64(v), err },
		0, 1e-3, map[string]float64{"mm2/s": 1e-6},
	},
	{
		"percent",
		func(_ unit.System, dst []byte, v float64, d int) []byte { return unit.AppendPercent(dst, v, d) },
		func(_ unit.System, v float64, d int) string { return unit.PercentText(v, d) },
		unit.ParsePercent,
		-1, 2, map[string]float64{"%": 0.01},
	},
}

func TestReadingBackWhatWasPrintedIsWithinItsRounding(t *testing.T) {
	for _, a := range amounts {
		t.Run(a.name, rapid.MakeCheck(func(t *rapid.T) {
			v := rapid.Float64Range(a.low, a.high).Draw(t, "v")
			decimals := rapid.IntRange(unit.Usual, 4).Draw(t, "decimals")
			s := rapid.SampledFrom([]unit.System{unit.US, unit.Metric}).Draw(t, "system")
			text := a.text(s, v, decimals)

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
			back, err := a.parse(text)
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
		back, err := unit.ParseLength(text, 0)
		require.NoError(t, err)
		assert.Equal(t, l, back, text)
	}
}

func TestAppendExtendsAndAllocatesNothing(t *testing.T) {
	buffer := make([]byte, 0, 64)
	for _, a := range amounts {
		for _, s := range []unit.System{unit.US, unit.Metric} {
			v := (a.low + a.high) / 2
			got := a.append(s, append(buffer[:0], "at "...), v, 2)
			assert.Equal(t, "at "+a.text(s, v, 2), string(got), a.name)
			allocs := testing.AllocsPerRun(100, func() { a.append(s, buffer[:0], v, unit.Usual) })
			assert.Zero(t, allocs, a.name)
		}
	}
}

func TestABareNumberMeansTheUnitOfTheSystem(t *testing.T) {
	for _, c := range []struct {
		s                 unit.System
		p, tmp, small     string
		long, film, f     string
		volume, area, dif string
	}{
		{unit.US, "2.0 psi", "2 F", "2.0 in", "2 ft", "2.0 mil", "2.0 cfm", "2.00 gal", "2.0 ft2", "2.0 F"},
		{unit.Metric, "2.00 bar", "2.0 C", "2.0 mm", "2.0 m", "2.0 um", "2.0 L/min", "2.00 L", "2.00 m2", "2.0 C"},
	} {
		p, err := unit.ParseGauge("2", c.s.PressureUnit())
		require.NoError(t, err)
		assert.Equal(t, c.p, c.s.Gauge(p, unit.Usual))
		tmp, err := unit.ParseTemp("2", c.s.TempUnit())
		require.NoError(t, err)
		assert.Equal(t, c.tmp, c.s.Temp(tmp, unit.Usual))
		dif, err := unit.ParseTempDiff("2", c.s.TempUnit())
		require.NoError(t, err)
		assert.Equal(t, c.dif, c.s.TempDiff(dif, unit.Usual))
		small, err := unit.ParseLength("2", c.s.SmallUnit())
		require.NoError(t, err)
		assert.Equal(t, c.small, c.s.Small(small, unit.Usual))
		long, err := unit.ParseLength("2", c.s.LongUnit())
		require.NoError(t, err)
		assert.Equal(t, c.long, c.s.Long(long, unit.Usual))
		film, err := unit.ParseLength("2", c.s.FilmUnit())
		require.NoError(t, err)
		assert.Equal(t, c.film, c.s.Film(film, unit.Usual))
		f, err := unit.ParseFlow("2", c.s.FlowUnit())
		require.NoError(t, err)
		assert.Equal(t, c.f, c.s.Flow(f, unit.Usual))
		volume, err := unit.ParseVolume("2", c.s.VolumeUnit())
		require.NoError(t, err)
		assert.Equal(t, c.volume, c.s.Volume(volume, unit.Usual))
		area, err := unit.ParseArea("2", c.s.AreaUnit())
		require.NoError(t, err)
		assert.Equal(t, c.area, c.s.Area(area, unit.Usual))
	}
}
