package learn

import (
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/line"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// found is the option of a kind and a piece, with what was found odd out of the line or not.
func found(t *testing.T, all []Option, k OptionKind, piece int, without bool) Option {
	at := slices.IndexFunc(all, func(o Option) bool { return o.Kind == k && o.Piece == piece && !o.Odd.None() == without })
	require.GreaterOrEqual(t, at, 0, "%s of %d", k, piece)
	return all[at]
}

// Once a part is found odd, the others are read without it too: as long as it takes most of the
// pressure, what they take hardly shows.
func TestWhatIsOddIsTakenOut(t *testing.T) {
	r := calctest.MildClear(t)
	s, err := calc.Solve(&r)
	require.NoError(t, err)
	l, err := New(Line{Request: &r, Setup: s, Spare: []line.Part{r.Line[2]}}, few, 1)
	require.NoError(t, err)
	const wallCoupling, hose, gunCoupling, spare = 0, 1, 2, 5
	before := l.Options()
	assert.False(t, slices.ContainsFunc(before, func(o Option) bool { return !o.Odd.None() }), "nothing is found yet")

	y := &truth{m: l.model}
	y.d.own[wallCoupling] = own{odd: true}
	y.d.own[gunCoupling] = own{odd: true, by: 0.5}
	y.read(t, l, compared(30))
	y.read(t, l, open())
	y.read(t, l, open(hose, gunCoupling))
	require.Equal(t, []int{wallCoupling}, l.Find().Found)
	after := l.Options()
	swap := found(t, after, Swap, hose, true)
	assert.Equal(t, []int{spare, gunCoupling}, swap.Pieces)
	assert.Equal(t, Change{Without: []int{wallCoupling}, Swapped: []int{hose}}, swap.Change)
	assert.InDelta(t, minutes[Swap], swap.Minutes, 0, "the coupling is out already")
	for i := range after {
		assert.False(t, slices.ContainsFunc(after[:i], after[i].same), "%d is there already", i)
	}

	y.read(t, l, found(t, after, BypassCouplings, -1, false).Reading)
	assert.Equal(t, []int{wallCoupling, gunCoupling}, l.Find().Found)
	both := found(t, l.Options(), ReadOpenLow, -1, true)
	assert.Equal(t, []int{hose}, both.Pieces)
	assert.Equal(t, []int{wallCoupling, gunCoupling}, both.Odd.Without)
	assert.InDelta(t, minutes[ReadOpenLow], both.Minutes, 0)

	y.read(t, l, open())
	assert.InDelta(t, minutes[ReadOpenLow]+2*minutes[Bypass], found(t, l.Options(), ReadOpenLow, -1, true).Minutes, 0, "both are in the line again")
}

// A gauge that was put on for a test is read along until a reading is taken without it; the gun's
// stays the last.
func TestTestGaugesThatAreOnAreReadAlong(t *testing.T) {
	y, l := mildTruth(t, nil)
	gauges := func(k OptionKind) (all []Gauge) {
		for _, s := range found(t, l.Options(), k, -1, false).Shows {
			all = append(all, s.Gauge)
		}
		return all
	}
	assert.Equal(t, []Gauge{WallGauge, FootGauge, GunGauge}, gauges(ReadFoot))
	y.read(t, l, found(t, l.Options(), ReadFoot, -1, false).Reading)
	assert.Equal(t, []Gauge{WallGauge, FootGauge, GunGauge}, gauges(ReadOpen))
	assert.Equal(t, []Gauge{WallGauge, FootGauge, GunGauge, CapGauge}, gauges(ReadCap))
	y.read(t, l, found(t, l.Options(), ReadCap, -1, false).Reading)
	assert.Equal(t, []Gauge{WallGauge, FootGauge, CapGauge, GunGauge}, gauges(ReadOpen))
	still := found(t, l.Options(), CompareStill, -1, false)
	assert.Equal(t, []Gauge{WallGauge, FootGauge, GunGauge}, gauges(CompareStill), "no air comes to the cap")
	y.read(t, l, still.Reading)
	assert.Equal(t, []Gauge{WallGauge, FootGauge, CapGauge, GunGauge}, gauges(ReadOpen), "they are on all the same")
	assert.False(t, slices.ContainsFunc(l.Options(), func(o Option) bool { return o.Kind == ReadFoot || o.Kind == ReadCap }), "both are on")
	y.read(t, l, open())
	assert.Equal(t, []Gauge{WallGauge, GunGauge}, gauges(CompareStill))
}

// Of two hoses that are alike, each is swapped for a spare one of its own.
func TestEachSwapHasItsOwnSpare(t *testing.T) {
	r := calctest.MildClear(t)
	r.Line = append(slices.Clone(r.Line), r.Line[2])
	s, err := calc.Solve(&r)
	require.NoError(t, err)
	l, err := New(Line{Request: &r, Setup: s, Spare: []line.Part{r.Line[2], r.Line[2]}}, 10, 1)
	require.NoError(t, err)
	assert.Equal(t, []int{0, 6, 2, 7}, l.with(Change{Swapped: []int{1, 3}}))
	assert.Equal(t, -1, l.like(1, []int{6, 7}))
}
