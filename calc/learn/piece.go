package learn

import (
	"math"

	"boothset/calc"
	"boothset/calc/line"
)

// Piece is one thing between the wall's regulator and the panel that may be odd by itself.
type Piece struct {
	ID   string
	Role Role
	Gun  int       // whose it is, unless it is in the line
	Part line.Part // if it is
}

// Role is what a piece is to the gun.
type Role uint8

// The roles: a part of the line, the gun's inlet valve, or the gun itself, its passages and cap.
const (
	InLine Role = iota
	InletValve
	GunItself
)

// MostPieces is how many pieces there may be: those of a line, of the gun, and spare ones.
const MostPieces = calc.MostParts + 8

// What is taken of odd parts: estimates, no source was found in print.
const (
	// OddShare is how often a piece is odd.
	OddShare = 0.1
	// LeastOdd and MostOdd bound what an odd piece passes, as shares of what it should; all
	// ratios between them are as likely.
	LeastOdd, MostOdd = 1. / 8, 1. / 2
)

// oddness is the logarithm of what an odd piece passes at a place between its bounds, 0..1, and
// oddWidth how far these are apart.
func oddness(at float64) float64 { return math.Log(LeastOdd) + at*oddWidth }

var oddWidth = math.Log(MostOdd / LeastOdd)

// sigmas are the standard deviations that a piece has by itself, as logarithms: of what it
// passes, and of a hose's end fittings, an inlet valve's shape or a gun's stamped cap pressure.
func (p *Piece) sigmas(t *calc.Tolerances) (passes, end float64) {
	switch p.Role {
	case InletValve:
		return t.Valve.Within / 2, t.ValveShape.Within / 2
	case GunItself:
		return t.StampFlow.Within / 2, t.StampCap.Within / 2
	}
	switch p.Part.Kind {
	case line.CouplingKind:
		return t.Coupling.Within / 2, 0
	case line.FilterKind:
		return t.Filter.Within / 2, 0
	case line.HoseKind:
		return t.HoseBore.Within / float64(p.Part.Hose.Bore), t.HoseEnd.Within / 2 // of its area, twice its bore's
	}
	return 0, 0
}
