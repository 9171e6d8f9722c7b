package spread_test

import (
	"math"
	"math/rand/v2"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/require"
)

// roughly is tolerances of the size a shop's have.
var roughly = calc.Tolerances{
	Coupling: calc.Tolerance{Within: 0.3}, Filter: calc.Tolerance{Within: 0.3}, Valve: calc.Tolerance{Within: 0.3}, ValveShape: calc.Tolerance{Within: math.Log(4.5)},
	HoseBore: calc.Tolerance{Within: 0.8e-3}, HoseEnd: calc.Tolerance{Within: 0.2}, Friction: calc.Tolerance{Within: 0.2}, CriticalRatio: calc.Tolerance{Within: 0.33},
	Felt:      calc.Tolerance{Within: 0.2},
	StampFlow: calc.Tolerance{Within: 0.1}, StampCap: calc.Tolerance{Within: 0.15}, Droop: calc.Tolerance{Within: 0.5},
	WallGauge: calc.Tolerance{Within: unit.PascalPerPSI * 4}, GunGauge: calc.Tolerance{Within: unit.PascalPerPSI * 1.5},
	Thermometer: calc.Tolerance{Within: 1}, HygrometerShare: calc.Tolerance{Within: 0.05},
}

// mildClear is a clear on a reduced-pressure gun down 25 ft of 3/8 in hose: figures of
// common practice, no published source.
func mildClear(t require.TestingT) calc.Request {
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
		Tolerances: roughly,
	}
}

// solved is a request with its setup.
func solved(t require.TestingT, r calc.Request) (*calc.Request, *calc.Setup) {
	s, err := calc.Solve(&r)
	require.NoError(t, err)
	return &r, s
}

// atFoot puts mildClear's regulator at the end of its line.
func atFoot(r *calc.Request) { r.Line = append(append([]line.Part(nil), r.Line[1:]...), r.Line[0]) }

// fiveLines are lines as unlike as a shop's may be.
func fiveLines(t require.TestingT) map[string]calc.Request {
	mild := mildClear(t)
	with := func(change func(*calc.Request)) calc.Request {
		r := mild
		r.Line = append([]line.Part(nil), mild.Line...)
		change(&r)
		return r
	}
	return map[string]calc.Request{
		"mild": mild,
		"slim": with(func(r *calc.Request) {
			r.Line[1].Restriction = line.Restriction{C: unit.DM3PerSBar(2), B: 0.3}
			r.Line[3].Restriction = r.Line[1].Restriction
		}),
		"long and thin": with(func(r *calc.Request) {
			r.Line[2].Hose = line.Hose{Length: unit.Feet(35), Bore: unit.MM(8), Roughness: line.SmoothRubber, End: line.Restriction{C: unit.DM3PerSBar(6), B: 0.5}}
		}),
		"hot waterborne": with(func(r *calc.Request) {
			r.Coat.Waterborne = true
			r.Day.Air, r.Day.Humidity = unit.Celsius(33), 0.3
		}),
		"regulator at the foot": with(atFoot),
	}
}

// anyLine is a line of any hose and couplings on any day, for a gun that is run anywhere.
func anyLine(t require.TestingT, random *rand.Rand) calc.Request {
	between := func(low, high float64) float64 { return low + (high-low)*random.Float64() }
	r := mildClear(t)
	r.Line = append([]line.Part(nil), r.Line...)
	for i := range r.Line {
		switch p := &r.Line[i]; p.Kind {
		case line.HoseKind:
			p.Hose = line.Hose{Length: unit.Feet(between(5, 60)), Bore: unit.MM(between(6.5, 13)), Roughness: line.SmoothRubber, End: line.Restriction{C: unit.DM3PerSBar(between(3, 12)), B: 0.5}}
		case line.CouplingKind:
			p.Restriction.C = unit.DM3PerSBar(between(2, 10))
		}
	}
	r.Day.Air, r.Day.Humidity = unit.Celsius(between(5, 42)), between(0.05, 0.95)
	r.Day.Panel = r.Day.Air + 3
	r.Coat.Waterborne = random.IntN(3) == 0
	if random.IntN(4) == 0 {
		atFoot(&r)
	}
	r.Supply, r.Mark = unit.PSIG(between(60, 150)), unit.Drop(between(0.5, 5)*unit.PascalPerPSI)
	start := between(15, 32)
	r.Coat.Working.Start, r.Coat.Working.Low, r.Coat.Working.High = unit.PSIG(start), unit.PSIG(start-between(0.2, 4)), unit.PSIG(start+between(0.2, 4))
	return r
}
