package unit

// The table of quantities: everything that is known of how each is typed, printed, counted
// and stepped. Adding a unit is one spelling here.

var (
	showPSI = scale{label: " psi", key: "psi", count: func(si float64) float64 { return Gauge(si).PSI() }, of: func(v float64) float64 { return float64(PSIG(v)) }, fine: 1}
	showBar = scale{label: " bar", key: "bar", count: func(si float64) float64 { return Gauge(si).Bar() }, of: func(v float64) float64 { return float64(BarG(v)) }, fine: 2, coarse: 2}

	showF       = scale{label: " F", key: "f", count: func(si float64) float64 { return Temp(si).F() }, of: func(v float64) float64 { return float64(Fahrenheit(v)) }}
	showC       = scale{label: " C", key: "c", count: func(si float64) float64 { return Temp(si).C() }, of: func(v float64) float64 { return float64(Celsius(v)) }, fine: 1, coarse: 1}
	showFDegree = scale{label: " F", key: "f", count: func(si float64) float64 { return TempDiff(si).F() }, of: func(v float64) float64 { return v / 1.8 }, fine: 1}
	showCDegree = scale{label: " C", key: "c", count: itself, of: itself, fine: 1, coarse: 1}

	showInch   = scale{label: " in", key: "in", count: func(si float64) float64 { return Length(si).Inches() }, of: func(v float64) float64 { return float64(Inches(v)) }, fine: 1, coarse: 1}
	showMM     = scale{label: " mm", key: "mm", count: func(si float64) float64 { return Length(si).MM() }, of: func(v float64) float64 { return float64(MM(v)) }, fine: 1}
	showFeet   = scale{label: " ft", key: "ft", count: func(si float64) float64 { return Length(si).Feet() }, of: func(v float64) float64 { return float64(Feet(v)) }}
	showMetre  = scale{label: " m", key: "m", count: itself, of: itself, fine: 1}
	showMil    = scale{label: " mil", key: "mil", count: func(si float64) float64 { return si / MetrePerMil }, of: func(v float64) float64 { return v * MetrePerMil }, finest: 2, fine: 1, coarse: 1}
	showMicron = scale{label: " um", key: "um", count: func(si float64) float64 { return si * 1e6 }, of: func(v float64) float64 { return v * 1e-6 }, fine: 1}

	showCFM = scale{label: " cfm", key: "cfm", count: func(si float64) float64 { return Flow(si).SCFM() }, of: func(v float64) float64 { return float64(SCFM(v)) }, fine: 1, coarse: 1}
	showLPM = scale{label: " L/min", key: "l_min", count: func(si float64) float64 { return Flow(si).LPM() }, of: func(v float64) float64 { return float64(LPM(v)) }, fine: 1}

	showOunce  = scale{label: " fl oz", key: "fl_oz", count: func(si float64) float64 { return Volume(si).USGallons() * OuncePerUSGal }, of: func(v float64) float64 { return float64(USGallons(v / OuncePerUSGal)) }, fine: 1}
	showML     = scale{label: " mL", key: "ml", count: func(si float64) float64 { return Volume(si).Litres() * 1e3 }, of: func(v float64) float64 { return float64(Litres(v / 1e3)) }, fine: 1}
	showGallon = scale{label: " gal", key: "gal", count: func(si float64) float64 { return Volume(si).USGallons() }, of: func(v float64) float64 { return float64(USGallons(v)) }, fine: 2, coarse: 1, below: &showOunce}
	showLitre  = scale{label: " L", key: "l", count: func(si float64) float64 { return Volume(si).Litres() }, of: func(v float64) float64 { return float64(Litres(v)) }, fine: 2, coarse: 1, below: &showML}

	showMLPerMin    = scale{label: " mL/min", key: "ml_min", count: func(si float64) float64 { return si * 1e6 * SecondPerMinute }, of: func(v float64) float64 { return v * 1e-6 / SecondPerMinute }}
	showPercent     = scale{label: "%", key: "percent", count: func(si float64) float64 { return si * 100 }, of: func(v float64) float64 { return v / 100 }}
	showSecond      = scale{label: " s", key: "s", count: itself, of: itself}
	showMinute      = scale{label: " min", key: "min", count: func(si float64) float64 { return si / SecondPerMinute }, of: func(v float64) float64 { return v * SecondPerMinute }}
	showHour        = scale{label: " h", key: "h", count: func(si float64) float64 { return si / SecondPerHour }, of: func(v float64) float64 { return v * SecondPerHour }}
	showPoundPerGal = scale{label: " lb/gal", key: "lb_gal", count: func(si float64) float64 { return si / densityPerLbGal }, of: func(v float64) float64 { return v * densityPerLbGal }, fine: 1, coarse: 1}
	showGram        = scale{label: " g", key: "g", count: func(si float64) float64 { return si * 1e3 }, of: func(v float64) float64 { return v / 1e3 }}
	showTurn        = scale{label: " turn", key: "turns", count: itself, of: itself, finest: 3, fine: 3}
	showHorse       = scale{label: " hp", key: "hp", count: itself, of: itself}
)

