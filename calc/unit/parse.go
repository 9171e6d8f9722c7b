package unit

// Parsing takes what people type at the bench: a number, then the unit with or
// without a space ("90psi", "6 bar", "24°C", "3/8 in", "45%"). Each function has
// a bare unit, taken when only a number was typed; a bare of zero takes none, so
// the unit must then be typed.
//
// A number is digits with at most one point or decimal comma ("1,5" is 1.5) and
// a sign if wanted. "1,500" is refused, since it means 1500 to some and 1.5 to
// others. Lengths may be fractions ("3/8", "1-1/2", "1 1/2"). Exponents, hex,
// nan, inf, underscores, digits other than 0 to 9, more than 32 characters and
// numbers beyond 1e9 are refused. Units are read without regard to case, by their
// English and their Spanish names.
//
// Every error is a *ParseError and comes with a zero value; a value is finite.
// Whether a value is sensible (a humidity of 300 %) is for the caller to say.

// PressureUnit is a unit a gauge is marked in.
type PressureUnit uint8

// The units of pressure.
const (
	InPSI PressureUnit = iota + 1
	InBar
	InKPa
	InMPa
)

var pressure = quantity[PressureUnit]{
	name:  "pressure",
	usage: "want-pressure",
	rows: []row[PressureUnit]{
		{InPSI, PascalPerPSI, []string{"psi", "psig", "lb", "lbs", "libra", "libras"}},
		{InBar, PascalPerBar, []string{"bar", "bars", "barg", "bar(g)"}},
		{InKPa, 1e3, []string{"kpa", "kpag"}},
		{InMPa, 1e6, []string{"mpa", "mpag"}},
	},
}

// ParseGauge reads a pressure as a gauge shows it: psi, psig, bar, kPa or MPa.
func ParseGauge(s string, bare PressureUnit) (Gauge, error) {
	return scaled[Gauge](&pressure, s, bare)
}

// TempUnit is a unit of temperature or of a difference of temperatures.
type TempUnit uint8

// The units of temperature. A kelvin of difference is read as InCelsius.
const (
	InFahrenheit TempUnit = iota + 1
	InCelsius
)

const kelvinPerFahrenheit = 1 / 1.8

var degreeMarks = []string{"°", "deg", "degree", "degrees", "grado", "grados"}

var (
	fahrenheitNames = []string{"f", "°f", "degf", "degreesf", "gradof", "gradosf", "fahrenheit"}
	celsiusNames    = []string{"c", "°c", "degc", "degreesc", "gradoc", "gradosc", "celsius", "centigrados", "centígrados", "gradoscentigrados", "gradoscentígrados"}
)

var temperature = quantity[TempUnit]{
	name:  "temperature",
	usage: "want-temperature",
	marks: degreeMarks,
	rows: []row[TempUnit]{
		{InFahrenheit, kelvinPerFahrenheit, fahrenheitNames},
		{InCelsius, 1, celsiusNames},
	},
}

var temperatureDifference = quantity[TempUnit]{
	name:  "temperature-difference",
	usage: "want-temperature-difference",
	marks: degreeMarks,
	rows: []row[TempUnit]{
		{InFahrenheit, kelvinPerFahrenheit, fahrenheitNames},
		{InCelsius, 1, celsiusNames},
		{InCelsius, 1, []string{"k", "kelvin"}},
	},
}

// ParseTemp reads a temperature in F or C. One at or below absolute zero is an
// error.
func ParseTemp(s string, bare TempUnit) (Temp, error) {
	r, err := temperature.parse(s, bare)
	if err != nil {
		return 0, err
	}
	t := Celsius(r.value)
	if r.unit.unit == InFahrenheit {
		t = Fahrenheit(r.value)
	}
	if t <= 0 {
		return 0, temperature.fail(s, "want-above-absolute-zero")
	}
	return t, nil
}

