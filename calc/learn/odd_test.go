package learn

import (
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/line"
	"boothset/calc/spread"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// few is how many draws do where nothing is measured.
const few = 4000

// mildTruth is MildClear as it is where nothing is off but its pieces as odd has them, 0..1
// between the bounds of what an odd one passes.
func mildTruth(t require.TestingT, odd map[int]float64) (*truth, *Learner) {
	l := learner(t, calctest.MildClear(t), few)
	y := &truth{m: l.model}
	for k, by := range odd {
		y.d.own[k] = own{odd: true, by: by}
	}
	return y, l
}

// read lets a learner take what a line shows, without noise.
func (y *truth) read(t require.TestingT, l *Learner, x Reading) {
	require.NoError(t, l.Add(y.shows(x, nil)))
}

func open(pieces ...int) Reading {
	return Reading{Opening: 1, Pieces: pieces, Shows: []Shown{{Gauge: WallGauge, Pressure: unit.PSIG(32)}, {Gauge: GunGauge}}}
}

func compared(wall float64) Reading {
	return Reading{Still: true, Shows: []Shown{{Gauge: WallGauge, Pressure: unit.PSIG(wall)}, {Gauge: GunGauge}}}
}

// The gauges compared and the gun read with its valve open say what is lost between them, and
// no more: any part on the way may be what takes it. A reading with one bypassed tells.
func TestWallAndGunKnowOnlyTheSumBetween(t *testing.T) {
	y, l := mildTruth(t, map[int]float64{2: 0.4}) // the gun's coupling
	y.read(t, l, compared(30))
	y.read(t, l, open())
	f := l.Find()
	assert.Empty(t, f.Found)
	assert.False(t, f.Right)
	require.NotEmpty(t, f.Untold)
	assert.Equal(t, Together, f.Untold[0].Why)
	assert.Equal(t, []int{0, 1, 2, 3}, f.Untold[0].Pieces, "couplings, hose and inlet valve")

	y.read(t, l, open(0, 1))
	f = l.Find()
	assert.Equal(t, []int{2}, f.Found)
	assert.Greater(t, f.Odd[2], 0.95)
	assert.Empty(t, f.Untold)
}

// Of a line in which nothing is odd that is told, and no part is accused.
func TestNothingOdd(t *testing.T) {
	y, l := mildTruth(t, nil)
	y.read(t, l, compared(30))
	for range 3 {
		y.read(t, l, open())
	}
	f := l.Find()
	assert.True(t, f.Right)
	assert.Empty(t, f.Found)
	assert.Empty(t, l.Contradictions())
}

// A part that was replaced is not known any more; what else was learnt stays.
func TestAReplacedPartIsNotKnown(t *testing.T) {
	r := calctest.MildClear(t)
	s, err := calc.Solve(&r)
	require.NoError(t, err)
	l, err := New(Line{Request: &r, Setup: s, Spare: []line.Part{r.Line[3]}}, few, 1) // what was the gun's coupling
	require.NoError(t, err)
	const old = 5
	y := &truth{m: l.model}
	y.d.own[old] = own{odd: true, by: 0.3}
	y.read(t, l, compared(30))
	y.read(t, l, open(0, 1, old))
	y.read(t, l, open(0, 1))
	assert.Greater(t, l.Odd(old), 0.95)
	f := l.Find()
	assert.InDelta(t, OddShare, f.Odd[2], 0.03, "the one in its place")
	assert.Less(t, f.Odd[0], 0.08, "the wall's coupling is known to pass")
	assert.Zero(t, f.Odd[old], "it is not in use")
}

// Two readings that cannot both be right are named, and so are two gauges.
func TestContradictions(t *testing.T) {
	y, l := mildTruth(t, nil)
	y.read(t, l, compared(30))
	y.read(t, l, open())
	wrong := y.shows(open(), nil)
	wrong.Shows[1].Pressure -= unit.PSIG(4)
	require.NoError(t, l.Add(wrong))
	found := l.Contradictions()
	require.Len(t, found, 1)
	assert.Equal(t, []int{1, 2}, []int{found[0].First, found[0].Second})
	assert.Equal(t, GunGauge, found[0].Gauges[1])

	l = learner(t, calctest.MildClear(t), few)
	require.NoError(t, l.Add(Reading{Still: true, Shows: wallAndGun(36, 28)}))
	found = l.Contradictions()
	require.Len(t, found, 1)
	assert.Equal(t, [2]Gauge{WallGauge, GunGauge}, found[0].Gauges)
	assert.InDelta(t, 8, found[0].Apart.PSI(), 1e-9)
}

// Readings without noise of every part by swaps, of a line in which nothing is as it is called,
// bring its settings back to 0.1 psi. What the gun gets is known as well only by gauges that are
// right: by others, which all are off a little, it lies in the range that is told.
func TestReadingsOfEveryPartBringTheLineBack(t *testing.T) {
	calctest.WithoutRace(t)
	for name, right := range map[string]bool{"right gauges": true, "gauges within their class": false} {
		t.Run(name, func(t *testing.T) {
			random := rand.New(rand.NewPCG(5, 5))
			of := shopLine(t, random)
			of.Request.Tolerances.Thermometer, of.Request.Tolerances.HygrometerShare = calc.Tolerance{}, calc.Tolerance{} // no gauge tells the day
			m, err := newModel(of)
			require.NoError(t, err)
			for g := range m.instruments {
				m.noise[g] = math.Pow(0.03*unit.PascalPerPSI, 2)
				if right {
					m.instruments[g].Within = 0
				}
			}
			drawn := func() (y *truth, is outcome) {
				y = newTruth(of, random, 1, 1)
				if right {
					clear(y.off[:])
				}
				return y, y.settings(random)
			}
			y, is := drawn()
			for is.Wall > unit.PSIG(45) { // far above what the gun may be tested at
				y, is = drawn()
			}
			y.m = m
			l := drawnFrom(m, 6000, 1)
			for _, o := range l.Options() {
				y.read(t, l, o.Reading)
			}
			s, gets := l.Settings(), l.gets(l.asRead(), l.Setup)
			assert.InDelta(t, is.Wall.PSI(), s.Middle.PSI(), 0.1)
			if right {
				assert.InDelta(t, is.gun.PSI(), (gets.Low+gets.High).PSI()/2, 0.1)
			} else {
				assert.LessOrEqual(t, gets.Low, is.gun)
				assert.GreaterOrEqual(t, gets.High, is.gun)
			}
			for i := range l.pieces {
				if l.inUse(i) {
					assert.Equal(t, y.d.own[i].odd, l.Odd(i) >= Sure, l.pieces[i].ID)
				}
			}
		})
	}
}

// The same readings come to the same, whatever the number of cores.
func TestTheSameOnAnyMachine(t *testing.T) {
	learnt := func(cores int) (*spread.Spread, Finding, []Worth) {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(cores))
		y, l := mildTruth(t, map[int]float64{0: 0.1})
		y.read(t, l, compared(30))
		y.read(t, l, open())
		y.read(t, l, open(1, 2))
		return l.Settings(), l.Find(), l.Next(l.Options())
	}
	s1, f1, n1 := learnt(1)
	s3, f3, n3 := learnt(3)
	assert.Equal(t, s1, s3)
	assert.Equal(t, f1, f3)
	assert.Equal(t, n1, n3)
}

