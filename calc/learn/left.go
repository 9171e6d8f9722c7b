package learn

import (
	"slices"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// Left is what a request's readings left of its line, for every plan on it. It fails where nothing
// can be learnt of the line, or a reading shows nothing.
func Left(q *Request) (*calc.Learnt, error) {
	l, err := q.learner(nil, nil)
	if err != nil {
		return nil, err
	}
	return l.left(len(q.Readings), l.Find(), l.Contradictions()), nil
}

// left is what so many readings left of the line, which came to a finding and contradictions.
func (l *Learner) left(readings int, f Finding, c []Contradiction) *calc.Learnt {
	x := &calc.Learnt{Readings: readings, Told: toldOf(f, c), Unread: l.unread}
	if x.Told == calc.ToldContradicts {
		return x
	}
	for k, odd := range f.Odd {
		if !l.inUse(k) {
			continue
		}
		kind := line.CapKind
		switch p := &l.pieces[k]; p.Role {
		case InLine:
			kind = p.Part.Kind
		case InletValve:
			kind = line.ValveKind
		}
		x.Odds = append(x.Odds, calc.PartOdds{Name: l.called(k), Kind: kind, Odd: odd, Before: OddShare})
	}
	for _, k := range f.Found {
		part := -1
		if at := slices.Index(l.stands, k); at >= 0 {
			part = l.wall + 1 + at
		}
		x.Odd = append(x.Odd, calc.OddPart{Name: l.called(k), Bore: l.Bore(k), Part: part})
	}
	known := l.known()
	x.Middle, x.Lines = known.middle(), known.lines()
	return x
}

// toldOf is what readings come to.
func toldOf(f Finding, c []Contradiction) calc.Told {
	switch {
	case len(c) > 0:
		return calc.ToldContradicts
	case len(f.Found) > 0:
		return calc.ToldOdd
	case f.Right:
		return calc.ToldRight
	}
	return calc.ToldNotYet
}

// called is what a piece of the line or the request's gun is called.
func (l *Learner) called(piece int) string {
	switch p := &l.pieces[piece]; p.Role {
	case InletValve:
		return l.Request.Parts.Valve
	case GunItself:
		return l.Request.Gun.Name
	default:
		return p.Part.Name
	}
}

// lines are as many lines as settings are worked of, each with gauges off as its draw has them,
// and with what no reading tells of.
func (l *Learner) lines() []calc.LineOff {
	of := l.sample(min(settled, len(l.draws)))
	all := make([]calc.LineOff, len(of))
	l.each(len(of), func(w *worker, i int) {
		d := &l.draws[of[i]]
		random := w.at(l.seed, settling, i)
		off := d.offsets.drawn(len(l.instruments), random)
		z, o := l.offs(d)
		for _, k := range l.unread {
			z[k] = random.NormFloat64()
		}
		o.WallGauge, o.GunGauge = unit.Drop(off[WallGauge]), unit.Drop(off[GunGauge])
		all[i] = calc.LineOff{Deviations: z, Off: o}
	})
	return all
}

// settling is the generation of chance that lines are drawn with.
const settling = 1<<31 - 1

// offs is a draw as package calc works it, the line as it stands.
func (l *Learner) offs(d *draw) (z calc.Deviations, o calc.Off) {
	for k, at := range sharedPlaces {
		z[at] = d.shared[k]
	}
	for i := range o.Parts {
		o.Parts[i] = calc.PartOff{Passes: 1, End: 1}
	}
	for i, p := range l.stands {
		o.Parts[l.wall+1+i] = calc.PartOff{Passes: l.passes(d, p), End: l.end(d, p)}
	}
	o.Valve, o.Flow = 1, 1
	for i := range l.pieces {
		switch p := &l.pieces[i]; {
		case p.Gun != 0:
		case p.Role == InletValve:
			o.Valve, z[shapePlace] = l.passes(d, i), d.own[i].end
		case p.Role == GunItself:
			o.Flow, z[capPlace] = l.passes(d, i), d.own[i].end
		}
	}
	return z, o
}
