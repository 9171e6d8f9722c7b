package gun_test

import (
	"math"
	"testing"

	"boothset/calc/air"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
)

// Isentropic flow tables for air, gamma 1.4 (NACA report 1135 form): pressure over
// stagnation pressure at a Mach number.
func TestJetMachAgainstIsentropicTables(t *testing.T) {
	for _, c := range []struct{ mach, ratio float64 }{
		{0.1, 0.993032}, {0.2, 0.972497}, {0.3, 0.939470}, {0.4, 0.895614}, {0.5, 0.843019},
		{0.6, 0.784004}, {0.7, 0.720928}, {0.8, 0.656022}, {0.9, 0.591260}, {1.0, 0.528282},
	} {
		j := gun.JetOf(unit.SCFM(5), unit.Abs(unit.SCFMPressure/c.ratio), sea)
		assert.InDelta(t, c.mach, j.Mach, 2e-5)
	}
}

// An ideal nozzle chokes at 0.5283 and then passes 0.04042 p0/sqrt(T0) kg/(s m2).
func TestNozzleChoking(t *testing.T) {
	assert.InDelta(t, 0.5282817877, air.CriticalRatio, 1e-9)
	p0 := 3e5
	bore := unit.MM(2)
	r := line.Restriction{C: line.OfBore(bore, line.IdealNozzle), B: air.CriticalRatio}
	area := math.Pi / 4 * 4e-6
	// 0.3 %: the nominal density at ANR is that of moist air.
	assert.InEpsilon(t, 0.04042*p0/math.Sqrt(unit.ANRTemperature), float64(r.Flow(unit.Abs(p0), 0, sea).Mass())/area, 5e-3)
}

// A choked convergent nozzle's thrust by hand: mdot v* + (p* - pa) A with
// A = mdot/(rho* v*).
func TestChokedThrustByHand(t *testing.T) {
	q := unit.SCFM(10)
	cap := unit.Abs(3 * unit.SCFMPressure)
	j := gun.JetOf(q, cap, sea)
	tStar := 293.15 / 1.2
	v := math.Sqrt(1.4 * 287.05 * tStar)
	p := 0.528281787717174 * float64(cap)
	m := float64(q.Mass())
	area := m / (p / (287.05 * tStar) * v)
	assert.InEpsilon(t, m*v+(p-unit.SCFMPressure)*area, j.Thrust, 1e-9)
	assert.InEpsilon(t, v, float64(j.Speed), 1e-9)
	assert.Zero(t, gun.JetOf(q, unit.SCFMPressure, sea).Thrust)
}

// Where a hand meets the push of each class's air, from the middle of the distances printed
// for it at its usual pressure: 4 to 6 in and 8 to 10 in by Auto Collision Repair and
// Refinishing (2022), p. 686; 5 to 6 in by common practice, no published source. The others
// are the root of the thrusts' ratio, of the isentropic relations worked with scipy.
func TestReach(t *testing.T) {
	for _, c := range []struct {
		name         string
		g            gun.Gun
		felt, at     float64 // in, psi
		psi, in, off float64
	}{
		{"reduced-pressure at its own", reduced(t), 5.5, 26, 26, 5.5, 1e-9},
		{"reduced-pressure at 24 psi", reduced(t), 5.5, 26, 24, 5.2763, 1e-4},
		{"high-volume at its own", highVolume(t), 5, 25, 25, 5, 1e-9},
		{"high-volume at 29 psi", highVolume(t), 5, 25, 29, 5.4716, 1e-4},
		{"older high-pressure at 50 psi", older(t), 9, 45, 50, 9.4944, 1e-4},
	} {
		felt := c.g.FeltAt(unit.Inches(c.felt), unit.PSIG(c.at))
		q, cap := c.g.Air(unit.PSIG(c.psi).Abs(sea.Ambient), sea)
		assert.InDelta(t, c.in, gun.JetOf(q, cap, sea).Reach(felt).Inches(), c.off, c.name)
	}
}

func TestMorePressureReachesFarther(t *testing.T) {
	g := reduced(t)
	felt := g.FeltAt(unit.Inches(5.5), unit.PSIG(26))
	last := unit.Length(0)
	for psi := 2.0; psi < 60; psi += 0.5 {
		q, cap := g.Air(unit.PSIG(psi).Abs(sea.Ambient), sea)
		reach := gun.JetOf(q, cap, sea).Reach(felt)
		assert.Greater(t, float64(reach), float64(last))
		last = reach
	}
}
