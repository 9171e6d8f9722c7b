package presets

import (
	"cmp"
	"reflect"
	"slices"
	"strings"

	"boothset/calc"
)

// table is the entries of a kind by id, in the order that lists show them: by rank, then
// by id. It is a list and no map so that the linker can lay the shipped one down.
type table[E any] []row[E]

type row[E any] struct {
	id string
	e  E
}

// get is the entry of an id; false where there is none.
func (t table[E]) get(id string) (e E, ok bool) {
	for i := range t {
		if t[i].id == id {
			return t[i].e, true
		}
	}
	return e, false
}

// ids is the ids of the entries in their order.
func (t table[E]) ids() []string {
	ids := make([]string, len(t))
	for i := range t {
		ids[i] = t[i].id
	}
	return ids
}

// byID is the entries in the order of their ids.
func (t table[E]) byID() table[E] {
	return slices.SortedFunc(slices.Values(t), func(a, b row[E]) int { return strings.Compare(a.id, b.id) })
}

// tables is what a catalogue holds. The shipped ones are shared by every catalogue that
// is opened: nothing changes them, and what depends on the language is worked out when
// it is asked for.
type tables struct {
	Coat      table[*coatEntry]
	Gun       table[*gunEntry]
	Coupling  table[*couplingEntry]
	Hose      table[*hoseEntry]
	Regulator table[*regulatorEntry]
	Filter    table[*filterEntry]
	Bore      table[*boreEntry]
	Usual     table[*usualEntry]
	Tolerance table[*toleranceEntry]
	Line      lineEntry
	// tolerances is what Tolerance comes to, which every request carries.
	tolerances calc.Tolerances
}

// tablesOf is the tables of what files hold, all but the tolerances.
func tablesOf(e *entries) *tables {
	for _, x := range e.Coat {
		x.bands, x.Working = tableOf(x.Working, func(band) int { return 0 }), nil
	}
	return &tables{
		Coat: ranked(e.Coat), Gun: ranked(e.Gun), Coupling: ranked(e.Coupling), Hose: ranked(e.Hose),
		Regulator: ranked(e.Regulator), Filter: ranked(e.Filter), Bore: ranked(e.Bore), Usual: ranked(e.Usual),
		Tolerance: ranked(e.Tolerance), Line: e.Line,
	}
}

func ranked[E based](m map[string]E) table[E] {
	return tableOf(m, func(e E) int { return e.base().Rank })
}

func tableOf[E any](m map[string]E, rank func(E) int) table[E] {
	t := make(table[E], 0, len(m))
	for id, e := range m {
		t = append(t, row[E]{id, e})
	}
	slices.SortFunc(t, func(a, b row[E]) int { return cmp.Or(cmp.Compare(rank(a.e), rank(b.e)), strings.Compare(a.id, b.id)) })
	return t
}

// entries is a copy of the tables as files hold them, for a shop's file to be laid over.
func (t *tables) entries() *entries {
	e := &entries{
		Coat: mapOf(t.Coat), Gun: mapOf(t.Gun), Coupling: mapOf(t.Coupling), Hose: mapOf(t.Hose),
		Regulator: mapOf(t.Regulator), Filter: mapOf(t.Filter), Bore: mapOf(t.Bore), Usual: mapOf(t.Usual),
		Tolerance: mapOf(t.Tolerance), Line: copyOf(t.Line),
	}
	for _, x := range e.Coat {
		x.Working, x.bands = mapOf(x.bands), nil
	}
	return e
}

func mapOf[E any](t table[E]) map[string]E {
	m := make(map[string]E, len(t))
	for i := range t {
		m[t[i].id] = copyOf(t[i].e)
	}
	return m
}

// copyOf is a copy that shares nothing with v which a file can change.
func copyOf[E any](v E) E {
	unshare(reflect.ValueOf(&v).Elem())
	return v
}

// unshare puts copies in place of what a value points to and of its slices.
func unshare(v reflect.Value) {
	switch {
	case v.Kind() == reflect.Pointer && !v.IsNil():
		own := reflect.New(v.Type().Elem())
		own.Elem().Set(v.Elem())
		unshare(own.Elem())
		v.Set(own)
	case v.Kind() == reflect.Slice && !v.IsNil():
		own := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(own, v)
		for i := range own.Len() {
			unshare(own.Index(i))
		}
		v.Set(own)
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			if f := v.Field(i); f.CanSet() {
				unshare(f)
			}
		}
	}
}
