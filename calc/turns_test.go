package calc

import (
	"math"
	"testing"

	"boothset/calc/gun"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The default line's valve passes the same at 81 % of its turns with the shipped shape, at
// 62 % where its conductance goes in proportion, at 38 % where it opens early.
func TestTheShapeSaysWhereTheValveStands(t *testing.T) {
	for shape, opening := range map[gun.Shape]float64{2.25: 0.81, gun.Linear: 0.62, 0.5: 0.38} {
		r := mildClear(t)
		r.Gun.Valve.Shape = shape
		s := solved(t, r)
		assert.InDelta(t, opening, s.Valve.Opening, 0.006, "shape %g", shape)
	}
}

// The shipped spread of the shape has the valve that opens early at two standard deviations
// and the one in proportion at about one.
func TestTheSpreadOfTheShapeReachesOtherValves(t *testing.T) {
	r := mildClear(t)
	r.Tolerances = Tolerances{ValveShape: Tolerance{Within: math.Log(4.5)}}
	s := solved(t, r)
	p := Perturb(&r, s)
	for off, opening := range map[float64]float64{-2: 0.38, -1: 0.62, 0: 0.81} {
		var d Deviations
		for i, id := range ToleranceIDs() {
			if id == "valve-shape" {
				d[i] = off
			}
		}
		assert.InDelta(t, opening, p.Work(&d).Opening, 0.025, "%g", off)
	}
}

// What an eighth of a turn moves the gun is more the farther the valve is closed, and has no
// jump anywhere: no sixteenth of a step of the opening has most of what the step does, but
// for less than the tenth of a psi that is told, where a hose stops choking.
func TestAnEighthOfATurnMovesTheGunSmoothly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRequest(t)
		j := newJob(&r, unit.SCFMPressure)
		j.solveFor(unit.PSIG(rapid.Float64Range(5, 50).Draw(t, "working")))
		var sens sensitivity
		sens.at(&j)
		const parts = 16
		step := math.Pow(1.05, -1.0/parts)
		last := sens.eighthTurn(1)
		for x := 1.0; x > 0.02; {
			var all, most unit.Drop
			for range parts {
				x *= step
				moves := sens.eighthTurn(x)
				require.GreaterOrEqual(t, float64(moves), float64(last)*(1-1e-4)-1, "at %g", x)
				all, most, last = all+moves-last, max(most, moves-last), moves
			}
			if last >= unit.Drop(j.target)*(1-1e-9) {
				return // all that the gun has
			}
			require.LessOrEqual(t, float64(most), 0.5*float64(all)+float64(unit.PSIDrop(0.05)), "at %g", x)
		}
	})
}

// From wide open and from shut are the two parts of all the turns there are, and the same
// opening.
func TestTurnsAreTheOpening(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRequest(t)
		s := solved(t, r)
		v := s.Valve
		assert.Equal(t, r.Gun.Valve.Turns, v.TurnsOf)
		assert.InDelta(t, v.TurnsOf, v.Turns+v.FromShut, 1e-9)
		assert.InDelta(t, v.Opening, v.FromShut/v.TurnsOf, 1e-9)
		if s.Short.Is {
			assert.Zero(t, v.Turns)
		}
	})
}
