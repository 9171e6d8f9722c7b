package shop

import (
	"bytes"
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"boothset/calc"

	"github.com/google/uuid"
)

// Painters is the initials of the painters that records and settings name, by their ids. They
// stand in one file of their own; without it nobody is named, and whoever deletes a line of it
// is forgotten: what is kept elsewhere is an id drawn at random.
type Painters map[string]string

// painterTable is the table of the file that holds them.
const painterTable = "painter"

// Named is the ids of those with initials, sorted: two painters may have the same.
func (p Painters) Named(initials string) (ids []string) {
	for id, of := range p {
		if strings.EqualFold(of, strings.TrimSpace(initials)) {
			ids = append(ids, id)
		}
	}
	slices.Sort(ids)
	return ids
}

// Called is the initials of an id; the id where they are not known.
func (p Painters) Called(id string) string { return cmp.Or(p[id], id) }

// ByInitials is the ids in the order of the initials.
func (p Painters) ByInitials() []string {
	return slices.SortedFunc(maps.Keys(p), func(a, b string) int { return cmp.Or(strings.Compare(p[a], p[b]), strings.Compare(a, b)) })
}

// Initials is initials as they are kept.
func Initials(typed string) string { return strings.TrimSpace(shownName(typed)) }

// Painters reads the painters; none where the shop keeps none.
func (f *Folder) Painters() (Painters, []*Fault) {
	data, found, fault := f.read(paintersFile)
	switch {
	case fault != nil:
		return nil, []*Fault{fault}
	case !found:
		return nil, nil
	}
	return ReadPainters(paintersFile, data)
}

// ReadPainters reads the painters from their file's contents.
func ReadPainters(file string, data []byte) (Painters, []*Fault) {
	d := parse(file, data, paintersFormat)
	if costs(d.faults) {
		return nil, d.faults
	}
	v, given := d.get(painterTable)
	table, isTable := v.(map[string]any)
	if given && !isTable {
		d.takes(painterTable, "takes-table")
		return nil, d.faults
	}
	all := Painters{}
	for _, id := range slices.Sorted(maps.Keys(table)) {
		initials, isText := table[id].(string)
		if _, err := uuid.Parse(id); err != nil || !isText {
			d.wrong(id, Told, "shop-painter", calc.TextFigure("given", shownName(id)))
			continue
		}
		all[id] = shownName(initials)
	}
	d.strangers()
	return all, d.faults
}

// AddPainter keeps a painter's initials under a new id, and gives that. What a person has
// written in the file stays.
func (f *Folder) AddPainter(initials string) (id string, err error) {
	random, err := uuid.NewRandom()
	if err != nil {
		return "", f.unwritten(paintersFile, err)
	}
	data, found, fault := f.read(paintersFile)
	if found && fault == nil {
		_, faults := ReadPainters(paintersFile, data)
		for _, x := range faults {
			if x.Weight == Broken {
				fault = x
			}
		}
	}
	if fault != nil {
		return "", fault
	}
	if !found {
		data = fmt.Appendf(nil, "%s = %q\n\n[%s]\n", formatKey, paintersFormat, painterTable)
	} else if !bytes.HasSuffix(data, []byte("\n")) {
		data = append(data, '\n')
	}
	data = fmt.Appendf(data, "%s = %s\n", strconv.Quote(random.String()), strconv.Quote(Initials(initials)))
	return random.String(), f.put(paintersFile, data)
}
