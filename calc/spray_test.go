package calc

import (
	"testing"

	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Any job whose supply is not short, set as advised, comes to what the answer says: what the
// gun gets, what its gauge shows, the flow, the wall with no air moving.
func TestSprayedAsAdvisedIsTheAnswer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRequest(t)
		s, err := Solve(&r)
		if err != nil || s.Short.Is {
			t.Skip()
		}
		x := r.Spray(s, s.Set())
		const near = 1e-6
		assert.InEpsilon(t, float64(s.Working.Pressure), float64(x.Gun), near)
		assert.InEpsilon(t, float64(s.Working.Flow), float64(x.Flow), near)
		assert.InDelta(t, float64(s.Working.Reads), float64(x.Reads), 1)
		if r.RegulatorAt() != Nowhere {
			assert.InDelta(t, float64(s.Wall.Flowing), float64(x.Wall), 1)
		}
		assert.Empty(t, s.Signs(&r, &x, &x, s.Valve.Opening))
		if x.Known {
			assert.Equal(t, Beside{1, 1, 1, 1}, x.Beside(&x))
		}
	})
}

// A second regulator, nearer the gun, holds it where the wall feeds it, and not where it does not.
func TestSprayedThroughASecondRegulator(t *testing.T) {
	r := mildClear(t)
	r.Line = append(r.Line, line.Part{Name: "gun regulator", Kind: line.RegulatorKind, Restriction: line.Restriction{C: unit.DM3PerSBar(9), B: 0.3}, Droop: line.DroopOf(unit.PSIDrop(5), unit.SCFM(150))})
	s, err := Solve(&r)
	require.NoError(t, err)
	require.True(t, s.Foot.Is)
	set := s.Set()
	advised := r.Spray(s, set)
	set.Wall += unit.PSIG(30)
	assert.InDelta(t, 0, (r.Spray(s, set).Gun - advised.Gun).PSI(), 1e-6)
	set.Wall = s.Wall.Open - unit.PSIG(5)
	assert.Less(t, r.Spray(s, set).Gun.PSI(), advised.Gun.PSI()-2)
}

// More wall or a valve more open never gives the gun less, finer drops never come of less
// pressure; farther off lands drier, in a wider fan and a thinner film.
func TestSprayedGoesOneWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRequest(t)
		s, err := Solve(&r)
		if err != nil || s.Short.Is {
			t.Skip()
		}
		f := func(low, high float64, name string) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		set := Set{unit.PSIG(f(1, 120, "set")), f(0.05, 1, "opening"), unit.Inches(f(2, 29, "inches"))}
		x := r.Spray(s, set)
		const rounding = 1e-3 // Pa
		more := set
		more.Wall += unit.PSIG(f(0, 40, "more wall"))
		higher := r.Spray(s, more)
		assert.GreaterOrEqual(t, float64(higher.Gun), float64(x.Gun)-rounding)
		more = set
		more.Opening += f(0, 1-set.Opening, "more open")
		opened := r.Spray(s, more)
		assert.GreaterOrEqual(t, float64(opened.Gun), float64(x.Gun)-rounding)
		assert.LessOrEqual(t, float64(x.Gun), float64(x.Foot)+rounding)
		more = set
		more.Distance += unit.Inches(f(0.01, 30-set.Distance.Inches(), "farther"))
		farther := r.Spray(s, more)
		if !x.Known || !farther.Known {
			return
		}
		b := farther.Beside(&x)
		assert.Greater(t, b.Fan, 1.0)
		assert.Less(t, b.Film, 1.0)
		assert.GreaterOrEqual(t, b.Drier, 1-1e-9)
		if higher.Known {
			assert.LessOrEqual(t, higher.Beside(&x).Drops, 1+1e-9)
		}
	})
}

// What shows of a clear that is sprayed otherwise: the directions of finishing guides (a
// trade-school collision-refinish textbook, 2022, chapter 28: low pressure coarse, close runs,
// far dry; TM 43-0139: too much air splits the fan).
func TestSigns(t *testing.T) {
	r := mildClear(t)
	r.Supply = unit.PSIG(160)
	s, err := Solve(&r)
	require.NoError(t, err)
	advised := r.Spray(s, s.Set())
	// at is the wall too high, and the valve closed until the gun gets its target.
	at := func(wall float64) func(*Set) {
		high := r
		high.HasNow, high.Now = true, unit.PSIG(wall)
		of, err := Solve(&high)
		require.NoError(t, err)
		return func(x *Set) { x.Wall, x.Opening = high.Now, of.Now.Opening }
	}
	for name, c := range map[string]struct {
		change func(*Set)
		want   []string
	}{
		"a step":       {func(x *Set) { x.Wall -= unit.PSIG(1) }, nil},
		"low wall":     {func(x *Set) { x.Wall -= unit.PSIG(6) }, []string{"orange-peel"}},
		"high wall":    {func(x *Set) { x.Wall += unit.PSIG(5) }, []string{"split"}},
		"far":          {func(x *Set) { x.Distance += unit.Inches(2) }, []string{"dry-spray", "poor-hiding"}},
		"near":         {func(x *Set) { x.Distance -= unit.Inches(1) }, []string{"runs"}},
		"shut":         {func(x *Set) { x.Opening = 0.01 }, []string{"spitting"}},
		"valve shut":   {at(145), []string{"fading"}},
		"valve closed": {at(45), []string{"touchy"}},
	} {
		set := s.Set()
		c.change(&set)
		x := r.Spray(s, set)
		var got []string
		for _, sign := range s.Signs(&r, &advised, &x, set.Opening) {
			got = append(got, sign.ID)
		}
		assert.Equal(t, c.want, got, "%s: %.1f psi, choked %v, floor %.2f", name, x.Gun.PSI(), x.Choked, s.Valve.Floor)
	}
}
