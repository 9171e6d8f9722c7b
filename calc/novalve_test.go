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

// withoutValve takes the gun's inlet valve off.
func withoutValve(t require.TestingT, r *Request) {
	g, err := gun.New(r.Gun.Stamp, r.Gun.CapLimit, gun.Valve{None: true})
	require.NoError(t, err)
	r.Gun.Gun = g
}

// mildClear's line without the valve loses 3.1 psi to the gun: of its marks 29 psi give it what is nearest to 26 psi, and
// that is the mark; nothing is held back.
func TestAGunWithoutAValveIsSetByTheWallAlone(t *testing.T) {
	r := mildClear(t)
	withoutValve(t, &r)
	s := solved(t, r)
	assert.InDelta(t, 29, s.Wall.Flowing.PSI(), 1e-9)
	assert.InDelta(t, 26, s.Working.Wanted.PSI(), 1e-9)
	assert.InDelta(t, 26, s.Working.Pressure.PSI(), 0.5)
	assert.Zero(t, s.Valve.Reserve)
	assert.True(t, s.Valve.None)
	assert.False(t, s.Comparison.Given, "there is no valve to shut down")
	for _, step := range s.Line {
		assert.NotEqual(t, line.ValveKind, step.Kind)
	}
	reasons, cautions := told(s)
	assert.Contains(t, reasons, "wall-no-valve")
	assert.Contains(t, reasons, "valve-none")
	for _, id := range []string{"valve-opening", "valve-floor", "wall-set"} {
		assert.NotContains(t, reasons, id)
	}
	assert.NotContains(t, cautions, "w little-reserve")
}

// With neither valve nor regulator the gun gets the supply: past its stamp the job stops.
func TestNeitherValveNorRegulator(t *testing.T) {
	r := mildClear(t)
	withoutValve(t, &r)
	regulate(&r, Nowhere)
	s := solved(t, r)
	assert.Greater(t, s.Working.Pressure, s.Working.Highest)
	_, cautions := told(s)
	assert.Contains(t, cautions, "stop gun-over-stamp")
	assert.True(t, s.Stopped())
	r.Supply = unit.PSIG(30)
	s = solved(t, r)
	_, cautions = told(s)
	assert.NotContains(t, cautions, "stop gun-over-stamp")
}

// On any line and supply the wall stands on a mark within the stamp, what the gun is said to
// get is what it gets, and no other such mark lies nearer to what gives what is wanted.
func TestTheWallOfAGunWithoutAValve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRequest(t)
		withoutValve(t, &r)
		s, err := Solve(&r)
		require.NoError(t, err)
		j := newJob(&r, s.Weather.Ambient)
		if s.Short.Is || j.footSets() {
			return
		}
		got, _ := j.gunAt(j.sets, s.Wall.Flowing.Abs(j.air.Ambient), 1)
		assert.InDelta(t, s.Working.Pressure.PSI(), got.Gauge(j.air.Ambient).PSI(), 1e-4)
		assert.InDelta(t, 0, float64(s.Valve.Reserve), 1e-3)
		if j.sets < 0 {
			assert.Equal(t, r.Supply, s.Wall.Flowing)
			return
		}
		assert.LessOrEqual(t, float64(s.Working.Pressure), float64(s.Working.Highest)*(1+1e-9))
		assert.LessOrEqual(t, float64(s.Wall.Flowing), float64(r.Supply)*(1+1e-9))
		j.solveFor(s.Working.Wanted)
		open := j.setNeeded(j.flow, j.working, r.Gun.Valve.Full).Gauge(j.air.Ambient)
		marks := float64(s.Wall.Flowing) / float64(r.Mark)
		if math.Abs(marks-math.Round(marks)) > 1e-6 { // no mark is low enough
			assert.InDelta(t, float64(open), float64(s.Wall.Flowing), 1e-3)
			return
		}
		off := math.Abs(float64(s.Wall.Flowing - open))
		if off > float64(r.Mark)/2*(1+1e-9) { // the nearest is out of reach: it is the one above
			assert.Less(t, float64(s.Wall.Flowing), float64(open))
			assert.LessOrEqual(t, off, float64(r.Mark)*1.5)
		}
	})
}

// A gun without a valve is as sure about its wall as its marks allow, and in the middle of its
// range stands what is advised.
func TestNothingOffAGunWithoutAValve(t *testing.T) {
	r := mildClear(t)
	r.Tolerances = roughly
	withoutValve(t, &r)
	s := solved(t, r)
	o := Perturb(&r, s).Work(&Deviations{})
	assert.InDelta(t, s.Wall.Flowing.PSI(), o.Wall.PSI(), 1e-6)
	assert.Equal(t, 1.0, o.Opening)
}

// A wall read too high, or too low, with no valve to make up for it.
func TestAWallAsItStandsWithoutAValve(t *testing.T) {
	r := mildClear(t)
	withoutValve(t, &r)
	r.HasNow, r.Now = true, unit.PSIG(70)
	s := solved(t, r)
	reasons, cautions := told(s)
	assert.Contains(t, reasons, "now-no-valve")
	assert.Contains(t, cautions, "w now-over-stamp-no-valve")
	assert.Greater(t, s.Now.GunIfOpen.PSI(), 60.0)
}
