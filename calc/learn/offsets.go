package learn

import (
	"math"
	"math/rand/v2"
)

// latents is how much is normal given a draw at most.
const latents = mostGauges + 2

// offsets is what the gauges read too high, Pa, as one draw has it: jointly normal.
type offsets struct {
	mean [mostGauges]float64
	cov  [mostGauges][mostGauges]float64
}

// newOffsets is the gauges' before any reading.
func newOffsets(all []Instrument) (o offsets) {
	for g := range all {
		sigma := float64(all[g].Within) / 2
		o.cov[g][g] = sigma * sigma
	}
	return o
}

// anywhere is the variance of the wall's pressure before its gauge is read, Pa2: it is set to
// what its gauge shows, and so may be anything.
const anywhere = 1e14

// learn takes a reading whose pressures are c, and gives the logarithm of its likelihood: the
// density of what was shown, the wall's pressure taken to be anything. Each gauge shows
//
//	at + slope (wall - wall at) + byOpening misread + offset + m.noise[gauge]
//
// which is one step of a Kalman filter.
func (o *offsets) learn(t *taken, c *curve, m *model) (likelihood float64) {
	f := o.filter(t, m)
	for i := range t.seen {
		f.see(&t.seen[i], c, m)
	}
	n := len(m.instruments)
	copy(o.mean[:n], f.mean[:n])
	for g := range n {
		copy(o.cov[g][:n], f.cov[g][:n])
	}
	return -(f.squares + math.Log(f.volume)) / 2
}

// off is how far a reading shows each of its gauges off what is foreseen of it, in standard
// deviations, the gauges before it known.
func (o *offsets) off(t *taken, c *curve, m *model) (off [quantities]float64) {
	f := o.filter(t, m)
	for i := range t.seen {
		off[i] = f.see(&t.seen[i], c, m)
	}
	return off
}

// filter is the gauges before a reading.
func (o *offsets) filter(t *taken, m *model) filter {
	n := len(m.instruments)
	f := filter{n: n + 1, wall: n, opening: n + 1, volume: 1}
	if t.misread > 0 {
		f.n++
	}
	copy(f.mean[:n], o.mean[:n])
	for g := range n {
		copy(f.cov[g][:n], o.cov[g][:n])
	}
	f.cov[n][n], f.cov[n+1][n+1] = anywhere, t.misread
	return f
}

// filter is what is normal given a draw, in one reading: what each gauge reads too high, and
// after these the wall's pressure and by how much the valve's opening was misread.
type filter struct {
	n, wall, opening int // how many are normal; where the last two are
	mean             [latents]float64
	cov              [latents][latents]float64
	// squares and volume make the likelihood: the sum of the squares of what is shown off, in
	// standard deviations, and the product of the variances.
	squares, volume float64
}

// see takes what a gauge showed, and gives how far that is off, in standard deviations.
func (f *filter) see(o *observation, c *curve, m *model) float64 {
	n, wall, opening, gauge := f.n, f.wall, f.opening, int(o.gauge)
	byWall, byOpening := c.slope[o.quantity], c.byOpening[o.quantity]
	var along [latents]float64 // covariance with what is shown
	for k := range n {
		along[k] = f.cov[k][gauge] + byWall*f.cov[k][wall] + byOpening*f.cov[k][opening]
	}
	off := o.value - c.at[o.quantity] - f.mean[gauge] - byWall*f.mean[wall] - byOpening*f.mean[opening]
	variance := along[gauge] + byWall*along[wall] + byOpening*along[opening] + m.noise[gauge]
	for k := range n {
		gain := along[k] / variance
		f.mean[k] += gain * off
		for i := range n {
			f.cov[k][i] -= gain * along[i]
		}
	}
	f.squares += off * off / variance
	f.volume *= variance
	return off / math.Sqrt(variance)
}

// drawn draws what the first n gauges read too high: by Cholesky's square root of their
// covariance.
func (o *offsets) drawn(n int, random *rand.Rand) (off [mostGauges]float64) {
	var root [mostGauges][mostGauges]float64
	var z [mostGauges]float64
	for i := range n {
		z[i] = random.NormFloat64()
		for k := range i + 1 {
			left := o.cov[i][k]
			for j := range k {
				left -= root[i][j] * root[k][j]
			}
			switch {
			case i == k:
				root[i][i] = math.Sqrt(max(left, 0))
			case root[k][k] > 0:
				root[i][k] = left / root[k][k]
			}
		}
	}
	for i := range n {
		off[i] = o.mean[i]
		for k := range i + 1 {
			off[i] += root[i][k] * z[k]
		}
	}
	return off
}
