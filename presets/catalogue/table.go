package catalogue

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"boothset/presets/words"
)

// Table is the entries of a kind, in the order that lists show them: by rank, then by id.
type Table[E any] []Entry[E]

// Entry is an entry with its id.
type Entry[E any] struct {
	ID string
	Of E
}

// Get is the entry of an id; false where there is none.
func (t Table[E]) Get(id string) (e E, ok bool) {
	for i := range t {
		if t[i].ID == id {
			return t[i].Of, true
		}
	}
	return e, false
}

// IDs is the ids of the entries in their order.
func (t Table[E]) IDs() []string {
	ids := make([]string, len(t))
	for i := range t {
		ids[i] = t[i].ID
	}
	return ids
}

// byID is the entries in the order of their ids.
func (t Table[E]) byID() Table[E] {
	return slices.SortedFunc(slices.Values(t), func(a, b Entry[E]) int { return strings.Compare(a.ID, b.ID) })
}

// tableOf is the table of a kind's entries, each called as the words call it.
func tableOf[E based](kind string, m map[string]E, w *words.Words) Table[E] {
	t := make(Table[E], 0, len(m))
	for id, e := range m {
		e.base().call(kind, id, w)
		t = append(t, Entry[E]{id, e})
	}
	slices.SortFunc(t, func(a, b Entry[E]) int {
		return cmp.Or(cmp.Compare(a.Of.base().Rank, b.Of.base().Rank), strings.Compare(a.ID, b.ID))
	})
	return t
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
