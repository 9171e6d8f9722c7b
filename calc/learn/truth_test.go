package learn

import (
	"math"
	"math/rand/v2"
	"slices"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/require"
)

// shopLine is a line as shops have them, of parts like the catalogue's; a spare hose of its
// kind is at hand.
func shopLine(t require.TestingT, random *rand.Rand) Line {
	pick := func(n int) int { return random.IntN(n) }
	stamp := []gun.Stamp{
		{Inlet: unit.PSIG(32), Flow: unit.SCFM(10), Cap: unit.PSIG(20)},
		{Inlet: unit.PSIG(29), Flow: unit.SCFM(15), Cap: unit.PSIG(10)},
	}[pick(2)]
	r := calctest.MildClear(t)
	g, err := gun.New(stamp, 0, r.Gun.Valve)
	require.NoError(t, err)
	r.Gun.Gun = g
	start := stamp.Inlet.PSI() - 4 - 2*random.Float64()
	r.Coat.Working = calc.Band{Start: unit.PSIG(start), Low: unit.PSIG(start - 3), High: stamp.Inlet}
	coupling := func(name string) line.Part {
		of := []line.Restriction{{C: unit.DM3PerSBar(8), B: 0.4}, {C: unit.DM3PerSBar(4), B: 0.3}, {C: unit.DM3PerSBar(2), B: 0.3}}
		return line.Part{Name: name, Kind: line.CouplingKind, Restriction: of[pick(3)]}
	}
	hose := []line.Hose{
		{Length: unit.Feet(15 + 10*float64(pick(2))), Bore: unit.Inches(5. / 16), End: line.Restriction{C: line.OfBore(unit.MM(7), line.FullBore), B: 0.5}},
		{Length: unit.Feet(25 + 10*float64(pick(3))), Bore: unit.Inches(3. / 8), End: line.Restriction{C: line.OfBore(unit.MM(8.5), line.FullBore), B: 0.5}},
		{Length: unit.Feet(25 + 10*float64(pick(3))), Bore: unit.Inches(1. / 2), End: line.Restriction{C: line.OfBore(unit.MM(11.5), line.FullBore), B: 0.5}},
	}[pick(3)]
	hose.Roughness = line.SmoothRubber
	r.Supply = unit.PSIG(110)
	r.Line = []line.Part{r.Line[0]}
	if pick(2) == 0 {
		r.Line = append(r.Line, line.Part{Name: "filter", Kind: line.FilterKind, Restriction: line.Restriction{C: unit.DM3PerSBar(6), B: 0.3}})
	}
	r.Line = append(r.Line, coupling("wall coupling"), line.Part{Name: "hose", Kind: line.HoseKind, Hose: hose}, coupling("gun coupling"))
	r.Tolerances.WallGauge = calc.GaugeTolerance(unit.PSIG(160), 0.025, unit.PSIDrop(1))
	s, err := calc.Solve(&r)
	require.NoError(t, err)
	return Line{Request: &r, Setup: s, Spare: []line.Part{{Name: "spare hose", Kind: line.HoseKind, Hose: hose}}}
}

// truth is a line as it is.
type truth struct {
	m   *model
	d   draw
	off [mostGauges]float64 // what its gauges read too high, Pa
}

// newTruth draws a line as the priors have it, with as many tolerances as wide: exactly odd
// pieces of its own are odd or, at -1, one or none as often as they are.
func newTruth(of Line, random *rand.Rand, wider float64, odd int) *truth {
	m, err := newModel(of)
	if err != nil {
		panic(err)
	}
	y := &truth{m: m}
	for {
		m.drawn(&y.d, random)
		n := 0
		for i := range m.pieces {
			if o := &y.d.own[i]; !m.inUse(i) {
				o.odd, o.by = false, 0
			} else if o.odd {
				n++
			}
			y.d.own[i].passes *= wider
			y.d.own[i].end *= wider
		}
		if n == odd || odd < 0 && n <= 1 {
			break
		}
	}
	for k := range y.d.shared {
		y.d.shared[k] *= wider
	}
	for g, i := range m.instruments {
		y.off[g] = float64(i.Within) / 2 * random.NormFloat64()
	}
	return y
}

// shows is a reading of the line, with its noise where there is chance.
func (y *truth) shows(x Reading, random *rand.Rand) Reading {
	t := y.m.takes(x)
	x.Shows = slices.Clone(x.Shows)
	chance := func() float64 {
		if random == nil {
			return 0
		}
		return random.NormFloat64()
	}
	noise := func(g Gauge) float64 { return math.Sqrt(y.m.noise[g]) * chance() }
	wall := t.seen[0].value - y.off[WallGauge] - noise(WallGauge)
	at := still(wall).at
	if !x.Still {
		t.Opening += math.Sqrt(t.misread) * chance()
		y.m.each(1, func(w *worker, _ int) {
			w.put(&y.d)
			w.arrange(&t)
			at = w.march(w.working(observation{quantity: atWall, value: wall}))
		})
	}
	for i := range x.Shows[1:] {
		o := t.seen[i+1]
		x.Shows[i+1].Pressure = unit.Gauge(at[o.quantity] + y.off[o.gauge] + noise(o.gauge))
	}
	return x
}

// outcome is a line's settings, with what the gun gets.
type outcome struct {
	calc.Outcome
	gun unit.Gauge
}

// settings is what is right to set.
func (y *truth) settings(random *rand.Rand) outcome {
	z, o := (&Learner{model: y.m}).offs(&y.d)
	for _, k := range y.m.unread {
		z[k] = random.NormFloat64()
	}
	o.WallGauge, o.GunGauge = unit.Drop(y.off[WallGauge]), unit.Drop(y.off[GunGauge])
	p := calc.Perturb(y.m.Request, y.m.Setup)
	return outcome{p.WorkOff(&z, &o), p.Open()}
}
