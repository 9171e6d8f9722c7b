package supply_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"boothset/calc/supply"
	"boothset/calc/unit"
)

// freeAir is a flow in cubic feet a minute at an ambient in psia, 68 F.
func freeAir(cfm, psia float64) unit.Flow {
	return unit.Flow(cfm * unit.CubicFoot / unit.SecondPerMinute * psia * unit.PascalPerPSI / unit.ANRPressure)
}

// cubicFeet is a volume in ft3. The sizing tools below take 7.48 gal in one.
func cubicFeet(v unit.Volume) float64 { return float64(v) / unit.CubicFoot }

func receiver(gallons float64) supply.Receiver {
	return supply.Receiver{Volume: unit.USGallons(gallons)}
}

func minutes(m float64) time.Duration { return time.Duration(m * float64(time.Minute)) }

func TestReceiverSizeAgainstPublishedCases(t *testing.T) {
	const ft3 = 1 / 7.48
	cases := []struct {
		name           string
		min, use, comp float64
		psia, fall     float64
		gallons, tol   float64
	}{
		{"handbook example: 5 min, 350 less 250 cfm, 100 to 60 psig", 5, 350, 250, 14.7, 40, 1374.5, 1e-3},
		{"DOE/ORNL AMO tools unit test: dedicated storage, 100 cfm, 110 to 100", 0.5, 100, 0, 14.7, 10, 549.78, 1e-6},
		{"DOE/ORNL AMO tools unit test: metered storage, 800 less 45 cfm, 100 to 70", 1.5, 800, 45, 14.7, 30, 4150.839, 1e-6},
		{"DOE/ORNL AMO tools unit test: altitude, 11.7 psia, 120 cfm, 150 to 120", 1.5, 120, 0, 11.7, 30, 525.096, 1e-6},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			use, comp, fall := freeAir(c.use, c.psia), freeAir(c.comp, c.psia), unit.PSIDrop(c.fall)
			v, err := supply.ReceiverFor(use, comp, minutes(c.min), fall, 0)
			require.NoError(t, err)
			assert.InEpsilon(t, c.gallons*ft3, cubicFeet(v), c.tol)
			back := supply.Receiver{Volume: v}.DrawDown(fall, use, comp)
			assert.InEpsilon(t, c.min, back.Time.Minutes(), 1e-8, "the size and the draw-down are one equation")
		})
	}
}

func TestUsableAirAgainstDOEStorageCases(t *testing.T) {
	for _, c := range []struct{ gallons, from, to, scf float64 }{
		{660, 110, 100, 60.0240096038},
		{760, 150, 100, 345.5927825676},
	} {
		r := supply.Receiver{Volume: unit.Volume(c.gallons / 7.48 * unit.CubicFoot)}
		anr := r.FreeAir(unit.PSIDrop(c.from - c.to))
		at147 := cubicFeet(anr) * unit.ANRPressure / (14.7 * unit.PascalPerPSI)
		assert.InEpsilon(t, c.scf, at147, 1e-9, "%v gal, %v to %v psig", c.gallons, c.from, c.to)
	}
}

// Inputs from a published pump-up measurement of a 25 gal machine; the result is
// the same arithmetic at 14.7 psia, 7.48 gal in a cubic foot: 6.63 cfm.
func TestPumpUpTestOf25Gallons(t *testing.T) {
	q, err := receiver(25).Delivered(unit.PSIDrop(102-85), 35*time.Second)
	require.NoError(t, err)
	assert.InEpsilon(t, 6.63, q.SCFM(), 0.005)
	assert.InDelta(t, 35, receiver(25).PumpUp(unit.PSIDrop(17), q, 0).Time.Seconds(), 1e-6)

	for _, bad := range []struct {
		psi float64
		t   time.Duration
	}{{0, time.Minute}, {-5, time.Minute}, {17, 0}, {math.NaN(), time.Minute}, {17, 48 * time.Hour}} {
		_, err := receiver(25).Delivered(unit.PSIDrop(bad.psi), bad.t)
		var input *supply.InputError
		require.ErrorAs(t, err, &input, "%v", bad)
		assert.Contains(t, err.Error(), "outside")
	}
}

// 60 gal, 120 to 90 psig, 15 cfm out and 10 in: 3.2738095240368716 min at 14.7 psia,
// computed with 7.48051948 gal in a cubic foot.
func TestDrawDownOf60Gallons(t *testing.T) {
	s := receiver(60).DrawDown(unit.PSIDrop(30), freeAir(15, 14.7), freeAir(10, 14.7))
	assert.False(t, s.Endless)
	assert.InEpsilon(t, 3.2738095240368716, s.Time.Minutes(), 1e-8)
}

// march integrates dp/dt = rate(p) by fourth-order Runge-Kutta until p crosses end, whose
// time is then found by shortening the last step. gonum 0.17 has no ODE integrator, only
// quadrature; this one is checked below against a closed form before it judges anything.
func march(rate func(p float64) float64, p, end, step float64) (seconds float64) {
	stepped := func(p, h float64) float64 {
		k1 := rate(p)
		k2 := rate(p + h/2*k1)
		k3 := rate(p + h/2*k2)
		k4 := rate(p + h*k3)
		return p + h/6*(k1+2*k2+2*k3+k4)
	}
	for {
		next := stepped(p, step)
		if (next-end)*(p-end) <= 0 {
			low, high := 0.0, step
			for range 60 {
				mid := (low + high) / 2
				if (stepped(p, mid)-end)*(p-end) > 0 {
					low = mid
				} else {
					high = mid
				}
			}
			return seconds + (low+high)/2
		}
		p, seconds = next, seconds+step
	}
}

