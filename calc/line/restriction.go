package line

import (
	"math"

	"boothset/calc/unit"
)

// Restriction is a coupling, a filter, a valve, a seat, a cap: anything short that
// the air must squeeze through, after ISO 6358-1.
//
//	q = C p1 sqrt(T0/T)                                   p2/p1 <= b, choked
//	q = C p1 sqrt(T0/T) sqrt(1 - ((p2/p1-b)/(1-b))^2)     otherwise
//
// C is above 0 and b lies in [0, 1).
type Restriction struct {
	C unit.Conductance
	B float64 // critical back-pressure ratio
}

// Sonic conductance from a bore, dm3/(s bar) per mm2.
const (
	// IdealNozzle is the isentropic nozzle without loss: the mass flux
	// 0.04042 p0/sqrt(T0) over the density at ANR.
	IdealNozzle = 0.1565
	// FullBore is a good fitting of that bore, as published for short bores in
	// ISO 6358 practice: C = 0.125 d2.
	FullBore = 0.125
)

// OfBore estimates the sonic conductance of a fitting from its bore, with one of
// the factors above.
func OfBore(bore unit.Length, factor float64) unit.Conductance {
	mm := bore.MM()
	return unit.DM3PerSBar(factor * mm * mm)
}

// Bore is that of a good fitting (FullBore) which passes as much.
func (r Restriction) Bore() unit.Length {
	return unit.MM(math.Sqrt(r.C.DM3PerSBar() / FullBore))
}

// Flow is the flow from p1 to p2, 0 where p2 is at or above p1.
func (r Restriction) Flow(p1, p2 unit.Abs, a Air) unit.Flow {
	return unit.Flow(float64(r.C) * float64(p1) * a.root * r.share(float64(p2)/float64(p1)))
}

// share is the flow at pressure ratio ratio over the choked flow, 0..1.
func (r Restriction) share(ratio float64) float64 {
	if ratio <= r.B {
		return 1
	}
	if ratio >= 1 {
		return 0
	}
	x := (ratio - r.B) / (1 - r.B)
	return math.Sqrt(1 - x*x)
}

// Upstream is the pressure needed before the restriction to pass q into p2, and
// whether it is then choked. Subsonic it is the root of
// (1-2b) p1^2 + 2 b p2 p1 - (p2^2 + u^2 (1-b)^2) = 0 with u = q/(C sqrt(T0/T)).
// It exists for every q >= 0.
func (r Restriction) Upstream(q unit.Flow, p2 unit.Abs, a Air) (p1 unit.Abs, choked bool) {
	return squeeze(r.push(q, a), r.B, p2)
}

// push is q/(C sqrt(T0/T)), Pa: the pressure that would just pass q choked.
func (r Restriction) push(q unit.Flow, a Air) float64 {
	return float64(q) / (float64(r.C) * a.root)
}

func squeeze(u, b float64, p2 unit.Abs) (p1 unit.Abs, choked bool) {
	p := float64(p2)
	if u*b >= p {
		return unit.Abs(u), true
	}
	ub := u * (1 - b)
	c := p*p + ub*ub
	h := b * p
	return unit.Abs(c / (h + math.Sqrt(h*h+(1-2*b)*c))), false
}

// Downstream is the highest pressure downstream of the restriction when it passes q from
// p1: p1 (b + (1-b) sqrt(1 - (u/p1)^2)). ok is false where q is more than it can
// pass; the pressure is then 0.
func (r Restriction) Downstream(q unit.Flow, p1 unit.Abs, a Air) (p2 unit.Abs, ok bool) {
	return relieve(r.push(q, a), r.B, p1)
}

func relieve(u, b float64, p1 unit.Abs) (p2 unit.Abs, ok bool) {
	p := float64(p1)
	if u /= p; u > 1 {
		return 0, false
	}
	return unit.Abs(p * (b + (1-b)*math.Sqrt(1-u*u))), true
}

// Needed is the sonic conductance that passes q from p1 to p2 with this b, and
// whether it is then choked. ok is false where p2 is not below p1: no opening will do.
func (r Restriction) Needed(q unit.Flow, p1, p2 unit.Abs, a Air) (c unit.Conductance, choked, ok bool) {
	if p2 >= p1 {
		return 0, false, false
	}
	ratio := float64(p2) / float64(p1)
	return unit.Conductance(float64(q) / (float64(p1) * a.root * r.share(ratio))), ratio <= r.B, true
}

// highestRatio is the most that a critical ratio is scaled to; the flow's equation wants it
// below 1.
const highestRatio = 0.9

// ScaleRatio makes the critical ratio f times what it is, f above 0, up to 0.9 or what it is
// where that is more.
func (r *Restriction) ScaleRatio(f float64) { r.B = min(r.B*f, max(r.B, highestRatio)) }

// FromValveFlow estimates C from an imperial flow coefficient Cv:
// C = 4.729 Cv sqrt(1-b) dm3/(s bar), the small-drop limit of the ANSI/(NFPA)
// T3.21.3 formula. An estimate: the two tests are run at different ratios.
func FromValveFlow(cv, b float64) unit.Conductance {
	return unit.DM3PerSBar(4.7288 * cv * math.Sqrt(1-b))
}

// ThroatMach is the Mach number in the narrowest section when a restriction carries
// the given share (0..1) of its choked flow: the subsonic root of
// M (1 + M^2/5)^-3 = share (1 + 1/5)^-3, from the isentropic mass-flow function.
// It is 1 exactly when the restriction is choked by its own b.
func ThroatMach(share float64) float64 {
	if share >= 1 {
		return 1
	}
	if share <= 0 {
		return 0
	}
	const full = 1 / (1.2 * 1.2 * 1.2)
	target := share * full
	low, high := 0.0, 1.0
	m := share / 2
	for range 60 {
		d := 1 + m*m/5
		f := m/(d*d*d) - target
		if f > 0 {
			high = m
		} else {
			low = m
		}
		slope := (1 - m*m) / (d * d * d * d)
		next := m - f/slope
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		if math.Abs(next-m) < 1e-14 {
			return next
		}
		m = next
	}
	return m
}
