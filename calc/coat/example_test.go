package coat_test

import (
	"fmt"
	"time"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// The cup standards' equations at their worked ends: ISO 2431 prints nu = 1.37 t - 200/t for
// its 4 mm cup (64.5 mm2/s at 50 s), ASTM D1200 3.85 (t - 4.49) for Ford 4 (98.2 at 30 s),
// ASTM D4212 3.5 (t - 14) for Zahn 2 (56.0 at 30 s), DIN 53211 4.57 t - 452/t (122 at 30 s).
func ExampleCup_Viscosity_standardsEquations() {
	for _, c := range []struct {
		id      string
		seconds float64
	}{{"iso4", 50}, {"ford4", 30}, {"zahn2", 30}, {"din4", 30}} {
		cup, err := coat.FindCup(c.id)
		if err != nil {
			fmt.Println(err)
			return
		}
		v, err := cup.Viscosity(c.seconds)
		fmt.Printf("%-14s %.0f s: %5.1f mm2/s %v\n", cup.Label, c.seconds, v.Nu.MM2PerS(), err)
	}
	// Output:
	// ISO 2431 4 mm  50 s:  64.5 mm2/s <nil>
	// Ford 4         30 s:  98.2 mm2/s <nil>
	// Zahn 2         30 s:  56.0 mm2/s <nil>
	// DIN 53211 4 mm 30 s: 122.0 mm2/s <nil>
}

// A viscosity laboratory's table of calibration oils, whole seconds: an oil of 120 mm2/s
// drains in 48 s from Zahn 2 and 36 from Ford 4.
func ExampleCup_Seconds_calibrationOil() {
	for _, id := range []string{"zahn2", "ford4"} {
		cup, err := coat.FindCup(id)
		if err != nil {
			fmt.Println(err)
			return
		}
		e, err := cup.Seconds(unit.MM2PerS(120))
		fmt.Printf("%s %.0f s %v\n", cup.Label, e.Seconds, err)
	}
	// Output:
	// Zahn 2 48 s <nil>
	// Ford 4 36 s <nil>
}

// Public values of a calibration oil, 329.0 mm2/s at 20 C and 237.4 at 25 C; the slope of
// 6.5 % a kelvin and the 47.4 kJ/mol were worked apart from this package.
func ExampleFitSlope_calibrationOil() {
	c20, c25 := unit.Celsius(20), unit.Celsius(25)
	k, err := coat.FitSlope(unit.MM2PerS(329.0), c20, unit.MM2PerS(237.4), c25)
	fmt.Printf("%.4f a kelvin, %.1f kJ/mol %v\n", float64(k), k.ActivationEnergy(c20, c25)/1e3, err)
	// Output:
	// 0.0653 a kelvin, 47.4 kJ/mol <nil>
}

// By hand, logarithmic mixing (Arrhenius 1887): from 63.4 to 57 mm2/s takes
// ln(63.4/57)/ln(57/0.83) = 2.5 % of thinner.
func ExampleThinnerFor() {
	add, err := coat.ThinnerFor(unit.MM2PerS(63.4), unit.MM2PerS(57), coat.SolventViscosity)
	fmt.Printf("%.1f%% %v\n", 100*add, err)
	// Output:
	// 2.5% <nil>
}

// Spreading-rate bulletins: a US gallon of solids covers 1604 ft2 at a mil; one of 65 %
// solids 208.5 ft2 at 5 mil.
func ExampleCoverage_bulletin() {
	for _, c := range []struct{ solids, mils float64 }{{1, 1}, {0.65, 5}} {
		a, err := coat.Coverage(unit.USGallons(1), unit.Length(c.mils)*coat.Mil, c.solids, 1)
		fmt.Printf("%.1f ft2 %v\n", float64(a)/(unit.MetrePerFoot*unit.MetrePerFoot), err)
	}
	// Output:
	// 1604.2 ft2 <nil>
	// 208.5 ft2 <nil>
}

// A wet and dry film bulletin: 8 mil wet at 35 % of solids is 2.8 mil dry.
func ExampleDryFromWet_bulletin() {
	dry, err := coat.DryFromWet(8*coat.Mil, 0.35, 0)
	fmt.Printf("%.1f mil %v\n", float64(dry/coat.Mil), err)
	// Output:
	// 2.8 mil <nil>
}

// A finishing magazine: a job that takes 0.66 gal at 30 % of transfer takes 0.28 at 70 %.
func ExampleJob_Need_finishingMagazine() {
	volume := func(transfer float64) float64 {
		n, err := coat.Job{Area: 10, Dry: 50 * coat.Micrometre, Solids: 0.4, Transfer: transfer}.Need()
		if err != nil {
			fmt.Println(err)
		}
		return n.Volume.USGallons()
	}
	fmt.Printf("%.2f gal\n", 0.66*volume(0.7)/volume(0.3))
	// Output:
	// 0.28 gal
}

// By hand: 180 mL/min of which 65 % land, in a 250 mm fan overlapped by half, at 0.4 m/s
// leave 3e-6 x 0.65/(0.125 x 0.4) = 39 um.
func ExamplePass_WetFilm() {
	p := coat.Pass{Rate: coat.MLPerMin(180), Transfer: 0.65, Fan: unit.MM(250), Overlap: 0.5}
	wet, err := p.WetFilm(0.4)
	fmt.Printf("%.0f um %v\n", float64(wet/coat.Micrometre), err)
	// Output:
	// 39 um <nil>
}

// A published second set of Antoine constants for acetone, ln p(kPa) = 14.3145 -
// 2756.22/(T + 228.060), gives 30.66 kPa at 25 C, where the first set does too.
func ExampleSolvent_Saturation_acetone() {
	s, err := coat.FindSolvent("acetone")
	fmt.Printf("%.2f kPa %v\n", s.Saturation(unit.Celsius(25))/1e3, err)
	// Output:
	// 30.66 kPa <nil>
}

// By hand, the method of Fuller, Schettler and Giddings, 0.00143 T^1.75/(p M^0.5 (19.7^1/3 +
// V^1/3)^2) cm2/s with V of the atoms, 18.3 off for the ring: toluene in air at 25 C and 1
// atm, V = 111.48, M = 44.06, is 0.0806; the same without its ring would be 0.0755.
func ExampleSolvent_Diffusivity_toluene() {
	s, err := coat.FindSolvent("toluene")
	fmt.Printf("%.4f cm2/s %v\n", 1e4*s.Diffusivity(unit.Celsius(25), coat.ReferencePressure), err)
	// Output:
	// 0.0806 cm2/s <nil>
}

// By hand, El-Shanawany and Lefebvre's correlation: 100 m/s of air of 1.2 kg/m3 twice the
// mass of water's 1000 kg/m3, 30 mN/m and 1 mPa s on 10 mm make drops of
// 10 mm x 1.5 x (0.33 x 0.0068986 x 1.95904 + 0.068 x 0.00182574) = 68.8 um.
func ExampleDropSize() {
	d, err := coat.DropSize(coat.Atomizing{
		AirSpeed: 100, AirDensity: 1.2, AirLiquid: 2, Density: 1000, Tension: 0.03, Viscosity: 1e-3,
		Prefilmer: unit.MM(10), Duct: unit.MM(10),
	})
	fmt.Printf("%.1f um %v\n", float64(d/coat.Micrometre), err)
	// Output:
	// 68.8 um <nil>
}

// A paint maker's page on pot life: 2 h at 20 C, 1 h at 30 C, half an hour at 40 C.
func ExamplePotLifeAt_makersPage() {
	for _, c := range []float64{20, 30, 40} {
		p, err := coat.PotLifeAt(2*time.Hour, unit.Celsius(20), unit.Celsius(c))
		fmt.Printf("%.0f C: %v %v\n", c, p.Life, err)
	}
	// Output:
	// 20 C: 2h0m0s <nil>
	// 30 C: 1h0m0s <nil>
	// 40 C: 30m0s <nil>
}

// The vapour pressure of n-butyl acetate at 40 C, 3.48 kPa by a chemical engineers'
// handbook (8th edition, table 2-8), is 2.98 times that at 21 C.
func ExampleSolventDrive_hotDay() {
	s, err := coat.FindSolvent(coat.ReferenceSolvent)
	fmt.Printf("%.1f %v\n", coat.SolventDrive(s, unit.Celsius(40), coat.ReferencePressure), err)
	// Output:
	// 3.0 <nil>
}
