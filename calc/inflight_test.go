package calc

import (
	"math"
	"testing"

	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// highVolumeBase is a base coat on a high-volume low-pressure gun: common practice, no
// published source.
func highVolumeBase(t require.TestingT) Request {
	r := mildClear(t)
	v := r.Gun.Valve
	v.Full = line.Restriction{C: unit.DM3PerSBar(10), B: 0.3}
	g, err := gun.New(gun.Stamp{Inlet: unit.PSIG(29), Flow: unit.SCFM(15), Cap: unit.PSIG(10)}, unit.PSIG(10), v)
	require.NoError(t, err)
	r.Gun.Gun, r.Gun.Nearest, r.Gun.Farthest = g, unit.Inches(5), unit.Inches(8)
	r.Coat.Working = Band{Start: unit.PSIG(25), Low: unit.PSIG(19), High: unit.PSIG(29)}
	return r
}

// A very hot, very dry day, 40 C and 12 %: clear about 24, base 23 to 24 at the gun.
// Common practice, no published source. The bounds are the model's own.
func TestVeryHotVeryDryDay(t *testing.T) {
	hot := Day{Air: unit.Celsius(40), Panel: unit.Celsius(40), Humidity: 0.12}
	clear := mildClear(t)
	base := highVolumeBase(t)
	water := highVolumeBase(t)
	water.Coat.Waterborne = true
	for name, c := range map[string]struct {
		r         Request
		low, high float64
	}{
		"clear, reduced-pressure": {clear, 23.5, 24.5},
		"base, high-volume":       {base, 23, 24},
		"waterborne, high-volume": {water, 23, 24},
	} {
		c.r.Day = hot
		s, err := Solve(&c.r)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, s.Working.Pressure.PSI(), c.low-1e-9, name)
		assert.LessOrEqual(t, s.Working.Pressure.PSI(), c.high+1e-9, name)
		l := s.Weather.InFlight
		require.True(t, l.Known)
		assert.Less(t, l.Growth, mostGrowth, name)
		assert.Greater(t, l.Growth, 0.02, name)
		assert.Greater(t, l.Drier, 2.0, "no pressure wins the whole loss back: %s", name)
		require.NotEmpty(t, l.Levers)
	}
}

func TestMildDayNeedsNoCorrection(t *testing.T) {
	for _, f := range []float64{60, 68, 72, 75} {
		r := mildClear(t)
		r.Day.Air = unit.Fahrenheit(f)
		s, err := Solve(&r)
		require.NoError(t, err)
		assert.Equal(t, 26.0, math.Round(s.Working.Pressure.PSI()*1e9)/1e9, "%g F", f)
	}
}

// Two psi less costs about 3.1 % of drop size on the reduced-pressure gun and 3.2 % on
// the high-volume one: prototype figures of the same form, whose tip was not kept.
func TestDropGrowthOfTwoPSI(t *testing.T) {
	for _, c := range []struct {
		r        Request
		from, to float64
		percent  float64
	}{{mildClear(t), 26, 24, 3.1}, {highVolumeBase(t), 25, 23, 3.2}} {
		l := newEvaporation(&c.r.Coat, &c.r.Gun, c.r.Day, unit.SCFMPressure)
		a, _, _, err := l.drop(unit.PSIG(c.from), referenceDay.Air)
		require.NoError(t, err)
		b, _, _, err := l.drop(unit.PSIG(c.to), referenceDay.Air)
		require.NoError(t, err)
		assert.InDelta(t, c.percent, (float64(b/a)-1)*100, 0.5)
	}
}

func TestNearerCoolerSlowerLandsWetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.SampledFrom([]Request{mildClear(t), highVolumeBase(t)}).Draw(t, "request")
		r.Coat.Waterborne = rapid.Bool().Draw(t, "waterborne")
		l := newEvaporation(&r.Coat, &r.Gun, r.Day, unit.Abs(rapid.Float64Range(80e3, 104e3).Draw(t, "ambient")))
		f := flightCase{
			pressure: unit.PSIG(rapid.Float64Range(15, 30).Draw(t, "psi")),
			day:      Day{Air: unit.Celsius(rapid.Float64Range(12, 45).Draw(t, "C")), Humidity: rapid.Float64Range(0.05, 0.95).Draw(t, "rh")},
		}
		lost, _, err := l.loss(f)
		require.NoError(t, err)
		require.True(t, lost >= 0 && lost <= 1)
		wetter := func(name string, change func(*flightCase)) {
			g := f
			change(&g)
			after, _, err := l.loss(g)
			require.NoError(t, err)
			assert.LessOrEqual(t, after, lost*(1+1e-9), name)
		}
		wetter("nearer", func(g *flightCase) { g.nearer = unit.Inches(1) })
		wetter("lower", func(g *flightCase) { g.pressure -= unit.PSIG(2) })
		if !r.Coat.Waterborne {
			wetter("slower", func(g *flightCase) { g.slower = 7 })
			wetter("cooler", func(g *flightCase) { g.day.Air -= 5 })
		}
		wetter("damper", func(g *flightCase) { g.day.Humidity = math.Min(1, g.day.Humidity+0.1) })
	})
}

func TestCorrectionStaysInItsBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRequest(t)
		s, err := Solve(&r)
		require.NoError(t, err)
		w := s.Weather
		assert.LessOrEqual(t, float64(w.Correction), 0.0)
		assert.LessOrEqual(t, float64(-w.Correction), float64(r.Coat.Working.Start)*mostCorrection*(1+1e-9))
		if w.InFlight.Known && w.Correction < 0 {
			assert.LessOrEqual(t, w.InFlight.Growth, mostGrowth*1.1)
		}
		assert.LessOrEqual(t, float64(s.Working.Pressure), float64(s.Working.Highest)*(1+1e-12))
	})
}
