package learn

import (
	"testing"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The valve set by the gun's gauge: with the wall where it was advised it is the range of the
// settings; with the wall higher it is to be closed further, one that only just gives the target
// leaves it wide open; and with nothing off it is the plan's own, worked for that wall.
func TestTheValveIsSetForTheWallThatIsSet(t *testing.T) {
	r := calctest.MildClear(t)
	l := learner(t, r, 2000).AsDescribed()
	at := l.Setup.Wall.Flowing
	here := l.Turned(at)
	assert.Equal(t, l.Settings().Opening, here)
	higher := l.Turned(at + unit.PSIG(10))
	assert.Less(t, higher.High, here.High)
	assert.Less(t, higher.Low, here.Low)
	low := l.Turned(at - unit.PSIG(15))
	assert.InDelta(t, 1, low.Low, 1e-9)

	r.Tolerances = calc.Tolerances{}
	r.HasNow, r.Now = true, at+unit.PSIG(10)
	l = learner(t, r, 200).AsDescribed()
	exact := l.Turned(r.Now)
	assert.InDelta(t, l.Setup.Now.Opening, exact.Low, 1e-6)
	assert.InDelta(t, l.Setup.Now.Opening, exact.High, 1e-6)
}

// A reading in which the gun was brought to its target is judged by how far the valve is open; one
// with another pressure, or without the wall's gauge, is not.
func TestOnlyAValveThatWasSetIsJudgedByItsTurns(t *testing.T) {
	r := calctest.MildClear(t)
	s, err := calc.Solve(&r)
	require.NoError(t, err)
	set := func(wall, gun float64) Taken {
		return Taken{Reading: Reading{Opening: 0.5, Shows: wallAndGun(wall, gun)}}
	}
	target := s.Working.Pressure.PSI()
	a, err := Solve(&Request{Plan: &r, Readings: []Taken{set(33, target), set(33, target-5), {Reading: Reading{Opening: 1, Shows: wallAndGun(33, target)}}}, Draws: 2000, Seed: 1})
	require.NoError(t, err)
	assert.InDelta(t, 33, a.Turned[0].Wall.PSI(), 1e-9)
	assert.Less(t, a.Turned[0].Opening.Low, a.Turned[0].Opening.High)
	assert.Zero(t, a.Turned[1])
	assert.Zero(t, a.Turned[2])
	assert.NotZero(t, a.Turning)
}
