package main

import (
	"math"
	"strconv"
	"strings"
)

// scale is a unit as people spell it: its size in the quantity's first unit here, where its
// zero lies there, and the decimals that a value in it is given with.
type scale struct {
	size, zero float64
	decimals   int
	names      []string
}

// Units in psi, C, mm, um of a film, L/min, %, mL, m2, s and mm2/s.
var (
	psi = &scale{1, 0, 1, []string{"psi", "psig", "lb", "lbs", "libra", "libras"}}
	bar = &scale{14.503774, 0, 2, []string{"bar", "bars", "barg", "bar(g)"}}
	kpa = &scale{0.14503774, 0, 0, []string{"kPa", "kpag"}}
	mpa = &scale{145.03774, 0, 2, []string{"MPa", "mpag"}}

	fahrenheit = &scale{5.0 / 9, -160.0 / 9, 1, []string{"F", "°F", "deg F", "degrees F", "grados F", "grado F", "fahrenheit"}}
	celsius    = &scale{1, 0, 1, []string{"C", "°C", "deg C", "degrees C", "grados C", "celsius", "centigrados", "centígrados", "grados centigrados", "grados centígrados"}}

	inch   = &scale{25.4, 0, 2, []string{"in", "inch", "inches", `"`, "''", "pulg", "pulgada", "pulgadas"}}
	foot   = &scale{304.8, 0, 1, []string{"ft", "foot", "feet", "'", "pie", "pies"}}
	mm     = &scale{1, 0, 1, []string{"mm", "millimetre", "millimetres", "millimeters", "milimetro", "milimetros", "milímetros"}}
	cm     = &scale{10, 0, 1, []string{"cm", "centimetre", "centimeters", "centimetro", "centimetros", "centímetros"}}
	metre  = &scale{1000, 0, 2, []string{"m", "metre", "metres", "meter", "meters", "metro", "metros"}}
	mil    = &scale{25.4, 0, 2, []string{"mil", "mils", "thou", "milesima", "milesimas", "milésimas"}}
	micron = &scale{1, 0, 0, []string{"um", "micron", "microns", "micrometres", "micrometers", "micra", "micras"}}

	cfm     = &scale{28.7, 0, 1, []string{"cfm", "scfm", "ft3/min", "pcm", "pies3/min"}}
	lpm     = &scale{1, 0, 0, []string{"L/min", "lpm", "dm3/min", "litros/min"}}
	lps     = &scale{60, 0, 2, []string{"L/s", "dm3/s"}}
	m3pm    = &scale{1000, 0, 2, []string{"m3/min"}}
	m3ph    = &scale{1000.0 / 60, 0, 1, []string{"m3/h"}}
	hp      = &scale{100, 0, 1, []string{"hp"}} // of a compressor's motor
	percent = &scale{1, 0, 1, []string{"%", "percent", "pct", "%RH", "por ciento"}}
	litre   = &scale{1000, 0, 2, []string{"L", "litre", "litres", "liter", "liters", "litro", "litros", "lt", "lts"}}
	ml      = &scale{1, 0, 0, []string{"mL", "cc", "cm3", "mililitro", "mililitros"}}
	gallon  = &scale{3785.411784, 0, 2, []string{"gal", "gals", "gallon", "gallons", "galon", "galones", "galón"}}
	quart   = &scale{946.352946, 0, 2, []string{"qt", "qts", "quart", "quarts", "cuarto", "cuartos"}}
	ounce   = &scale{29.5735295625, 0, 1, []string{"fl oz", "floz", "fl.oz", "oz", "onza", "onzas"}}

	foot2  = &scale{0.09290304, 0, 1, []string{"ft2", "ft^2", "sq ft", "pie2", "pies2", "pies cuadrados"}}
	metre2 = &scale{1, 0, 2, []string{"m2", "m^2", "sq m", "metros cuadrados"}}

	second = &scale{1, 0, 1, []string{"s", "sec", "secs", "second", "seconds", "seg", "segundo", "segundos"}}
	minute = &scale{60, 0, 2, []string{"min", "mins", "minute", "minutes", "minuto", "minutos"}}
	hour   = &scale{3600, 0, 2, []string{"h", "hr", "hrs", "hour", "hours", "hora", "horas"}}

	cst = &scale{1, 0, 1, []string{"cSt", "mm2/s", "mm^2/s"}}
)

// longest is the most characters that are taken for a quantity.
const longest = 32

// spell is a value of an amount as somebody types it: in any of its units, in any spelling.
func (m *maker) spell(a *amount, value float64) string {
	s := pick(m, a.units...)
	usual := a.bare[0]
	if m.metric {
		usual = a.bare[1]
	}
	if usual != nil && m.chance(0.5) {
		s = usual
	}
	number := m.number((value-s.zero)/s.size, s.decimals, a.parted)
	if s == usual && m.chance(0.3) {
		return number + m.suffix(a)
	}
	name := pick(m, s.names...)
	switch {
	case m.chance(0.6):
		name = s.names[0]
	case m.chance(0.2):
		name = upper(name)
	}
	text := number + pick(m, "", "", " ") + name + m.suffix(a)
	switch {
	case s != hp && len(a.suffixes) == 0 && m.chance(0.01):
		text += "."
	case m.chance(0.01):
		text = " " + text + " "
	}
	if len([]rune(text)) > longest {
		return number + s.names[0] + m.suffix(a)
	}
	return text
}

// suffix is what follows the unit, as in 180 mL/min.
func (m *maker) suffix(a *amount) string {
	if len(a.suffixes) == 0 {
		return ""
	}
	return pick(m, a.suffixes...)
}

// number writes a number: whole more often than not where it is above 10, with a decimal
// comma here and there unless a comma parts the value from another.
func (m *maker) number(v float64, decimals int, parted bool) string {
	if math.Abs(v) >= 10 && m.chance(0.6) {
		decimals = 0
	}
	scale := math.Pow10(decimals)
	v = math.Round(v*scale) / scale
	if v == 0 {
		v = 0 // not -0
	}
	text := strconv.FormatFloat(v, 'f', -1, 64)
	if m.chance(0.03) && !strings.Contains(text, ".") {
		text += ".0"
	}
	if m.chance(0.1) && !parted {
		text = strings.Replace(text, ".", ",", 1)
	}
	if m.chance(0.01) && v > 0 && !parted {
		text = "+" + text
	}
	return text
}

// upper is text with its ASCII letters in upper case.
func upper(text string) string {
	return strings.Map(func(r rune) rune {
		if 'a' <= r && r <= 'z' {
			return r - 'a' + 'A'
		}
		return r
	}, text)
}
