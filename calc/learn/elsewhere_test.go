package learn

import (
	"math/rand/v2"
	"testing"

	"boothset/calc"
	"boothset/calc/calctest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The gun of a line that was read on another one: what it takes and how far its gauge is off is known
// before anything is read here, and the parts of this line are as likely odd as ever. With this
// line's own readings the wall's range is no wider for it.
func TestAGunIsKnownFromElsewhere(t *testing.T) {
	calctest.WithoutRace(t)
	there := calctest.MildClear(t)
	here := lineWith(t, filtered)
	first, second := learner(t, there, few), learner(t, here, few)
	gunOf := func(m *model) (valve, gun int) {
		for i := range m.pieces {
			switch m.pieces[i].Role {
			case InletValve:
				valve = i
			case GunItself:
				gun = i
			}
		}
		return valve, gun
	}
	random := rand.New(rand.NewPCG(3, 3))
	one, other := &truth{m: first.model}, &truth{m: second.model}
	valve, gun := gunOf(first.model)
	one.d.own[gun] = own{odd: true, by: 0.6}
	one.d.own[valve] = own{passes: -1}
	one.off[GunGauge], one.off[WallGauge], other.off[WallGauge] = 4e3, -6e3, 9e3
	herValve, herGun := gunOf(second.model)
	other.d.own[herGun], other.d.own[herValve], other.off[GunGauge] = one.d.own[gun], one.d.own[valve], one.off[GunGauge]

	var taken []Taken
	for _, o := range first.Options() {
		switch o.Kind {
		case CompareStill, ReadOpen, ReadOpenLow, ReadCap, ReadFoot:
			taken = append(taken, Taken{Reading: one.shows(o.Reading, random)})
		case Bypass:
			taken = append(taken, Taken{Reading: one.shows(o.Reading, random), Without: []string{first.pieces[o.Piece].ID}})
		}
	}
	s, err := calc.Solve(&here)
	require.NoError(t, err)
	known, err := New(Line{Request: &here, Setup: s, Elsewhere: []OtherLine{Elsewhere(&there, taken)}}, few, 1)
	require.NoError(t, err)
	require.NoError(t, known.readElsewhere())
	require.Equal(t, len(taken), known.elsewhere)
	assert.Greater(t, known.Odd(herGun), 0.95)
	assert.InDelta(t, OddShare, known.Odd(0), 0.05, "a part of this line")
	assert.True(t, known.unpulled())
	assert.Zero(t, known.known().Odd(0), "none is taken to be odd that no reading tells of")
	assert.Greater(t, known.known().Odd(herGun), 0.95)
	narrow, wide := known.Reads(GunGauge), second.Reads(GunGauge)
	assert.Less(t, narrow.High-narrow.Low, 0.8*(wide.High-wide.Low))
	assert.InDelta(t, one.off[GunGauge], (narrow.Low+narrow.High)/2, 4e3)
	left := known.left(known.Find(), nil)
	assert.Equal(t, calc.ToldElsewhere, left.Told)
	assert.Equal(t, len(taken), left.Elsewhere)
	assert.Zero(t, left.Readings)

	for _, l := range []*Learner{known, second} {
		for _, x := range []Reading{compared(30), {Opening: 1, Shows: wallAndGun(33, 0)}} {
			require.NoError(t, l.Add(other.shows(x, nil)))
		}
	}
	assert.Greater(t, known.Odd(herGun), 0.95)
	after, alone := known.Settings().Wall, second.Settings().Wall
	assert.LessOrEqual(t, after.High-after.Low, alone.High-alone.Low)
}

// Readings elsewhere that say nothing of the gun alone are left out.
func TestWhatIsReadElsewhere(t *testing.T) {
	r := calctest.MildClear(t)
	open := Reading{Opening: 1, Shows: wallAndGun(30, 25)}
	before := Reading{Opening: 1, Shows: []Shown{{Gauge: WallGauge, Pressure: 2e5}, {Gauge: WallGauge, Pressure: 2.1e5, Before: true}}}
	x := Elsewhere(&r, []Taken{
		{Reading: open}, {Reading: open, Without: []string{"coupling-1"}}, {Reading: open, Swapped: []string{"hose"}},
		{Reading: open, Was: map[string]int{"hose": 1}}, {Reading: before},
	})
	require.Len(t, x.Readings, 2)
	assert.Equal(t, []int{0, 1, 2}, x.Readings[0].Pieces)
	assert.Equal(t, []int{1, 2}, x.Readings[1].Pieces)
	assert.Len(t, x.Parts, 3)
}
