package learn

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
)

// regulatorAtFoot puts MildClear's regulator at the end of its line.
func regulatorAtFoot(r *calc.Request) {
	r.Line = append(append([]line.Part(nil), r.Line[1:]...), r.Line[0])
}

// filtered puts a filter into MildClear's line, downstream of its regulator.
func filtered(r *calc.Request) {
	r.Line = append([]line.Part{r.Line[0], {Name: "filter", Kind: line.FilterKind, Restriction: line.Restriction{C: unit.DM3PerSBar(6), B: 0.3}}}, r.Line[1:]...)
}

// lineWith is MildClear with a change, its own list of parts.
func lineWith(t require.TestingT, change func(*calc.Request)) calc.Request {
	r := calctest.MildClear(t)
	r.Line = append([]line.Part(nil), r.Line...)
	change(&r)
	return r
}

// readLine is a line with what its gauges showed.
type readLine struct {
	request  calc.Request
	readings []Reading
}

// readLines are lines as unlike as a shop's may be, each read in another way.
func readLines(t require.TestingT) map[string]readLine {
	gaugeAt := func(g Gauge, psi float64) Shown { return Shown{Gauge: g, Pressure: unit.PSIG(psi)} }
	before := func(psi float64) Shown { return Shown{Gauge: WallGauge, Pressure: unit.PSIG(psi), Before: true} }
	return map[string]readLine{
		"mild, a bypass": {calctest.MildClear(t), []Reading{
			{Still: true, Shows: wallAndGun(30, 28.5)},
			{Opening: 1, Shows: append(wallAndGun(31, 23.5), before(31.4))},
			{Opening: 1, Pieces: []int{1, 2}, Shows: wallAndGun(31, 23.8)},
		}},
		"slim, a gauge at the foot": {lineWith(t, func(r *calc.Request) {
			r.Line[1].Restriction = line.Restriction{C: unit.DM3PerSBar(2), B: 0.3}
			r.Line[3].Restriction = r.Line[1].Restriction
		}), []Reading{
			{Opening: 1, Shows: wallAndGun(40, 24)},
			{Opening: 1, Shows: append(wallAndGun(40, 24.5), gaugeAt(FootGauge, 26.5))},
		}},
		"long and thin, a gauge at the cap": {lineWith(t, func(r *calc.Request) {
			r.Line[2].Hose = line.Hose{Length: unit.Feet(35), Bore: unit.MM(8), Roughness: line.SmoothRubber, End: line.Restriction{C: unit.DM3PerSBar(6), B: 0.5}}
		}), []Reading{
			{Still: true, Shows: wallAndGun(40, 41)},
			{Opening: 1, Shows: append(wallAndGun(40, 27), gaugeAt(CapGauge, 15))},
			{Opening: 1, Shows: wallAndGun(20, 12)},
		}},
		"a filter, the valve half open": {lineWith(t, filtered), []Reading{
			{Still: true, Shows: wallAndGun(32, 32)},
			{Opening: 1, Shows: wallAndGun(32, 25)},
			{Opening: 0.5, Shows: wallAndGun(32, 12)},
		}},
		"regulator at the foot, gauge before the valve": {lineWith(t, func(r *calc.Request) { regulatorAtFoot(r); r.Gauge = calc.AtFoot }), []Reading{
			{Opening: 1, Shows: append(wallAndGun(30, 29.5), gaugeAt(CapGauge, 16))},
			{Still: true, Shows: wallAndGun(30, 30.5)},
		}},
	}
}

// reference is what plain weighted draws say of a line: psi, shares.
type reference struct {
	Wall, Gun, Opening [2]float64 // 10 and 90 %
	Odd                []float64  // of each piece
	Nothing            float64
	Counting           float64
}

const referenceFile = "testdata/reference.json"

// The posterior of five lines against 10^7 plain weighted draws of each: every one draws the
// gauges' errors and the wall's pressure too, and is worked forward, from the wall to the gun.
// `make learn-reference` draws them anew; LEARN_REFERENCE is how many.
func TestAgainstPlainDraws(t *testing.T) {
	calctest.WithoutRace(t)
	for name, x := range readLines(t) {
		t.Run(name, func(t *testing.T) {
			if n, err := strconv.Atoi(os.Getenv("LEARN_REFERENCE")); err == nil {
				remake(t, name, plainDraws(t, x, n))
			}
			agrees(t, x, references(t)[name])
		})
	}
}

// references are the lines' as they are kept.
func references(t *testing.T) (known map[string]reference) {
	text, err := os.ReadFile(referenceFile)
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &known))
	return known
}

// remake keeps what was drawn of one line.
func remake(t *testing.T, name string, drawn reference) {
	known := map[string]reference{}
	if _, err := os.Stat(referenceFile); err == nil {
		known = references(t)
	}
	known[name] = drawn
	text, err := json.MarshalIndent(known, "", "\t")
	require.NoError(t, err)
	require.NoError(t, os.MkdirAll(filepath.Dir(referenceFile), 0o755))
	require.NoError(t, os.WriteFile(referenceFile, append(text, '\n'), 0o644))
}

