// Package calctest is what the tests of several packages share: a line of a usual size, and how
// wrong its values may be.
package calctest

import (
	"math"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/require"
)

// Roughly is tolerances of the size a shop's have.
var Roughly = calc.Tolerances{
	Coupling: calc.Tolerance{Within: 0.3}, Filter: calc.Tolerance{Within: 0.3}, Valve: calc.Tolerance{Within: 0.3}, ValveShape: calc.Tolerance{Within: math.Log(4.5)},
	HoseBore: calc.Tolerance{Within: 0.8e-3}, HoseEnd: calc.Tolerance{Within: 0.2}, Friction: calc.Tolerance{Within: 0.2}, CriticalRatio: calc.Tolerance{Within: 0.33},
	Felt:      calc.Tolerance{Within: 0.2},
	StampFlow: calc.Tolerance{Within: 0.1}, StampCap: calc.Tolerance{Within: 0.15}, Droop: calc.Tolerance{Within: 0.5},
	WallGauge: calc.Tolerance{Within: unit.PascalPerPSI * 4}, GunGauge: calc.Tolerance{Within: unit.PascalPerPSI * 1.5},
	Thermometer: calc.Tolerance{Within: 1}, HygrometerShare: calc.Tolerance{Within: 0.05},
}

// MildClear is a clear on a reduced-pressure gun down 25 ft of 3/8 in hose: figures of
// common practice, no published source.
func MildClear(t require.TestingT) calc.Request {
	g, err := gun.New(gun.Stamp{Inlet: unit.PSIG(32), Flow: unit.SCFM(10), Cap: unit.PSIG(20)}, 0, gun.Valve{
		Full:  line.Restriction{C: unit.DM3PerSBar(6.5), B: 0.3},
		Shape: 2.25, Turns: 2,
	})
	require.NoError(t, err)
	solvent, err := coat.FindSolvent(coat.ReferenceSolvent)
	require.NoError(t, err)
	coupling := line.Restriction{C: unit.DM3PerSBar(8), B: 0.4}
	return calc.Request{
		Coat:   calc.Coat{ID: "clear", Solvent: solvent, Working: calc.Band{Start: unit.PSIG(26), Low: unit.PSIG(23), High: unit.PSIG(32)}},
		Gun:    calc.Gun{Gun: g, ID: "reduced-pressure", Nearest: unit.Inches(5), Farthest: unit.Inches(6), Felt: g.FeltAt(unit.Inches(5.5), unit.PSIG(26))},
		Day:    calc.Day{Air: unit.Fahrenheit(72), Humidity: 0.45, Panel: unit.Fahrenheit(72)},
		Supply: unit.PSIG(90),
		Line: []line.Part{
			{Kind: line.RegulatorKind, Restriction: line.Restriction{C: unit.DM3PerSBar(9), B: 0.3}, Droop: line.DroopOf(unit.PSIDrop(5), unit.SCFM(150))},
			{Kind: line.CouplingKind, Restriction: coupling},
			{Kind: line.HoseKind, Hose: line.Hose{Length: unit.Feet(25), Bore: unit.Inches(0.375), Roughness: line.SmoothRubber, End: line.Restriction{C: unit.DM3PerSBar(9), B: 0.5}}},
			{Kind: line.CouplingKind, Restriction: coupling},
		},
		Mark:       unit.PSIDrop(1),
		Tolerances: Roughly,
	}
}
