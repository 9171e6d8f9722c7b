package learn

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/floats"
)

// rounds is how many times each draw is moved after draws were drawn again among themselves.
const rounds = 3

// fewest is how many draws must count: a twentieth of them, but no fewer than a quarter of few.
func (l *Learner) fewest() float64 {
	n := float64(len(l.draws))
	return max(n/20, min(fewestCounting, n/4))
}

// temper lets the draws weigh the last reading, of which likes are the logarithms of its
// likelihood: at once or, where too few would count, in steps, each a share of them, after
// which draws are drawn again among themselves and moved.
func (l *Learner) temper(likes []float64) {
	done := 0.0
	for {
		share := 1 - done
		if l.weigh(likes, share); l.Counting() < l.fewest() {
			share = l.shareOf(likes, share)
			l.weigh(likes, share)
			l.resample(likes)
			done += share
			l.move(likes, done)
			if done < 1 {
				continue
			}
			break
		}
		for i := range l.logs {
			l.logs[i] += share * likes[i]
		}
		break
	}
	for i, like := range likes {
		l.draws[i].like += like
	}
	floats.AddConst(-floats.Max(l.logs), l.logs)
	l.weigh(l.logs, 0)
}

// shareOf is the largest share, up to most, of which enough draws count, at least a hundredth
// of it; most itself where it is near.
func (l *Learner) shareOf(likes []float64, most float64) float64 {
	low, high := 0.0, most
	for range 12 {
		middle := (low + high) / 2
		if l.weigh(likes, middle); l.Counting() < l.fewest() {
			high = middle
		} else {
			low = middle
		}
	}
	if low > 0.5*most {
		return most
	}
	return max(low, most/100)
}

// resample draws the draws again by their weights, systematically, and makes all weigh the same.
func (l *Learner) resample(likes []float64) {
	l.generation++
	n := len(l.draws)
	random := newStream().at(l.seed, l.generation, n)
	chosen, of := l.others(), make([]float64, n)
	at, sum := 0, l.weights[0]
	first := random.Float64()
	for i := range chosen {
		for (float64(i)+first)/float64(n) > sum && at < n-1 {
			at++
			sum += l.weights[at]
		}
		chosen[i], of[i] = l.draws[at], likes[at]
	}
	l.draws, l.spare = chosen, l.draws
	copy(likes, of)
	l.even()
}

// others is room for as many draws as there are.
func (l *Learner) others() []draw {
	if l.spare == nil {
		l.spare = make([]draw, len(l.draws))
	}
	return l.spare
}

// mover moves draws: each by moves that leave what is known of the line as it is.
type mover struct {
	l      *Learner
	before []draw  // as they were when the round began
	alike  [][]int // of each draw: those with the same odd pieces
	share  float64 // of the last reading
}

// move moves every draw, the last reading weighing a share.
func (l *Learner) move(likes []float64, share float64) {
	for range rounds {
		l.generation++
		v := &mover{l: l, before: l.others(), share: share}
		copy(v.before, l.draws)
		v.group()
		l.each(len(l.draws), func(w *worker, i int) {
			random := w.at(l.seed, l.generation, i)
			d := &l.draws[i]
			v.try(w, d, &likes[i], random, v.alongOthers(i, random))
			v.try(w, d, &likes[i], random, v.onePiece)
			v.try(w, d, &likes[i], random, v.another)
		})
	}
}

// group finds the draws with the same odd pieces.
func (v *mover) group() {
	groups := map[uint32][]int{}
	sets := make([]uint32, len(v.before))
	for i := range v.before {
		for k := range v.l.pieces {
			if v.before[i].own[k].odd {
				sets[i] |= 1 << k
			}
		}
		groups[sets[i]] = append(groups[sets[i]], i)
	}
	v.alike = make([][]int, len(sets))
	for i, set := range sets {
		v.alike[i] = groups[set]
	}
}

// proposal changes a draw, and gives by how much more likely that is beforehand, and back, as a
// logarithm; ok is false where it cannot be.
type proposal func(d *draw, random *rand.Rand) (more float64, ok bool)