// densityPerLbGal is kg/m3 in a pound a US gallon.
const densityPerLbGal = KilogramPerLb / (LitrePerUSGal * CubicMetrePerL)

func itself(v float64) float64 { return v }

var (
	pressures = []spelling{
		{PascalPerPSI, []string{"psi", "psig", "lb", "lbs", "libra", "libras"}},
		{PascalPerBar, []string{"bar", "bars", "barg", "bar(g)"}},
		{1e3, []string{"kpa", "kpag"}},
		{1e6, []string{"mpa", "mpag"}},
	}
	fahrenheitNames = []string{"f", "°f", "degf", "degreesf", "gradof", "gradosf", "fahrenheit"}
	celsiusNames    = []string{"c", "°c", "degc", "degreesc", "gradoc", "gradosc", "celsius", "centigrados", "centígrados", "gradoscentigrados", "gradoscentígrados"}
	degreeMarks     = []string{"°", "deg", "degree", "degrees", "grado", "grados"}
	// A mil is a thousandth of an inch, a micron 1 um.
	lengths = []spelling{
		{MetrePerInch, []string{"in", "inch", "inches", `"`, "''", "pulg", "pulgada", "pulgadas"}},
		{MetrePerFoot, []string{"ft", "foot", "feet", "'", "pie", "pies"}},
		{1e-3, []string{"mm", "millimetre", "millimetres", "millimeter", "millimeters", "milimetro", "milimetros", "milímetro", "milímetros"}},
		{1e-2, []string{"cm", "centimetre", "centimetres", "centimeter", "centimeters", "centimetro", "centimetros", "centímetro", "centímetros"}},
		{1, []string{"m", "metre", "metres", "meter", "meters", "metro", "metros"}},
		{MetrePerMil, []string{"mil", "mils", "thou", "milesima", "milesimas", "milésima", "milésimas"}},
		{1e-6, []string{"um", "micron", "microns", "micrometre", "micrometres", "micrometer", "micrometers", "micra", "micras"}},
	}
	densities = []spelling{
		{densityPerLbGal, []string{"lb/gal", "lbs/gal", "lb/usgal", "libras/galon", "libras/galón"}},
		{1, []string{"g/l", "kg/m3"}},
		{1e3, []string{"kg/l", "g/ml", "g/cm3", "g/cc"}},
	}
	// Gallons, quarts and fluid ounces are those of the US.
	volumes = []spelling{
		{CubicMetrePerL, []string{"l", "litre", "litres", "liter", "liters", "litro", "litros", "lt", "lts"}},
		{1e-3 * CubicMetrePerL, []string{"ml", "cc", "cm3", "mililitro", "mililitros"}},
		{LitrePerUSGal * CubicMetrePerL, []string{"gal", "gals", "gallon", "gallons", "galon", "galones", "galón"}},
		{LitrePerUSGal * CubicMetrePerL / 4, []string{"qt", "qts", "quart", "quarts", "cuarto", "cuartos"}},
		{LitrePerUSGal * CubicMetrePerL / OuncePerUSGal, []string{"floz", "fl.oz", "oz", "onza", "onzas"}},
	}
	times = []spelling{
		{1, []string{"s", "sec", "secs", "second", "seconds", "seg", "segundo", "segundos"}},
		{SecondPerMinute, []string{"min", "mins", "minute", "minutes", "minuto", "minutos"}},
		{SecondPerHour, []string{"h", "hr", "hrs", "hour", "hours", "hora", "horas"}},
	}
)

