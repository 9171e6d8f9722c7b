package catalogue

import "strings"

// place is a place in a file, from 1; 0 where it is not known.
type place struct{ row, column int }

// unspaced takes the quotes and blanks out of a row, so that a key is as it is read.
var unspaced = strings.NewReplacer(`"`, "", "'", "", " ", "", "\t", "")

// headerPlace is the place of a table's header in a file, which may be that of a table inside.
func headerPlace(data []byte, table, id string) place {
	name := table + "." + id
	row := 0
	for l := range strings.SplitSeq(string(data), "\n") {
		row++
		if p := unspaced.Replace(l); strings.HasPrefix(p, "["+name+"]") || strings.HasPrefix(p, "["+name+".") {
			return place{row, indent(l) + 1}
		}
	}
	return place{}
}

// keyPlace is the place of a key of a table in a file, else that of the table's header.
func keyPlace(data []byte, table, name string) place {
	at, inside, row := place{}, "", 0
	for l := range strings.SplitSeq(string(data), "\n") {
		row++
		here := place{row, indent(l) + 1}
		key, _, given := strings.Cut(unspaced.Replace(l), "=")
		if strings.HasPrefix(key, "[") && !given {
			inside, _, _ = strings.Cut(key[1:], "]")
			if inside == table {
				at = here
			}
			inside += "."
		}
		switch {
		case given && inside+key == table+"."+name:
			return here
		case given && inside+key == table:
			at = here
		}
	}
	return at
}

// indent is how many blanks a row begins with.
func indent(row string) int { return len(row) - len(strings.TrimLeft(row, " \t")) }