// 227 dm3 from 8 to 5 bar absolute through a choked outlet of C = 2 dm3/(s bar):
// V/(C p0) ln(p1/p2) = 53.345411919391 s.
func TestIntegratorAgainstChokedBlowDown(t *testing.T) {
	const v, c = 0.227, 2e-8
	rate := func(p float64) float64 { return -c * p * unit.ANRPressure / v }
	assert.InEpsilon(t, 53.345411919391, march(rate, 8e5, 5e5, 0.5), 1e-10)

	byQuadrature := quad.Fixed(func(p float64) float64 { return -1 / rate(p) }, 5e5, 8e5, 24, quad.Legendre{}, 0)
	assert.InEpsilon(t, 53.345411919391, byQuadrature, 1e-12)
}

func TestDrawDownAgainstIntegratedODE(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		gallons := rapid.Float64Range(5, 500).Draw(t, "gal")
		use := rapid.Float64Range(5, 60).Draw(t, "use")
		comp := use * rapid.Float64Range(0, 0.9).Draw(t, "share")
		from := rapid.Float64Range(80, 175).Draw(t, "from")
		fall := rapid.Float64Range(1, 60).Draw(t, "fall")
		celsius := rapid.Float64Range(-10, 60).Draw(t, "C")
		r := supply.Receiver{Volume: unit.USGallons(gallons), Temp: unit.Celsius(celsius)}

		// the mass in the vessel, p V = m R T, with in and out as mass flows
		const rSpecific = unit.ANRPressure / (unit.ANRDensity * unit.ANRTemperature)
		mdot := float64(unit.SCFM(comp).Mass() - unit.SCFM(use).Mass())
		rate := func(float64) float64 { return mdot * rSpecific * float64(r.Temp) / float64(r.Volume) }
		start := unit.PSIG(from)
		end := start - unit.Gauge(unit.PSIDrop(fall))
		want := march(rate, float64(start), float64(end), 1)

		got := r.DrawDown(unit.PSIDrop(fall), unit.SCFM(use), unit.SCFM(comp))
		require.False(t, got.Endless)
		require.InEpsilon(t, want, got.Time.Seconds(), 1e-6)
		size, err := supply.ReceiverFor(unit.SCFM(use), unit.SCFM(comp), got.Time, unit.PSIDrop(fall), r.Temp)
		require.NoError(t, err)
		require.InEpsilon(t, gallons, size.USGallons(), 1e-6)
		require.InEpsilon(t, end.PSI(), r.After(start, unit.SCFM(use), unit.SCFM(comp), got.Time).PSI(), 1e-6)
	})
}

func TestSpansThatNeverEnd(t *testing.T) {
	r := receiver(60)
	fall := unit.PSIDrop(30)
	assert.Equal(t, supply.Span{Time: supply.MaxSpan, Endless: true}, r.DrawDown(fall, unit.SCFM(10), unit.SCFM(10)))
	assert.True(t, r.PumpUp(fall, unit.SCFM(10), unit.SCFM(12)).Endless, "the pressure does not rise")
	assert.Equal(t, supply.Span{}, r.DrawDown(0, unit.SCFM(10), 0), "already there")
	assert.Equal(t, supply.Span{Time: supply.MaxSpan}, r.DrawDown(fall, unit.SCFM(10.0001), unit.SCFM(10)), "a day is the longest told apart")
	assert.Equal(t, unit.Gauge(0), r.After(unit.PSIG(5), unit.SCFM(60), 0, time.Hour), "never below ambient")
}

func TestNoReceiverWouldDo(t *testing.T) {
	for _, fall := range []float64{0, -1, math.NaN(), 1e-9} {
		_, err := supply.ReceiverFor(unit.SCFM(20), unit.SCFM(5), time.Minute, unit.PSIDrop(fall), 0)
		assert.Error(t, err, "fall of %v psi", fall)
	}
}

// Any finite numbers at all.
func TestReceiverStaysFinite(t *testing.T) {
	finite := func(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string) float64 { return rapid.Float64().Filter(finite).Draw(t, name) }
		d := time.Duration(rapid.Int64().Draw(t, "t"))
		r := supply.Receiver{Volume: unit.Volume(f("V")), Temp: unit.Temp(f("T"))}
		use, comp, change := unit.Flow(f("use")), unit.Flow(f("comp")), unit.Drop(f("change"))
		for _, s := range []supply.Span{r.DrawDown(change, use, comp), r.PumpUp(change, comp, use)} {
			require.GreaterOrEqual(t, s.Time, time.Duration(0))
			require.LessOrEqual(t, s.Time, supply.MaxSpan)
			require.True(t, !s.Endless || s.Time == supply.MaxSpan)
		}
		require.True(t, finite(float64(r.FreeAir(change))))
		require.True(t, finite(float64(r.After(unit.Gauge(f("start")), use, comp, d))))
		if v, err := supply.ReceiverFor(use, comp, d, change, r.Temp); err == nil {
			require.True(t, finite(float64(v)) && v > 0)
		}
		if q, err := r.Delivered(change, d); err == nil {
			require.True(t, finite(float64(q)) && q > 0)
		}
	})
}
