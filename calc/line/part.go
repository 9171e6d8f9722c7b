package line

import (
	"math"

	"boothset/calc/unit"
)

// Kind is what a part of the line is.
type Kind uint8

// The kinds, in the order air usually meets them.
const (
	RegulatorKind Kind = iota
	FilterKind
	DryerKind
	CouplingKind
	HoseKind
	ValveKind
	PassagesKind
	CapKind
)

// String is the trade's word for the kind.
func (k Kind) String() string {
	return [...]string{"regulator", "filter", "dryer", "coupling", "hose", "valve", "passages", "cap"}[k]
}

// Part is one part of the line: a hose, or any other kind as a restriction.
type Part struct {
	Name        string // unlike any other in the same line
	Kind        Kind
	Restriction Restriction // unless it is a hose; a regulator's is its seat, wide open
	Hose        Hose        // if it is
	// Droop and LockUp are a regulator's: Pa per m3/s ANR, and the fall at the first flow.
	Droop  float64
	LockUp unit.Drop
	// DewPoint is what a dryer dries to, at the pressure in it.
	DewPoint unit.Temp
	// Entry is the catalogue's name of it, for what else could be here.
	Entry string
}

// Regulator is the part as a regulator, if it is one.
func (p *Part) Regulator() Regulator { return Regulator{p.Restriction, p.Droop, p.LockUp} }

// Regulate makes the part a regulator.
func (p *Part) Regulate(r Regulator) {
	p.Restriction, p.Droop, p.LockUp = r.Seat, r.Droop, r.LockUp
}

// Widen lets the part pass f times as much, f above 0: by its conductance or, of a hose, by
// the area of its bore and of its end fittings.
func (p *Part) Widen(f float64) {
	if p.Kind == HoseKind {
		p.Hose.Bore *= unit.Length(math.Sqrt(f))
		p.Hose.End.C *= unit.Conductance(f)
		return
	}
	p.Restriction.C *= unit.Conductance(f)
}

// Upstream is the pressure needed before the part to pass q into p2, and whether
// the part then chokes.
func (p *Part) Upstream(q unit.Flow, p2 unit.Abs, a Air) (p1 unit.Abs, choked bool) {
	if p.Kind == HoseKind {
		return p.Hose.Upstream(q, p2, a)
	}
	return p.Restriction.Upstream(q, p2, a)
}

// Downstream is the pressure downstream of the part when q enters it at p1; ok is false
// where it cannot pass q.
func (p *Part) Downstream(q unit.Flow, p1 unit.Abs, a Air) (p2 unit.Abs, ok bool) {
	if p.Kind == HoseKind {
		return p.Hose.Downstream(q, p1, a)
	}
	return p.Restriction.Downstream(q, p1, a)
}

// Mach is the highest Mach number in the part at flow q between p1 and p2: in the
// throat of a restriction, at the outlet of a hose's tube.
func (p *Part) Mach(q unit.Flow, p1, p2 unit.Abs, a Air) float64 {
	if p.Kind != HoseKind {
		return ThroatMach(p.Restriction.share(float64(p2) / float64(p1)))
	}
	tubeOut := p2
	if p.Hose.End.C > 0 {
		tubeOut, _ = p.Hose.End.Upstream(q, p2, a)
	}
	return p.Hose.OutletMach(q, tubeOut, a)
}

// Most is an upper bound of the flow the part can pass from p1.
func (p *Part) Most(p1 unit.Abs, a Air) unit.Flow {
	r := p.Restriction
	if p.Kind == HoseKind {
		// No tube passes more than a nozzle of its own bore.
		r.C = OfBore(p.Hose.Bore, IdealNozzle*1.01)
	}
	return unit.Flow(float64(r.C) * float64(p1) * a.root)
}

// Upstream marches from the last part to the first: the pressure needed before
// parts to pass q into p2 downstream of them, and whether any of them chokes. It exists
// for every q >= 0 and grows with q and with p2.
func Upstream(parts []Part, q unit.Flow, p2 unit.Abs, a Air) (p1 unit.Abs, choked bool) {
	for i := len(parts) - 1; i >= 0; i-- {
		var c bool
		p2, c = parts[i].Upstream(q, p2, a)
		choked = choked || c
	}
	return p2, choked
}

// Downstream marches from the first part to the last: the pressure downstream of parts
// when q enters at p1. ok is false where a part cannot pass q, which is then limit;
// limit is -1 otherwise.
func Downstream(parts []Part, q unit.Flow, p1 unit.Abs, a Air) (p2 unit.Abs, limit int, ok bool) {
	for i := range parts {
		if p1, ok = parts[i].Downstream(q, p1, a); !ok {
			return 0, i, false
		}
	}
	return p1, -1, true
}