// try changes a draw if that is likely enough: Metropolis and Hastings' rule.
func (v *mover) try(w *worker, d *draw, like *float64, random *rand.Rand, change proposal) {
	other := &w.other
	*other = *d
	more, ok := change(other, random)
	if !ok {
		return
	}
	least := d.like + v.share**like - more + math.Log(random.Float64())
	if last, ok := v.likelihood(w, other, least); ok {
		*d, *like = *other, last
	}
}

// likelihood works all readings anew for a draw: the last one's logarithm by itself, the
// others' in the draw. It is given up, and ok is false, at the reading after which they cannot
// come to more than least together, the last one by its share.
func (v *mover) likelihood(w *worker, d *draw, least float64) (last float64, ok bool) {
	readings := v.l.readings
	end := len(readings) - 1
	most := v.share * readings[end].most
	for _, t := range readings[:end] {
		most += t.most
	}
	w.put(d)
	d.offsets, d.like = newOffsets(v.l.instruments), 0
	for k := range readings {
		t := &readings[k]
		c := w.solve(t)
		last = d.offsets.learn(t, &c, v.l.model)
		weight := v.share
		if k < end {
			weight = 1
			d.like += last
		}
		if most += weight * (last - t.most); math.IsNaN(most) || most <= least {
			return 0, false
		}
	}
	return last, true
}

// alongOthers moves a draw along the difference of two others with the same odd pieces
// (differential evolution: ter Braak, Statistics and Computing 16, 2006).
func (v *mover) alongOthers(i int, random *rand.Rand) proposal {
	return func(d *draw, _ *rand.Rand) (more float64, ok bool) {
		among := v.alike[i]
		a, b := &v.before[among[random.IntN(len(among))]], &v.before[among[random.IntN(len(among))]]
		step := 2.38 / math.Sqrt(2*float64(v.l.moving(d)))
		along := func(to *float64, x, y float64) {
			off := step*(x-y) + jitter*random.NormFloat64()
			more += (*to**to - (*to+off)*(*to+off)) / 2
			*to += off
		}
		for k := range d.shared {
			if v.l.sigma[k] > 0 {
				along(&d.shared[k], a.shared[k], b.shared[k])
			}
		}
		for k := range v.l.pieces {
			o := &d.own[k]
			if v.l.passesBy[k] > 0 {
				along(&o.passes, a.own[k].passes, b.own[k].passes)
			}
			if v.l.endBy[k] > 0 {
				along(&o.end, a.own[k].end, b.own[k].end)
			}
			if o.odd {
				if o.by += step*(a.own[k].by-b.own[k].by) + jitter*random.NormFloat64(); o.by < 0 || o.by > 1 {
					return 0, false
				}
			}
		}
		return more, true
	}
}

// jitter keeps moves along others from staying in their plane, in standard deviations.
const jitter = 0.02

// moving is how many numbers a draw has that readings tell of.
func (l *Learner) moving(d *draw) (n int) {
	for k := range l.sigma {
		if l.sigma[k] > 0 {
			n++
		}
	}
	for k := range l.pieces {
		for _, is := range []bool{l.passesBy[k] > 0, l.endBy[k] > 0, d.own[k].odd} {
			if is {
				n++
			}
		}
	}
	return n
}

// onePiece draws one piece anew.
func (v *mover) onePiece(d *draw, random *rand.Rand) (more float64, ok bool) {
	k := random.IntN(len(v.l.pieces))
	v.l.drawOwn(&d.own[k], k, random)
	return 0, true
}

// another makes an odd piece what it should be, and another one odd in its place.
func (v *mover) another(d *draw, random *rand.Rand) (more float64, ok bool) {
	var odd, right []int
	for k := range v.l.pieces {
		if d.own[k].odd {
			odd = append(odd, k)
		} else {
			right = append(right, k)
		}
	}
	if len(odd) == 0 || len(right) == 0 {
		return 0, false
	}
	from, to := odd[random.IntN(len(odd))], right[random.IntN(len(right))]
	d.own[from].odd, d.own[from].by = false, 0
	d.own[to].odd, d.own[to].by = true, random.Float64()
	return 0, true
}