// Whatever is read, all that is told can be.
func TestAnyReadings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := learner(t, calctest.MildClear(t), 300)
		for range rapid.IntRange(1, 3).Draw(t, "readings") {
			p := func(name string) unit.Gauge { return unit.PSIG(rapid.Float64Range(0, 120).Draw(t, name)) }
			x := Reading{Still: rapid.Bool().Draw(t, "still"), Opening: rapid.Float64Range(0.05, 1).Draw(t, "opening")}
			x.Pieces = rapid.SampledFrom([][]int{nil, {0, 1}, {1}, {}}).Draw(t, "pieces")
			for _, g := range rapid.SampledFrom([][]Gauge{{WallGauge, GunGauge}, {GunGauge}, {WallGauge}, {CapGauge, GunGauge}, {WallGauge, FootGauge, GunGauge, CapGauge}}).Draw(t, "gauges") {
				x.Shows = append(x.Shows, Shown{Gauge: g, Pressure: p("pressure")})
			}
			require.NoError(t, l.Add(x))
		}
		f := l.Find()
		for i, p := range append(slices.Clone(f.Odd), f.Nothing) {
			assert.True(t, p >= 0 && p <= 1+1e-9, "%d: %g", i, p)
		}
		assert.False(t, math.IsNaN(l.Counting()) || l.Counting() < 1-1e-9)
		s := l.Settings()
		assert.LessOrEqual(t, s.Wall.Low, s.Wall.High)
		assert.False(t, math.IsNaN(float64(s.Wall.Low+l.gets(l.asRead(), l.Setup).Low)))
		l.Contradictions()
	})
}

func TestNoReading(t *testing.T) {
	l := learner(t, calctest.MildClear(t), 10)
	assert.ErrorIs(t, l.Add(Reading{}), ErrNothingShown)
	assert.ErrorIs(t, l.Add(Reading{Opening: 1, Shows: append(wallAndGun(30, 20), wallAndGun(30, 20)...)}), ErrShownTwice)
	r := calctest.MildClear(t)
	r.Line = r.Line[1:]
	s, err := calc.Solve(&r)
	require.NoError(t, err)
	_, err = New(Line{Request: &r, Setup: s}, 10, 1)
	assert.ErrorIs(t, err, ErrNoRegulator)
}
