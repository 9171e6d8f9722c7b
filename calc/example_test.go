package calc_test

import (
	"fmt"
	"time"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// Common practice, no published source: a reduced-pressure gun stamped 10 cfm at 32 psi with
// 20 at its cap sprays clear at 26 psi, through 25 ft of 3/8 in hose and high-flow couplings
// on a mild day. The wall is then 28 to 31 psi with the valve about open, and left at 70 psi
// the valve must close to a tenth to a fifth of its area.
func ExampleSolve_commonPractice() {
	solvent, err := coat.FindSolvent(coat.ReferenceSolvent)
	if err != nil {
		fmt.Println(err)
		return
	}
	g, err := gun.New(
		gun.Stamp{Inlet: unit.PSIG(32), Flow: unit.SCFM(10), Cap: unit.PSIG(20)}, 0,
		gun.Valve{Full: line.Restriction{C: unit.DM3PerSBar(6.5), B: 0.3}, Shape: gun.Linear, Turns: 2},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	regulator := line.Part{Kind: line.RegulatorKind, Restriction: line.Restriction{C: unit.DM3PerSBar(9), B: 0.3}}
	coupling := line.Part{Kind: line.CouplingKind, Restriction: line.Restriction{C: unit.DM3PerSBar(8), B: 0.4}}
	hose := line.Part{Kind: line.HoseKind, Hose: line.Hose{
		Length: unit.Feet(25), Bore: unit.Inches(0.375), Roughness: line.SmoothRubber,
		End: line.Restriction{C: unit.DM3PerSBar(9), B: 0.5},
	}}
	s, err := calc.Solve(&calc.Request{
		Coat:   calc.Coat{Solvent: solvent, Working: calc.Band{Start: unit.PSIG(26), Low: unit.PSIG(23), High: unit.PSIG(32)}},
		Gun:    calc.Gun{Gun: g, Nearest: unit.Inches(5), Farthest: unit.Inches(6), Felt: g.FeltAt(unit.Inches(5.5), unit.PSIG(26))},
		Day:    calc.Day{Air: unit.Fahrenheit(72), Humidity: 0.45, Panel: unit.Fahrenheit(72)},
		Supply: unit.PSIG(90), Mark: unit.PSIDrop(1), HasNow: true, Now: unit.PSIG(70),
		Line: []line.Part{regulator, coupling, hose, coupling},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("gun %.0f psi, wall %.0f psi\n", s.Working.Pressure.PSI(), s.Wall.Flowing.PSI())
	fmt.Printf("left at %.0f psi the valve is %.0f%% open\n", s.Now.Wall.PSI(), 100*s.Now.Opening)
	// Output:
	// gun 26 psi, wall 31 psi
	// left at 70 psi the valve is 12% open
}

// ASHRAE Handbook of Fundamentals, psychrometrics, rounded: air of 20 C and 50 % has a dew
// point of 9.3 C and a wet bulb of 13.8 C.
func ExampleSolveDay_psychrometrics() {
	solvent, err := coat.FindSolvent(coat.ReferenceSolvent)
	if err != nil {
		fmt.Println(err)
		return
	}
	c20 := unit.Celsius(20)
	a, err := calc.SolveDay(&calc.DayRequest{
		Coat: calc.Coat{Solvent: solvent}, Day: calc.Day{Air: c20, Panel: c20, Humidity: 0.5}, Paint: c20, Panels: 1,
		PotLife: 2 * time.Hour, PotLifeAt: calc.SheetTemp,
	})
	fmt.Printf("dew point %.1f C, wet bulb %.1f C: %s %v\n", a.DewPoint.C(), a.WetBulb.C(), a.Verdict, err)
	// Output:
	// dew point 9.3 C, wet bulb 13.8 C: go <nil>
}

// One sealer's published sheet: fast thinner below 18 C, standard to 25 C, slow above.
func ExampleGradeFor_sealerSheet() {
	for _, c := range []float64{17, 18, 25, 26} {
		fmt.Println(c, calc.GradeFor(unit.Celsius(c), unit.Celsius(c), 1))
	}
	// Output:
	// 17 fast
	// 18 standard
	// 25 standard
	// 26 slow
}

// A wet and dry film bulletin, as in package coat: 8 mil wet at 35 % of solids leaves 2.8
// mil; so a coat that is to be 2.8 mil dry is laid 8 mil wet.
func ExampleSolveFilm_bulletin() {
	a, err := calc.SolveFilm(&calc.FilmRequest{Application: calc.Application{
		Solids: calc.Stated[float64]{Value: 0.35}, Dry: calc.Stated[unit.Length]{Value: 2.8 * coat.Mil},
		Coats: calc.Stated[int]{Value: 1},
	}})
	fmt.Printf("%.1f mil wet, %.1f mil dry %v\n", float64(a.Each.Wet/coat.Mil), float64(a.Each.Dry/coat.Mil), err)
	// Output:
	// 8.0 mil wet, 2.8 mil dry <nil>
}

// A spreading-rate bulletin: a gallon of 65 % solids covers 208.5 ft2 at 5 mil. On a gun
// that lands nine tenths of it, a gallon does nine tenths of that.
func ExampleSolveMix_bulletin() {
	area := unit.Area(0.9 * 208.5 * unit.MetrePerFoot * unit.MetrePerFoot)
	p, d := unit.PSIG(26), unit.Inches(6)
	a, err := calc.SolveMix(&calc.MixRequest{
		Application: calc.Application{
			Solids: calc.Stated[float64]{Value: 0.65}, Dry: calc.Stated[unit.Length]{Value: 5 * coat.Mil}, Coats: calc.Stated[int]{Value: 1},
			Held: calc.Holding{
				Known: true, Pressure: p, Distance: d, Choked: 1,
				Class: calc.Stated[coat.GunTransfer]{Value: coat.GunTransfer{Transfer: 0.9, Pressure: p, Distance: d}},
			},
		},
		Panels: []calc.PanelArea{{Low: area, High: area}},
		Cup:    calc.Stated[unit.Volume]{Value: unit.Litres(0.6)},
		Booth:  calc.SheetTemp,
	})
	fmt.Printf("%.2f gal %v\n", a.Need.Volume.USGallons(), err)
	// Output:
	// 1.00 gal <nil>
}

// By hand, 18 s in the DIN cup at 20 C with the typical slope of 5 % a kelvin: what reads
// 24.6 s at 10 C is 18 s at the sheet's 20 C, and wants nothing but warming.
func ExampleSolveThin_coldMix() {
	din, err := coat.FindCup("din4")
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := calc.SolveThin(&calc.ThinRequest{
		Reading:     calc.Reading{Cup: din, Seconds: 24.6, At: unit.Celsius(10)},
		Sheet:       calc.Stated[calc.SheetSeconds]{Value: calc.SheetSeconds{Cup: din, Low: 16, Aim: 17, High: 18.1, At: calc.SheetTemp}},
		MostThinner: calc.Stated[float64]{Value: 0.1}, Warmest: calc.Stated[unit.Temp]{Value: unit.Celsius(25)},
	})
	fmt.Printf("%.0f s at 20 C: %s to %.0f C %v\n", a.Corrected.Seconds, a.Remedy, a.To.C(), err)
	// Output:
	// 18 s at 20 C: warm to 20 C <nil>
}
