package calc

import (
	"cmp"
	"math"
	"slices"

	"boothset/calc/unit"
)

// Draws is how many times a request is worked for its spread, besides two for each
// dimension.
const Draws = 400

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
	t := newPerturbed(r, s)
	room := make([]float64, (values+2)*Draws) // in one piece, for the ends of the swings first
	p := propagation{swing: swingOf(t, room), draws: deviations[:], room: room}
	p.aim = p.swing.aimed(wallOutcome, openingOutcome, distanceOutcome, staticOutcome)
	p.run(t)
	return p.spread(r)
}

// row is one draw: how many standard deviations each dimension is off.
type row [Dimensions]float64

// The columns of outcomes.
const (
	wallOutcome = iota
	staticOutcome
	openingOutcome
	distanceOutcome
	values
)

// propagation is draws, the way they are turned to be worked, and what they come to.
type propagation struct {
	swing swing
	aim   mirrors
	draws []row
	out   [values][]float64
	room  []float64 // for the outcomes of all draws, and two columns more to read them off
}

// column is the k-th column of the room, those of the outcomes first.
func (p *propagation) column(k int) []float64 {
	n := len(p.draws)
	return p.room[k*n : (k+1)*n]
}

// run fills in the outcomes of every draw.
func (p *propagation) run(t *perturbed) {
	for v := range p.out {
		p.out[v] = p.column(v)
	}
	var sigma row
	for d := range dimensions {
		sigma[d] = dimensions[d].of(&t.base.Tolerances).Within / 2
	}
	for i := range p.draws {
		z := p.aim.turn(p.draws[i])
		t.reset()
		for d := range dimensions {
			if sigma[d] > 0 {
				dimensions[d].apply(t, sigma[d]*z[d])
			}
		}
		o := t.run()
		p.out[wallOutcome][i], p.out[staticOutcome][i], p.out[openingOutcome][i], p.out[distanceOutcome][i] = o.wall, o.static, o.opening, o.distance
	}
}

// spread reads bounds and shares off the outcomes: the wall's off what explains them, the
// valve's and the distance's, which may be held at a limit, off their order. The shares come
// to 1, less what the dimensions cause only together.
func (p *propagation) spread(r *Request) *Spread {
	of := p.explain()
	room := p.column(values)
	opening := p.ordered(room, p.out[openingOutcome], of[openingOutcome].straight)
	near := p.ordered(room, p.out[distanceOutcome], of[distanceOutcome].straight)
	stands := p.fit(staticOutcome, &of[staticOutcome])
	static := p.bounds(&stands, nothing)
	wall := p.fit(wallOutcome, &of[wallOutcome])
	found := new(struct {
		Spread
		causes [Dimensions]Cause
	})
	s := &found.Spread
	*s = Spread{
		Wall: gaugeRange(p.bounds(&wall, nothing)), Static: gaugeRange(static), Opening: opening,
		Distance: LengthRange{unit.Length(near.Low), unit.Length(near.High)},
	}
	s.Causes = found.causes[:0]
	for d := range dimensions {
		c := Cause{
			ID: dimensions[d].id, Tolerance: *dimensions[d].of(&r.Tolerances), Known: s.Wall,
			Wall: wall.share[d], Static: of[staticOutcome].share[d],
			Opening: of[openingOutcome].share[d], Distance: of[distanceOutcome].share[d],
		}
		if max(c.Wall, c.Static, c.Opening, c.Distance) < leastShare {
			continue // not in this line
		}
		if c.Wall >= shareWorthKnowing {
			c.Known = gaugeRange(p.bounds(&wall, d))
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

// hermite2 is the second of Hermite's polynomials, of variance 1 over a normal
// distribution; the first is z itself.
func hermite2(z float64) float64 { return (z*z - 1) * (1 / math.Sqrt2) }

// explained is what each dimension does to an outcome by itself, as straight z + bent
// (z^2 - 1)/sqrt 2, and the share of the outcome's variance that comes of it.
type explained struct {
	mean                  float64
	straight, bent, share row
}

// explain projects each outcome on the two polynomials in each dimension that moves it,
// which are orthonormal over a normal distribution. What is left out is the third order and
// beyond. The bent parts are read off what the straight ones leave: over the draws those
// are exactly uncorrelated, with the bent ones only nearly.
func (p *propagation) explain() (of [values]explained) {
	each := 1 / float64(len(p.draws))
	var mean, variance [values]float64
	var along, bent [values]row // along: the straight parts before they are turned
	for v := range of {
		for _, x := range p.out[v] {
			mean[v] += x * each
		}
		for i, x := range p.out[v] {
			x -= mean[v]
			variance[v] += x * x * each
			x *= each
			for d, w := range p.draws[i] {
				along[v][d] += x * w
			}
		}
	}
	for i := range p.draws {
		w := &p.draws[i]
		z := p.aim.turn(*w)
		for d := range z {
			z[d] = hermite2(z[d])
		}
		for v := range of {
			x := (p.out[v][i] - mean[v] - dot(&along[v], w)) * each
			for d := range z {
				bent[v][d] += x * z[d]
			}
		}
	}
	for v := range of {
		e := &of[v]
		e.mean = mean[v]
		if variance[v] <= 1e-18*mean[v]*mean[v] {
			continue
		}
		for d, a := range p.aim.turn(along[v]) {
			if b := bent[v][d]; p.swing[v][d] != 0 {
				e.straight[d], e.bent[d], e.share[d] = a, b, (a*a+b*b)/variance[v]
			}
		}
	}
	return of
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
