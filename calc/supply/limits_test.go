package supply_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boothset/calc/supply"
	"boothset/calc/unit"
)

// narrow is 100 m of 10 mm pipe for 10 L/s, an open wall at its end. By hand its formula,
// dp = 1.6e12 q^1.85 L/(d^5 p1), sums up to p1^2 - p2^2 = 638484 kPa2. So 102.12 psig would
// bring air to the far end at all, but only from sqrt(638484/0.75) = 922.67 kPa, 119.13 psig,
// on does the pipe leave half of its pressure, as far as the formula goes.
func narrow(cutIn float64) supply.System {
	return supply.System{
		Rated: 8e-3, RatedInlet: supply.SCFMInlet, Inlet: supply.SCFMInlet,
		CutIn: unit.PSIG(cutIn), CutOut: unit.PSIG(cutIn + 20),
		Receiver: supply.Receiver{Volume: unit.Litres(200)},
		Main:     supply.Main{Length: 100, Bore: unit.MM(10)},
	}
}

// From 130 psig, 2 L/s short, 200 L last 0.2 x 74978 Pa/(100 kPa x 2e-3) = 74.98 s to 119.13
// psig; to 102.12 it would be 192.2 s.
func TestAMainMustLeaveHalfOfItsPressure(t *testing.T) {
	v, err := supply.Check(narrow(130), 10e-3, 0, time.Minute)
	require.NoError(t, err)
	assert.True(t, v.OK)
	assert.InDelta(t, 74.9778, v.Hold.Time.Seconds(), 1e-3)
	assert.InDelta(t, 74.9778+20*unit.PascalPerPSI*0.2/1e5/10e-3, v.FromFull.Time.Seconds(), 1e-3)

	// A cut-in between the two is the main's fault, whatever the time.
	v, err = supply.Check(narrow(110), 10e-3, 0, 0)
	require.NoError(t, err)
	assert.False(t, v.OK)
	assert.Equal(t, supply.MainLimit, v.Limit)
	assert.Zero(t, v.Hold.Time)
	assert.Zero(t, v.EnoughDelivered)

	// Half is the least: 638484 kPa2 are 0.75 of 922.67 kPa squared.
	m := supply.Main{Length: 100, Bore: unit.MM(10)}
	d, err := m.Drop(10e-3, 922.67e3)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.5*922.67e3, float64(d), 1e-4)
	_, err = m.Drop(10e-3, 922.66e3)
	var in *supply.InputError
	require.ErrorAs(t, err, &in)
	assert.Equal(t, supply.InputError{Field: "main", ID: "main-too-narrow", Given: 10, Unit: "mm"}, *in)
}

// A main that costs the whole receiver's fall: without it the panel would be done. By hand
// at 60 psi needed: 413.685 kPa gauge, 515.010 absolute; the floor is sqrt(515.010^2 +
// 638484) = 950.64 kPa, 123.18 psig; from 125 psig that is 12.53 s, from 60 psig 448.2 s.
func TestTheMainIsTheLimitWhereTheReceiverAloneWouldDo(t *testing.T) {
	v, err := supply.Check(narrow(125), 10e-3, unit.PSIG(60), 5*time.Minute)
	require.NoError(t, err)
	assert.False(t, v.OK)
	assert.InDelta(t, 12.53, v.Hold.Time.Seconds(), 0.01)
	assert.Equal(t, supply.MainLimit, v.Limit)
	// For longer than the receiver lasts it is no longer the main's fault alone.
	v, err = supply.Check(narrow(125), 10e-3, unit.PSIG(60), 10*time.Minute)
	require.NoError(t, err)
	assert.NotEqual(t, supply.MainLimit, v.Limit)
	assert.Positive(t, v.EnoughDelivered)
}

// No receiver up to the largest would do, so the compressor is the way: 1 psi to fall by for
// a day at 2 m3/s.
func TestNoReceiverBigEnough(t *testing.T) {
	s := shop()
	s.Main, s.Rated = supply.Main{}, 0
	v, err := supply.Check(s, 2, unit.PSIG(89), 24*time.Hour)
	require.NoError(t, err)
	assert.Equal(t, supply.CompressorLimit, v.Limit)
	assert.Zero(t, v.EnoughReceiver)
	assert.Positive(t, v.EnoughDelivered)
}

// Cut-in exactly at what is needed, and a compressor that delivers exactly what is drawn,
// just do.
func TestJustEnoughIsEnough(t *testing.T) {
	s := shop()
	s.Main = supply.Main{}
	v := check(t, s, 10, 90, time.Hour)
	assert.True(t, v.OK && v.KeepsUp && v.Hold.Endless)
	assert.InDelta(t, 0, v.Margin.SCFM(), 1e-12)
	// The panel's time exactly as long as the receiver lasts.
	v = check(t, s, 15, 60, time.Minute)
	again := check(t, s, 15, 60, v.Hold.Time)
	assert.True(t, again.OK)
	assert.False(t, check(t, s, 15, 60, v.Hold.Time+time.Millisecond).OK)
	// A cut-in below the wall is the switch's fault.
	s.CutIn = unit.PSIG(59.9)
	assert.Equal(t, supply.SwitchLimit, check(t, s, 9, 60, time.Minute).Limit)
	// From cut-out it still lasts until the pressure is down to what is needed:
	// (120 - 60) psi x 60 gal/(100 kPa x 9 scfm).
	full := check(t, s, 9, 60, time.Minute).FromFull
	assert.False(t, full.Endless)
	want := 60 * unit.PascalPerPSI * float64(unit.USGallons(60)) / 1e5 / float64(unit.SCFM(9))
	assert.InEpsilon(t, want, full.Time.Seconds(), 1e-6)
	assert.Equal(t, 5.0, math.Round(supply.LowestCutIn.PSI()*1e9)/1e9)
}

