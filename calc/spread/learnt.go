package spread

import (
	"math"
	"slices"
	"sync"

	"boothset/calc"

	"gonum.org/v1/gonum/stat"
)

// CauseReadings is the cause that is what the readings of a line leave open of it and its gauges:
// all that is not a tolerance which no reading tells of.
const CauseReadings = "readings"

// ofLearnt is the spread of a request on a line as its readings left it, of a setup that is not
// short: that of the lines which it may be.
func ofLearnt(r *calc.Request, s *calc.Setup) *Spread {
	lines := r.Learnt.Lines
	values, short := workLines(r, s)
	var all [outcomes]sample
	for v := range all {
		all[v].sorted = slices.Clone(values[v])
		slices.Sort(all[v].sorted)
	}
	found := ranges(r, s, &all, short)
	moves := moved(calc.Perturb(r, s))
	ids := calc.ToleranceIDs()
	rest := Cause{ID: CauseReadings, Tolerance: calc.Tolerance{Ground: calc.Ground{Basis: calc.OwnReadings}}}
	var left [outcomes]float64
	for v := range left {
		left[v] = 1
	}
	z := make([]float64, len(lines))
	for _, d := range r.Learnt.Unread {
		for i := range lines {
			z[i] = lines[i].Deviations[d]
		}
		var share [outcomes]float64
		for v := range share {
			if along := stat.Correlation(z, values[v], nil); moves[v][d] && !math.IsNaN(along) {
				share[v] = along * along
				left[v] -= share[v]
			}
		}
		tolerance, _ := r.Tolerances.Of(ids[d])
		found.addCause(Cause{ID: ids[d], Tolerance: *tolerance}, share, &all[0])
	}
	found.addCause(rest, left, &all[0])
	found.sortCauses()
	return found
}

// workLines works every line of a request that was read, and gives each outcome of each, and the
// share of them that fall short.
func workLines(r *calc.Request, s *calc.Setup) (values [outcomes][]float64, short float64) {
	lines := r.Learnt.Lines
	for v := range values {
		values[v] = make([]float64, len(lines))
	}
	var shorts [halves]int
	var wait sync.WaitGroup
	for n := range shorts {
		wait.Go(func() {
			p := calc.Perturb(r, s)
			for i := n * len(lines) / halves; i < (n+1)*len(lines)/halves; i++ {
				o := p.WorkOff(&lines[i].Deviations, &lines[i].Off)
				if o.Short {
					shorts[n]++
				}
				for v, x := range numbers(o) {
					values[v][i] = x
				}
			}
		})
	}
	wait.Wait()
	for _, n := range shorts {
		short += float64(n) / float64(len(lines))
	}
	return values, short
}
