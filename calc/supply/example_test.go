package supply_test

import (
	"fmt"
	"time"

	"boothset/calc/air"
	"boothset/calc/supply"
	"boothset/calc/unit"
)

// at147 is a flow in cubic feet a minute of the sizing sources' 14.7 psia.
func at147(cfm float64) unit.Flow {
	return unit.Flow(cfm * unit.CubicFoot / 60 * 14.7 * unit.PascalPerPSI / unit.ANRPressure)
}

// A handbook's receiver sizing: 350 less 250 cfm for 5 minutes between 100 and 60 psig take
// 5 x 100 x 14.7/40 = 183.75 cubic feet, 1374 US gal.
func ExampleReceiverFor_handbook() {
	v, err := supply.ReceiverFor(at147(350), at147(250), 5*time.Minute, unit.PSIDrop(100-60), 0)
	fmt.Printf("%.0f gal %v\n", float64(v)/unit.CubicFoot*7.48, err)
	// Output:
	// 1374 gal <nil>
}

// The same, by hand the other way: 60 gal from 120 to 90 psig with 15 cfm out and 10 in last
// 60/7.48052 x 30/14.7/5 = 3.27 min.
func ExampleReceiver_DrawDown() {
	r := supply.Receiver{Volume: unit.USGallons(60)}
	fmt.Printf("%.2f min\n", r.DrawDown(unit.PSIDrop(30), at147(15), at147(10)).Time.Minutes())
	// Output:
	// 3.27 min
}

// A published pump-up measurement: a machine with 25 gal takes 35 s from 85 to 102 psig,
// which is 6.63 cfm.
func ExampleReceiver_Delivered_pumpUp() {
	q, err := supply.Receiver{Volume: unit.USGallons(25)}.Delivered(unit.PSIDrop(102-85), 35*time.Second)
	fmt.Printf("%.2f cfm %v\n", q.SCFM(), err)
	// Output:
	// 6.63 cfm <nil>
}

// The storage cases of the DOE/ORNL AMO tools: 660 gal between 110 and 100 psig hold 60.024
// standard cubic feet.
func ExampleReceiver_FreeAir_amoTools() {
	r := supply.Receiver{Volume: unit.Volume(660 / 7.48 * unit.CubicFoot)}
	anr := r.FreeAir(unit.PSIDrop(10))
	fmt.Printf("%.3f scf\n", float64(anr)/unit.CubicFoot*unit.ANRPressure/(14.7*unit.PascalPerPSI))
	// Output:
	// 60.024 scf
}

// A blower maker's note on altitude: a cubic foot at sea level is about 1.2 at 5000 ft.
func ExampleFreeAir_altitude() {
	up := supply.Inlet{Ambient: air.AtAltitude(unit.Feet(5000)), Temp: unit.Celsius(20)}
	q, err := supply.FreeAir(unit.SCFM(100), supply.SCFMInlet, up)
	fmt.Printf("%.1f %v\n", 100/q.SCFM(), err)
	// Output:
	// 1.2 <nil>
}

// A rule of compressor guides: 4 to 5 scfm a horsepower at 100 psig.
func ExampleFromPower_rule() {
	low, high, err := supply.FromPower(5)
	fmt.Printf("%.0f to %.0f scfm %v\n", low.SCFM(), high.SCFM(), err)
	// Output:
	// 20 to 25 scfm <nil>
}

// A handling-equipment maker's formula for air lines, dp = 1.6e12 q^1.85 L/(d^5 p1) in kPa,
// by hand: 10 L/s over 20 m of 26.6 mm from 800 kPa absolute lose 0.60 kPa.
func ExampleMain_Drop_formula() {
	d, err := supply.Main{Length: 20, Bore: unit.MM(26.6)}.Drop(0.01, 800e3)
	fmt.Printf("%.2f kPa %v\n", float64(d)/1e3, err)
	// Output:
	// 0.60 kPa <nil>
}

// ISO 8573-1:2010, the tables of water as suppliers of filters reprint them: classes 1 to 6
// by pressure dew points of -70, -40, -20, 3, 7 and 10 C, 7 to 9 by 0.5, 5 and 10 g/m3 of
// liquid, X beyond.
func ExampleClassOf_iso8573() {
	for _, c := range []float64{-70, -40, -20, 3, 7, 10} {
		fmt.Print(supply.ClassOf(unit.Celsius(c), 0), " ")
	}
	for _, grams := range []float64{0.5, 5, 10, 11} {
		fmt.Print(supply.ClassOf(unit.Celsius(10), grams), " ")
	}
	fmt.Println()
	// Output:
	// 1 2 3 4 5 6 7 8 9 X
}

// psychrolib 1.1.1: air of 20 C and 50 % at 101.325 kPa, compressed to 7 bar gauge, has a
// dew point of 44.3 C; cooled there to 25 C it drops 4.79 g of water a kilogram of dry air.
func ExampleDamp_Follow_psychrolib() {
	seven := unit.BarG(7)
	w, err := supply.Damp{
		Inlet: supply.Inlet{Ambient: 101325, Temp: unit.Celsius(20)}, Humidity: 0.5,
		Receiver: seven, ReceiverTemp: unit.Celsius(25), Main: unit.Celsius(30),
		Spraying: seven, Hose: unit.Celsius(30), Flow: unit.SCFM(10),
	}.Follow()
	fmt.Printf("%.1f C, %.2f g/kg %v\n", w.Compressed.C(), 1e3*float64(w.InReceiver/unit.SCFM(10).Mass()), err)
	// Output:
	// 44.3 C, 4.79 g/kg <nil>
}

// By hand: a gun's 12 scfm, a tool of 8 that runs a quarter of the time and one of 4 that
// never stops draw 12 + 2 + 4 = 18 in the mean and 24 at once.
func ExampleTotal() {
	d, err := supply.Total(unit.SCFM(12), []supply.User{{Flow: unit.SCFM(8), Duty: 0.25}, {Flow: unit.SCFM(4), Duty: 1}})
	fmt.Printf("%.0f and %.0f scfm %v\n", d.Mean.SCFM(), d.Peak.SCFM(), err)
	// Output:
	// 18 and 24 scfm <nil>
}
