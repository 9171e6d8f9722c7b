package shop

import (
	"cmp"
	"math"
	"slices"

	"boothset/calc"
	"boothset/calc/unit"
)

// The things by which today's wall stands above one that was agreed: the sentence of each is
// "agreed-by-" and its name.
const (
	ByDay  = "day"  // today's weather against that it was worked for
	ByLine = "line" // the line, the gun, the supply and their figures since then
	ByHand = "hand" // what was agreed on against what was then worked out
)

// Today is what makes today's wall, flowing, stand above the one that was agreed, what makes
// most of it first: together the whole difference. q and s are today's job and its answer, which
// is neither stopped nor short of supply. It is false for a setting that does not say what it was worked from.
func (s *Setting) Today(q *calc.Request, today *calc.Setup) (all []calc.Apart, known bool) {
	if s.Values.Wall == 0 || s.Worked.Air == 0 || s.Worked.Answer.Wall == 0 {
		return nil, false
	}
	then := *q
	then.Day.Air, then.Day.Humidity = s.Worked.Air, s.Worked.Humidity
	if q.Day.Panel == q.Day.Air {
		then.Day.Panel = s.Worked.Air
	}
	then.Swaps = nil
	of, err := calc.Solve(&then)
	if err != nil || of.Short.Is {
		return nil, false
	}
	for _, x := range []struct {
		of string
		by unit.Gauge
	}{
		{ByDay, today.Wall.Flowing - of.Wall.Flowing}, {ByLine, of.Wall.Flowing - s.Worked.Answer.Wall}, {ByHand, s.Worked.Answer.Wall - s.Values.Wall},
	} {
		if math.Abs(float64(x.by)) >= leastTold {
			all = append(all, calc.Apart{Of: x.of, By: unit.Drop(x.by)})
		}
	}
	slices.SortStableFunc(all, func(a, b calc.Apart) int {
		return cmp.Compare(math.Abs(float64(b.By)), math.Abs(float64(a.By)))
	})
	return all, true
}

// leastTold is more than a file's decimals round away, Pa.
const leastTold = 0.06 * unit.PascalPerPSI

// AgreedFor is the settings that stand for a job, and where none does, those for the same job in
// another of the bands; several are twins.
func AgreedFor(standing []*Setting, job Subject, bands []Band) []*Setting {
	if best := For(standing, job); len(best) > 0 {
		return best
	}
	for i := range bands {
		job.Band = bands[i].ID
		if best := For(standing, job); len(best) > 0 {
			return best
		}
	}
	return nil
}
