package question

import (
	"slices"
	"strings"

	"boothset/calc/unit"
)

// Shown is values as a person reads them, in a system's units: of a list the entry's name.
// What was typed in other units stays as it was typed, with what it is in these behind it; what
// nobody typed is told in these alone.
func (r *Reader) Shown(f *Field, values []Value, sys unit.System) string {
	texts := make([]string, len(values))
	for i, v := range values {
		texts[i] = r.shown(f, v, sys)
	}
	return strings.Join(texts, Between)
}

func (r *Reader) shown(f *Field, v Value, sys unit.System) string {
	of, part := v.Part()
	switch {
	case f == Line && of != nil:
		return r.shown(of, part, sys)
	case f.Listed():
		return r.Called(f, v)
	case v.Fault != nil || v.ID != "" || f.Of[0] == nil:
		return strings.TrimSpace(v.Text)
	}
	if !f.Pair() {
		return r.ShownPiece(f, v, 0, sys)
	}
	one, other, both := Parts(f, v.Text)
	if !both || v.Word {
		return strings.TrimSpace(v.Text)
	}
	first, second := inUnits(f.Of[0], one, v.SI[0], sys), inUnits(f.Of[1], other, v.SI[1], sys)
	own, here := f.Joined(strings.TrimSpace(one), strings.TrimSpace(other)), ""
	if first+second != "" {
		here = f.Joined(orText(first, one), orText(second, other))
	} else {
		own = strings.TrimSpace(v.Text)
	}
	return r.inUse(f, v, own, here)
}

// ShownPiece is Shown for one of a value's quantities.
func (r *Reader) ShownPiece(f *Field, v Value, piece int, sys unit.System) string {
	text := v.Text
	if one, other, both := Parts(f, text); f.Pair() && piece == 0 {
		text = one
	} else if f.Pair() && both {
		text = other
	}
	here := ""
	if v.Fault == nil && v.ID == "" && f.Of[piece] != nil {
		here = inUnits(f.Of[piece], text, v.SI[piece], sys)
	}
	return r.inUse(f, v, strings.TrimSpace(text), here)
}

// inUse is a value as it was typed with what it is in the units in use, empty where those are its
// own; what nobody typed in these alone.
func (r *Reader) inUse(f *Field, v Value, own, here string) string {
	switch {
	case here == "":
		return own
	case v.Assumed || r.ofShop(f, v):
		return here
	}
	return own + " (" + here + ")"
}

func orText(text, other string) string {
	if text != "" {
		return text
	}
	return strings.TrimSpace(other)
}

// ofShop reports whether a value is one of the shop's usual, which nobody typed.
func (r *Reader) ofShop(f *Field, v Value) bool {
	return slices.ContainsFunc(r.Completed(f, r.usual.Get(f), r.System()), func(u Value) bool { return u.Text == v.Text })
}

// inUnits is a quantity in a system's own unit, empty where its text has that already.
func inUnits(q *unit.Quantity, text string, si float64, sys unit.System) string {
	typed, err := q.Read(text, sys)
	bare, errBare := q.Read("1", sys)
	if err != nil || errBare != nil || typed.Size == bare.Size {
		return ""
	}
	return q.Text(sys, si, unit.Usual)
}
