package unit_test

import (
	"fmt"

	"boothset/calc/unit"
)

// NIST Special Publication 811, appendix B.8: a pound-force a square inch is 6894.757 Pa, an
// inch 25.4 mm, a foot 0.3048 m, a US gallon 3.785412 L, a US fluid ounce 29.57353 mL, a
// square foot 0.09290304 m2, a centistokes 1 mm2/s, and 68 F is (68 + 459.67)/1.8 K.
func ExampleParse_nistFactors() {
	for _, c := range []struct {
		of    *unit.Quantity
		typed string
		size  float64 // of what is printed, in SI
		name  string
	}{
		{unit.Pressure, "1 psi", 1, "Pa"}, {unit.Bore, "1 in", 1e-3, "mm"}, {unit.Run, "1 ft", 1, "m"},
		{unit.Tank, "1 gal", 1e-3, "L"}, {unit.CupVolume, "1 fl oz", 1e-6, "mL"}, {unit.Surface, "1 ft2", 1, "m2"},
		{unit.Viscosity, "1 cSt", 1e-6, "mm2/s"}, {unit.Temperature, "68 F", 1, "K"},
	} {
		v, err := unit.Parse[float64](c.of, c.typed, unit.Named)
		fmt.Printf("%-7s %.7g %s %v\n", c.typed, v/c.size, c.name, err)
	}
	// Output:
	// 1 psi   6894.757 Pa <nil>
	// 1 in    25.4 mm <nil>
	// 1 ft    0.3048 m <nil>
	// 1 gal   3.785412 L <nil>
	// 1 fl oz 29.57353 mL <nil>
	// 1 ft2   0.09290304 m2 <nil>
	// 1 cSt   1 mm2/s <nil>
	// 68 F    293.15 K <nil>
}

// By hand: a cubic foot a minute at 14.696 psia and 68 F is 0.4719474 dm3/s there, and
// 0.4719474 x 1.01325 = 0.4782 dm3/s at the 100 kPa and 20 C of ISO 8778 (ANR), whose
// nominal 1.185 kg/m3 make it 0.567 g/s.
func ExampleSCFM() {
	q := unit.SCFM(1)
	fmt.Printf("%.4f dm3/s, %.2f L/min, %.3f g/s\n", 1e3*float64(q), q.LPM(), 1e3*float64(q.Mass()))
	// Output:
	// 0.4782 dm3/s, 28.69 L/min, 0.567 g/s
}

// By definition: what a gauge reads at sea level, 101.325 kPa, and at a mile up, 83.4 kPa,
// over vacuum.
func ExampleGauge_Abs() {
	fmt.Printf("%.2f bar, %.2f bar\n", unit.PSIG(29).Abs(101325).Bar(), unit.PSIG(29).Abs(83400).Bar())
	// Output:
	// 3.01 bar, 2.83 bar
}

// NIST Special Publication 811, appendix B.8, an inch is 25.4 mm: a bore of 3/8 in is
// 9.525 mm, and is read as inches in either system.
func ExampleSystem_Bore() {
	bore, err := unit.Parse[unit.Length](unit.Bore, "3/8", unit.Metric)
	fmt.Printf("%s, %s, %.3f mm %v\n", unit.US.Bore(bore), unit.Metric.Bore(bore), bore.MM(), err)
	// Output:
	// 3/8 in, 9.5 mm, 9.525 mm <nil>
}
