package calc_test

import (
	"slices"
	"testing"

	"boothset/calc"
	"boothset/calc/calctest"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// readAs is a request on its line as readings left it, of which nothing more is open.
func readAs(r *calc.Request, off func(*calc.LineOff)) *calc.Request {
	var middle calc.LineOff
	for i := range middle.Parts {
		middle.Parts[i] = calc.PartOff{Passes: 1, End: 1}
	}
	middle.Valve, middle.Flow = 1, 1
	off(&middle)
	return (&calc.Learnt{Readings: 2, Told: calc.ToldRight, Middle: middle, Lines: []calc.LineOff{middle}}).Of(r)
}

// A line that readings left as it is described has the plan that it had.
func TestALineReadAsItIsDescribed(t *testing.T) {
	r := calctest.MildClear(t)
	before, err := calc.Solve(&r)
	require.NoError(t, err)
	read := readAs(&r, func(*calc.LineOff) {})
	after, err := calc.Solve(read)
	require.NoError(t, err)
	assert.Equal(t, before.Wall, after.Wall)
	assert.Equal(t, before.Working, after.Working)
	assert.Equal(t, before.Line, after.Line)
	assert.Equal(t, &r, read.AsDescribed())
	assert.Same(t, &r, r.AsDescribed())
}

// A wall gauge that reads high asks for so much more on it, and for nothing else; a gun's gauge that
// reads high leaves the gun so much less, and the line what that takes.
func TestGaugesThatReadHigh(t *testing.T) {
	r := calctest.MildClear(t)
	before, err := calc.Solve(&r)
	require.NoError(t, err)
	const off = unit.Drop(2 * unit.PascalPerPSI) // a whole mark
	wall, err := calc.Solve(readAs(&r, func(x *calc.LineOff) { x.WallGauge = off }))
	require.NoError(t, err)
	assert.InDelta(t, 2, (wall.Wall.Flowing - before.Wall.Flowing).PSI(), 1e-9)
	assert.InDelta(t, 2, (wall.Wall.Open - before.Wall.Open).PSI(), 1e-9)
	assert.InDelta(t, 2, (wall.Wall.Limit - before.Wall.Limit).PSI(), 1e-9)
	assert.InDelta(t, float64(before.Valve.Reserve), float64(wall.Valve.Reserve), 1e-6)
	assert.Equal(t, before.Working, wall.Working)
	assert.InDelta(t, float64(before.Line[0].Out), float64(wall.Line[0].Out), 1e-6, "what is in the line is the same")

	gun, err := calc.Solve(readAs(&r, func(x *calc.LineOff) { x.GunGauge = off }))
	require.NoError(t, err)
	assert.InDelta(t, (before.Working.Pressure).PSI()-2, gun.Working.Pressure.PSI(), 1e-9)
	assert.InDelta(t, before.Working.Reads.PSI(), gun.Working.Reads.PSI(), 1e-9, "its gauge shows what it is to show")
	assert.Less(t, gun.Wall.Open, before.Wall.Open-unit.Gauge(off))
	supply := r.SupplyFor(before, before.Wall.Flowing, before.Working.Reads)
	high := readAs(&r, func(x *calc.LineOff) { x.WallGauge, x.GunGauge = off, off })
	both, err := calc.Solve(high)
	require.NoError(t, err)
	assert.InDelta(t, float64(supply), float64(high.SupplyFor(both, before.Wall.Flowing+unit.Gauge(off), before.Working.Reads+unit.Gauge(off))), 1e-6, "what the gauges show is the same air")

	assert.Contains(t, idsOf(wall.Reasons), "learnt-gauge-high")
	assert.NotContains(t, idsOf(gun.Reasons), "learnt-gauge-high")
}

func idsOf(all []calc.Reason) (ids []string) {
	for i := range all {
		ids = append(ids, all[i].ID)
	}
	return ids
}

// Whatever readings left of a line, what the plan since says to set gives the gun what it is to
// get, worked forward on that line; and what makes it other than before adds up.
func TestThePlanOfALineAsReadGivesTheTarget(t *testing.T) {
	for name, change := range map[string]func(*calc.Request){
		"mild":                      func(*calc.Request) {},
		"a gauge before the valve":  func(r *calc.Request) { r.Gauge = calc.AtFoot },
		"no gauge":                  func(r *calc.Request) { r.Gauge = calc.NoGauge },
		"no valve":                  func(r *calc.Request) { r.Gun.Gun, _ = gun.New(r.Gun.Stamp, 0, gun.Valve{None: true}) },
		"the regulator at the foot": func(r *calc.Request) { r.Line = append(r.Line[1:], r.Line[0]) },
		"a second one at the foot":  func(r *calc.Request) { r.Line = append(r.Line, r.Line[0]) },
		"a low supply":              func(r *calc.Request) { r.Supply = unit.PSIG(36) },
	} {
		t.Run(name, func(t *testing.T) {
			r := calctest.MildClear(t)
			change(&r)
			givesTheTarget(t, r)
		})
	}
}

func givesTheTarget(t *testing.T, r calc.Request) {
	before, err := calc.Solve(&r)
	require.NoError(t, err)
	rapid.Check(t, func(t *rapid.T) {
		share := rapid.Float64Range(0.5, 1.5)
		drop := func(name string) unit.Drop { return unit.PSIDrop(rapid.Float64Range(-3, 3).Draw(t, name)) }
		read := readAs(&r, func(x *calc.LineOff) {
			for i := range r.Line {
				x.Parts[i].Passes = share.Draw(t, "part")
			}
			x.Valve, x.Flow = share.Draw(t, "valve"), rapid.Float64Range(0.8, 1.2).Draw(t, "flow")
			if x.WallGauge = drop("wall"); r.Gauge != calc.NoGauge {
				x.GunGauge = drop("gun")
			}
		})
		s, err := calc.Solve(read)
		require.NoError(t, err)
		if s.Short.Is {
			return
		}
		x := read.Spray(s, s.Set())
		assert.InDelta(t, s.Working.Pressure.PSI(), x.Gun.PSI(), 0.01)
		assert.InDelta(t, s.Working.Reads.PSI(), x.Reads.PSI(), 0.01)
		sum := unit.Drop(0)
		for _, a := range s.Apart(before) {
			sum += a.By
		}
		assert.InDelta(t, (s.Wall.Flowing - before.Wall.Flowing).PSI(), sum.PSI(), 1e-2)
	})
}

// A part that was found odd has a fix that no other part has: to be what it is called again, which
// wins what the wall then stands lower.
func TestAnOddPartIsRenewed(t *testing.T) {
	r := calctest.MildClear(t)
	before, err := calc.Solve(&r)
	require.NoError(t, err)
	const coupling = 3
	r.Line[coupling].Name = "gun coupling"
	read := readAs(&r, func(x *calc.LineOff) { x.Parts[coupling].Passes = 0.25 })
	read.Learnt.Odd = []calc.OddPart{{Name: "gun coupling", Part: coupling}, {Name: "gun", Part: -1}}
	read = read.Learnt.Of(&r)
	s, err := calc.Solve(read)
	require.NoError(t, err)
	require.Len(t, s.Fixes, 1)
	fix := &s.Fixes[0]
	assert.Equal(t, "fix-renew", fix.ID())
	assert.InDelta(t, (s.Wall.Open - before.Wall.Open).PSI(), fix.Won.PSI(), 1e-6)
	assert.Greater(t, fix.Won.PSI(), 5.0)
	renewed, err := calc.Solve(read.Swapped(&fix.Swap))
	require.NoError(t, err)
	assert.Equal(t, before.Wall, renewed.Wall)
	assert.Empty(t, read.AsDescribed().Swaps)
}

// A hose of a line that was read keeps the length it is called by, without a part before it too.
func TestAHoseKeepsItsLengthWithoutAFilter(t *testing.T) {
	r := calctest.MildClear(t)
	r.Line = append([]line.Part{r.Line[0], {Name: "filter", Kind: line.FilterKind, Restriction: line.Restriction{C: unit.DM3PerSBar(6), B: 0.3}}}, r.Line[1:]...)
	read := readAs(&r, func(x *calc.LineOff) { x.Parts[3].Passes = 0.5 })
	hose := func(r *calc.Request) calc.Step {
		s, err := calc.Solve(r)
		require.NoError(t, err)
		return s.Line[slices.IndexFunc(s.Line, func(x calc.Step) bool { return x.Kind == line.HoseKind })]
	}
	before := hose(&r)
	for _, q := range []*calc.Request{read, read.Swapped(&calc.Swap{Kind: calc.DropFilter, Index: 1})} {
		after := hose(q)
		assert.Equal(t, []unit.Length{before.Length, before.Bore}, []unit.Length{after.Length, after.Bore})
		assert.Greater(t, after.Loss, before.Loss)
	}
}
