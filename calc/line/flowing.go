package line

import "boothset/calc/unit"

// MostParts is how many parts a Flowing has room for.
const MostParts = 16

// Flowing is a line of parts at one flow, with all that the pressures do not change
// worked out: for marching the same flow up or down from many pressures.
type Flowing struct {
	parts [MostParts]settled
	n     int
}

// settled is a part at one flow: a restriction's push and ratio, which for a hose are
// those of its ends, and its tube.
type settled struct {
	push, ratio float64
	tube        tube
	hose        bool
}

// Prepare takes at most MostParts parts at the flow q.
func (f *Flowing) Prepare(parts []Part, q unit.Flow, a Air) {
	f.n = len(parts)
	for i := range parts {
		f.Put(i, &parts[i], q, a)
	}
}

// Put puts a part in the place of the i-th, at the same flow and in the same air.
func (f *Flowing) Put(i int, p *Part, q unit.Flow, a Air) {
	if q <= 0 { // nothing is lost
		f.TakeOut(i)
		return
	}
	s, r := settled{}, p.Restriction
	if s.hose = p.Kind == HoseKind; s.hose {
		r = p.Hose.End
		s.tube = p.Hose.at(q, a)
	}
	if r.C > 0 {
		s.push, s.ratio = r.push(q, a), r.B
	}
	f.parts[i] = s
}

// TakeOut leaves the i-th part out.
func (f *Flowing) TakeOut(i int) { f.parts[i] = settled{} }

// Upstream is the pressure needed before the parts for p2 downstream of them, as the function
// of that name gives it.
func (f *Flowing) Upstream(p2 unit.Abs) unit.Abs {
	for i := f.n - 1; i >= 0; i-- {
		s := &f.parts[i]
		if s.push > 0 {
			p2, _ = squeeze(s.push, s.ratio, p2)
		}
		if s.hose {
			p2, _ = s.tube.upstream(p2)
			if s.push > 0 {
				p2, _ = squeeze(s.push, s.ratio, p2)
			}
		}
	}
	return p2
}

// Downstream is the pressure downstream of the parts when the flow enters at p1, as the function
// of that name gives it; ok is false where a part cannot pass it.
func (f *Flowing) Downstream(p1 unit.Abs) (p2 unit.Abs, ok bool) {
	for i := range f.n {
		s := &f.parts[i]
		if s.push > 0 {
			if p1, ok = relieve(s.push, s.ratio, p1); !ok {
				return 0, false
			}
		}
		if s.hose {
			if p1, ok = s.tube.downstream(p1); !ok {
				return 0, false
			}
			if s.push > 0 {
				if p1, ok = relieve(s.push, s.ratio, p1); !ok {
					return 0, false
				}
			}
		}
	}
	return p1, true
}
