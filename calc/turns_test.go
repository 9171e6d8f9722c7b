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

// What an eighth of a turn moves the gun is more the farther the valve is closed, on any line.
func TestAnEighthOfATurnMovesTheGunMoreFartherShut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRequest(t)
		last, most := unit.Drop(0), unit.Drop(0)
		eachEighth(&r, unit.PSIG(rapid.Float64Range(5, 50).Draw(t, "working")), func(x float64, moves, all unit.Drop) bool {
			require.GreaterOrEqual(t, float64(moves), float64(last)*(1-1e-4)-1, "at %g", x)
			last, most = moves, all
			return moves < most*(1-1e-9)
		})
	})
}

// It has no jump anywhere, whatever the valve's shape: no sixteenth of a step of the opening
// has most of what the step does, but for less than the tenth of a psi that is told. The line
// is one on which nothing chokes: where a part stops choking the step is its own.
func TestAnEighthOfATurnMovesTheGunSmoothly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := mildClear(t)
		r.Gun.Valve = anyRequest(t).Gun.Valve
		var last, step, most unit.Drop
		n := 0
		eachEighth(&r, unit.PSIG(rapid.Float64Range(5, 40).Draw(t, "working")), func(x float64, moves, all unit.Drop) bool {
			if moves >= all*(1-1e-9) {
				return false // all that the gun has
			}
			if n > 0 {
				step, most = step+moves-last, max(most, moves-last)
			}
			last = moves
			if n++; n%eighthParts == 0 {
				require.LessOrEqual(t, float64(most), 0.5*float64(step)+float64(unit.PSIDrop(0.05)), "at %g", x)
				step, most = 0, 0
			}
			return true
		})
	})
}

// eighthParts is how many parts a step of a twentieth of the opening has.
const eighthParts = 16

// eachEighth goes from the open valve towards the shut one, and gives what an eighth of a turn
// moves the gun there and all that the gun has, for as long as do says so.
func eachEighth(r *Request, working unit.Gauge, do func(x float64, moves, all unit.Drop) bool) {
	j := newJob(r, unit.SCFMPressure)
	j.solveFor(working)
	var sens sensitivity
	sens.at(&j)
	for x := 1.0; x > 0.02; x *= math.Pow(1.05, -1.0/eighthParts) {
		if !do(x, sens.eighthTurn(x), unit.Drop(j.target)) {
			return
		}
	}
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
