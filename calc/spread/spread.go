package spread

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"boothset/calc"
	"boothset/calc/unit"
)

// Spread is how sure a setup is: its bounds at 10 and 90 %, and what they come from.
type Spread struct {
	// Set is whether there is a pressure to set: without a regulator wall and static, and the
	// causes' shares of them, are 0.
	Set      bool
	Wall     GaugeRange // flowing
	Middle   unit.Gauge // of it: as often too low as too high
	Static   GaugeRange // with no air moving
	Opening  Range      // of the inlet valve, 0..1; at 1 a tenth of the draws or more want all of it
	Turns    Range      // of its knob, closed from wide open
	FromShut Range      // the same, opened from shut
	Distance LengthRange
	// CountsFromShut is whether the knob is counted from shut; else it is from wide open.
	CountsFromShut bool
	// Short is how often, 0..1, the gun gets less than its target with the wall as advised
	// and the valve wide open.
	Short float64
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
	Tolerance calc.Tolerance
	// The share of each value's variance that it causes by itself, 0..1; over all causes
	// they come to 1, less what they cause only together.
	Wall, Static, Opening, Distance float64
	// Known is the wall's bounds were this one thing measured.
	Known GaugeRange
}

// Of works r Draws times with everything off within its tolerance, by the same draws every
// time, so that the same request has the same spread to the last bit; s is r's setup. Of a line
// that was read, the lines that it may be are worked in their place. A supply that is short has
// none: nil.
func Of(r *calc.Request, s *calc.Setup) *Spread {
	if s.Short.Is {
		return nil
	}
	if r.AsRead() {
		return ofLearnt(r, s)
	}
	all, short := work(r, s)
	for v, moves := range moved(calc.Perturb(r, s)) {
		all[v].explain(&moves)
	}
	found := ranges(r, s, &all, short)
	for d, id := range calc.ToleranceIDs() {
		var share [outcomes]float64
		for v := range share {
			share[v] = all[v].share[d]
		}
		tolerance, _ := r.Tolerances.Of(id)
		found.addCause(Cause{ID: id, Tolerance: *tolerance}, share, &all[0])
	}
	found.sortCauses()
	return found
}

// ranges is what samples come to, without what causes it.
func ranges(r *calc.Request, s *calc.Setup, all *[outcomes]sample, short float64) *Spread {
	wall, static, opening, distance := &all[0], &all[1], &all[2], &all[3]
	found := &Spread{
		Set: r.RegulatorAt() != calc.Nowhere, Short: short,
		Opening: opening.bounds(), Distance: lengths(distance.bounds()), CountsFromShut: s.Valve.CountsFromShut,
	}
	if found.Set {
		found.Wall, found.Static, found.Middle = gauges(wall.bounds()), gauges(static.bounds()), unit.Gauge(quantile(wall.sorted, 0.5))
	}
	of := s.Valve.TurnsOf
	found.Turns = Range{(1 - found.Opening.High) * of, (1 - found.Opening.Low) * of}
	found.FromShut = Range{found.Opening.Low * of, found.Opening.High * of}
	return found
}

// addCause adds a cause with its shares of each outcome, unless it is not in this line.
func (s *Spread) addCause(c Cause, share [outcomes]float64, wall *sample) {
	if !s.Set {
		share[0], share[1] = 0, 0
	}
	c.Wall, c.Static, c.Opening, c.Distance = share[0], share[1], share[2], share[3]
	if slices.Max(share[:]) < leastShare {
		return
	}
	if s.Set {
		c.Known = gauges(wall.known(c.Wall))
	}
	s.Causes = append(s.Causes, c)
}

func (s *Spread) sortCauses() {
	slices.SortStableFunc(s.Causes, func(a, b Cause) int {
		return cmp.Or(cmp.Compare(b.Wall, a.Wall), cmp.Compare(b.Opening, a.Opening))
	})
}

// Of is the share of the wall's variance that the tolerance of an id causes, 0 where it is
// no cause.
func (s *Spread) Of(id string) float64 {
	for i := range s.Causes {
		if s.Causes[i].ID == id {
			return s.Causes[i].Wall
		}
	}
	return 0
}

// leastShare is the share below which a cause is left out.
const leastShare = 1e-4

// Marked is the bounds as a gauge with so fine a mark shows them.
func (g GaugeRange) Marked(mark unit.Drop) GaugeRange {
	near := func(p unit.Gauge) unit.Gauge { return unit.Gauge(math.Round(float64(p)/float64(mark)) * float64(mark)) }
	return GaugeRange{near(g.Low), near(g.High)}
}

func gauges(r Range) GaugeRange { return GaugeRange{unit.Gauge(r.Low), unit.Gauge(r.High)} }

func lengths(r Range) LengthRange { return LengthRange{unit.Length(r.Low), unit.Length(r.High)} }

// outcomes is the values that have a spread: wall, static, opening and distance.
const outcomes = 4

