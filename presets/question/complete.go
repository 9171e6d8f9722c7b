package question

import (
	"strings"

	"boothset/calc/unit"
)

// completed is the values of a field with the units named that their texts had left to the
// system, and all of them as one text. What is the same in either system stays as it is.
type completed struct {
	values []Value
	text   string
}

// Completed names the units that values read in a system left out, so that a change of
// units later does not change what was meant.
func (r *Reader) Completed(f *Field, values []Value, sys unit.System) completed {
	done := make([]Value, len(values))
	texts := make([]string, len(values))
	for i, v := range values {
		v.Text = f.complete(v, sys)
		done[i], texts[i] = v, v.Text
	}
	return completed{done, strings.Join(texts, between)}
}

// Values is the values.
func (c completed) Values() []Value { return c.values }

// String is all of them as one text.
func (c completed) String() string { return c.text }

// complete is the text of a value with its units named.
func (f *Field) complete(v Value, sys unit.System) string {
	switch {
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
	return one + ", " + named(f.Of[1], other, v.Bare[1], sys)
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
