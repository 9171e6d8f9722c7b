package line_test

import (
	"fmt"

	"boothset/calc/air"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// A pneumatics maker's page on flow characteristics, citing ISO 6358:1989: C = 2 dm3/(s bar)
// and b = 0.3 at 5 bar absolute and 20 C pass 420 L/min into 4 bar, 600 where choked.
func ExampleRestriction_Flow_iso6358() {
	r := line.Restriction{C: unit.DM3PerSBar(2), B: 0.3}
	a := line.NewAir(unit.SCFMPressure, unit.Celsius(20))
	fmt.Printf("into 4 bar: %.0f L/min\n", r.Flow(5e5, 4e5, a).LPM())
	fmt.Printf("into 1 bar: %.0f L/min\n", r.Flow(5e5, 1e5, a).LPM())
	// Output:
	// into 4 bar: 420 L/min
	// into 1 bar: 600 L/min
}

// A public worked example of the same standard's formula solved for the outlet: C = 3
// dm3/(s bar), b = 0.35, 600 L/min from 7.013 bar absolute leave 6.47 bar.
func ExampleRestriction_Downstream_workedExample() {
	r := line.Restriction{C: unit.DM3PerSBar(3), B: 0.35}
	p2, ok := r.Downstream(unit.LPM(600), 7.013e5, line.NewAir(unit.SCFMPressure, unit.Celsius(20)))
	fmt.Printf("%.2f bar, %t\n", p2.Bar(), ok)
	// Output:
	// 6.47 bar, true
}

// ISO 6358-1 by hand, both ways: u = q/C = 10/2 = 5 bar stands before a choked part of
// C = 2 dm3/(s bar), whatever is downstream of it.
func ExampleRestriction_Upstream_choked() {
	r := line.Restriction{C: unit.DM3PerSBar(2), B: 0.3}
	p1, choked := r.Upstream(unit.LPM(600), 1e5, line.NewAir(unit.SCFMPressure, unit.Celsius(20)))
	fmt.Printf("%.2f bar, choked %t\n", p1.Bar(), choked)
	// Output:
	// 5.00 bar, choked true
}

// A handbook's table of air through an orifice, flow coefficient 1, cubic feet a minute of
// free air at 70 F: 14.7 through 1/8 in at 50 psig, 104 through 1/4 in at 100.
func ExampleOfBore_orificeTable() {
	a := line.NewAir(unit.SCFMPressure, unit.Celsius(20))
	const density = 0.07494 * 0.45359237 / unit.CubicFoot // the table's, kg/m3
	for _, c := range []struct{ inches, psig float64 }{{1. / 8, 50}, {1. / 4, 100}} {
		r := line.Restriction{C: line.OfBore(unit.Inches(c.inches), line.IdealNozzle), B: air.CriticalRatio}
		q := r.Flow(unit.PSIG(c.psig).Abs(a.Ambient), a.Ambient, a)
		fmt.Printf("%.3f in, %.0f psig: %.3g cfm\n", c.inches, c.psig, float64(q.Mass())/density/unit.CubicFoot*60)
	}
	// Output:
	// 0.125 in, 50 psig: 14.7 cfm
	// 0.250 in, 100 psig: 104 cfm
}

// ANSI/(NFPA) T3.21.3 in the limit of a small drop: C = 3.956 Cv dm3/(s bar) at b = 0.3,
// worked apart from this package.
func ExampleFromValveFlow() {
	fmt.Printf("%.3f dm3/(s bar)\n", line.FromValveFlow(1, 0.3).DM3PerSBar())
	// Output:
	// 3.956 dm3/(s bar)
}

// The documentation of the python3-fluids library: Churchill_1977(Re=1E5, eD=1E-4) is
// 0.018462624566280075.
func ExampleFrictionFactor_fluidsLibrary() {
	fmt.Printf("%.12f\n", line.FrictionFactor(1e5, 1e-4))
	// Output:
	// 0.018462624566
}

// The same library's isothermal_gas on shop hose, 25 ft from 30 psig at 20 C with a wall of
// 1.5 um, 15 cubic feet a minute of 14.696 psia and 60 F: the loss is 1.21 psi in 1/2 in,
// 5.13 in 3/8 and 14.30 in 5/16; 1/4 in chokes.
func ExampleHose_Downstream_fluidsLibrary() {
	a := line.NewAir(unit.SCFMPressure, unit.Celsius(20))
	at60F := 15 * unit.CubicFoot / 60 * air.Density(a.Ambient, unit.Fahrenheit(60))
	q := unit.MassFlow(at60F).Flow()
	p1 := unit.PSIG(30).Abs(a.Ambient)
	for _, inches := range []float64{1. / 2, 3. / 8, 5. / 16, 1. / 4} {
		h := line.Hose{Length: unit.Feet(25), Bore: unit.Inches(inches), Roughness: line.SmoothRubber}
		p2, ok := h.Downstream(q, p1, a)
		if !ok {
			fmt.Printf("%.4f in: choked\n", inches)
			continue
		}
		fmt.Printf("%.4f in: %.2f psi\n", inches, (p1 - p2).PSI())
	}
	// Output:
	// 0.5000 in: 1.21 psi
	// 0.3750 in: 5.13 psi
	// 0.3125 in: 14.30 psi
	// 0.2500 in: choked
}

// Two parts of C = 1 dm3/(s bar) and b = 0.3 in series carry 0.757 of what one
// does from 7 bar, by a march made with scipy: not the 0.707 of adding up 1/C2.
func ExampleUpstream_inSeries() {
	a := line.NewAir(unit.SCFMPressure, unit.Celsius(20))
	one := line.Part{Kind: line.CouplingKind, Restriction: line.Restriction{C: unit.DM3PerSBar(1), B: 0.3}}
	needed := func(q unit.Flow) unit.Abs {
		p, _ := line.Upstream([]line.Part{one, one}, q, 1, a) // into next to nothing
		return p
	}
	q := line.Root(needed, 7e5, one.Most(7e5, a))
	fmt.Printf("%.3f\n", float64(q/one.Most(7e5, a)))
	// Output:
	// 0.757
}

// Isentropic flow tables for air (NACA report 1135): the area is 1.3398 times the throat's
// at Mach 0.5 and 1.0382 times at Mach 0.8.
func ExampleThroatMach_isentropicTable() {
	fmt.Printf("%.3f\n", line.ThroatMach(1/1.339844))
	fmt.Printf("%.3f\n", line.ThroatMach(1/1.038230))
	// Output:
	// 0.500
	// 0.800
}

// By hand, after the straight part of a characteristic of ISO 6953: a regulator rated to
// fall by 5 psi at 60 scfm falls by a sixth of that at 10.
func ExampleRegulator_Set() {
	r := line.Regulator{Droop: line.DroopOf(unit.PSIDrop(5), unit.SCFM(60))}
	set := r.Set(unit.PSIG(30), unit.SCFM(10))
	fmt.Printf("set to %.3f psi, it reads %.3f\n", set.PSI(), r.Flowing(set, unit.SCFM(10)).PSI())
	// Output:
	// set to 30.833 psi, it reads 30.000
}
