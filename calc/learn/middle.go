package learn

import (
	"math"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"

	"gonum.org/v1/gonum/stat"
)

// middleShare is the share of its stamped inlet pressure that a gun is at in the middle line.
const middleShare = 0.9

// middle is the line in the middle of those that the draws are: the wall that it asks for, gun near
// its stamp, is as often too low as too high. A piece that may be odd takes as much of the air in it
// as it does on average of being so and of not, which goes with the square of what it passes; what
// that leaves of the wall's difference all parts and the inlet valve take in proportion.
func (l *Learner) middle() (m calc.LineOff) {
	d := l.mean()
	sample := l.sample(min(settled, len(l.draws)))
	walls := make([]float64, len(sample))
	l.each(len(sample), func(w *worker, i int) { walls[i] = w.asked(&l.draws[sample[i]]) })
	wanted := median(walls)
	const most = 1.5 // as a logarithm, of what is passed
	l.each(1, func(w *worker, _ int) {
		with := d
		at := func(by float64) float64 {
			for k := range l.pieces {
				if l.pieces[k].Role != GunItself {
					with.own[k].by = d.own[k].by + by/oddWidth
				}
			}
			return w.asked(&with)
		}
		const within = 1e-6
		if wanted > at(-most) || wanted < at(most) {
			at(0) // no line there is that far off
			return
		}
		at(line.FalsePosition(func(by float64) float64 { return wanted/at(by) - 1 }, -most, most, within))
		d = with
	})
	m.Deviations, m.Off = l.offs(&d)
	m.WallGauge, m.GunGauge = unit.Drop(d.mean[WallGauge]), unit.Drop(d.mean[GunGauge])
	return m
}

// mean is the mean of the draws, each piece odd by what it passes.
func (l *Learner) mean() (d draw) {
	var odd, log [2][MostPieces]float64
	for i, share := range l.weights {
		of := &l.draws[i]
		for k := range d.shared {
			d.shared[k] += share * of.shared[k]
		}
		for k := range l.pieces {
			own := &of.own[k]
			d.own[k].end += share * own.end
			is := 0
			if own.odd {
				is = 1
			}
			odd[is][k] += share
			log[is][k] += share * math.Log(l.passes(of, k))
		}
		for g := range l.instruments {
			d.mean[g] += share * of.mean[g]
		}
	}
	for k := range l.pieces {
		takes := 0.0
		for is := range odd {
			if share := odd[is][k]; share > 0 {
				takes += share * math.Exp(-2*log[is][k]/share)
			}
		}
		d.own[k].odd, d.own[k].by = true, (-math.Log(takes)/2-oddness(0))/oddWidth
	}
	return d
}

// asked is the wall's pressure, as its gauge reads it, that a draw's line asks for with the gun near
// its stamp, as its gauge reads it.
func (w *worker) asked(d *draw) float64 {
	w.put(d)
	w.arrange(&taken{Reading: Reading{Opening: 1, Pieces: w.m.stands}})
	gun := middleShare*w.m.Request.Gun.Stamp.Inlet - unit.Gauge(d.mean[GunGauge])
	return w.march(gun.Abs(w.ambient))[atWall] + d.mean[WallGauge]
}

// median is what half of values, which it puts in order, are below.
func median(values []float64) float64 {
	stat.SortWeighted(values, nil)
	return stat.Quantile(0.5, stat.LinInterp, values, nil)
}
