package learn

import (
	"slices"
	"testing"

	"boothset/calc/calctest"

	"github.com/stretchr/testify/assert"
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
