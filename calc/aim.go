package calc

import "math"

// swing is how far each outcome moves from one side of a dimension's range to the other,
// two standard deviations either way, as if straight: per standard deviation.
type swing [values]row

// farEnough is the half width of a swing, in standard deviations.
const farEnough = 2

// swingOf works the two ends of every dimension, in a propagation's room.
func swingOf(t *perturbed, room []float64) (s swing) {
	ends := propagation{draws: make([]row, 2*Dimensions), room: room}
	for d := range Dimensions {
		ends.draws[2*d][d], ends.draws[2*d+1][d] = farEnough, -farEnough
	}
	ends.run(t)
	for v := range s {
		for d := range Dimensions {
			s[v][d] = (ends.out[v][2*d] - ends.out[v][2*d+1]) / (2 * farEnough)
		}
	}
	return s
}

// mirrors turn one set of directions into another: each is the unit vector across which
// a point is mirrored (Householder). What is even and uncorrelated stays so.
type mirrors struct {
	across [values]row
	n      int
}

// aimed are the mirrors by which the first coordinate runs along the steepest way of the
// first outcome in order, the second along what of the second outcome's is left across
// that, and so on: the draws are evenest where the outcomes move most.
func (s *swing) aimed(order ...int) (m mirrors) {
	for _, v := range order {
		along := s[v]
		for i := range m.n {
			m.across[i].mirror(&along)
		}
		n := row{}
		copy(n[m.n:], along[m.n:])
		left := n.size()
		if left <= 1e-3*along.size() {
			continue // nothing new
		}
		n[m.n] += math.Copysign(left, n[m.n])
		left = n.size()
		for d := range n {
			n[d] /= left
		}
		m.across[m.n] = n
		m.n++
	}
	return m
}

// turn turns a point.
func (m *mirrors) turn(z row) row {
	for i := m.n - 1; i >= 0; i-- {
		m.across[i].mirror(&z)
	}
	return z
}

// back turns a point back.
func (m *mirrors) back(z row) row {
	for i := range m.n {
		m.across[i].mirror(&z)
	}
	return z
}

func (n *row) mirror(z *row) {
	twice := 2 * dot(n, z)
	for d := range z {
		z[d] -= twice * n[d]
	}
}

func (a *row) size() float64 { return math.Sqrt(dot(a, a)) }

func dot(a, b *row) (sum float64) {
	for i, x := range a {
		sum += x * b[i]
	}
	return sum
}
