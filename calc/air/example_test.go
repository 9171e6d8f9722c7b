package air_test

import (
	"fmt"

	"boothset/calc/air"
	"boothset/calc/unit"
)

// ASHRAE Handbook of Fundamentals 2017, chapter 1, table 3: 3.1697, 0.8726 and 12.3513 kPa
// at 25, 5 and 50 C, of which the formulas here keep the last but one figure.
func ExampleSaturationPressure_handbookTable3() {
	for _, c := range []float64{25, 5, 50} {
		fmt.Printf("%2.0f C: %.2f kPa\n", c, air.SaturationPressure(unit.Celsius(c))/1e3)
	}
	// Output:
	// 25 C: 3.17 kPa
	//  5 C: 0.87 kPa
	// 50 C: 12.35 kPa
}

// ASHRAE Handbook of Fundamentals 2017, chapter 1, example 1: moist air at 40 C dry bulb
// and 20 C wet bulb, 101.325 kPa. Read off the chart there: dew point 7 C, relative
// humidity 14 %, 0.896 m3 for each kg of dry air.
func ExampleWetBulb_handbookExample1() {
	dry, rh := unit.Celsius(40), 0.14
	ratio := air.HumidityRatio(dry, rh, 101325)
	fmt.Printf("wet bulb %.0f C\n", air.WetBulb(dry, rh, 101325).C())
	fmt.Printf("dew point %.0f C\n", air.DewPoint(dry, rh).C())
	fmt.Printf("%.3f m3/kg dry air\n", (1+ratio)/air.MoistDensity(dry, rh, 101325))
	// Output:
	// wet bulb 20 C
	// dew point 7 C
	// 0.896 m3/kg dry air
}

// A published dew-point chart for coatings, F, whole degrees rounded down: air of 70 F and
// 65 % has a dew point of 57 F, of 80 F and 50 % one of 59 F.
func ExampleDewPoint_coatingChart() {
	fmt.Println(int(air.DewPoint(unit.Fahrenheit(70), 0.65).F()), "F")
	fmt.Println(int(air.DewPoint(unit.Fahrenheit(80), 0.50).F()), "F")
	// Output:
	// 57 F
	// 59 F
}

// A dew-point instrument maker's page: air with a dew point near -10 C (2.8 mbar of vapour)
// at 1013.3 mbar, brought to twice that pressure, has one of about -1 C.
func ExamplePressureDewPoint_doubled() {
	fmt.Printf("%.0f C\n", air.PressureDewPoint(280, 101330, 2*101330).C())
	// Output:
	// -1 C
}

// ASHRAE Handbook of Fundamentals 2017, chapter 1, table 1: the standard atmosphere, kPa.
func ExampleAtAltitude_handbookTable1() {
	for _, m := range []unit.Length{0, 500, 1000, 2000} {
		fmt.Printf("%4.0f m %4.1f C %7.3f kPa\n", m, air.TempAtAltitude(m).C(), air.AtAltitude(m)/1e3)
	}
	// Output:
	//    0 m 15.0 C 101.325 kPa
	//  500 m 11.8 C  95.461 kPa
	// 1000 m  8.5 C  89.875 kPa
	// 2000 m  2.0 C  79.495 kPa
}

// US Standard Atmosphere 1976, tables I and III, at sea level: 1.2250 kg/m3, 340.29 m/s and
// 1.7894e-5 Pa s.
func ExampleViscosity_standardAtmosphere() {
	t := air.TempAtAltitude(0)
	fmt.Printf("%.4f kg/m3\n", air.Density(air.AtAltitude(0), t))
	fmt.Printf("%.2f m/s\n", air.SoundSpeed(t))
	fmt.Printf("%.4e Pa s\n", air.Viscosity(t))
	// Output:
	// 1.2250 kg/m3
	// 340.29 m/s
	// 1.7894e-05 Pa s
}
