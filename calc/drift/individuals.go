package drift

import "math"

// d2 is the mean range of two draws of a normal distribution with a standard deviation of 1:
// 2/sqrt(pi), 1.128 in the tables of ISO 7870-2.
var d2 = 2 / math.Sqrt(math.Pi)

// widthOfLimits is how many standard deviations the limits of the chart are from its centre.
const widthOfLimits = 3

// Individuals is a chart of single values: its centre, the standard deviation from the mean
// moving range of two, and the limits three of those away.
type Individuals struct{ Centre, Sigma, Lower, Upper float64 }

// IndividualsOf is the chart of values taken while nothing changes, after ISO 7870-2. Fewer than
// two have no moving range: its Sigma is 0.
func IndividualsOf(values []float64) Individuals {
	n := float64(len(values))
	var sum, ranges float64
	for i, v := range values {
		sum += v
		if i > 0 {
			ranges += math.Abs(v - values[i-1])
		}
	}
	if n < 2 {
		return Individuals{Centre: sum, Lower: sum, Upper: sum}
	}
	c := Individuals{Centre: sum / n, Sigma: ranges / (n - 1) / d2}
	c.Lower, c.Upper = c.Centre-widthOfLimits*c.Sigma, c.Centre+widthOfLimits*c.Sigma
	return c
}

// Out reports whether a value lies outside the limits.
func (c *Individuals) Out(v float64) bool { return v < c.Lower || v > c.Upper }