// Liquid counts by the cubic metre at ANR, 1.185 kg/m3. By psychrolib 1.1.1 at 8.01325 bar,
// from a receiver at 20 C to a pipe of 15.8 C it is 0.42400 g/kg, 0.5024 g/m3: just over
// class 7's 0.5. To 15.9 C it is 0.41502 g/kg, 0.4918 g/m3.
func TestWaterClassCountsByTheCubicMetre(t *testing.T) {
	for celsius, class := range map[float64]supply.Class{15.8: 8, 15.9: 7} {
		d := damp(25, 60, 7, 20)
		d.Main = unit.Celsius(celsius)
		w := follow(t, d)
		assert.Equal(t, supply.AtMain, w.Last)
		assert.Equal(t, class, w.Class, "pipe at %v C", celsius)
	}
	d := damp(25, 60, 7, 20)
	d.Main = unit.Celsius(15.8)
	assert.InEpsilon(t, 0.42399972289921606, gramsPerKg(follow(t, d).InMain, d), 1e-6)
	// Each class to its very limit.
	for grams, want := range map[float64]supply.Class{0.5: 7, 0.501: 8, 5: 8, 5.001: 9, 10: 9, 10.001: supply.ClassX} {
		assert.Equal(t, want, supply.ClassOf(unit.Celsius(20), grams), "%v g/m3", grams)
	}
	assert.Equal(t, supply.Class(10), supply.ClassX)
}

// Isothermal by hand: 200 L at 20 C and 1 m3/h net are 100 kPa x (1/3600)/0.2 = 138.9 Pa a
// second; no time moves nothing, and no pressure falls below ambient or passes 1e8 Pa.
func TestPressureAfterATime(t *testing.T) {
	r := supply.Receiver{Volume: unit.Litres(200)}
	start := unit.BarG(5)
	net := unit.Flow(1.0 / 3600)
	assert.InDelta(t, 5e5-60*138.8889, float64(r.After(start, net, 0, time.Minute)), 0.01)
	assert.InDelta(t, 5e5+60*138.8889, float64(r.After(start, 0, net, time.Minute)), 0.01)
	assert.InDelta(t, 5e5-138.8889/2, float64(r.After(start, net, 0, time.Second/2)), 0.01)
	assert.Equal(t, start, r.After(start, net, 0, 0))
	assert.Equal(t, start, r.After(start, net, 0, -time.Hour))
	assert.Equal(t, unit.Gauge(1e8), r.After(start, 0, 1e6, time.Hour))
	// 40 C is 313.15/293.15 as fast.
	r.Temp = unit.Celsius(40)
	assert.InDelta(t, 5e5-60*138.8889*313.15/293.15, float64(r.After(start, net, 0, time.Minute)), 0.01)
}

// A receiver or a temperature beyond the bounds counts as the bound: a litre, 1000 m3, -40
// and 100 C; and falls up to 1e8 Pa.
func TestReceiversBeyondTheirBounds(t *testing.T) {
	fall := unit.Drop(1e5)
	free := func(v unit.Volume, temp unit.Temp, fall unit.Drop) float64 {
		return float64(supply.Receiver{Volume: v, Temp: temp}.FreeAir(fall))
	}
	assert.InEpsilon(t, 1e-3, free(1e-6, 0, fall), 1e-12)
	assert.InEpsilon(t, 1000, free(1e6, 0, fall), 1e-12)
	assert.InEpsilon(t, 293.15/233.15, free(1, unit.Celsius(-90), fall), 1e-12)
	assert.InEpsilon(t, 293.15/373.15, free(1, unit.Celsius(300), fall), 1e-12)
	assert.InEpsilon(t, 1e3, free(1, 0, 1e12), 1e-12)
	assert.Zero(t, free(1, 0, -5))
	// A day is the longest told apart.
	r := supply.Receiver{Volume: 1}
	assert.Equal(t, supply.Span{Time: 24 * time.Hour}, r.DrawDown(fall, 1e-6, 0))
	assert.Equal(t, supply.Span{}, r.DrawDown(-5, 1e-3, 0))
	assert.Equal(t, supply.Span{}, r.DrawDown(0, 0, 1e-3), "already there, whatever flows")
}

// The stamps' own inlets: ISO 1217's 1 bar and 20 C (from memory, not verified), and an
// scfm's 14.696 psia and 68 F.
func TestInletsOfStamps(t *testing.T) {
	assert.InEpsilon(t, 1, supply.ISOInlet.Ambient.Bar(), 1e-12)
	assert.InEpsilon(t, 14.696, supply.SCFMInlet.Ambient.PSI(), 1e-5)
	for _, in := range []supply.Inlet{supply.ISOInlet, supply.SCFMInlet} {
		assert.InDelta(t, 68, in.Temp.F(), 1e-9)
	}
}
