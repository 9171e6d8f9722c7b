package learn

import (
	"math"

	"boothset/calc/unit"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat/distuv"
)

// Contradiction is two things that were read and cannot both be right.
type Contradiction struct {
	// First and Second are the readings, by number; the same one where two gauges of it cannot
	// both be right: they show more apart with no air moving than both may be off, or with the
	// trigger pulled the one nearer the gun shows as much more than the other.
	First, Second int
	// Gauges are those two, that nearer the gun last, or the one of the second reading that shows
	// what cannot be.
	Gauges [2]Gauge
	// Apart is by how much the two gauges are apart; 0 of two readings.
	Apart unit.Drop
	// Chance is how often, 0..1, a second reading would be as far off, were the first one right.
	Chance float64
}

const (
	// onLines is how many lines two readings are compared on.
	onLines = 5000
	// comparing is the generation of chance that they are drawn with.
	comparing = foreseeing - 1
	// unlikely is how often, of so many comparisons together, one is told of that is none.
	unlikely = 0.02
)

// Contradictions are the readings that contradict one another: of two, by how the first one
// leaves lines drawn from what was known beforehand, the second is too unlikely on any.
func (l *Learner) Contradictions() (found []Contradiction) {
	readings := l.own()
	for i := range readings {
		if c, is := l.apart(i); is {
			found = append(found, c)
		}
	}
	n := len(readings)
	if n < 2 {
		return found
	}
	lines := &Learner{model: l.model, draws: make([]draw, onLines)}
	curves := make([][]curve, onLines)
	l.each(onLines, func(w *worker, i int) {
		d := &lines.draws[i]
		l.drawn(d, w.at(l.seed, comparing, i))
		w.put(d)
		curves[i] = make([]curve, n)
		for k := range readings {
			curves[i][k] = w.solve(&readings[k])
		}
	})
	pairs := make([]Contradiction, n*n)
	l.each(n*n, func(_ *worker, at int) {
		if first, second := at/n, at%n; first < second {
			pairs[at] = l.compare(first, second, lines.draws, curves)
		}
	})
	limit := unlikely / float64(n*(n-1)/2)
	for first := range n {
		for second := first + 1; second < n; second++ {
			if c := pairs[first*n+second]; c.Chance < limit {
				found = append(found, c)
			}
		}
	}
	return found
}

// apart is the gauges of a reading that show more apart than both may be off, each with three
// standard deviations of its noise: either way where one pressure is at both, and with the trigger
// pulled where the one that the air comes to later shows more. One gauge read twice is off by
// the same in both.
func (l *Learner) apart(reading int) (c Contradiction, is bool) {
	t := &l.own()[reading]
	for i, a := range t.seen {
		for _, b := range t.seen[:i] {
			up, down := b, a
			if upstream(down.quantity) < upstream(up.quantity) {
				up, down = down, up
			}
			apart := down.value - up.value
			if t.Still || up.quantity == down.quantity {
				apart = math.Abs(apart)
			}
			one, other := &l.instruments[up.gauge], &l.instruments[down.gauge]
			may := 3 * math.Hypot(float64(one.Noise), float64(other.Noise))
			if up.gauge != down.gauge {
				may += float64(one.Within + other.Within)
			}
			if apart > may {
				return Contradiction{First: reading, Second: reading, Gauges: [2]Gauge{up.gauge, down.gauge}, Apart: unit.Drop(apart)}, true
			}
		}
	}
	return c, false
}

// upstream is a pressure's place on the air's way: no pressure is below one that the air comes to
// later, with the trigger pulled, and a regulator falls as air flows.
func upstream(q quantity) int {
	return [...]int{atWallBefore: 0, atWall: 1, atFoot: 2, atWorking: 3, atCap: 4}[q]
}

// compare is how likely a second reading is after a first one alone: of each gauge of the
// second, how often it would show so little or less, and so much or more; the least of these,
// twice.
func (l *Learner) compare(first, second int, draws []draw, curves [][]curve) Contradiction {
	one, other := &l.own()[first], &l.own()[second]
	after, share := make([]offsets, len(draws)), make([]float64, len(draws))
	for i := range draws {
		after[i] = draws[i].offsets
		share[i] = after[i].learn(one, &curves[i][first], l.model)
	}
	floats.AddConst(-floats.LogSumExp(share), share)
	below := make([]float64, len(other.seen))
	for i, s := range share {
		if s = math.Exp(s); s < 1e-12 {
			continue
		}
		off := after[i].off(other, &curves[i][second], l.model)
		for k := range below {
			below[k] += s * distuv.UnitNormal.CDF(off[k])
		}
	}
	c := Contradiction{First: first, Second: second, Chance: 1}
	for k := 1; k < len(below); k++ {
		if chance := 2 * min(below[k], 1-below[k]); chance < c.Chance {
			c.Chance, c.Gauges[1] = chance, other.seen[k].gauge
		}
	}
	return c
}