// ParseTempDiff reads a difference of temperatures in F or C degrees or kelvin:
// 5F is five Fahrenheit degrees, 2.8 K.
func ParseTempDiff(s string, bare TempUnit) (TempDiff, error) {
	return scaled[TempDiff](&temperatureDifference, s, bare)
}

// LengthUnit is a unit of length: of bores, hoses, altitudes and films alike.
type LengthUnit uint8

// The units of length. A mil is a thousandth of an inch, a micron 1 um.
const (
	InInches LengthUnit = iota + 1
	InFeet
	InMM
	InCM
	InMetres
	InMils
	InMicrons
)

var length = quantity[LengthUnit]{
	name:      "length",
	usage:     "want-length",
	fractions: true,
	rows: []row[LengthUnit]{
		{InInches, MetrePerInch, []string{"in", "inch", "inches", `"`, "''", "pulg", "pulgada", "pulgadas"}},
		{InFeet, MetrePerFoot, []string{"ft", "foot", "feet", "'", "pie", "pies"}},
		{InMM, 1e-3, []string{"mm", "millimetre", "millimetres", "millimeter", "millimeters", "milimetro", "milimetros", "milímetro", "milímetros"}},
		{InCM, 1e-2, []string{"cm", "centimetre", "centimetres", "centimeter", "centimeters", "centimetro", "centimetros", "centímetro", "centímetros"}},
		{InMetres, 1, []string{"m", "metre", "metres", "meter", "meters", "metro", "metros"}},
		{InMils, MetrePerMil, []string{"mil", "mils", "thou", "milesima", "milesimas", "milésima", "milésimas"}},
		{InMicrons, 1e-6, []string{"um", "micron", "microns", "micrometre", "micrometres", "micrometer", "micrometers", "micra", "micras"}},
	},
}

// ParseLength reads a length: in ("), ft ('), mm, cm, m, mil or um, also as a
// fraction. A fraction with no unit is inches where bare is InMM or InCM, since
// a hose is sold as 3/8 in countries that measure it in millimetres too.
func ParseLength(s string, bare LengthUnit) (Length, error) {
	r, err := length.parse(s, bare)
	if err != nil {
		return 0, err
	}
	if r.fraction && r.bare && (bare == InMM || bare == InCM) {
		return Inches(r.value), nil
	}
	return Length(r.value * r.unit.size), nil
}

// FlowUnit is a unit of volume flow of air.
type FlowUnit uint8

// The units of flow. A cubic foot a minute is the scfm of this package, the
// metric ones are at ANR; see the reference atmospheres above.
const (
	InSCFM FlowUnit = iota + 1
	InLPM
	InLPS
	InM3PerMin
	InM3PerHour
)

var flow = quantity[FlowUnit]{
	name:  "air-flow",
	usage: "want-air-flow",
	rows: []row[FlowUnit]{
		{InSCFM, ANRPerSCFM, []string{"cfm", "scfm", "ft3/min", "pcm", "pies3/min"}},
		{InLPM, CubicMetrePerL / SecondPerMinute, []string{"l/min", "lpm", "dm3/min", "litros/min"}},
		{InLPS, CubicMetrePerL, []string{"l/s", "dm3/s"}},
		{InM3PerMin, 1 / SecondPerMinute, []string{"m3/min"}},
		{InM3PerHour, 1 / SecondPerHour, []string{"m3/h"}},
	},
}

// ParseFlow reads a flow of air: cfm or scfm (taken as the same), L/min, L/s,
// m3/min, m3/h. Flows at 0 C (Nl/min, Nm3/h) are not taken.
func ParseFlow(s string, bare FlowUnit) (Flow, error) {
	return scaled[Flow](&flow, s, bare)
}

type percentUnit uint8

const inPercent percentUnit = 1

var percentage = quantity[percentUnit]{
	name:  "percentage",
	usage: "want-percentage",
	rows:  []row[percentUnit]{{inPercent, 1e-2, []string{"%", "percent", "pct", "%rh", "porciento"}}},
}

