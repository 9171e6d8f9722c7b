package calc

import (
	"math"
	"sync"
)

// bases are those of the Halton sequence, one a dimension.
var bases = [Dimensions]int{2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37}

// seed is the first index of the sequence that is drawn: past the start, where the
// coordinates of large bases still run in step.
const seed = 1009

// deviations is Draws points of the Halton sequence from seed on: even over all
// dimensions at once. Each coordinate is turned into standard deviations of the normal
// distribution, and the columns are then made exactly uncorrelated, so that shares of
// variance add up.
var deviations = sync.OnceValue(func() []row {
	z := make([]row, Draws)
	for d, base := range bases {
		for i := range z {
			z[i][d] = normalOf(radicalInverse(seed+i, base))
		}
	}
	uncorrelate(z)
	return z
})

// radicalInverse mirrors the digits of n in a base at the point.
func radicalInverse(n, base int) (x float64) {
	for place := 1 / float64(base); n > 0; n /= base {
		x += float64(n%base) * place
		place /= float64(base)
	}
	return x
}

// uncorrelate makes every column's mean 0, its variance 1 and its products with the
// columns before it 0 (Gram and Schmidt).
func uncorrelate(z []row) {
	n := float64(len(z))
	for d := range Dimensions {
		var mean float64
		for i := range z {
			mean += z[i][d] / n
		}
		for i := range z {
			z[i][d] -= mean
		}
		for e := range d {
			var product float64
			for i := range z {
				product += z[i][d] * z[i][e] / n
			}
			for i := range z {
				z[i][d] -= product * z[i][e]
			}
		}
		var variance float64
		for i := range z {
			variance += z[i][d] * z[i][d] / n
		}
		k := 1 / math.Sqrt(variance)
		for i := range z {
			z[i][d] *= k
		}
	}
}

// normalOf is the standard deviation below which a share u of a normal distribution lies.
func normalOf(u float64) float64 {
	return math.Sqrt2 * math.Erfinv(2*math.Min(math.Max(u, 1e-12), 1-1e-12)-1)
}

// bounds are the values at 10 and 90 % of v, which is left as it is; room is as long.
func bounds(room, v []float64) Range {
	copy(room, v)
	low, rest := quantile(room, 0.1, 0)
	high, _ := quantile(room, 0.9, rest)
	return Range{low, high}
}

// quantile is the value below which a share of v lies, between the two nearest by a
// straight line. It reorders v, whose first sorted values are known to be no larger than
// the others, and gives how many are so afterwards.
func quantile(v []float64, share float64, sorted int) (float64, int) {
	x := share * float64(len(v)-1)
	i := int(x)
	pick(v[sorted:], i-sorted)
	low := v[i]
	between := x - float64(i)
	if between == 0 {
		return low, i
	}
	high := v[i+1]
	for _, w := range v[i+1:] {
		if w < high {
			high = w
		}
	}
	return low + (high-low)*between, i
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
