package edit_test

import (
	"math"
	"testing"

	"boothset/calc"
	"boothset/calc/supply"
	"boothset/calc/unit"
	"boothset/presets/edit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// sizeOf is an input's quantity in SI, of a compressor told by its motor its power; NaN where
// it has none.
func sizeOf(a question.Answers, in edit.Input) float64 {
	values := a.Get(in.Field)
	if in.Part >= len(values) || values[in.Part].Fault != nil || values[in.Part].ID != "" {
		return math.NaN()
	}
	v := values[in.Part]
	if in.Field == question.Compressor && v.SI[1] > 0 {
		return v.SI[1]
	}
	return v.SI[in.Piece]
}

// drawStep draws answers that work, one input of them, and the system in use.
func drawStep(t *rapid.T, r *question.Reader) (question.Answers, edit.Input, unit.System) {
	d := questiontest.Drawer{T: t}
	supplied := rapid.Bool().Draw(t, "with the shop's air")
	texts := d.AnyLine(r, supplied)
	if supplied && rapid.Bool().Draw(t, "told by its motor") {
		texts["compressor"] = []string{d.Number("motor", "%.1fhp", 1, 50)}
	}
	sys := rapid.SampledFrom(bothSystems).Draw(t, "system")
	a := read(r, texts, sys)
	all := edit.Inputs(r, a)
	return a, all[rapid.IntRange(0, len(all)-1).Draw(t, "input")], sys
}

// Whatever moves is taken by the field and can be solved, it goes the way of the key, its text
// says what its value is, and nothing else changes; whatever does not stays as it was.
func TestWhatMovesIsTaken(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		a, in, sys := drawStep(t, r)
		by := rapid.SampledFrom([]int{-10, -1, 1, 10}).Draw(t, "by")
		before := a.Texts()
		b, moved := step(r, a, in, by, sys)
		require.Equal(t, before, a.Texts())
		if !moved {
			require.Equal(t, a, b)
			return
		}
		require.Nil(t, r.Check(in.Field, b.Get(in.Field), sys))
		q, faults := r.Plan(b, sys)
		require.Empty(t, faults)
		_, err := calc.Solve(q)
		require.NoError(t, err)
		of, _ := in.Of(a.Or(r.Usual()))
		if !of.Listed() {
			from, to := sizeOf(a, in), sizeOf(b, in)
			require.False(t, math.IsNaN(to), b.Text(in.Field))
			if !math.IsNaN(from) {
				require.Equal(t, by > 0, to > from, "%q to %q", a.Text(in.Field), b.Text(in.Field))
				require.Equal(t, by < 0, to < from, "%q to %q", a.Text(in.Field), b.Text(in.Field))
			}
			if bound := of.Bounds[in.Piece]; bound != nil && !(in.Field == question.Compressor && b.Get(in.Field)[0].SI[1] > 0) {
				require.True(t, bound.Holds(to), "%q", b.Text(in.Field))
			}
		}
		for _, v := range b.Get(in.Field) {
			back := r.Read(in.Field, v.Text, sys)
			require.Equal(t, v.ID, back.ID)
			for n, si := range v.SI {
				require.InDelta(t, si, back.SI[n], 1e-9*math.Abs(si), "%q", v.Text)
			}
		}
		back := b.With(in.Field, a.Get(in.Field)...)
		if in.Field == question.Coat {
			require.False(t, back.Has(question.Hardener), "another coat does not keep the hardener of the one before")
			require.False(t, back.Has(question.Stage), "nor its stage")
			back = back.With(question.Hardener, a.Get(question.Hardener)...).With(question.Stage, a.Get(question.Stage)...)
		}
		require.Equal(t, a.Texts(), back.Texts())
	})
}

// A step on and one back come to the multiple of the step at or below where it stood, and
// steps from there are each other's opposite; a big step is ten small ones.
func TestStepsAreEachOthersOpposite(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		a, in, sys := drawStep(t, r)
		by := rapid.SampledFrom([]int{-1, 1}).Draw(t, "by")
		on, moved := step(r, a, in, by, sys)
		if !moved {
			return
		}
		if back, moved := step(r, on, in, -by, sys); moved {
			again, moved := step(r, back, in, by, sys)
			require.True(t, moved)
			require.Equal(t, on.Texts(), again.Texts())
			require.InDelta(t, sizeOf(on, in), sizeOf(again, in), 1e-9*math.Abs(sizeOf(on, in)))
			if of, _ := in.Of(a.Or(r.Usual())); !of.Listed() {
				was, snapped := sizeOf(a, in), sizeOf(back, in)
				near := 1e-6 * math.Abs(was)
				if in.Piece == 1 && in.Field != question.Other {
					near = 0.02 * was // bores are written to a tenth of a millimetre, and lie farther apart
				}
				require.False(t, by > 0 && snapped > was+near || by < 0 && snapped < was-near, "%q snapped to %q", a.Text(in.Field), back.Text(in.Field))
			}
		}
		far := on
		for range 9 {
			next, moved := step(r, far, in, by, sys)
			if !moved {
				break
			}
			far = next
		}
		leap, moved := step(r, a, in, 10*by, sys)
		require.True(t, moved)
		require.Equal(t, far.Texts(), leap.Texts())
	})
}

// Walked as far as it goes, an answer has come to the last step within its bounds, and every
// step on the way was larger than the one before.
func TestAWalkEndsWhereTheBoundsEnd(t *testing.T) {
	r := questiontest.Open(t)
	type end struct {
		highest float64
		step    [2]float64
	}
	degrees, marks := [2]float64{2 / 1.8, 1}, [2]float64{unit.PascalPerPSI, 0.05 * unit.PascalPerBar}
	ends := map[*question.Field]end{
		question.Temp:      {float64(calc.HottestAir), degrees},
		question.Panel:     {float64(calc.HottestAir), degrees},
		question.LineTemp:  {float64(calc.HottestAir), degrees},
		question.Humidity:  {1, [2]float64{0.05, 0.05}},
		question.Altitude:  {float64(calc.HighestSite), [2]float64{500 * unit.MetrePerFoot, 100}},
		question.Hose:      {float64(calc.LongestHose), [2]float64{5 * unit.MetrePerFoot, 1}},
		question.Wall:      {float64(unit.PSIG(90)), marks}, // the supply
		question.Mark:      {float64(unit.PSIG(20)), marks},
		question.Receiver:  {float64(supply.LargestReceiver), [2]float64{float64(unit.USGallons(10)), float64(unit.Litres(50))}},
		question.SprayTime: {supply.MaxSpan.Seconds(), [2]float64{60, 60}},
	}
	for _, sys := range bothSystems {
		start := read(r, wholeShop(), sys)
		for _, in := range edit.Inputs(r, start) {
			if in.Field.Listed() {
				continue
			}
			a := start
			last, steps := sizeOf(a, in), 0
			for moved := true; moved; {
				if a, moved = step(r, a, in, 10, sys); !moved {
					break
				}
				v := sizeOf(a, in)
				require.False(t, v <= last, "%v: %v after %v", named(in), v, last) // NaN where it was empty
				last = v
				steps++
				require.Less(t, steps, 10000, "%v", named(in))
			}
			if x, ok := ends[in.Field]; ok && in.Piece == 0 {
				assert.LessOrEqual(t, last, x.highest*(1+1e-9), "%v", named(in))
				assert.Greater(t, last+x.step[sys], x.highest*(1+1e-9), "%v: there is room for another step", named(in))
			}
		}
	}
}
