package question

import (
	"strings"

	"boothset/calc/unit"
)

// Completed is values read in a system with the units named that their texts left out, so that
// a change of units later does not change what was meant. What is the same in either system
// stays as it is.
func (r *Reader) Completed(f *Field, values []Value, sys unit.System) []Value {
	done := make([]Value, len(values))
	for i, v := range values {
		v.Text = f.complete(v, sys)
		done[i] = v
	}
	return done
}

// complete is the text of a value with its units named.
func (f *Field) complete(v Value, sys unit.System) string {
	switch of, part := v.Part(); {
	case f == Line && of != nil && v.Fault == nil:
		return v.Kind + "=" + of.complete(part, sys)
	case f == Area: // a panel of usual size, unless it is a number
		return named(unit.Surface, v.Text, v.Bare[0], sys)
	case v.Fault != nil || v.ID != "" || f.Of[0] == nil:
		return strings.TrimSpace(v.Text)
	case !f.Pair():
		return named(f.Of[0], v.Text, v.Bare[0], sys)
	}
	one, other, both := Parts(f, v.Text)
	one = named(f.Of[0], one, v.Bare[0], sys)
	if !both {
		return one
	}
	return f.Joined(one, named(f.Of[1], other, v.Bare[1], sys))
}

func named(q *unit.Quantity, t string, bare bool, sys unit.System) string {
	if !bare {
		return strings.TrimSpace(t)
	}
	r, err := q.Read(t, sys)
	if err != nil || q.Unit(unit.US) != q.Unit(unit.Metric) && sameInBoth(q, t) {
		return strings.TrimSpace(t)
	}
	return r.Complete(t)
}

// sameInBoth reports whether a bare number is the same in either system, as a fraction of an
// inch is.
func sameInBoth(q *unit.Quantity, t string) bool {
	us, err1 := q.Read(t, unit.US)
	metric, err2 := q.Read(t, unit.Metric)
	return err1 == nil && err2 == nil && us.SI == metric.SI
}