// agrees holds what is learnt of a line to what plain draws say of it.
func agrees(t *testing.T, x readLine, want reference) {
	l := learner(t, x.request, 100_000)
	for _, y := range x.readings {
		require.NoError(t, l.Add(y))
	}
	s, gets := l.Settings(), l.gets(l.asRead(), l.Setup)
	for what, off := range map[string]float64{
		"wall, low": s.Wall.Low.PSI() - want.Wall[0], "wall, high": s.Wall.High.PSI() - want.Wall[1],
		"gun, low": gets.Low.PSI() - want.Gun[0], "gun, high": gets.High.PSI() - want.Gun[1],
	} {
		assert.InDelta(t, 0, off, 0.1, what)
		t.Logf("%s off by %.3f psi", what, off)
	}
	for i, p := range want.Odd {
		assert.InDelta(t, p, l.Odd(i), 0.02, "piece %d", i)
	}
	assert.InDelta(t, want.Nothing, l.Nothing(), 0.02, "nothing odd")
	assert.InDelta(t, want.Opening[0], s.Opening.Low, 0.02)
	assert.InDelta(t, want.Opening[1], s.Opening.High, 0.02)
	t.Logf("wall %.2f to %.2f psi, %.0f draws count, of the plain ones %.0f", want.Wall[0], want.Wall[1], l.Counting(), want.Counting)
}

// plainDraws weighs n lines by the noise of what the gauges showed.
func plainDraws(t *testing.T, x readLine, n int) reference {
	s, err := calc.Solve(&x.request)
	require.NoError(t, err)
	m, err := newModel(Line{Request: &x.request, Setup: s})
	require.NoError(t, err)
	p := calc.Perturb(&x.request, s)
	w := &worker{solver: solver{m: m, ambient: m.air.Ambient}, stream: newStream()}
	random := rand.New(rand.NewPCG(20, 31))
	var taken []taken
	for _, y := range x.readings {
		taken = append(taken, m.takes(y))
	}
	const least = -30 // of a weight that counts
	var logs, wall, gun, opening []float64
	var odd [][MostPieces]bool
	for range n {
		var d draw
		m.drawn(&d, random)
		var off [mostGauges]float64 // of the gauges, Pa
		for g, i := range m.instruments {
			off[g] = float64(i.Within) / 2 * random.NormFloat64()
		}
		w.put(&d)
		weight := 0.0
		for k := range taken {
			if weight += w.plain(taken[k], &off, random); weight < least {
				break
			}
		}
		if weight < least {
			continue
		}
		z, o := (&Learner{model: m}).offs(&d)
		for _, k := range m.unread {
			z[k] = random.NormFloat64()
		}
		o.WallGauge, o.GunGauge = unit.Drop(off[WallGauge]), unit.Drop(off[GunGauge])
		found := p.WorkOff(&z, &o)
		logs, wall, gun, opening = append(logs, weight), append(wall, found.Wall.PSI()), append(gun, p.Open().PSI()), append(opening, found.Opening)
		var is [MostPieces]bool
		for i := range is {
			is[i] = d.own[i].odd
		}
		odd = append(odd, is)
	}
	r := reference{Odd: make([]float64, len(m.pieces))}
	most, sum, squares := slices.Max(logs), 0.0, 0.0
	for i := range logs {
		logs[i] = math.Exp(logs[i] - most)
		sum += logs[i]
		squares += logs[i] * logs[i]
	}
	r.Counting = sum * sum / squares
	for i, is := range odd {
		if !slices.Contains(is[:], true) {
			r.Nothing += logs[i] / sum
		}
		for k := range r.Odd {
			if is[k] {
				r.Odd[k] += logs[i] / sum
			}
		}
	}
	tenths := func(v []float64) [2]float64 {
		weights := slices.Clone(logs)
		stat.SortWeighted(v, weights)
		low, high := bounds(v, weights)
		return [2]float64{low, high}
	}
	r.Wall, r.Gun, r.Opening = tenths(wall), tenths(gun), tenths(opening)
	return r
}

// plain is the logarithm of the weight of one reading: the wall's pressure is what its gauge
// showed less its error and a drawn noise, and the others show what follows from it.
func (w *worker) plain(t taken, off *[mostGauges]float64, random *rand.Rand) (weight float64) {
	wall := t.seen[0].value - off[WallGauge] - math.Sqrt(w.m.noise[WallGauge])*random.NormFloat64()
	var at [quantities]float64
	if t.Still {
		at = still(wall).at
	} else {
		t.Opening += math.Sqrt(t.misread) * random.NormFloat64()
		w.arrange(&t)
		at = w.march(w.forward(unit.Gauge(wall).Abs(w.ambient)))
	}
	for _, o := range t.seen[1:] {
		miss := o.value - at[o.quantity] - off[o.gauge]
		weight -= miss * miss / (2 * w.m.noise[o.gauge])
	}
	return weight
}

// forward is the working pressure from a pressure at the wall, by bisection.
func (w *worker) forward(wall unit.Abs) unit.Abs {
	low, high := w.ambient, wall
	for range 26 {
		x := (low + high) / 2
		q, _ := w.gun.Air(x, w.m.air)
		p, _ := w.valve.Upstream(q, x, w.m.air)
		if p, _ = line.Upstream(w.parts, q, p, w.m.air); p > wall {
			high = x
		} else {
			low = x
		}
	}
	return (low + high) / 2
}
