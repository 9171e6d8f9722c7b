package spread_test

import (
	"math/rand/v2"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/require"
)

// solved is a request with its setup.
func solved(t require.TestingT, r calc.Request) (*calc.Request, *calc.Setup) {
	s, err := calc.Solve(&r)
	require.NoError(t, err)
	return &r, s
}

// atFoot puts MildClear's regulator at the end of its line.
func atFoot(r *calc.Request) { r.Line = append(append([]line.Part(nil), r.Line[1:]...), r.Line[0]) }

// fiveLines are lines as unlike as a shop's may be.
func fiveLines(t require.TestingT) map[string]calc.Request {
	mild := calctest.MildClear(t)
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
	r := calctest.MildClear(t)
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
