// Package unit holds the quantities of the job as types in SI, the parsing of
// what people type ("75F", "6 bar", "25ft") and the printing of what people read.
//
// Each quantity is a float64 in its SI unit, named so that the compiler keeps
// unlike things apart. Gauge and absolute pressure are two types: they are only
// turned into each other with the ambient pressure at hand.
package unit

// Conversion factors to SI. All are exact by definition except where noted.
const (
	PascalPerPSI    = 6894.757293168361 // 1 lbf/in2, from 0.45359237 kg, 9.80665 m/s2, 0.0254 m
	PascalPerBar    = 1e5
	MetrePerInch    = 0.0254
	MetrePerFoot    = 0.3048
	ZeroCelsius     = 273.15 // K
	LitrePerUSGal   = 3.785411784
	CubicMetrePerL  = 1e-3
	SecondPerMinute = 60.0
	SecondPerHour   = 3600.0
	MetrePerMil     = MetrePerInch / 1000
	OuncePerUSGal   = 128.0          // US fluid ounces
	CubicFoot       = 0.028316846592 // m3
	KilogramPerLb   = 0.45359237
	KilogramPerOz   = KilogramPerLb / 16
)

// The reference atmospheres of volume flow. A flow is held as the volume it
// would have at ANR (ISO 8778: 20 C, 100 kPa, 65 % RH); one scfm here is a cubic
// foot a minute at 14.696 psia and 68 F, the reference most compressors and guns
// are sold by. Other references differ by up to 3 %.
const (
	ANRDensity     = 1.185    // kg/m3, the nominal value of ISO 8778
	ANRPressure    = 1e5      // Pa
	ANRTemperature = 293.15   // K
	SCFMPressure   = 101325.0 // Pa (14.696 psia)
	// ANRPerSCFM is m3/s ANR in one scfm: 0.4719474 dm3/s x (101.325/100) x (293.15/293.15).
	ANRPerSCFM = CubicFoot / SecondPerMinute * SCFMPressure / ANRPressure
)

// Gauge is a pressure above the ambient air, Pa. Negative is below ambient.
type Gauge float64

// Abs is a pressure above vacuum, Pa.
type Abs float64

// Drop is a difference of two pressures, Pa: a loss, a reserve, a droop.
type Drop float64

// Flow is a volume flow of air at ANR, m3/s.
type Flow float64

// MassFlow is a mass flow, kg/s.
type MassFlow float64

// Length is a length, m.
type Length float64

// Mass is a mass, kg.
type Mass float64

// Density is a mass a volume, kg/m3.
type Density float64

// Temp is an absolute temperature, K.
type Temp float64

// TempDiff is a difference of temperatures, K.
type TempDiff float64

// Speed is a speed, m/s.
type Speed float64

// Volume is a volume, m3.
type Volume float64

// Area is an area, m2.
type Area float64

// Seconds is a span of time, s.
type Seconds float64

// Conductance is a sonic conductance C of ISO 6358, m3/(s Pa) ANR. Sheets give
// dm3/(s bar), 1e-8 of this unit.
type Conductance float64

// Kinematic is a kinematic viscosity, m2/s. 1 mm2/s (1 cSt) is 1e-6.
type Kinematic float64

// PSIG, BarG, PSI and Bar make pressures from the units on a gauge's face.
func PSIG(v float64) Gauge { return Gauge(v * PascalPerPSI) }

// BarG is v bar above ambient.
func BarG(v float64) Gauge { return Gauge(v * PascalPerBar) }

// PSIDrop is a difference of v psi.
func PSIDrop(v float64) Drop { return Drop(v * PascalPerPSI) }

// PSI is the gauge pressure in psi.
func (p Gauge) PSI() float64 { return float64(p) / PascalPerPSI }

// Bar is the gauge pressure in bar.
func (p Gauge) Bar() float64 { return float64(p) / PascalPerBar }

// Abs is the absolute pressure where the ambient is as given.
func (p Gauge) Abs(ambient Abs) Abs { return Abs(float64(p) + float64(ambient)) }

// Gauge is the pressure above the ambient given.
func (p Abs) Gauge(ambient Abs) Gauge { return Gauge(float64(p) - float64(ambient)) }

// PSI is the absolute pressure in psi.
func (p Abs) PSI() float64 { return float64(p) / PascalPerPSI }

