package tui

import "boothset/calc/unit"

// axis is a quantity in the units shown, as the scale of a picture counts it.
type axis struct {
	*unit.Quantity
	sys      unit.System
	decimals int
}

func (s *session) axis(of *unit.Quantity) axis { return axis{of, s.sys, unit.Usual} }

// at is where a value lies.
func (a axis) at(si float64) float64 { return a.Count(a.sys, si) }

// number is a place without its unit.
func (a axis) number(at float64) string { return a.Number(a.sys, a.Of(a.sys, at), a.decimals) }
