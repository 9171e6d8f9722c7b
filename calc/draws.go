package calc

import (
	"math"
	"slices"
)

// halfWindow is the share of the draws on either side of a bound that it is read from.
const halfWindow = 0.02

// Of the standard normal distribution: the value that a tenth lies above, and the density
// there.
const (
	tenthAbove   = 1.2815515655446004
	densityThere = 0.17549833193248685
)

// ordered are the values at 10 and 90 % of v, which is left as it is, by their order; room
// is as long. straight is the straight part of v in each dimension. The straight parts of
// the draws should have a tenth of themselves beyond each of their bounds; the share that
// has stands in for a tenth, since v is uneven where they are.
func (p *propagation) ordered(room, v []float64, straight row) Range {
	under, over := 0.1, 0.9
	if size := straight.size(); size > 0 {
		along := p.aim.back(straight)
		for i := range p.draws {
			room[i] = dot(&along, &p.draws[i]) / size
		}
		under -= densityThere * (tenthAbove + quantile(room, under))
		over += densityThere * (tenthAbove - quantile(room, over))
	}
	copy(room, v)
	return Range{quantile(room, max(under, 0)), quantile(room, min(over, 1))}
}

// quantile is the value below which a share of v lies, 0..1: the mean of the values within
// halfWindow of it, the nearer the heavier (weights of a parabola), because single values
// are ragged where there are few. It reorders v.
func quantile(v []float64, share float64) float64 {
	n := float64(len(v))
	middle, half := share*n-0.5, math.Max(halfWindow*n, 1)
	from, to := max(int(math.Ceil(middle-half)), 0), min(int(math.Floor(middle+half)), len(v)-1)
	pick(v, from)
	pick(v[from:], to-from)
	window := v[from : to+1]
	slices.Sort(window)
	var sum, weights float64
	for i, x := range window {
		off := (float64(from+i) - middle) / half
		w := 1 - off*off
		sum += w * x
		weights += w
	}
	return sum / weights
}

// pick moves the k-th smallest of v to v[k], the smaller ones before it and the larger
// ones behind (Hoare's selection, about the median of three).
func pick(v []float64, k int) {
	low, high := 0, len(v)-1
	for low < high {
		pivot := median(v[low], v[(low+high)/2], v[high])
		i, j := low, high
		for i <= j {
			for v[i] < pivot {
				i++
			}
			for v[j] > pivot {
				j--
			}
			if i <= j {
				v[i], v[j] = v[j], v[i]
				i++
				j--
			}
		}
		switch {
		case k <= j:
			high = j
		case k >= i:
			low = i
		default:
			return
		}
	}
}

func median(a, b, c float64) float64 {
	return math.Max(math.Min(a, b), math.Min(math.Max(a, b), c))
}
