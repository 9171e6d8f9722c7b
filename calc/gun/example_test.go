package gun_test

import (
	"fmt"

	"boothset/calc/air"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// plain is a valve whose conductance goes with its opening, 10 dm3/(s bar) in one turn.
var plain = gun.Valve{Full: line.Restriction{C: unit.DM3PerSBar(10), B: 0.3}, Shape: gun.Linear, Turns: 1}

// Isentropic flow tables for air (NACA report 1135): at 0.8430, 0.6560 and 0.5283 of the
// pressure at rest the Mach number is 0.5, 0.8 and 1.
func ExampleJetOf_isentropicTable() {
	a := line.NewAir(unit.SCFMPressure, unit.Celsius(20))
	for _, ratio := range []float64{0.843019, 0.656022, 0.528282} {
		j := gun.JetOf(unit.SCFM(5), unit.Abs(float64(a.Ambient)/ratio), a)
		fmt.Printf("%.4f: Mach %.3f\n", ratio, j.Mach)
	}
	// Output:
	// 0.8430: Mach 0.500
	// 0.6560: Mach 0.800
	// 0.5283: Mach 1.000
}

// By hand, isentropic: a choked cap at 20 C leaves at the speed of sound of its throat,
// sqrt(1.4 x 287.05 x 293.15/1.2) = 313.3 m/s, however high its pressure.
func ExampleJetOf_choked() {
	a := line.NewAir(unit.SCFMPressure, unit.Celsius(20))
	for _, bar := range []float64{3, 6} {
		fmt.Printf("%.1f m/s\n", gun.JetOf(unit.SCFM(10), unit.Abs(bar*1e5), a).Speed)
	}
	// Output:
	// 313.3 m/s
	// 313.3 m/s
}

// 40 CFR part 63, subpart HHHHHH (area-source refinishing), takes a high-volume
// low-pressure gun for one with 0.1 to 10 psi at its cap: one stamped 29 psi for 10 at the
// cap, at sea level, has them there and not before. The row of 25 psi is the two ISO 6358
// restrictions solved with scipy.
func ExampleGun_Air_highVolume() {
	g, err := gun.New(gun.Stamp{Inlet: unit.PSIG(29), Flow: unit.SCFM(15), Cap: unit.PSIG(10)}, unit.PSIG(10), plain)
	if err != nil {
		fmt.Println(err)
		return
	}
	a := line.NewAir(unit.SCFMPressure, unit.Celsius(20))
	for _, psi := range []float64{29, 25} {
		q, cap := g.Air(unit.PSIG(psi).Abs(a.Ambient), a)
		fmt.Printf("%.0f psi: %.1f psi at the cap, %.1f scfm\n", psi, cap.Gauge(a.Ambient).PSI(), q.SCFM())
	}
	fmt.Printf("highest %.0f psi\n", g.Highest(a).PSI())
	// Output:
	// 29 psi: 10.0 psi at the cap, 15.0 scfm
	// 25 psi: 8.1 psi at the cap, 13.5 scfm
	// highest 29 psi
}

// ISO 6358-1 by hand: 600 L/min at 20 C from 5 bar absolute through a choked part take
// C = 10/5 = 2 dm3/(s bar), a fifth of this valve's 10; so its flow is all it can pass.
func ExampleValve_OpeningFor() {
	a := line.NewAir(unit.SCFMPressure, unit.Celsius(20))
	x, choked, ok := plain.OpeningFor(unit.LPM(600), 5e5, 1e5, a)
	fmt.Printf("%.2f open, choked %t, %t; Mach %.2f\n", x, choked, ok, plain.Mach(unit.LPM(600), 5e5, x, a))
	// Output:
	// 0.20 open, choked true, true; Mach 1.00
}

// The trade's figure, common practice, no published source: a hand meets the push of a
// reduced-pressure gun's air at 5.5 in with 26 psi at the gun. By the free jet, whose push
// falls with the square of the distance, it is met nearer with less.
func ExampleJet_Reach() {
	g, err := gun.New(gun.Stamp{Inlet: unit.PSIG(32), Flow: unit.SCFM(10), Cap: unit.PSIG(20)}, 0, plain)
	if err != nil {
		fmt.Println(err)
		return
	}
	a := line.NewAir(unit.SCFMPressure, unit.Celsius(20))
	felt := g.FeltAt(unit.Inches(5.5), unit.PSIG(26))
	for _, psi := range []float64{26, 24} {
		q, cap := g.Air(unit.PSIG(psi).Abs(a.Ambient), a)
		fmt.Printf("%.0f psi: %.1f in\n", psi, gun.JetOf(q, cap, a).Reach(felt).Inches())
	}
	// Output:
	// 26 psi: 5.5 in
	// 24 psi: 5.3 in
}

// Ideal-nozzle choking, as isentropic tables print it: 0.5283, the critical ratio of a cap.
func ExampleNew_capRatio() {
	g, err := gun.New(gun.Stamp{Inlet: unit.PSIG(32), Flow: unit.SCFM(10), Cap: unit.PSIG(20)}, 0, plain)
	fmt.Printf("%.4f %.4f %v\n", g.Cap.B, air.CriticalRatio, err)
	// Output:
	// 0.5283 0.5283 <nil>
}