// The quantities.
var (
	// Pressure is a pressure as a gauge shows it, Pa above ambient.
	Pressure = &Quantity{ID: "pressure", usage: "want-pressure", units: pressures, shown: [2]scale{showPSI, showBar}, Step: [2]float64{1, 0.1}}
	// Temperature is an absolute temperature, K.
	Temperature = &Quantity{
		ID: "temperature", usage: "want-temperature", marks: degreeMarks,
		units: []spelling{{1 / 1.8, fahrenheitNames}, {1, celsiusNames}},
		shown: [2]scale{showF, showC}, Step: [2]float64{2, 1},
	}
	// TemperatureDifference is in K: 5 F is five Fahrenheit degrees, 2.8 K.
	TemperatureDifference = &Quantity{
		ID: "temperature-difference", usage: "want-temperature-difference", marks: degreeMarks,
		units: []spelling{{1 / 1.8, fahrenheitNames}, {1, celsiusNames}, {1, []string{"k", "kelvin"}}},
		shown: [2]scale{showFDegree, showCDegree},
	}
	// Distance is a length such as a gun's from the panel, m.
	Distance = &Quantity{ID: "length", usage: "want-length", fractions: true, units: lengths, shown: [2]scale{showInch, showMM}}
	// Run is a length such as a hose's or an altitude, m.
	Run = &Quantity{ID: "length", usage: "want-length", fractions: true, units: lengths, shown: [2]scale{showFeet, showMetre}, Step: [2]float64{5, 1}}
	// Bore is the bore of a hose or a passage, m; in inches it prints as a fraction.
	Bore = &Quantity{ID: "length", usage: "want-length", fractions: true, units: lengths, shown: [2]scale{showInch, showMM}}
	// Tip is the bore of a fluid tip, m, in mm all over the world.
	Tip = &Quantity{ID: "length", usage: "want-length", fractions: true, units: lengths, shown: [2]scale{showMM, showMM}}
	// Film is a film's thickness, m.
	Film = &Quantity{ID: "length", usage: "want-length", fractions: true, units: lengths, shown: [2]scale{showMil, showMicron}}
	// AirFlow is a volume flow of air at ANR, m3/s. A cubic foot a minute is the scfm of
	// this package, the metric units are at ANR; flows at 0 C (Nl/min, Nm3/h) are not taken.
	AirFlow = &Quantity{
		ID: "air-flow", usage: "want-air-flow",
		units: []spelling{
			{ANRPerSCFM, []string{"cfm", "scfm", "ft3/min", "pcm", "pies3/min"}},
			{CubicMetrePerL / SecondPerMinute, []string{"l/min", "lpm", "dm3/min", "litros/min"}},
			{CubicMetrePerL, []string{"l/s", "dm3/s"}},
			{1 / SecondPerMinute, []string{"m3/min"}},
			{1 / SecondPerHour, []string{"m3/h"}},
		},
		shown: [2]scale{showCFM, showLPM}, Step: [2]float64{1, 50},
	}
	// FluidFlow is a flow of coating, m3/s; mL/min in either system.
	FluidFlow = &Quantity{
		ID: "volume", usage: "want-volume", units: volumes, per: []string{"/min", "permin", "aminute", "porminuto", "pormin"},
		shown: [2]scale{showMLPerMin, showMLPerMin},
	}
	// Velocity is the speed of a gun over the panel, m/s.
	Velocity = &Quantity{
		ID: "length", usage: "want-length", fractions: true, units: lengths, per: []string{"/sec", "/seg", "/s", "persecond", "asecond", "porsegundo"},
		shown: [2]scale{
			{label: " ft/s", key: "ft_s", count: func(si float64) float64 { return Speed(si).FeetPerSecond() }, of: func(v float64) float64 { return v * MetrePerFoot }, fine: 1, coarse: 1},
			{label: " m/s", key: "m_s", count: itself, of: itself, finest: 2, fine: 1, coarse: 1},
		},
	}
	// Tank is the volume of a receiver or of paint, m3; below a gallon it prints in fluid
	// ounces, below a litre in mL.
	Tank = &Quantity{
		ID: "volume", usage: "want-volume", units: volumes, shown: [2]scale{showGallon, showLitre},
		pair: [2]scale{showOunce, showML}, brief: [2]scale{showOunce, showLitre}, Step: [2]float64{10, 50},
	}
	// CupVolume is a volume of the size of a cup, m3: a bare number is fl oz or mL.
	CupVolume = &Quantity{ID: "volume", usage: "want-volume", units: volumes, shown: [2]scale{showOunce, showML}}
	// Surface is an area, m2.
	Surface = &Quantity{
		ID: "area", usage: "want-area-number",
		units: []spelling{
			{MetrePerFoot * MetrePerFoot, []string{"ft2", "ft^2", "sqft", "pie2", "pies2", "piescuadrados"}},
			{1, []string{"m2", "m^2", "sqm", "metroscuadrados"}},
		},
		shown: [2]scale{
			{label: " ft2", key: "ft2", count: func(si float64) float64 { return si / (MetrePerFoot * MetrePerFoot) }, of: func(v float64) float64 { return v * (MetrePerFoot * MetrePerFoot) }, fine: 1},
			{label: " m2", key: "m2", count: itself, of: itself, fine: 2, coarse: 1},
		},
	}
	// Share is a fraction, typed and printed as a percentage: "45" and "45%" are 0.45, "0.45"
	// is 0.0045.
	Share = &Quantity{
		ID: "percentage", usage: "want-percentage", units: []spelling{{1e-2, []string{"%", "percent", "pct", "%rh", "porciento"}}},
		shown: [2]scale{showPercent, showPercent}, Step: [2]float64{5, 5},
	}
	// CupTime, Minutes and Hours are spans of time, s; they differ in what a bare number is.
	CupTime = &Quantity{ID: "time", usage: "want-time", units: times, shown: [2]scale{showSecond, showSecond}}
	Minutes = &Quantity{ID: "time", usage: "want-time", units: times, shown: [2]scale{showMinute, showMinute}, Step: [2]float64{1, 1}}
	Hours   = &Quantity{ID: "time", usage: "want-time", units: times, shown: [2]scale{showHour, showHour}}
	// Viscosity is a kinematic viscosity, m2/s; 1 mm2/s is 1 cSt.
	Viscosity = &Quantity{
		ID: "viscosity", usage: "want-viscosity", units: []spelling{{1e-6, []string{"mm2/s", "mm^2/s", "cst"}}},
		shown: [2]scale{showMM2PerS, showMM2PerS},
	}
	// PaintDensity is a paint's, kg/m3. VOC is what of it evaporates as volatile organic compounds, by
	// the volume of the paint.
	PaintDensity = &Quantity{
		ID: "density", usage: "want-density", units: densities,
		shown: [2]scale{showPoundPerGal, {label: " kg/L", key: "kg_l", count: func(si float64) float64 { return si / 1e3 }, of: func(v float64) float64 { return v * 1e3 }, fine: 2, coarse: 1}},
		Step:  [2]float64{0.1, 0.05},
	}
	VOC = &Quantity{
		ID: "voc", usage: "want-voc", units: densities,
		shown: [2]scale{showPoundPerGal, {label: " g/L", key: "g_l", count: itself, of: itself}},
		Step:  [2]float64{0.1, 10},
	}
	// Weight is what a scale shows, kg; paint is weighed in grams all over the world.
	Weight = &Quantity{
		ID: "mass", usage: "want-mass", units: []spelling{
			{1e-3, []string{"g", "gram", "grams", "gramo", "gramos"}}, {1, []string{"kg"}}, {KilogramPerLb, []string{"lb", "lbs"}}, {KilogramPerOz, []string{"oz"}},
		},
		shown: [2]scale{showGram, showGram},
	}
	// Turns is how far a knob is turned, in turns.
	Turns = &Quantity{
		ID: "turns", usage: "want-turns", fractions: true, units: []spelling{{1, []string{"turn", "turns", "t", "vuelta", "vueltas", "v"}}},
		shown: [2]scale{showTurn, showTurn}, Step: [2]float64{1.0 / TurnParts, 1.0 / TurnParts},
	}
	// Power is a motor's, in horsepower, which the rule of free air speaks of.
	Power = &Quantity{ID: "power", usage: "want-compressor", units: []spelling{{1, []string{"hp"}}}, shown: [2]scale{showHorse, showHorse}, Step: [2]float64{1, 1}}
)

var showMM2PerS = scale{label: " mm2/s", key: "mm2_s", count: func(si float64) float64 { return Kinematic(si).MM2PerS() }, of: func(v float64) float64 { return float64(MM2PerS(v)) }, fine: 1}
