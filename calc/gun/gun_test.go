package gun_test

import (
	"math"
	"testing"

	"boothset/calc/air"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

var sea = line.NewAir(unit.SCFMPressure, unit.ANRTemperature)

func valve(c float64) gun.Valve {
	return gun.Valve{Full: line.Restriction{C: unit.DM3PerSBar(c), B: 0.3}, Shape: 2.25, Turns: 2}
}

func made(t require.TestingT, inlet, cfm, cap, limit float64) gun.Gun {
	g, err := gun.New(gun.Stamp{Inlet: unit.PSIG(inlet), Flow: unit.SCFM(cfm), Cap: unit.PSIG(cap)}, unit.PSIG(limit), valve(6.5))
	require.NoError(t, err)
	return g
}

// The four guns of common practice, no published source for their stamps.
func reduced(t require.TestingT) gun.Gun    { return made(t, 32, 10, 20, 0) }
func highVolume(t require.TestingT) gun.Gun { return made(t, 29, 15, 10, 10) }
func older(t require.TestingT) gun.Gun      { return made(t, 50, 14, 34, 0) }

func TestStampIsMet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		inlet := rapid.Float64Range(10, 100).Draw(t, "inlet")
		cap := inlet * rapid.Float64Range(0.1, 0.95).Draw(t, "cap share")
		cfm := rapid.Float64Range(1, 40).Draw(t, "cfm")
		g := made(t, inlet, cfm, cap, 0)
		q, c := g.Air(unit.PSIG(inlet).Abs(sea.Ambient), sea)
		assert.InEpsilon(t, cfm, q.SCFM(), 1e-9)
		assert.InEpsilon(t, cap, c.Gauge(sea.Ambient).PSI(), 1e-8)
	})
}

func TestFlowBackToPressure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := rapid.SampledFrom([]gun.Gun{reduced(t), highVolume(t), older(t)}).Draw(t, "gun")
		a := line.NewAir(unit.Abs(rapid.Float64Range(54e3, 108e3).Draw(t, "ambient")), unit.Celsius(rapid.Float64Range(-10, 60).Draw(t, "C")))
		w := unit.PSIG(rapid.Float64Range(0.5, 120).Draw(t, "psi")).Abs(a.Ambient)
		q, cap := g.Air(w, a)
		back, cap2 := g.Upstream(q, a)
		assert.InEpsilon(t, float64(w), float64(back), 1e-9)
		assert.InEpsilon(t, float64(cap), float64(cap2), 1e-9)
		assert.Less(t, float64(cap), float64(w))
		if !math.IsNaN(float64(q)) {
			more, _ := g.Air(w*1.01, a)
			assert.Greater(t, float64(more), float64(q))
		}
	})
}

func TestBadStamps(t *testing.T) {
	for _, s := range []gun.Stamp{
		{}, {Inlet: unit.PSIG(30), Flow: unit.SCFM(10)}, {Inlet: unit.PSIG(30), Cap: unit.PSIG(10)},
		{Inlet: unit.PSIG(30), Flow: unit.SCFM(10), Cap: unit.PSIG(30)}, {Inlet: unit.Gauge(math.NaN()), Flow: 1, Cap: 1},
		{Inlet: unit.PSIG(30), Flow: unit.SCFM(10), Cap: 1e-12},
	} {
		_, err := gun.New(s, 0, valve(5))
		assert.Error(t, err)
	}
	ok := gun.Stamp{Inlet: unit.PSIG(30), Flow: unit.SCFM(10), Cap: unit.PSIG(10)}
	for _, v := range []gun.Valve{
		{}, {Full: line.Restriction{C: 1e-8, B: 1}, Shape: gun.Linear, Turns: 1},
		{Full: line.Restriction{C: 1e-8, B: math.NaN()}, Shape: gun.Linear, Turns: 1}, {Full: line.Restriction{C: unit.Conductance(math.Inf(1))}, Shape: gun.Linear, Turns: 1},
		{Full: line.Restriction{C: 1e-8}, Shape: gun.Linear, Turns: math.Inf(1)}, {Full: line.Restriction{C: 1e-8}, Shape: gun.Linear},
		{Full: line.Restriction{C: 1e-8}, Turns: 1}, {Full: line.Restriction{C: 1e-8}, Shape: gun.Shape(math.NaN()), Turns: 1},
	} {
		_, err := gun.New(ok, 0, v)
		assert.Error(t, err)
	}
}

// By the definition of the class a high-volume low-pressure cap stands at 10 psi at
// most; at altitude it gets there below the stamped inlet, since the air around it is
// thinner while the gauge reads from it.
func TestCapLimitComesSoonerAtAltitude(t *testing.T) {
	g := highVolume(t)
	assert.InDelta(t, 29, g.Highest(sea).PSI(), 1e-6)
	mile := line.NewAir(air.AtAltitude(1609), unit.ANRTemperature)
	assert.Less(t, g.Highest(mile).PSI(), 28.5)
	_, cap := g.Air(g.Highest(mile).Abs(mile.Ambient), mile)
	assert.InDelta(t, 10, cap.Gauge(mile.Ambient).PSI(), 1e-6)
}

func TestValveShapeBothWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := gun.Shape(rapid.Float64Range(0.1, 10).Draw(t, "shape"))
		x := rapid.Float64Range(0, 1).Draw(t, "x")
		assert.InDelta(t, x, s.Opening(s.Share(x)), 1e-9)
		assert.InDelta(t, x, s.Share(s.Opening(x)), 1e-9)
		y := rapid.Float64Range(0.01, 1).Draw(t, "y")
		if x < y*(1-1e-9) {
			assert.Less(t, s.Share(x), s.Share(y))
		}
	})
	s := valve(5).Shape
	assert.Zero(t, s.Share(-1))
	assert.Equal(t, 1.0, s.Share(2))
}

func TestOpeningForPassesJustThat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := valve(6.5)
		p2 := unit.PSIG(rapid.Float64Range(10, 40).Draw(t, "p2")).Abs(sea.Ambient)
		p1 := p2 + unit.Abs(unit.PSIDrop(rapid.Float64Range(0.1, 200).Draw(t, "drop")))
		q := unit.SCFM(rapid.Float64Range(2, 20).Draw(t, "cfm"))
		x, choked, ok := v.OpeningFor(q, p1, p2, sea)
		if !ok {
			assert.Equal(t, 1.0, x)
			assert.LessOrEqual(t, float64(v.Full.Flow(p1, p2, sea)), float64(q)*(1+1e-9))
			return
		}
		r := v.At(x)
		assert.InEpsilon(t, float64(q), float64(r.Flow(p1, p2, sea)), 1e-9)
		mach := v.Mach(q, p1, x, sea)
		if choked {
			assert.InDelta(t, 1, mach, 1e-6)
		} else {
			assert.Less(t, mach, 1.0)
		}
	})
}
