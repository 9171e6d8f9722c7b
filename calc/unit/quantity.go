package unit

// Quantity is a kind of quantity as people type, read and step it: a row of the table in
// quantities.go. Its values are in SI. Each one of those that print has a unit a system;
// those that are only typed take the spellings of another.
type Quantity struct {
	ID    string // what its errors call it
	usage string // the sentence of what it takes
	// fractions: 3/8 and 1-1/2 are numbers too.
	fractions bool
	marks     []string   // spellings that name no unit, such as a degree sign alone
	units     []spelling // that are read
	per       []string   // endings that may follow a unit, such as "/min"
	shown     [2]scale   // by the system
	pair      [2]scale   // as JSON has it, in US and metric units at once; shown where empty
	brief     [2]scale   // as a value beside its bound is told; shown where empty
	// Step is what a hand would change it by, in the unit shown, by the system; 0 where it
	// goes along a list.
	Step [2]float64
}

// spelling is a unit that is read: how people write it, in lower case and without spaces,
// and its size in SI.
type spelling struct {
	size  float64
	names []string
}

// scale is how a quantity is shown in one system.
type scale struct {
	label string                   // with the blank before it, " psi"
	key   string                   // as JSON names it, "psi"
	count func(si float64) float64 // how many of the unit
	of    func(v float64) float64  // SI from the count
	// Decimals usual below 1 (those below 10 where it is 0), below 10 and from 10 on.
	finest, fine, coarse int
	below                *scale // shown instead where the count is below 1
}

// scale is what a value is shown in.
func (q *Quantity) scale(sys System, si float64) *scale {
	sc := &q.shown[sys]
	if v := sc.count(si); sc.below != nil && v > -1 && v < 1 {
		return sc.below
	}
	return sc
}

// Unit is the unit of a bare number in a system, as it is printed: "psi".
func (q *Quantity) Unit(sys System) string { return trimmed(q.shown[sys].label) }

func trimmed(label string) string {
	if label != "" && label[0] == ' ' {
		return label[1:]
	}
	return label
}

// Fine is the decimals of a value where small differences matter: a set pressure beside the
// one that it falls to.
func (q *Quantity) Fine(sys System) int { return q.shown[sys].fine }

// Count is how many of the system's units a value is, and Of the value of so many.
func (q *Quantity) Count(sys System, si float64) float64 { return q.shown[sys].count(si) }

// Of is the value, in SI, of a count of the system's units.
func (q *Quantity) Of(sys System, count float64) float64 { return q.shown[sys].of(count) }

// Pair is a value in US and metric units, with the names of both units as JSON has them.
func (q *Quantity) Pair(si float64) (us string, inUS float64, metric string, inMetric float64) {
	a, b := &q.pair[US], &q.pair[Metric]
	if a.count == nil {
		a, b = &q.shown[US], &q.shown[Metric]
	}
	inUS, inMetric = a.count(si), b.count(si)
	if q == Temperature {
		inUS, inMetric = degrees(inUS), degrees(inMetric)
	}
	return a.key, inUS, b.key, inMetric
}
