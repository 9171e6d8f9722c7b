package learn

import (
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"testing"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// brute is a learner's draws with the setting of each, for readings that are tried one by one.
type brute struct {
	l    *Learner
	wall [][len(gunErrors)]float64 // of each draw, Pa, with the gun's gauge off by each of gunErrors
}

// gunErrors are what the gun's gauge is off by, in parts of what it may be, where settings are worked.
var gunErrors = [...]float64{-1, 0, 1}

// newBrute works the settings of a learner's draws.
func newBrute(l *Learner) *brute {
	b := &brute{l, make([][len(gunErrors)]float64, len(l.draws))}
	l.each(len(l.draws), func(w *worker, i int) {
		if w.settings == nil {
			w.settings = calc.Perturb(l.Request, l.Setup)
		}
		z, o := l.offs(&l.draws[i])
		random := w.at(l.seed, foreseeing, i)
		for _, k := range l.unread {
			z[k] = random.NormFloat64()
		}
		for k, part := range gunErrors {
			o.GunGauge = unit.Drop(part) * l.instruments[GunGauge].Within
			b.wall[i][k] = float64(w.settings.WorkOff(&z, &o).Wall)
		}
	})
	return b
}

// setting is what a draw's wall is to be set to, Pa, with gauges that are off: a parabola through
// those that were worked.
func (b *brute) setting(i int, off *[mostGauges]float64) float64 {
	x := off[GunGauge] / float64(b.l.instruments[GunGauge].Within)
	at := &b.wall[i]
	return at[1] + x*(at[2]-at[0])/2 + x*x*((at[2]+at[0])/2-at[1]) + off[WallGauge]
}

// width is how wide the wall's range is, Pa, of draws with their weights and their gauges.
func (b *brute) width(weights []float64, gauges []offsets) float64 {
	walls := make([]float64, len(weights))
	stream := newStream()
	for i := range walls {
		off := gauges[i].drawn(len(b.l.instruments), stream.at(b.l.seed, foreseeing-1, i))
		walls[i] = b.setting(i, &off)
	}
	weights = slices.Clone(weights)
	stat.SortWeighted(walls, weights)
	low, high := bounds(walls, weights)
	return high - low
}

// now is how wide it is without another reading.
func (b *brute) now() float64 {
	gauges := make([]offsets, len(b.l.draws))
	for i := range gauges {
		gauges[i] = b.l.draws[i].offsets
	}
	return b.width(b.l.weights, gauges)
}

// after is how wide it is after each option, on average over lines drawn as the learner has them,
// each of which shows every option once, by the same chance: all draws are weighed by it.
func (b *brute) after(options []Option, lines int) []float64 {
	l := b.l
	from := l.sample(lines)
	widths := make([]float64, len(options)*lines)
	curves := make([][]curve, len(options))
	for k := range options {
		curves[k] = make([]curve, len(l.draws))
		t := l.takes(options[k].Reading)
		t.known = t.seen[0] // what the wall is set to is the same each time
		l.each(len(l.draws), func(w *worker, i int) {
			w.put(&l.draws[i])
			curves[k][i] = w.solve(&t)
		})
	}
	l.each(len(widths), func(_ *worker, at int) {
		option, line := at/lines, at%lines
		random := rand.New(rand.NewPCG(uint64(line), 9))
		y := &truth{m: l.model, d: l.draws[from[line]]}
		y.off = y.d.offsets.drawn(len(l.instruments), random)
		t := l.takes(y.shows(options[option].Reading, random))
		weights, gauges := make([]float64, len(l.draws)), make([]offsets, len(l.draws))
		for i := range weights {
			gauges[i] = l.draws[i].offsets
			weights[i] = l.logs[i] + gauges[i].learn(&t, &curves[option][i], l.model)
		}
		floats.AddConst(-floats.LogSumExp(weights), weights)
		for i := range weights {
			weights[i] = math.Exp(weights[i])
		}
		widths[at] = b.width(weights, gauges)
	})
	means := make([]float64, len(options))
	for k := range means {
		means[k] = stat.Mean(widths[k*lines:(k+1)*lines], nil)
	}
	return means
}

// The reading that is named narrows the wall's range most, or within a tenth of most, by brute
// force: lines drawn as the learner has them each show every reading, worked forward, and all draws
// are weighed by each, their settings worked by package calc. On 200 lines as `make learn` works
// them, each after none to three readings; LEARN_FIRST leaves out so many.
func TestTheReadingNamedNarrowsMost(t *testing.T) {
	calctest.WithoutRace(t)
	lines, each := 2, 32
	if n, err := strconv.Atoi(os.Getenv("LEARN_LINES")); err == nil {
		lines, each = min(n, 200), 64
	} else if testing.Short() {
		t.Skip("each option read many times")
	}
	first, _ := strconv.Atoi(os.Getenv("LEARN_FIRST"))
	right := 0
	for n := range lines {
		seed := uint64(first + n)
		random := rand.New(rand.NewPCG(seed, 200))
		of := shopLine(t, random)
		l, err := New(of, 5000, seed)
		require.NoError(t, err)
		y := newTruth(of, random, 1, -1)
		for k := range int(seed % 4) {
			options := l.Options()
			require.NoError(t, l.Add(y.shows(options[[]int{0, 1, random.IntN(len(options))}[k]].Reading, random)))
		}
		options := l.Options()
		named := 0
		all := l.Next(options)
		for i := range all {
			if all[i].Narrows > all[named].Narrows {
				named = i
			}
		}
		b := newBrute(l)
		now, after := b.now(), b.after(options, each)
		most, got := now-slices.Min(after), now-after[named]
		if most < float64(unit.PSIDrop(0.1)) || got >= 0.9*most {
			right++
			continue
		}
		best := slices.Index(after, slices.Min(after))
		t.Logf("line %d after %d readings: %s narrows %.2f psi by %.2f, said %.2f; %s by %.2f, said %.2f", seed, seed%4,
			options[named].Kind, now/unit.PascalPerPSI, got/unit.PascalPerPSI, all[named].Narrows.PSI(), options[best].Kind, most/unit.PascalPerPSI, all[best].Narrows.PSI())
	}
	t.Logf("%d lines: the reading named narrows most, or within a tenth of most, on %d", lines, right)
	assert.GreaterOrEqual(t, float64(right), 0.95*float64(lines))
}
