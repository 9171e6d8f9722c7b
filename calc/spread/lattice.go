package spread

import (
	"math"
	"sync"

	"boothset/calc"
)

// Draws is how many times a request is worked for its spread, besides two for each
// tolerance; a prime.
const Draws = 1499

// generator makes the lattice: one of the few whose bounds come nearest to those of 400,000
// pseudo-random draws on the five lines of the tests. By the criterion P2 (Sloan and Joe,
// Lattice Methods for Multiple Integration, 1994) it is among the better half.
const generator = 656

// lattice is the draws: a rank-1 lattice after Korobov, shifted so that its first point is
// the middle. Point i has its coordinate d at the step i generator^d mod Draws, the steps
// being even shares of a normal distribution. So each coordinate takes every step once,
// and for each point there is one with all deviations the other way.
type lattice struct {
	steps    [Draws]float64           // standard deviations, from the lowest up
	powers   [calc.Dimensions]int     // of the generator, mod Draws
	products [calc.Dimensions]float64 // of two coordinates so many apart, the mean over the draws
}

// draws is the lattice, made when it is first needed.
var draws = sync.OnceValue(newLattice)

func newLattice() *lattice {
	l := new(lattice)
	for i := range l.steps {
		share := (float64(i) + 0.5) / Draws
		l.steps[i] = math.Sqrt2 * math.Erfinv(2*share-1)
	}
	power := 1
	for d := range l.powers {
		l.powers[d] = power
		power = power * generator % Draws
	}
	for d := range l.products {
		for i := range Draws {
			l.products[d] += l.at(i, 0) * l.at(i, d) / Draws
		}
	}
	return l
}

// at is how many standard deviations coordinate d of point i is off.
func (l *lattice) at(i, d int) float64 { return l.steps[(Draws/2+i*l.powers[d])%Draws] }

// point is all coordinates of point i.
func (l *lattice) point(i int) (z calc.Deviations) {
	for d := range z {
		z[d] = l.at(i, d)
	}
	return z
}

// regression is the coefficients of the plane that fits an outcome best, by least squares,
// from the mean of its products with each coordinate. The coordinates are nearly
// uncorrelated, so four sweeps of Gauss and Seidel's iteration solve the equations to
// some parts in 10,000.
func (l *lattice) regression(along *calc.Deviations) (slopes calc.Deviations) {
	for range 4 {
		for d := range slopes {
			left := along[d]
			for e, slope := range slopes {
				if e != d {
					left -= slope * l.products[max(d-e, e-d)]
				}
			}
			slopes[d] = left / l.products[0]
		}
	}
	return slopes
}
