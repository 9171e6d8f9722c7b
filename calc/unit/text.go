package unit

// The typed forms of printing.

// Gauge is a gauge pressure as text, such as "30 psi" or "2.07 bar".
func (s System) Gauge(p Gauge, decimals int) string { return Pressure.Text(s, float64(p), decimals) }

// Drop is a difference of pressures as text, such as "2.4 psi".
func (s System) Drop(d Drop, decimals int) string { return Pressure.Text(s, float64(d), decimals) }

// Small is a length such as a gun's distance as text: "5.5 in" or "140 mm".
func (s System) Small(l Length, decimals int) string { return Distance.Text(s, float64(l), decimals) }

// Long is a length such as a hose's as text: "25 ft" or "7.6 m".
func (s System) Long(l Length, decimals int) string { return Run.Text(s, float64(l), decimals) }

// Film is a film's thickness as text: "2.2 mil" or "55 um".
func (s System) Film(l Length, decimals int) string { return Film.Text(s, float64(l), decimals) }

// Bore is the bore of a hose or a passage as text: "3/8 in" or "9.5 mm".
func (s System) Bore(l Length) string { return Bore.Text(s, float64(l), Usual) }

// Temp is a temperature as text: "75 F" or "23.9 C".
func (s System) Temp(t Temp, decimals int) string { return Temperature.Text(s, float64(t), decimals) }

// TempDiff is a difference of temperatures as text: "5.0 F" or "2.8 C".
func (s System) TempDiff(d TempDiff, decimals int) string {
	return TemperatureDifference.Text(s, float64(d), decimals)
}

// Flow is a flow of air as text: "10.0 cfm" or "287 L/min".
func (s System) Flow(q Flow, decimals int) string { return AirFlow.Text(s, float64(q), decimals) }

// Speed is a gun's speed as text: "1.31 ft/s" or "0.40 m/s".
func (s System) Speed(v Speed, decimals int) string { return Velocity.Text(s, float64(v), decimals) }

// Volume is a volume as text: "60.0 gal", "12 fl oz", "1.50 L" or "350 mL".
func (s System) Volume(v Volume, decimals int) string { return Tank.Text(s, float64(v), decimals) }

// Area is an area as text: "20 ft2" or "1.86 m2".
func (s System) Area(a Area, decimals int) string { return Surface.Text(s, float64(a), decimals) }

// PercentText is a fraction as a percentage, such as "45%".
func PercentText(fraction float64, decimals int) string {
	return Share.Text(US, fraction, decimals)
}