// ParsePercent reads a percentage, with or without its sign, as a fraction: both
// "45" and "45%" are 0.45, and "0.45" is 0.0045.
func ParsePercent(s string) (float64, error) {
	r, err := percentage.parse(s, inPercent)
	if err != nil {
		return 0, err
	}
	return r.value / 100, nil // exact where a product with 0.01 is not
}

// VolumeUnit is a unit of liquid or receiver volume. Gallons, quarts and fluid
// ounces are those of the US.
type VolumeUnit uint8

// The units of volume.
const (
	InLitres VolumeUnit = iota + 1
	InML
	InGallons
	InQuarts
	InFluidOunces
)

var volume = quantity[VolumeUnit]{
	name:  "volume",
	usage: "want-volume",
	rows: []row[VolumeUnit]{
		{InLitres, CubicMetrePerL, []string{"l", "litre", "litres", "liter", "liters", "litro", "litros", "lt", "lts"}},
		{InML, 1e-3 * CubicMetrePerL, []string{"ml", "cc", "cm3", "mililitro", "mililitros"}},
		{InGallons, LitrePerUSGal * CubicMetrePerL, []string{"gal", "gals", "gallon", "gallons", "galon", "galones", "galón"}},
		{InQuarts, LitrePerUSGal * CubicMetrePerL / 4, []string{"qt", "qts", "quart", "quarts", "cuarto", "cuartos"}},
		{InFluidOunces, LitrePerUSGal * CubicMetrePerL / OuncePerUSGal, []string{"floz", "fl.oz", "oz", "onza", "onzas"}},
	},
}

// ParseVolume reads a volume: L, mL, or the US gal, qt and fl oz.
func ParseVolume(s string, bare VolumeUnit) (Volume, error) {
	return scaled[Volume](&volume, s, bare)
}

// AreaUnit is a unit of area.
type AreaUnit uint8

// The units of area.
const (
	InFeet2 AreaUnit = iota + 1
	InMetres2
)

var area = quantity[AreaUnit]{
	name:  "area",
	usage: "want-area-number",
	rows: []row[AreaUnit]{
		{InFeet2, MetrePerFoot * MetrePerFoot, []string{"ft2", "ft^2", "sqft", "pie2", "pies2", "piescuadrados"}},
		{InMetres2, 1, []string{"m2", "m^2", "sqm", "metroscuadrados"}},
	},
}

// ParseArea reads an area: ft2 or sq ft, m2 or sq m.
func ParseArea(s string, bare AreaUnit) (Area, error) {
	return scaled[Area](&area, s, bare)
}

// TimeUnit is a unit of time.
type TimeUnit uint8

// The units of time.
const (
	InSeconds TimeUnit = iota + 1
	InMinutes
	InHours
)

var duration = quantity[TimeUnit]{
	name:  "time",
	usage: "want-time",
	rows: []row[TimeUnit]{
		{InSeconds, 1, []string{"s", "sec", "secs", "second", "seconds", "seg", "segundo", "segundos"}},
		{InMinutes, SecondPerMinute, []string{"min", "mins", "minute", "minutes", "minuto", "minutos"}},
		{InHours, SecondPerHour, []string{"h", "hr", "hrs", "hour", "hours", "hora", "horas"}},
	},
}

// ParseSeconds reads a cup's timing or a span of time: s, min or h.
func ParseSeconds(s string, bare TimeUnit) (Seconds, error) {
	return scaled[Seconds](&duration, s, bare)
}

type viscosityUnit uint8

const inMM2PerS viscosityUnit = 1

var viscosity = quantity[viscosityUnit]{
	name:  "viscosity",
	usage: "want-viscosity",
	rows:  []row[viscosityUnit]{{inMM2PerS, 1e-6, []string{"mm2/s", "mm^2/s", "cst"}}},
}

// ParseViscosity reads a kinematic viscosity in mm2/s or cSt, which are the
// same; a bare number is taken so too.
func ParseViscosity(s string) (Kinematic, error) {
	return scaled[Kinematic](&viscosity, s, inMM2PerS)
}