// Bar is the absolute pressure in bar.
func (p Abs) Bar() float64 { return float64(p) / PascalPerBar }

// PSI is the difference in psi.
func (d Drop) PSI() float64 { return float64(d) / PascalPerPSI }

// Bar is the difference in bar.
func (d Drop) Bar() float64 { return float64(d) / PascalPerBar }

// SCFM makes a flow from cubic feet a minute at 14.696 psia and 68 F.
func SCFM(v float64) Flow { return Flow(v * ANRPerSCFM) }

// LPM makes a flow from litres a minute ANR.
func LPM(v float64) Flow { return Flow(v * CubicMetrePerL / SecondPerMinute) }

// SCFM is the flow in cubic feet a minute at 14.696 psia and 68 F.
func (q Flow) SCFM() float64 { return float64(q) / ANRPerSCFM }

// LPM is the flow in litres a minute ANR.
func (q Flow) LPM() float64 { return float64(q) / CubicMetrePerL * SecondPerMinute }

// Mass is the mass flow: volume at ANR times the density there.
func (q Flow) Mass() MassFlow { return MassFlow(float64(q) * ANRDensity) }

// Flow is the volume flow at ANR.
func (m MassFlow) Flow() Flow { return Flow(float64(m) / ANRDensity) }

// Inches, Feet and MM make lengths.
func Inches(v float64) Length { return Length(v * MetrePerInch) }

// Feet is a length of v feet.
func Feet(v float64) Length { return Length(v * MetrePerFoot) }

// MM is a length of v millimetres.
func MM(v float64) Length { return Length(v * 1e-3) }

// Inches is the length in inches.
func (l Length) Inches() float64 { return float64(l) / MetrePerInch }

// Feet is the length in feet.
func (l Length) Feet() float64 { return float64(l) / MetrePerFoot }

// MM is the length in millimetres.
func (l Length) MM() float64 { return float64(l) * 1e3 }

// Celsius makes a temperature from degrees Celsius.
func Celsius(v float64) Temp { return Temp(v + ZeroCelsius) }

// Fahrenheit makes a temperature from degrees Fahrenheit.
func Fahrenheit(v float64) Temp { return Temp((v-32)/1.8 + ZeroCelsius) }

// C is the temperature in degrees Celsius.
func (t Temp) C() float64 { return float64(t) - ZeroCelsius }

// F is the temperature in degrees Fahrenheit.
func (t Temp) F() float64 { return (float64(t)-ZeroCelsius)*1.8 + 32 }

// C is the difference in Celsius degrees.
func (d TempDiff) C() float64 { return float64(d) }

// F is the difference in Fahrenheit degrees.
func (d TempDiff) F() float64 { return float64(d) * 1.8 }

// FeetPerSecond is the speed in feet a second.
func (v Speed) FeetPerSecond() float64 { return float64(v) / MetrePerFoot }

// Litres makes a volume from litres.
func Litres(v float64) Volume { return Volume(v * CubicMetrePerL) }

// USGallons makes a volume from US gallons.
func USGallons(v float64) Volume { return Volume(v * LitrePerUSGal * CubicMetrePerL) }

// Litres is the volume in litres.
func (v Volume) Litres() float64 { return float64(v) / CubicMetrePerL }

// USGallons is the volume in US gallons.
func (v Volume) USGallons() float64 { return float64(v) / CubicMetrePerL / LitrePerUSGal }

// DM3PerSBar makes a sonic conductance from the unit data sheets use.
func DM3PerSBar(v float64) Conductance { return Conductance(v * 1e-8) }

// DM3PerSBar is the sonic conductance in the unit data sheets use.
func (c Conductance) DM3PerSBar() float64 { return float64(c) * 1e8 }

// MM2PerS makes a kinematic viscosity from mm2/s (cSt).
func MM2PerS(v float64) Kinematic { return Kinematic(v * 1e-6) }

// MM2PerS is the kinematic viscosity in mm2/s (cSt).
func (n Kinematic) MM2PerS() float64 { return float64(n) * 1e6 }

// LitresAnHour is a flow of water in litres an hour, a kilogram a litre.
func (m MassFlow) LitresAnHour() float64 { return float64(m) * SecondPerHour }
