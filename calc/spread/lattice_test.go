package spread

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"boothset/calc"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// JCGM 101:2008, 9.2.2: four quantities, each normal with mean 0 and standard deviation
// 1, added up. The sum's estimate is 0.00, its standard uncertainty 2.00, and 95 % of it
// lie between -3.92 and 3.92.
func Example_jcgm101AdditiveModel() {
	l := draws()
	sum, variance := make([]float64, Draws), 0.0
	for i := range sum {
		for d := range 4 {
			sum[i] += l.at(i, d)
		}
		variance += sum[i] * sum[i] / Draws
	}
	slices.Sort(sum)
	fmt.Printf("uncertainty %.1f\n", math.Sqrt(variance))
	fmt.Printf("95 %% from %.1f to %.1f\n", quantile(sum, 0.025), quantile(sum, 0.975))
	// Output:
	// uncertainty 2.0
	// 95 % from -3.9 to 3.9
}

// criterion is P2 of a lattice of the powers of g with a weight of 0.1 for each coordinate:
// the error of the worst integrand of its class (Sloan and Joe), by the Bernoulli
// polynomial x^2 - x + 1/6.
func criterion(g int) float64 {
	var sum float64
	for i := range Draws {
		k, product := i, 1.0
		for range calc.Dimensions {
			x := float64(k) / Draws
			product *= 1 + 0.1*2*math.Pi*math.Pi*(x*x-x+1.0/6)
			k = k * g % Draws
		}
		sum += product
	}
	return sum/Draws - 1
}

func TestTheGeneratorIsAmongTheBetterHalf(t *testing.T) {
	ours, better := criterion(generator), 0
	for g := 2; g < Draws; g++ {
		if criterion(g) < ours {
			better++
		}
	}
	assert.Less(t, better, Draws/2)
}

// Each coordinate takes every step once, as the normal distribution has it (a tenth below
// -1.2816, a half below 0), and points come in pairs that are each other's opposites.
func TestEachCoordinateIsNormal(t *testing.T) {
	l := draws()
	for d := range calc.Dimensions {
		var all []float64
		for i := range Draws {
			all = append(all, l.at(i, d))
			assert.InDelta(t, -l.at(i, d), l.at((Draws-i)%Draws, d), 1e-12)
		}
		slices.Sort(all)
		assert.InDelta(t, -1.2816, quantile(all, 0.1), 1e-4)
		assert.InDelta(t, 0, quantile(all, 0.5), 1e-12)
		assert.InDelta(t, 1.2816, quantile(all, 0.9), 1e-4)
		assert.Len(t, slices.Compact(all), Draws)
	}
}

// What is a plane has the plane's own slopes.
func TestRegressionFindsAPlane(t *testing.T) {
	l := draws()
	rapid.Check(t, func(t *rapid.T) {
		var slopes, along calc.Deviations
		for d := range slopes {
			slopes[d] = rapid.Float64Range(-3, 3).Draw(t, "slope")
		}
		level := rapid.Float64Range(-100, 100).Draw(t, "level")
		for i := range Draws {
			z, x := l.point(i), level
			for d := range z {
				x += slopes[d] * z[d]
			}
			for d := range z {
				along[d] += x * z[d] / Draws
			}
		}
		for d, slope := range l.regression(&along) {
			assert.InDelta(t, slopes[d], slope, 3e-3, "%d", d)
		}
	})
}

// By hand: of 1, 2, 3 and 4 each stands for a quarter, so 1 is at an eighth, 2 at three
// eighths; halfway between lies 1.5, a quarter.
func TestQuantileByHand(t *testing.T) {
	v := []float64{1, 2, 3, 4}
	for share, want := range map[float64]float64{0: 1, 0.125: 1, 0.25: 1.5, 0.375: 2, 0.5: 2.5, 0.9: 4, 1: 4} {
		assert.InDelta(t, want, quantile(v, share), 1e-12, "%g", share)
	}
}
