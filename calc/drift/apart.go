package drift

import "math"

// Value is a value with which booth and which painter it is of.
type Value struct {
	Booth, Painter string
	V              float64
}

// Spreads is standard deviations: between booths, between painters, and of what is left within
// both. Told is whether there are booths and painters enough, and painters in several booths,
// to tell them apart.
type Spreads struct {
	Booths, Painters, Within float64
	Told                     bool
}

// Apart tells the spread between painters from that between booths, where painters work in
// several booths: the variance components of a two-way crossed random model without interaction,
// by Henderson's method 3 (fitting constants; Searle, Casella and McCulloch, Variance
// Components, 1992, chapter 5). A component that comes out below 0 is 0.
func Apart(values []Value) Spreads {
	booth, painter := indexed(values, func(v Value) string { return v.Booth }), indexed(values, func(v Value) string { return v.Painter })
	n, booths, painters := float64(len(values)), float64(len(booth.count)), float64(len(painter.count))
	within := n - booths - painters + 1
	if booths < 2 || painters < 2 || within < 1 {
		return Spreads{}
	}
	both := residual(values, booth, painter)
	residualVariance := both / within
	part := func(of, other *factor, groups float64) (variance float64, told bool) {
		k := n
		for _, cells := range other.cells(of) {
			sum, squares := 0.0, 0.0
			for _, c := range cells {
				sum, squares = sum+c, squares+c*c
			}
			k -= squares / sum
		}
		if k < 1 {
			return 0, false
		}
		return (residual(values, other) - both - residualVariance*(groups-1)) / k, true
	}
	ofBooths, told := part(booth, painter, booths)
	ofPainters, toldToo := part(painter, booth, painters)
	if !told || !toldToo {
		return Spreads{}
	}
	deviation := func(variance float64) float64 { return math.Sqrt(max(variance, 0)) }
	return Spreads{deviation(ofBooths), deviation(ofPainters), deviation(residualVariance), true}
}

// factor is which group each value is of.
type factor struct {
	of    []int
	count []float64
}

func indexed(values []Value, name func(Value) string) *factor {
	f := &factor{}
	seen := map[string]int{}
	for _, v := range values {
		g, ok := seen[name(v)]
		if !ok {
			g = len(f.count)
			seen[name(v)], f.count = g, append(f.count, 0)
		}
		f.of = append(f.of, g)
		f.count[g]++
	}
	return f
}

// cells is, for each group, how many of its values each group of another factor has.
func (f *factor) cells(other *factor) [][]float64 {
	all := make([][]float64, len(f.count))
	for i := range all {
		all[i] = make([]float64, len(other.count))
	}
	for i, g := range f.of {
		all[g][other.of[i]]++
	}
	return all
}

// residual is the sum of squares that least squares leave of values with an effect for each
// group of factors, found by fitting one after the other until nothing moves.
func residual(values []Value, factors ...*factor) (sum float64) {
	left := make([]float64, len(values))
	for i, v := range values {
		left[i] = v.V
	}
	const rounds = 500
	for range rounds {
		moved := 0.0
		for _, f := range factors {
			means := make([]float64, len(f.count))
			for i, g := range f.of {
				means[g] += left[i] / f.count[g]
			}
			for i, g := range f.of {
				left[i] -= means[g]
			}
			for _, m := range means {
				moved = max(moved, math.Abs(m))
			}
		}
		if moved < 1e-12 {
			break
		}
	}
	for _, l := range left {
		sum += l * l
	}
	return sum
}
