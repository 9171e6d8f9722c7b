package calc

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Turned points keep their sizes and angles, and the first coordinates run along the
// swings in their order.
func TestMirrorsAim(t *testing.T) {
	point := func(t *rapid.T, name string) (z row) {
		for d := range z {
			z[d] = rapid.Float64Range(-3, 3).Draw(t, name)
		}
		return z
	}
	rapid.Check(t, func(t *rapid.T) {
		var s swing
		for v := range s {
			s[v] = point(t, "swing")
		}
		if rapid.Bool().Draw(t, "in step") {
			for d := range s[staticOutcome] {
				s[staticOutcome][d] = 2 * s[wallOutcome][d]
			}
		}
		m := s.aimed(wallOutcome, openingOutcome, distanceOutcome, staticOutcome)
		a, b := point(t, "a"), point(t, "b")
		turnedA, turnedB := m.turn(a), m.turn(b)
		assert.InDelta(t, dot(&a, &b), dot(&turnedA, &turnedB), 1e-9)
		for d, x := range m.back(turnedA) {
			assert.InDelta(t, a[d], x, 1e-9)
		}
		for i, v := range []int{wallOutcome, openingOutcome, distanceOutcome} {
			for k := range Dimensions {
				z := row{}
				z[k] = 1
				z = m.turn(z)
				if along := dot(&s[v], &z); k > i && s[v].size() > 0.1 {
					assert.InDelta(t, 0, along, 2e-3*s[v].size(), "outcome %d along coordinate %d", v, k)
				} else if k == 0 && i == 0 {
					assert.InDelta(t, s[v].size(), math.Abs(along), 1e-9)
				}
			}
		}
	})
}

// A swing along no dimension aims nowhere.
func TestNoSwingTurnsNothing(t *testing.T) {
	var s swing
	m := s.aimed(wallOutcome, openingOutcome, distanceOutcome, staticOutcome)
	z := row{1, 2, 3}
	assert.Equal(t, z, m.turn(z))
}
