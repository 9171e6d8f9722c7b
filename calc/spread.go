package calc

import (
	"cmp"
	"math"
	"slices"

	"boothset/calc/unit"
)

// Draws is how many times a request is worked for its spread.
const Draws = 10_000

// Spread is how sure a setup is: its bounds at 10 and 90 %, and what they come from.
type Spread struct {
	Wall     GaugeRange // flowing
	Static   GaugeRange // with no air moving
	Opening  Range
	Distance LengthRange
	// Causes is every tolerance that counts, the largest share of the wall's first.
	Causes []Cause
}

// Range is the bounds at 10 and 90 %.
type Range struct{ Low, High float64 }

// GaugeRange and LengthRange are bounds of a pressure and of a length.
type (
	GaugeRange  struct{ Low, High unit.Gauge }
	LengthRange struct{ Low, High unit.Length }
)

// Cause is one tolerance and its part in the spread.
type Cause struct {
	ID        string
	Tolerance Tolerance
	// The share of each value's variance that it causes, 0..1; over all causes they
	// come to 1, less what they cause only together.
	Wall, Static, Opening, Distance float64
	// Known is the wall's bounds were this one thing measured.
	Known GaugeRange
}

// Propagate works the request Draws times with everything off within its tolerance, by
// the same deviations every time, so that the same request has the same spread. An
// answer that the supply cannot give has none: nil.
func Propagate(r *Request, s *Setup) *Spread {
	if s.Short.Is {
		return nil
	}
	p := propagation{z: deviations()}
	p.run(newTrial(r, s))
	found := p.spread(r)
	return &found
}

// row is one draw: how many standard deviations each dimension is off.
type row [Dimensions]float64

// values is the columns of outcomes: wall, static, opening, distance.
const values = 4

type propagation struct {
	z   []row
	out [values][]float64
}

// run fills in the outcomes of every draw.
func (p *propagation) run(t *trial) {
	for v := range p.out {
		p.out[v] = make([]float64, len(p.z))
	}
	var sigma row
	for d := range dimensions {
		sigma[d] = dimensions[d].of(&t.base.Tolerances).Within / 2
	}
	for i := range p.z {
		t.reset()
		for d := range dimensions {
			if sigma[d] > 0 {
				dimensions[d].apply(t, sigma[d]*p.z[i][d])
			}
		}
		o := t.run()
		p.out[0][i], p.out[1][i], p.out[2][i], p.out[3][i] = o.wall, o.static, o.opening, o.distance
	}
}

// spread reads bounds and shares off the outcomes. The shares come to 1, less what the
// dimensions cause only together.
func (p *propagation) spread(r *Request) Spread {
	room := make([]float64, len(p.z))
	wall, static, distance := bounds(room, p.out[0]), bounds(room, p.out[1]), bounds(room, p.out[3])
	s := Spread{
		Wall: gaugeRange(wall), Static: gaugeRange(static), Opening: bounds(room, p.out[2]),
		Distance: LengthRange{unit.Length(distance.Low), unit.Length(distance.High)},
	}
	for d := range dimensions {
		c := Cause{ID: dimensions[d].id, Tolerance: *dimensions[d].of(&r.Tolerances)}
		if c.Tolerance.Within <= 0 {
			continue
		}
		var curve curve
		c.Wall, curve = p.explained(0, d)
		c.Static, _ = p.explained(1, d)
		c.Opening, _ = p.explained(2, d)
		c.Distance, _ = p.explained(3, d)
		if max(c.Wall, c.Static, c.Opening, c.Distance) < leastShare {
			continue // not in this line
		}
		c.Known = s.Wall
		if c.Wall >= shareWorthKnowing {
			for i, w := range p.out[0] {
				room[i] = w - curve.at(p.z[i][d])
			}
			c.Known = gaugeRange(bounds(room, room))
		}
		s.Causes = append(s.Causes, c)
	}
	slices.SortStableFunc(s.Causes, func(a, b Cause) int { return cmp.Compare(b.Wall, a.Wall) })
	return s
}

// shareWorthKnowing is the share of the wall's variance from which it is worked out
// what measuring the cause would leave; below it nothing narrows that shows.
const shareWorthKnowing = 0.005

// leastShare is the share below which a cause is only the noise of the draws.
const leastShare = 1e-4

func gaugeRange(r Range) GaugeRange { return GaugeRange{unit.Gauge(r.Low), unit.Gauge(r.High)} }

// curve is what one dimension alone does to a value, as the first two of Hermite's
// polynomials: a z + b (z^2 - 1)/sqrt 2.
type curve struct{ a, b float64 }

func (c curve) at(z float64) float64 { return c.a*z + c.b*hermite2(z) }

func hermite2(z float64) float64 { return (z*z - 1) / math.Sqrt2 }

// explained is the share of the variance of outcome v that dimension d causes by
// itself, and how: the projection on the curve's two polynomials, which are orthonormal
// over a normal distribution. What is left out is the third order and beyond.
func (p *propagation) explained(v, d int) (share float64, c curve) {
	n := float64(len(p.z))
	var mean float64
	for _, x := range p.out[v] {
		mean += x
	}
	mean /= n
	var vv, va, vb float64
	for i, x := range p.out[v] {
		x -= mean
		z := p.z[i][d]
		vv += x * x
		va += x * z
		vb += x * hermite2(z)
	}
	if vv <= 1e-18*mean*mean*n {
		return 0, curve{}
	}
	c = curve{va / n, vb / n}
	return (c.a*c.a + c.b*c.b) * n / vv, c
}

// Figures are what the sentences of a spread name: its bounds, and the cause that
// counts most with what is left once it is known.
func (s *Spread) Figures() Figures {
	f := Figures{
		gauge("wallLow", s.Wall.Low), gauge("wallHigh", s.Wall.High),
		share("openingLow", s.Opening.Low), share("openingHigh", s.Opening.High),
		near("distanceLow", s.Distance.Low), near("distanceHigh", s.Distance.High),
	}
	if len(s.Causes) > 0 {
		c := &s.Causes[0]
		f = append(f, text("cause", c.ID), share("share", c.Wall), gauge("knownLow", c.Known.Low), gauge("knownHigh", c.Known.High))
	}
	return f
}
