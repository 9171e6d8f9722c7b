package learn

import (
	"math"
	"testing"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// learner is one of a request, with n draws.
func learner(t require.TestingT, r calc.Request, n int) *Learner {
	s, err := calc.Solve(&r)
	require.NoError(t, err)
	l, err := New(Line{Request: &r, Setup: s}, n, 1)
	require.NoError(t, err)
	return l
}

// wallAndGun is what the two gauges showed, psi.
func wallAndGun(wall, gun float64) []Shown {
	return []Shown{{Gauge: WallGauge, Pressure: unit.PSIG(wall)}, {Gauge: GunGauge, Pressure: unit.PSIG(gun)}}
}

// Two gauges compared with no air moving, by hand: before, the wall's is off by 2 psi and the
// gun's by 0.75, one standard deviation each; a reading of each has a noise of 0.3. The
// difference of n comparisons, 1 psi, is split as the variances are, and what is left of the
// wall's is 1/(1/4 + 1/(0.5625 + 0.18/n)), the conjugate of a normal.
func TestGaugesComparedWithNoAirMoving(t *testing.T) {
	l := learner(t, calctest.MildClear(t), 500)
	for n := 1.0; n <= 4; n++ {
		require.NoError(t, l.Add(Reading{Still: true, Shows: wallAndGun(30, 29)}))
		other := 0.75*0.75 + 0.18/n
		mean, sigma := 4/(4+other), 1/math.Sqrt(1./4+1/other)
		got := l.Reads(WallGauge)
		const tenth = 1.2815515655 // of a normal
		assert.InDelta(t, mean-tenth*sigma, got.Low/unit.PascalPerPSI, 1e-5, "%g", n)
		assert.InDelta(t, mean+tenth*sigma, got.High/unit.PascalPerPSI, 1e-5, "%g", n)
		assert.InDelta(t, 500, l.Counting(), 1e-6, "no line is likelier for it")
	}
}

// A line of which one thing is a little off, so that what it loses is in proportion to it: what
// a reading leaves of it is the conjugate of a normal, the slope by two solves.
func TestALinearLineHasTheConjugateOfANormal(t *testing.T) {
	r := calctest.MildClear(t)
	r.Day.Air = unit.ANRTemperature // of what is learnt, whatever the day
	r.Tolerances = calc.Tolerances{StampFlow: calc.Tolerance{Within: 0.004}}
	s, err := calc.Solve(&r)
	require.NoError(t, err)
	open := func(flow float64) float64 { // what the wall shows with 26 psi at the open gun
		q := r
		stamp := q.Gun.Stamp
		stamp.Flow *= unit.Flow(flow)
		q.Gun.Calibrate(stamp)
		s, err := calc.Solve(&q)
		require.NoError(t, err)
		return s.Wall.Open.PSI()
	}
	m, err := newModel(Line{Request: &r, Setup: s})
	require.NoError(t, err)
	for g := range m.noise {
		m.noise[g] = math.Pow(0.002*unit.PascalPerPSI, 2)
	}
	l := drawnFrom(m, 40_000, 3)
	for i := range l.draws { // nothing is odd
		for k := range l.draws[i].own {
			l.draws[i].own[k] = own{}
		}
	}
	// One standard deviation is 0.2 % of the flow; each gauge has a noise of 0.002 psi.
	slope := (open(math.Exp(0.002)) - open(math.Exp(-0.002))) / 2
	byWall := (l.solveFor(&l.draws[0], 27) - l.solveFor(&l.draws[0], 26)) // psi for each psi at the gun
	off := 0.8 * slope
	require.NoError(t, l.Add(Reading{Opening: 1, Shows: wallAndGun(open(1)+off, 26)}))
	noise := 0.002 * math.Hypot(1, byWall)
	variance := 1 / (1 + slope*slope/(noise*noise))
	mean := variance * slope * off / (noise * noise)
	var first, second float64
	for i, w := range l.weights {
		z := l.draws[i].own[4].passes // the gun's
		first += w * z
		second += w * z * z
	}
	assert.InDelta(t, mean, first, 0.02)
	assert.InDelta(t, math.Sqrt(variance), math.Sqrt(second-first*first), 0.01)
	assert.Greater(t, l.Counting(), 5000.0)
}

// solveFor is the wall's pressure of a draw's line at a working pressure, psi.
func (l *Learner) solveFor(d *draw, working float64) (wall float64) {
	l.each(1, func(w *worker, _ int) {
		w.put(d)
		w.arrange(&taken{Reading: Reading{Opening: 1, Pieces: l.stands}})
		wall = w.march(unit.PSIG(working).Abs(w.ambient))[atWall] / unit.PascalPerPSI
	})
	return wall
}
