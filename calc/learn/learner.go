package learn

import (
	"errors"
	"math"
	"slices"
)

// Draws is how many lines are drawn where nothing else is asked.
const Draws = 20_000

// fewestCounting is how many draws must count, for the draws to stay as they are.
const fewestCounting = 1000

// What is no reading.
var (
	// ErrNothingShown: none of the gauges was read.
	ErrNothingShown = errors.New("nothing-shown")
	// ErrShownTwice: a gauge was read twice.
	ErrShownTwice = errors.New("shown-twice")
)

// Learner is draws of a line with what readings made of them.
type Learner struct {
	*model
	readings  []taken
	elsewhere int // how many of them, the first ones, were taken on other lines
	draws     []draw
	spare     []draw // as many, where draws are drawn again or moved
	// logs are the logarithms of the draws' weights, the highest 0; weights add up to 1.
	logs, weights []float64
	seed          uint64
	generation    int
}

// New draws a line n times by a seed.
func New(of Line, n int, seed uint64) (*Learner, error) {
	m, err := newModel(of)
	if err != nil {
		return nil, err
	}
	return drawnFrom(m, n, seed), nil
}

// readElsewhere takes what was read on other lines.
func (l *Learner) readElsewhere() error {
	for n, other := range l.Elsewhere {
		for _, x := range other.Readings {
			x.Line, x.Pieces = n+1, slices.Clone(x.Pieces)
			for i := range x.Pieces {
				x.Pieces[i] += l.away[n]
			}
			if err := l.Add(x); err != nil {
				return err
			}
			l.elsewhere++
		}
	}
	return nil
}

// own is the readings of the line itself.
func (l *Learner) own() []taken { return l.readings[l.elsewhere:] }

// drawnFrom draws n lines of a model by a seed.
func drawnFrom(m *model, n int, seed uint64) *Learner {
	l := &Learner{model: m, draws: make([]draw, n), logs: make([]float64, n), weights: make([]float64, n), seed: seed}
	m.each(n, func(w *worker, i int) {
		m.drawn(&l.draws[i], w.at(seed, 0, i))
	})
	l.even()
	return l
}

// even makes all draws weigh the same.
func (l *Learner) even() {
	for i := range l.logs {
		l.logs[i], l.weights[i] = 0, 1/float64(len(l.logs))
	}
}

// Add takes a reading: each draw weighs as likely as it makes it.
func (l *Learner) Add(x Reading) error {
	if len(x.Shows) == 0 {
		return ErrNothingShown
	}
	for i, s := range x.Shows {
		if slices.ContainsFunc(x.Shows[:i], func(o Shown) bool { return o.Gauge == s.Gauge && o.Before == s.Before }) {
			return ErrShownTwice
		}
	}
	t := l.takes(x)
	likes := make([]float64, len(l.draws))
	l.each(len(l.draws), func(w *worker, i int) {
		d := &l.draws[i]
		w.put(d)
		c := w.solve(&t)
		likes[i] = d.offsets.learn(&t, &c, l.model)
	})
	l.readings = append(l.readings, t)
	l.temper(likes)
	return nil
}

// weigh sets the weights to their logarithms and more, the highest logarithm 0.
func (l *Learner) weigh(more []float64, share float64) {
	most := math.Inf(-1)
	for i := range l.logs {
		l.weights[i] = l.logs[i] + share*more[i]
		most = max(most, l.weights[i])
	}
	sum := 0.0
	for i := range l.weights {
		l.weights[i] = math.Exp(l.weights[i] - most)
		sum += l.weights[i]
	}
	for i := range l.weights {
		l.weights[i] /= sum
	}
}

// Counting is how many draws count: of draws that all weigh the same, as many as would tell as
// much; those drawn twice and not moved are one.
func (l *Learner) Counting() float64 {
	squares := 0.0
	for i := 0; i < len(l.draws); {
		together := l.weights[i]
		k := i + 1
		for ; k < len(l.draws) && l.draws[k].same(&l.draws[i]); k++ {
			together += l.weights[k]
		}
		squares += together * together
		i = k
	}
	return 1 / squares
}

// same is whether two draws, one after another, are one that was drawn twice.
func (d *draw) same(o *draw) bool { return d.shared == o.shared && d.own == o.own }
