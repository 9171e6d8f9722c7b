package tui

import (
	"strings"

	"boothset/calc/unit"
)

// What the pictures need of the units in use: a quantity as the plain number on a scale,
// and the text of such a number.

func (s *session) pressure(p unit.Gauge) float64 {
	if s.sys == unit.Metric {
		return p.Bar()
	}
	return p.PSI()
}

func (s *session) pressureText(v float64) string {
	if s.sys == unit.Metric {
		return s.sys.Gauge(unit.BarG(v), unit.Usual)
	}
	return s.sys.Gauge(unit.PSIG(v), unit.Usual)
}

func (s *session) distance(l unit.Length) float64 {
	if s.sys == unit.Metric {
		return l.MM()
	}
	return l.Inches()
}

func (s *session) distanceText(v float64) string {
	if s.sys == unit.Metric {
		return s.sys.Small(unit.MM(v), unit.Usual)
	}
	return s.sys.Small(unit.Inches(v), unit.Usual)
}

func (s *session) degrees(t unit.Temp) float64 {
	if s.sys == unit.Metric {
		return t.C()
	}
	return t.F()
}

// temperature is that of so many degrees.
func (s *session) temperature(v float64) unit.Temp {
	if s.sys == unit.Metric {
		return unit.Celsius(v)
	}
	return unit.Fahrenheit(v)
}

func (s *session) degreesText(v float64) string { return s.sys.Temp(s.temperature(v), 0) }

// bare is a printed quantity without its unit.
func bare(printed string) string {
	return strings.TrimSuffix(printed, " "+unitOf(printed))
}
