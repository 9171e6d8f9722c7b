package learn

import (
	"math"
	"slices"

	"boothset/calc"
	"boothset/calc/spread"
	"boothset/calc/unit"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat"
)

// Worth is what an option is expected to tell.
type Worth struct {
	Option
	// Wall is how wide the range of the wall's setting is expected to be after it, and Narrows
	// by how much less that is than now.
	Wall, Narrows unit.Drop
	// Tells is by how much less there is to find out about which pieces are odd: Shannon's
	// entropy, in bits.
	Tells float64
	// Expected is what the last gauge of it is to show, 80 % sure.
	Expected spread.GaugeRange
}

const (
	// foreseen is how many draws an option's worth is worked of, and showings how many of
	// what it may show.
	foreseen = 1000
	showings = 32
)

// Next is what each option is expected to tell, in the options' order, worked with the draws:
// each may be the line, and what it would show makes the others more likely or less (Lindley,
// Annals of Mathematical Statistics 27, 1956).
func (l *Learner) Next(options []Option) []Worth {
	f := l.foresee(options)
	walls, entropies := make([]float64, len(options)*showings), make([]float64, len(options)*showings)
	l.each(len(walls), func(w *worker, i int) {
		after := f.show(w, i/showings, i%showings)
		walls[i], entropies[i] = f.ends(after)
	})
	wall, entropy := f.ends(f.now())
	all := make([]Worth, len(options))
	for i, o := range options {
		after := stat.Mean(walls[i*showings:(i+1)*showings], nil)
		all[i] = Worth{o, unit.Drop(after), unit.Drop(wall - after), (entropy - stat.Mean(entropies[i*showings:(i+1)*showings], nil)) / math.Ln2, f.shows(i)}
	}
	return all
}

// foresight is a sample of the draws, each with what it says of all options.
type foresight struct {
	l      *Learner
	draws  []*draw
	taken  []taken   // the options
	curves [][]curve // of each option, each draw's
	// need is the wall's pressure that a draw's target asks for, Pa, and perGun what each Pa
	// less at the gun's gauge asks for; chance is where within what its gauges leave open.
	need, perGun, chance []float64
	set                  []int // which of all the sets of odd pieces is the draw's
	sets                 int
}

// foreseeing is the generation of chance that options are foreseen with.
const foreseeing = settling - 1

// foresee works a sample of the draws for all options.
func (l *Learner) foresee(options []Option) *foresight {
	n := min(foreseen, len(l.draws))
	f := &foresight{l: l, draws: make([]*draw, n), need: make([]float64, n), perGun: make([]float64, n), chance: make([]float64, n), set: make([]int, n)}
	numbers := map[uint32]int{}
	for i, at := range l.sample(n) {
		f.draws[i] = &l.draws[at]
		set := l.oddSet(f.draws[i])
		if _, is := numbers[set]; !is {
			numbers[set] = len(numbers)
		}
		f.set[i] = numbers[set]
	}
	f.sets = len(numbers)
	for i := range options {
		t := l.takes(options[i].Reading)
		t.known = t.seen[0]
		f.taken, f.curves = append(f.taken, t), append(f.curves, make([]curve, n))
	}
	standing := l.takes(Reading{Opening: 1, Shows: []Shown{{Gauge: GunGauge, Pressure: l.Setup.Working.Pressure}}})
	standing.known.quantity = atWorking
	l.each(n, func(w *worker, i int) {
		w.put(f.draws[i])
		for k := range f.taken {
			f.curves[k][i] = w.solve(&f.taken[k])
		}
		c := w.solve(&standing)
		f.need[i] = c.at[atWall]
		if l.Request.Gauge != calc.NoGauge {
			f.perGun[i] = 1 / c.slope[atWorking]
		}
		f.chance[i] = w.at(l.seed, foreseeing, i).NormFloat64()
	})
	return f
}

// outlook is how much each draw of a foresight weighs, and the setting of its wall, Pa.
type outlook struct{ share, wall []float64 }

