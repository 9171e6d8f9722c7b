package gun_test

import (
	"math"
	"testing"

	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The stamp fixes two restrictions of ISO 6358: passages with b = 0.3, the middle of the
// 0.2 to 0.4 published for fittings, and a cap that chokes at the ideal nozzle's ratio. By
// scipy, apart from this package: 1.918370 and 1.998999 dm3/(s bar) for 10 scfm at 32 psi
// with 20 at the cap.
func TestTheTwoRestrictionsOfAStamp(t *testing.T) {
	g := reduced(t)
	assert.InEpsilon(t, 0.3, g.Passages.B, 1e-12)
	assert.InEpsilon(t, 0.5282817877, g.Cap.B, 1e-9)
	assert.InEpsilon(t, 1.9183704359405165, g.Passages.C.DM3PerSBar(), 1e-12)
	assert.InEpsilon(t, 1.9989986424284212, g.Cap.C.DM3PerSBar(), 1e-12)
}

// The same two solved with scipy's brentq off the stamp: throttled, on a hot mountain, and
// far above the stamp, where the one, the other or neither is choked.
func TestAirOffTheStampAgainstScipy(t *testing.T) {
	for _, c := range []struct {
		g                     gun.Gun
		psi, ambient, celsius float64
		scfm, cap             float64
		capChoked             bool
	}{
		{highVolume(t), 12, 101325, 20, 8.442853499383727, 3.077469217710351, false},
		{highVolume(t), 29, 84300, 30, 13.953708447408514, 10.89983262225452, false},
		{highVolume(t), 63.8, 101325, 20, 27.017327665344638, 29.33711665743178, true},
		{reduced(t), 12, 101325, 20, 5.458312817616985, 5.8980333086223435, false},
		{reduced(t), 32, 84300, 30, 9.313679967404672, 20.634556328659926, true},
		{reduced(t), 70.4, 101325, 20, 18.22341145365833, 48.531906255610004, true},
		{older(t), 12, 101325, 20, 5.528459769060116, 6.085714930513374, false},
		{older(t), 50, 84300, 30, 13.241700230504787, 34.61067625570803, true},
		{older(t), 110, 101325, 20, 26.983811442578755, 79.16135835133859, true},
	} {
		a := line.NewAir(unit.Abs(c.ambient), unit.Celsius(c.celsius))
		q, cap := c.g.Air(unit.PSIG(c.psi).Abs(a.Ambient), a)
		assert.InEpsilon(t, c.scfm, q.SCFM(), 1e-8, "%v psi", c.psi)
		assert.InEpsilon(t, c.cap, cap.Gauge(a.Ambient).PSI(), 1e-8, "%v psi", c.psi)
		assert.Equal(t, c.capChoked, float64(a.Ambient) <= c.g.Cap.B*float64(cap))
		assert.InEpsilon(t, c.psi, c.g.AtCap(cap.Gauge(a.Ambient), a).PSI(), 1e-8)
	}
}

// Passages narrow enough to choke, by hand: 10 scfm at 60 psi with 5 at the cap choke them
// (5 psi are 0.264 of 60, absolute), so at 90 psi they pass 104.696/74.696 times as much.
func TestChokedPassages(t *testing.T) {
	g := made(t, 60, 10, 5, 0)
	q, _ := g.Air(unit.PSIG(90).Abs(sea.Ambient), sea)
	assert.InEpsilon(t, 10*104.69595/74.69595, q.SCFM(), 1e-6)
}

func TestNoPressureNoAir(t *testing.T) {
	g := reduced(t)
	for _, psi := range []float64{0, -5} {
		q, cap := g.Air(unit.PSIG(psi).Abs(sea.Ambient), sea)
		assert.Zero(t, q)
		assert.Equal(t, sea.Ambient, cap)
	}
	assert.Equal(t, gun.Jet{}, gun.JetOf(0, 3e5, sea))
	assert.Equal(t, gun.Jet{}, gun.JetOf(-1, 3e5, sea))
	assert.Equal(t, gun.Jet{}, gun.JetOf(unit.SCFM(5), sea.Ambient, sea))
}

// The inlet that brings a cap stamped 10 psi at 29 to 10 psi, by scipy: 29.420 psi where
// the air weighs 106.2 kPa (below the sea), 27.270 at 83.4 kPa (a mile up). The gun is
// never run above its stamp, whatever its cap would bear.
func TestHighestBelowSeaLevelIsTheStamp(t *testing.T) {
	g := highVolume(t)
	low := line.NewAir(106200, unit.ANRTemperature)
	assert.InEpsilon(t, 29.419874524464888, g.AtCap(unit.PSIG(10), low).PSI(), 1e-9)
	assert.InEpsilon(t, 29, g.Highest(low).PSI(), 1e-12)
	high := line.NewAir(83400, unit.ANRTemperature)
	assert.InEpsilon(t, 27.269648709776877, g.Highest(high).PSI(), 1e-9)
	// Where the class sets no limit the stamp is the only one.
	free := made(t, 29, 15, 10, 0)
	assert.InEpsilon(t, 29, free.Highest(high).PSI(), 1e-12)
}

// A subsonic jet by hand, isentropic: at 0.843019 of the pressure at rest (Mach 0.5 in the
// tables) air of 293.15 K is at 293.15/1.05 K, leaves at half of sqrt(1.4 x 287.05 x 279.19)
// = 334.959 m/s, and its thrust is its momentum alone.
func TestSubsonicThrustByHand(t *testing.T) {
	q := unit.SCFM(10)
	j := gun.JetOf(q, unit.Abs(unit.SCFMPressure/0.8430192), sea)
	assert.InEpsilon(t, 167.4795, float64(j.Speed), 1e-5)
	assert.InEpsilon(t, float64(q.Mass())*167.4795, j.Thrust, 1e-5)
}

// Equal pushes lie as far off as the root of the thrust: four times the air at one
// pressure reaches twice as far.
func TestReachGoesAsTheRootOfTheThrust(t *testing.T) {
	one := gun.JetOf(unit.SCFM(4), 2e5, sea)
	four := gun.JetOf(unit.SCFM(16), 2e5, sea)
	assert.InEpsilon(t, 4, four.Thrust/one.Thrust, 1e-12)
	g := reduced(t)
	felt := g.FeltAt(unit.Inches(5.5), unit.PSIG(26))
	assert.InEpsilon(t, 2, float64(four.Reach(felt)/one.Reach(felt)), 1e-12)
	q, cap := g.Air(unit.PSIG(26).Abs(sea.Ambient), sea)
	assert.InEpsilon(t, 5.5, gun.JetOf(q, cap, sea).Reach(felt).Inches(), 1e-9)
}

// The shipped shape by hand: half open passes 0.5^2.25 = 0.21022 of the air, four fifths open
// 0.8^2.25 = 0.60526; and what passes 0.615 of it stands at 81 % with that shape, at 62 % in
// proportion and at 38 % where it opens early, by the square root.
func TestShapeByHand(t *testing.T) {
	s := valve(5).Shape
	for x, y := range map[float64]float64{0: 0, 0.5: 0.210224, 0.8: 0.605275, 1: 1} {
		assert.InDelta(t, y, s.Share(x), 1e-6)
		assert.InDelta(t, x, s.Opening(y), 1e-6)
	}
	assert.Zero(t, s.Opening(-1))
	assert.Equal(t, 1.0, s.Opening(2))
	for shape, opening := range map[gun.Shape]float64{2.25: 0.81, gun.Linear: 0.615, 0.5: 0.38} {
		assert.InDelta(t, opening, shape.Opening(0.615), 0.005)
	}
	v := valve(5)
	half := v.At(0.5)
	assert.InEpsilon(t, 0.210224*5, half.C.DM3PerSBar(), 1e-6)
	assert.Equal(t, v.Full.B, half.B)
}

func TestWhatIsWrongWithAGunIsNamed(t *testing.T) {
	stamp := gun.Stamp{Inlet: unit.PSIG(30), Flow: unit.SCFM(10), Cap: unit.PSIG(10)}
	with := func(change func(*gun.Stamp, *gun.Valve)) string {
		s, v := stamp, valve(5)
		change(&s, &v)
		_, err := gun.New(s, 0, v)
		var f *gun.Fault
		require.ErrorAs(t, err, &f)
		return f.ID
	}
	for id, changes := range map[string][]func(*gun.Stamp, *gun.Valve){
		"stamp-not-above-zero": {
			func(s *gun.Stamp, _ *gun.Valve) { s.Inlet = 0 }, func(s *gun.Stamp, _ *gun.Valve) { s.Flow = 0 },
			func(s *gun.Stamp, _ *gun.Valve) { s.Cap = 0 }, func(s *gun.Stamp, _ *gun.Valve) { s.Cap = -1 },
		},
		"stamp-cap-not-below": {
			func(s *gun.Stamp, _ *gun.Valve) { s.Cap = s.Inlet }, func(s *gun.Stamp, _ *gun.Valve) { s.Cap = 2 * s.Inlet },
		},
		"stamp-cap-too-near": {func(s *gun.Stamp, _ *gun.Valve) { s.Cap = 1e-12 }},
		"valve-no-conductance": {
			func(_ *gun.Stamp, v *gun.Valve) { v.Full.C = 0 }, func(_ *gun.Stamp, v *gun.Valve) { v.Full.C = unit.Conductance(math.Inf(1)) },
		},
		"valve-ratio": {
			func(_ *gun.Stamp, v *gun.Valve) { v.Full.B = -0.1 }, func(_ *gun.Stamp, v *gun.Valve) { v.Full.B = 1 },
		},
		"valve-turns": {
			func(_ *gun.Stamp, v *gun.Valve) { v.Turns = 0 }, func(_ *gun.Stamp, v *gun.Valve) { v.Turns = math.Inf(1) },
		},
		"valve-shape": {
			func(_ *gun.Stamp, v *gun.Valve) { v.Shape = 0 }, func(_ *gun.Stamp, v *gun.Valve) { v.Shape = -1 },
			func(_ *gun.Stamp, v *gun.Valve) { v.Shape = gun.Shape(math.Inf(1)) }, func(_ *gun.Stamp, v *gun.Valve) { v.Shape = gun.Shape(math.NaN()) },
		},
	} {
		for i, change := range changes {
			assert.Equal(t, id, with(change), "%s %d", id, i)
		}
	}
	_, err := gun.New(stamp, 0, gun.Valve{Full: line.Restriction{C: 1e-8, B: 0}, Shape: gun.Linear, Turns: 0.1})
	assert.NoError(t, err, "b of 0 and a tenth of a turn are a valve")
}

// The valve that is not open enough for its flow has none that will do.
func TestOpeningForMoreThanItPasses(t *testing.T) {
	v := valve(5)
	full := v.Full.Flow(4e5, 2e5, sea)
	x, choked, ok := v.OpeningFor(full, 4e5, 2e5, sea)
	assert.True(t, ok)
	assert.False(t, choked)
	assert.InEpsilon(t, 1, x, 1e-9)
	x, choked, ok = v.OpeningFor(full*1.001, 4e5, 2e5, sea)
	assert.False(t, ok || choked)
	assert.Equal(t, 1.0, x)
	x, _, ok = v.OpeningFor(full, 2e5, 4e5, sea)
	assert.False(t, ok)
	assert.Equal(t, 1.0, x)
}
