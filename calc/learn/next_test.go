package learn

import (
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"boothset/calc/calctest"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Before any reading the two gauges are what the wall's range comes from most, so that to
// compare them narrows it most of what takes a minute.
func TestComparingTheGaugesNarrowsMost(t *testing.T) {
	l := learner(t, calctest.MildClear(t), few)
	for i := range l.draws { // nothing is odd
		for k := range l.draws[i].own {
			l.draws[i].own[k].odd = false
		}
	}
	all := l.Next(l.Options())
	most := slices.MaxFunc(all, func(a, b Worth) int { return int(a.Narrows - b.Narrows) })
	assert.Contains(t, []OptionKind{CompareStill, ReadOpen, ReadOpenLow, ReadSet, ReadFoot, ReadCap, Bypass, BypassCouplings}, most.Kind)
	still := all[slices.IndexFunc(all, func(w Worth) bool { return w.Kind == CompareStill })]
	assert.Greater(t, still.Narrows.PSI(), 1.0)
	assert.InDelta(t, 0, still.Tells, 0.01, "no part has a share in it")
}

// A part bypassed tells of what is odd where all are suspected alike, the gauges compared again
// next to nothing.
func TestABypassTellsWhatIsOdd(t *testing.T) {
	y, l := mildTruth(t, map[int]float64{2: 0.4})
	y.read(t, l, compared(30))
	y.read(t, l, open())
	options := l.Options()
	all := l.Next(options)
	of := func(k OptionKind) (tells float64) {
		for _, w := range all {
			if w.Kind == k {
				tells = max(tells, w.Tells)
			}
		}
		return tells
	}
	assert.Greater(t, of(Bypass), 0.5)
	assert.Less(t, of(CompareStill), 0.1)
}

// bruteWidth is how wide the wall's range is after an option, on average over lines drawn as the
// learner has them, each read by itself.
func bruteWidth(t *testing.T, l *Learner, o *Option, lines int) unit.Drop {
	sum := 0.0
	for i, at := range l.sample(lines) {
		random := rand.New(rand.NewPCG(uint64(i), 9))
		y := &truth{m: l.model, d: l.draws[at]}
		y.off = y.d.offsets.drawn(len(l.instruments), random)
		other := *l
		other.draws, other.logs, other.weights = slices.Clone(l.draws), slices.Clone(l.logs), slices.Clone(l.weights)
		other.readings = slices.Clone(l.readings)
		require.NoError(t, other.Add(y.shows(o.Reading, random)))
		s := other.Settings()
		sum += float64(s.Wall.High-s.Wall.Low) / float64(lines)
	}
	return unit.Drop(sum)
}

// The reading that is named narrows the wall's range most, or within a tenth of most, by brute
// force: on 200 lines as `make learn` works them, each after none to three readings.
func TestTheReadingNamedNarrowsMost(t *testing.T) {
	calctest.WithoutRace(t)
	lines, each := 1, 8
	if os.Getenv("LEARN_LINES") != "" {
		lines, each = 200, 48
	} else if testing.Short() {
		t.Skip("each option read many times")
	}
	right := 0
	for seed := range uint64(lines) {
		random := rand.New(rand.NewPCG(seed, 200))
		of := shopLine(t, random)
		l, err := New(of, 2000, seed)
		require.NoError(t, err)
		y := newTruth(of, random, 1, -1)
		options := l.Options()
		for k := range int(seed % 4) {
			require.NoError(t, l.Add(y.shows(options[[]int{0, 1, random.IntN(len(options))}[k]].Reading, random)))
		}
		s := l.Settings()
		now := s.Wall.High - s.Wall.Low
		all := l.Next(options)
		named := 0
		best, got := unit.Drop(0), unit.Drop(0)
		for i := range all {
			if all[i].Narrows > all[named].Narrows {
				named = i
			}
		}
		for i := range options {
			narrows := unit.Drop(now) - bruteWidth(t, l, &options[i], each)
			best = max(best, narrows)
			if i == named {
				got = narrows
			}
		}
		short := 1 - float64(got)/float64(max(best, 1))
		if best < unit.PSIDrop(0.1) || short <= 0.1 {
			right++
		}
	}
	t.Logf("%d lines: the reading named narrows most, or within a tenth of most, on %d", lines, right)
	if lines == 200 {
		assert.GreaterOrEqual(t, right, 190)
	}
}
