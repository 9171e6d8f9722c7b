package unit

// The string forms of printing; each is its Append form in print.go.

// Gauge is a gauge pressure as text, such as "30 psi" or "2.07 bar".
func (s System) Gauge(p Gauge, decimals int) string {
	return string(s.AppendGauge(nil, p, decimals))
}

// Drop is a difference of pressures as text, such as "2.4 psi".
func (s System) Drop(d Drop, decimals int) string {
	return string(s.AppendDrop(nil, d, decimals))
}

// Abs is an absolute pressure as text, such as "1.01 bar abs".
func (s System) Abs(p Abs, decimals int) string {
	return string(s.AppendAbs(nil, p, decimals))
}

// Small is a length such as a gun's distance as text: "5.5 in" or "140 mm".
func (s System) Small(l Length, decimals int) string {
	return string(s.AppendSmall(nil, l, decimals))
}

// Long is a length such as a hose's as text: "25 ft" or "7.6 m".
func (s System) Long(l Length, decimals int) string {
	return string(s.AppendLong(nil, l, decimals))
}

// Film is a film's thickness as text: "2.2 mil" or "55 um".
func (s System) Film(l Length, decimals int) string {
	return string(s.AppendFilm(nil, l, decimals))
}

// Bore is the bore of a hose or a passage as text: "3/8 in" or "9.5 mm".
func (s System) Bore(l Length) string {
	return string(s.AppendBore(nil, l))
}

// Temp is a temperature as text: "75 F" or "23.9 C".
func (s System) Temp(t Temp, decimals int) string {
	return string(s.AppendTemp(nil, t, decimals))
}

// TempDiff is a difference of temperatures as text: "5.0 F" or "2.8 C".
func (s System) TempDiff(d TempDiff, decimals int) string {
	return string(s.AppendTempDiff(nil, d, decimals))
}

// Flow is a flow of air as text: "10.0 cfm" or "287 L/min".
func (s System) Flow(q Flow, decimals int) string {
	return string(s.AppendFlow(nil, q, decimals))
}

// Speed is a speed as text: "1.3 ft/s" or "0.40 m/s".
func (s System) Speed(v Speed, decimals int) string {
	return string(s.AppendSpeed(nil, v, decimals))
}

// Volume is a volume as text: "60.0 gal", "12 fl oz", "1.50 L" or "350 mL".
func (s System) Volume(v Volume, decimals int) string {
	return string(s.AppendVolume(nil, v, decimals))
}

// Area is an area as text: "20 ft2" or "1.86 m2".
func (s System) Area(a Area, decimals int) string {
	return string(s.AppendArea(nil, a, decimals))
}

// KinematicText is a kinematic viscosity as text, such as "60 mm2/s".
func KinematicText(n Kinematic, decimals int) string {
	return string(AppendKinematic(nil, n, decimals))
}

// PercentText is a fraction as a percentage, such as "45%".
func PercentText(fraction float64, decimals int) string {
	return string(AppendPercent(nil, fraction, decimals))
}

// PressureUnit is what a bare number of pressure means in the system.
func (s System) PressureUnit() PressureUnit { return either(s, InPSI, InBar) }

// TempUnit is what a bare number of degrees means in the system.
func (s System) TempUnit() TempUnit { return either(s, InFahrenheit, InCelsius) }

// SmallUnit is what a bare number of a bore or a distance means in the system.
func (s System) SmallUnit() LengthUnit { return either(s, InInches, InMM) }

// LongUnit is what a bare number of a hose or an altitude means in the system.
func (s System) LongUnit() LengthUnit { return either(s, InFeet, InMetres) }

// FilmUnit is what a bare number of a film means in the system.
func (s System) FilmUnit() LengthUnit { return either(s, InMils, InMicrons) }

// FlowUnit is what a bare number of flow means in the system.
func (s System) FlowUnit() FlowUnit { return either(s, InSCFM, InLPM) }

// VolumeUnit is what a bare number of volume means in the system.
func (s System) VolumeUnit() VolumeUnit { return either(s, InGallons, InLitres) }

// AreaUnit is what a bare number of area means in the system.
func (s System) AreaUnit() AreaUnit { return either(s, InFeet2, InMetres2) }

func either[U any](s System, us, metric U) U {
	if s == Metric {
		return metric
	}
	return us
}
