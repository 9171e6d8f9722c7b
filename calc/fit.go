package calc

import "math"

// fit is an outcome draw by draw as the part that its dimensions explain one by one, and
// the rest.
type fit struct {
	explained
	part, rest []float64
}

// fit works an outcome's parts out in the room beside the outcomes.
func (p *propagation) fit(v int, e *explained) fit {
	f := fit{*e, p.column(values), p.column(values + 1)}
	for i := range p.draws {
		var m float64
		for d, z := range p.aim.turn(p.draws[i]) {
			m += e.straight[d]*z + e.bent[d]*hermite2(z)
		}
		f.part[i], f.rest[i] = m, p.out[v][i]-e.mean-m
	}
	return f
}

// around is the half width, in standard deviations, of the parts about a bound whose rests
// are looked at; with fewer draws than fewest there, only the explained part counts.
const (
	around = 0.45
	fewest = 12
)

// nothing stands for a dimension where none is known.
const nothing = -1

// bounds are the values at 10 and 90 % of a fit, were the dimension known exactly so. The
// explained part has bounds that are known without drawing; the outcome lies off them by
// what the rest comes to about there, a straight line through it, weighted (a parabola), and
// by half its variance times the slope of the density's logarithm. It holds where the rest
// is small: not for an outcome that is held at a limit.
func (p *propagation) bounds(f *fit, known int) Range {
	e, along := f.explained, row{}
	if known != nothing {
		along[known] = 1
		along = p.aim.back(along)
		e.straight[known], e.bent[known] = 0, 0
	}
	at, deviation := e.bounds()
	if deviation <= 1e-9*math.Abs(f.mean) {
		return Range{f.mean, f.mean}
	}
	var low, high window
	for i, m := range f.part {
		if known != nothing {
			z := dot(&along, &p.draws[i])
			m -= f.straight[known]*z + f.bent[known]*hermite2(z)
		}
		low.add((m-at.Low)/(around*deviation), f.rest[i])
		high.add((m-at.High)/(around*deviation), f.rest[i])
	}
	variance := deviation * deviation
	return Range{f.mean + at.Low + low.off(at.Low/variance), f.mean + at.High + high.off(at.High/variance)}
}

// bounds are the values at 10 and 90 % of the explained part, about its mean, and its
// standard deviation: of a sum of independent straight z + bent (z^2-1)/sqrt 2 by its first
// four cumulants (Cornish and Fisher's expansion).
func (e *explained) bounds() (at Range, deviation float64) {
	var k2, k3, k4 float64
	for d, a := range e.straight {
		c := e.bent[d] / math.Sqrt2 // a z + c (z^2-1)
		k2 += a*a + 2*c*c
		k3 += c * (6*a*a + 8*c*c)
		k4 += 48 * c * c * (a*a + c*c)
	}
	if k2 == 0 {
		return Range{}, 0
	}
	deviation = math.Sqrt(k2)
	skew, excess := k3/(k2*deviation), k4/(k2*k2)
	quantile := func(z float64) float64 {
		return deviation * (z + skew/6*(z*z-1) + excess/24*z*(z*z-3) - skew*skew/36*z*(2*z*z-5))
	}
	return Range{quantile(-tenthAbove), quantile(tenthAbove)}, deviation
}

// window is the draws about a bound: sums for a straight line through their rests.
type window struct {
	n                        int
	w, wx, wxx, wy, wyy, wxy float64
}

// add counts a draw whose part lies x half widths off the bound and whose rest is y.
func (s *window) add(x, y float64) {
	w := 1 - x*x
	if w <= 0 {
		return
	}
	s.n++
	s.w += w
	s.wx += w * x
	s.wxx += w * x * x
	s.wy += w * y
	s.wyy += w * y * y
	s.wxy += w * x * y
}

// off is how far the outcome lies off the bound of its part, where the logarithm of the
// part's density falls by slope.
func (s *window) off(slope float64) float64 {
	if s.n < fewest {
		return 0
	}
	tilt := (s.w*s.wxy - s.wx*s.wy) / (s.w*s.wxx - s.wx*s.wx)
	level := (s.wy - tilt*s.wx) / s.w
	variance := (s.wyy - level*s.wy - tilt*s.wxy) / s.w
	return level + variance/2*slope
}