// now is the outlook without another reading.
func (f *foresight) now() outlook {
	o := outlook{make([]float64, len(f.draws)), make([]float64, len(f.draws))}
	for i, d := range f.draws {
		o.share[i], o.wall[i] = 1/float64(len(f.draws)), f.setting(i, &d.offsets)
	}
	return o
}

// setting is what a draw's wall is to be set to, as its gauge reads it, less what is the same
// for all: what its gauges leave open is drawn.
func (f *foresight) setting(i int, o *offsets) float64 {
	s := f.perGun[i]
	mean := f.need[i] + o.mean[WallGauge] - s*o.mean[GunGauge]
	variance := o.cov[WallGauge][WallGauge] + s*s*o.cov[GunGauge][GunGauge] - 2*s*o.cov[WallGauge][GunGauge]
	return mean + math.Sqrt(max(variance, 0))*f.chance[i]
}

// show is the outlook after an option that shows what one of the draws makes of it.
func (f *foresight) show(w *worker, option, showing int) outlook {
	n := len(f.draws)
	from := (2*showing + 1) * n / (2 * showings)
	t := f.taken[option]
	t.seen = slices.Clone(t.seen)
	f.drawn(w, &t, &f.curves[option][from], f.draws[from], showing)
	o := outlook{make([]float64, n), make([]float64, n)}
	for i, d := range f.draws {
		after := d.offsets
		o.share[i] = after.learn(&t, &f.curves[option][i], f.l.model)
		o.wall[i] = f.setting(i, &after)
	}
	floats.AddConst(-floats.LogSumExp(o.share), o.share)
	for i := range o.share {
		o.share[i] = math.Exp(o.share[i])
	}
	return o
}

// shows is what the last gauge of an option is expected to show.
func (f *foresight) shows(option int) spread.GaugeRange {
	v := make([]float64, len(f.draws))
	f.l.each(len(v), func(w *worker, i int) {
		t := f.taken[option]
		t.seen = slices.Clone(t.seen)
		f.drawn(w, &t, &f.curves[option][i], f.draws[i], i)
		v[i] = t.seen[len(t.seen)-1].value
	})
	slices.Sort(v)
	low, high := bounds(v, nil)
	return spread.GaugeRange{Low: unit.Gauge(low), High: unit.Gauge(high)}
}

// Foretell is what the last gauge of a reading is expected to show with the first one, the
// wall's, showing what it does.
func (l *Learner) Foretell(x Reading) spread.GaugeRange {
	return l.foresee([]Option{{Reading: x}}).shows(0)
}

// drawn makes a reading show what a draw's gauges would.
func (f *foresight) drawn(w *worker, t *taken, c *curve, d *draw, showing int) {
	m := f.l.model
	random := w.at(f.l.seed, foreseeing, foreseen+showing)
	off := d.offsets.drawn(len(m.instruments), random)
	noise := func(g Gauge) float64 { return math.Sqrt(m.noise[g]) * random.NormFloat64() }
	wall := -off[WallGauge] - noise(WallGauge) // above what its gauge shows
	misread := math.Sqrt(t.misread) * random.NormFloat64()
	for i := range t.seen[1:] {
		s := &t.seen[i+1]
		s.value = c.at[s.quantity] + c.slope[s.quantity]*wall + c.byOpening[s.quantity]*misread + off[s.gauge] + noise(s.gauge)
	}
}

// ends is what an outlook leaves to find out.
func (f *foresight) ends(o outlook) (width, entropy float64) {
	entropy = f.entropy(o.share)
	return o.width(), entropy
}

// width is how wide the range of the wall's setting is, Pa; it puts the draws into
// the order of their settings.
func (o outlook) width() float64 {
	stat.SortWeighted(o.wall, o.share)
	low, high := bounds(o.wall, o.share)
	return high - low
}

// entropy is how much there is to find out about which pieces are odd, in nats.
func (f *foresight) entropy(share []float64) float64 {
	of := make([]float64, f.sets)
	for i, s := range share {
		of[f.set[i]] += s
	}
	return stat.Entropy(of)
}
