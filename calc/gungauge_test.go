package calc

import (
	"slices"
	"testing"

	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// mildClear by its line: 26.0 psi behind the valve, 27.9 before it with the wall at 31 psi.
func TestWhatTheGunsGaugeShows(t *testing.T) {
	for at, psi := range map[GaugePlace]float64{InHandle: 26, AtFoot: 27.9, NoGauge: 0} {
		r := mildClear(t)
		r.Gauge = at
		s := solved(t, r)
		assert.InDelta(t, psi, s.Working.Reads.PSI(), 0.05)
		assert.Equal(t, solved(t, mildClear(t)).Wall, s.Wall, "the gauge changes nothing but what is read")
	}
	short := mildClear(t)
	short.Supply = unit.PSIG(28)
	s := solved(t, short)
	assert.Equal(t, s.Short.Best, s.Working.Reads, "a short supply shows what it gives, not what is wanted")
}

// Without a gauge the wall at which the open valve gives the target does as well as the
// valve's turns: run forward, it brings the gun there.
func TestWithoutAGaugeTheOpenValveGivesTheTarget(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRequest(t)
		r.Gauge = NoGauge
		s, err := Solve(&r)
		require.NoError(t, err)
		id, open := s.WithoutGauge(&r)
		assert.Contains(t, []string{"without-gauge", "without-gauge-turns", "without-gauge-open"}, id)
		if id != "without-gauge" {
			return
		}
		j := newJob(&r, s.Weather.Ambient)
		working, _ := j.gunAt(j.sets, unit.Gauge(open.Value).Abs(j.air.Ambient), 1)
		assert.InEpsilon(t, float64(s.Working.Pressure), float64(working.Gauge(j.air.Ambient)), 1e-6)
	})
}

// A gauge that is not there has no share in how sure the answer is.
func TestNoGaugeIsNeverOff(t *testing.T) {
	r := mildClear(t)
	r.Tolerances, r.Gauge = roughly, NoGauge
	s := solved(t, r)
	var one Deviations
	ids := ToleranceIDs()
	one[slices.Index(ids[:], "gun-gauge")] = 2
	p := Perturb(&r, s)
	assert.Equal(t, p.Work(&Deviations{}), p.Work(&one))
}

// Before the valve the gauge shows the gun's inlet: above its stamp it is spoken of, and is
// to be acted on only where the valve, opened, would put the gun past it.
func TestAGaugeBeforeTheValveAboveTheStamp(t *testing.T) {
	told := func(start, mark float64, at GaugePlace) (level Level, id string, s *Setup) {
		r := mildClear(t)
		r.Gauge, r.Coat.Working.Start, r.Mark = at, unit.PSIG(start), unit.PSIDrop(mark)
		s = solved(t, r)
		for _, c := range s.Cautions {
			if c.ID == "gauge-over-stamp" || c.ID == "gauge-over-inlet" {
				level, id = c.Level, c.ID
			}
		}
		return level, id, s
	}
	_, id, s := told(26, 1, AtFoot)
	assert.Empty(t, id)
	assert.Less(t, s.Working.Reads.PSI(), 32.0)
	level, id, s := told(30.5, 0.1, AtFoot)
	assert.Equal(t, "gauge-over-inlet", id)
	assert.Equal(t, Note, level)
	assert.Greater(t, s.Working.Reads.PSI(), 32.0)
	assert.LessOrEqual(t, float64(s.Wall.Flowing), float64(s.Wall.Limit))
	level, id, s = told(31.5, 5, AtFoot)
	assert.Equal(t, "gauge-over-stamp", id)
	assert.Equal(t, Warn, level)
	assert.Greater(t, float64(s.Wall.Flowing), float64(s.Wall.Limit))
	_, id, _ = told(31.5, 5, InHandle)
	assert.Empty(t, id, "behind the valve it shows what the gun gets")
}