// numbers is an outcome as numbers in SI.
func numbers(o calc.Outcome) [outcomes]float64 {
	return [outcomes]float64{float64(o.Wall), float64(o.Static), o.Opening, float64(o.Distance)}
}

// sample is what one outcome came to over all draws.
type sample struct {
	sorted []float64
	// along and bent are the mean of its products with each deviation and with the second
	// Hermite polynomial of it.
	along, bent calc.Deviations
	share       [calc.Dimensions]float64 // of its variance that each tolerance causes
}

// hermite2 is the second of Hermite's polynomials, of variance 1 over a normal
// distribution; the first is z itself.
func hermite2(z float64) float64 { return (z*z - 1) / math.Sqrt2 }

// halves is how many parts the draws are worked in, side by side. It is fixed, so that sums
// come to the same whatever the machine.
const halves = 2

// half is what a part of the draws adds to the samples' means.
type half struct {
	along, bent [outcomes]calc.Deviations
	short       int
}

// work works every draw, and gives the share of them that fall short.
func work(r *calc.Request, s *calc.Setup) (all [outcomes]sample, short float64) {
	for v := range all {
		all[v].sorted = make([]float64, Draws)
	}
	var parts [halves]half
	var wait sync.WaitGroup
	for n := range parts {
		wait.Go(func() {
			parts[n].work(calc.Perturb(r, s), n*Draws/halves, (n+1)*Draws/halves, &all)
		})
	}
	wait.Wait()
	for v := range all {
		wait.Go(func() { slices.Sort(all[v].sorted) })
		for n := range parts {
			for d := range all[v].along {
				all[v].along[d] += parts[n].along[v][d]
				all[v].bent[d] += parts[n].bent[v][d]
			}
		}
	}
	for n := range parts {
		short += float64(parts[n].short) / Draws
	}
	wait.Wait()
	return all, short
}

// work works the draws from one to another, and puts what they come to into their places.
func (h *half) work(p *calc.Perturbed, from, to int, all *[outcomes]sample) {
	l := draws()
	middle := numbers(p.Work(&calc.Deviations{}))
	for i := from; i < to; i++ {
		z := l.point(i)
		found := p.Work(&z)
		if found.Short {
			h.short++
		}
		out := numbers(found)
		for v, x := range out {
			all[v].sorted[i] = x
			out[v] = (x - middle[v]) / Draws
		}
		for d, x := range z {
			bent := hermite2(x)
			for v, y := range out {
				h.along[v][d] += y * x
				h.bent[v][d] += y * bent
			}
		}
	}
}

// moved is which outcomes each tolerance moves, alone from one of its ends to the other:
// what it does not move it has no share in, whatever the draws' noise says.
func moved(p *calc.Perturbed) (moves [outcomes][calc.Dimensions]bool) {
	const end = 2 // standard deviations
	for d := range calc.Dimensions {
		var high, low calc.Deviations
		high[d], low[d] = end, -end
		above, below := numbers(p.Work(&high)), numbers(p.Work(&low))
		for v := range moves {
			moves[v][d] = above[v] != below[v]
		}
	}
	return moves
}

// explain works out the shares of the tolerances that move the sample.
func (s *sample) explain(moves *[calc.Dimensions]bool) {
	var mean, variance float64
	for _, x := range s.sorted {
		mean += x / Draws
	}
	for _, x := range s.sorted {
		variance += (x - mean) * (x - mean) / Draws
	}
	// The variance were the coordinates not correlated at all: over the draws they are, a
	// little.
	slopes := draws().regression(&s.along)
	for d, slope := range slopes {
		variance += slope * (slope - s.along[d])
	}
	for d, slope := range slopes {
		if moves[d] && variance > 0 {
			s.share[d] = (slope*slope + s.bent[d]*s.bent[d]) / variance
		}
	}
}

// bounds are the sample's values at 10 and 90 %.
func (s *sample) bounds() Range { return Range{quantile(s.sorted, 0.1), quantile(s.sorted, 0.9)} }

// known are the bounds were a cause known: the variance is less by its share, and the
// distribution keeps its form and its middle.
func (s *sample) known(share float64) Range {
	b, middle := s.bounds(), quantile(s.sorted, 0.5)
	left := math.Sqrt(1 - min(share, 1))
	return Range{middle + left*(b.Low-middle), middle + left*(b.High-middle)}
}

// quantile is the value below which a share of sorted lies, 0..1, on a straight line
// between the two nearest, each in the middle of its own share.
func quantile(sorted []float64, share float64) float64 {
	at := min(max(share*float64(len(sorted))-0.5, 0), float64(len(sorted)-1))
	i := int(at)
	next := min(i+1, len(sorted)-1)
	return sorted[i] + (at-float64(i))*(sorted[next]-sorted[i])
}

// Knob is the bounds of the turns of the inlet valve's knob, as they are counted.
func (s *Spread) Knob() Range {
	if s.CountsFromShut {
		return s.FromShut
	}
	return s.Turns
}
