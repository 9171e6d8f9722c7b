package question

import "strings"

// nearest is the entry or option one of whose names the fewest changes make of a text, empty
// where none is near: more than a third of its letters would change.
func (r *Reader) nearest(f *Field, t string) string {
	t = strings.ToLower(strings.TrimSpace(t))
	best, least := "", len(t)/3+1
	try := func(id, name string) {
		if d := changes(t, strings.ToLower(name), least); d < least {
			best, least = id, d
		}
	}
	r.IDs(f.Entries, func(id string, aliases, _ []string) bool {
		try(id, id)
		for _, alias := range aliases {
			try(id, alias)
		}
		return true
	})
	for _, id := range f.Options {
		try(id, id)
	}
	return best
}

// Nearest is the name that the fewest changes make of a text, empty where none is near.
func Nearest(t string, names []string) string {
	best, least := "", len(t)/3+1
	for _, name := range names {
		if d := changes(t, name, least); d < least {
			best, least = name, d
		}
	}
	return best
}

// changes is how many letters must be put in, taken out, changed, or swapped with the next to
// make one text of another, no letter twice (the optimal string alignment distance). Where
// they are more than most, it need not be exact.
func changes(a, b string, most int) int {
	if d := max(len(a)-len(b), len(b)-len(a)); d > most {
		return d // at least
	}
	d := make([][]int, len(a)+1) // of the first i letters of a and j of b
	for i := range d {
		d[i] = make([]int, len(b)+1)
		d[i][0] = i
	}
	for j := range d[0] {
		d[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			if a[i-1] == b[j-1] {
				d[i][j] = d[i-1][j-1]
				continue
			}
			d[i][j] = 1 + min(d[i-1][j], d[i][j-1], d[i-1][j-1])
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d[i][j] = min(d[i][j], 1+d[i-2][j-2])
			}
		}
	}
	return d[len(a)][len(b)]
}
