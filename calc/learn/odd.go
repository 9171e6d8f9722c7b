package learn

import "slices"

// Odd is how probable it is, 0..1, that a piece is odd.
func (l *Learner) Odd(piece int) (p float64) {
	for i := range l.draws {
		if l.draws[i].own[piece].odd {
			p += l.weights[i]
		}
	}
	return p
}

// Nothing is how probable it is, 0..1, that no piece of the line as it stands is odd.
func (l *Learner) Nothing() (p float64) {
	for i := range l.draws {
		if l.oddSet(&l.draws[i]) == 0 {
			p += l.weights[i]
		}
	}
	return p
}

// inUse is whether a piece is in the line as it stands, or of the request's gun.
func (m *model) inUse(i int) bool {
	if m.pieces[i].Role == InLine {
		return slices.Contains(m.stands, i)
	}
	return m.pieces[i].Gun == 0
}

// oddSet is which pieces in use are odd.
func (m *model) oddSet(d *draw) (set uint32) {
	for i := range m.pieces {
		if d.own[i].odd && m.inUse(i) {
			set |= 1 << i
		}
	}
	return set
}

// Sure is how probable a thing must be to be told as found.
const Sure = 0.8
