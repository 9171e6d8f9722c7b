package question

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
)

// resolver turns answers into a request and gathers those that will not do.
type resolver struct {
	*Reader
	a      Answers
	sys    unit.System
	faults []*Fault
	// lineOfShop: a list of the line's parts is the shop's, not answered.
	lineOfShop bool
}

// value is the value of a field that must have one; false where it has none that was read.
func (v *resolver) value(f *Field) (Value, bool) {
	x, ok := v.a.One(f)
	if !ok {
		x.Fault = v.missing(f, v.sys)
	}
	if x.Fault != nil {
		v.faults = append(v.faults, x.Fault)
	}
	return x, x.Fault == nil
}

// has reports whether a field was answered.
func (v *resolver) has(f *Field) bool { return v.a.Has(f) }

// si is the quantity of a field that must have one.
func si[T ~float64](v *resolver, f *Field) T {
	x, _ := v.value(f)
	return T(x.SI[0])
}

// bounded is si, held to its bound here: the request has no place for it.
func bounded[T ~float64](v *resolver, f *Field) T {
	x := si[T](v, f)
	if b := f.Bounds[0]; v.has(f) && !b.Holds(float64(x)) {
		v.fault(f, b.ID, b.Figures(float64(x))...)
	}
	return x
}

// or is the quantity of a field, or another one where it was not answered.
func or[T ~float64](v *resolver, f *Field, other T) T {
	if !v.has(f) {
		return other
	}
	return si[T](v, f)
}

// fault adds a fault of a field.
func (v *resolver) fault(f *Field, id string, figures ...calc.Figure) {
	v.faults = append(v.faults, v.Fault(f.Name, v.a.Text(f), v.sys, id, figures...))
}

// judge adds the problems of a request that is complete.
func (v *resolver) judge(problems []calc.Problem) {
	for i := range problems {
		v.faults = append(v.faults, v.problem(&problems[i], v.a, v.sys))
	}
}

// family is the family of coats that was answered.
func (v *resolver) family() (e *catalogue.Coat, id string, ok bool) {
	x, ok := v.value(Coat)
	if !ok {
		return nil, "", false
	}
	e, ok = v.Coats.Get(x.ID)
	return e, x.ID, ok
}

// onSheet is what a value rests on that was typed from the product's sheet.
var onSheet = calc.Ground{Basis: calc.Sheet}
