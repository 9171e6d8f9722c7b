package presets

import (
	"bytes"
	"embed"
	"errors"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"

	"github.com/pelletier/go-toml/v2"
)

//go:embed coats.toml guns.toml line.toml
var shipped embed.FS

// Catalogue is every coat, gun and part that can be named, and the shop's usual line.
type Catalogue struct {
	entries entries
	guns    map[string]gun.Gun
}

type entries struct {
	Coat      map[string]*coatEntry      `toml:"coat"`
	Gun       map[string]*gunEntry       `toml:"gun"`
	Coupling  map[string]*couplingEntry  `toml:"coupling"`
	Hose      map[string]*hoseEntry      `toml:"hose"`
	Regulator map[string]*regulatorEntry `toml:"regulator"`
	Filter    map[string]*filterEntry    `toml:"filter"`
	Line      lineEntry                  `toml:"line"`
}

// FileError is a fault in a catalogue file.
type FileError struct {
	File string
	Line int // 0 where the whole file is meant
	Why  string
}

func (e *FileError) Error() string {
	if e.Line == 0 {
		return fmt.Sprintf("%s: %s", e.File, e.Why)
	}
	return fmt.Sprintf("%s:%d: %s", e.File, e.Line, e.Why)
}

// ShopFile is where a shop's own catalogue is looked for: boothset/shop.toml in
// $XDG_CONFIG_HOME, or in .config in the home folder. It is empty where neither is known.
func ShopFile(getenv func(string) string) string {
	dir := getenv("XDG_CONFIG_HOME")
	if !filepath.IsAbs(dir) { // unset, or relative, which the XDG rules say to ignore
		home := getenv("HOME")
		if home == "" {
			return ""
		}
		dir = filepath.Join(home, ".config")
	}
	return filepath.Join(dir, "boothset", "shop.toml")
}

// Open is the shipped catalogue with the shop's file over it, where there is one.
func Open(getenv func(string) string) (*Catalogue, error) {
	file := ShopFile(getenv)
	if file == "" {
		return Load(nil, "")
	}
	data, err := os.ReadFile(file)
	if errors.Is(err, os.ErrNotExist) {
		return Load(nil, "")
	}
	if err != nil {
		return nil, &FileError{File: file, Why: err.Error()}
	}
	return Load(data, file)
}

// Load is the shipped catalogue with a shop's own TOML over it: an entry of the same
// name changes the values it gives and keeps the rest, a new name is added. Faults of
// the shop's file come as *FileError with file as its name.
func Load(shop []byte, file string) (*Catalogue, error) {
	c := &Catalogue{guns: map[string]gun.Gun{}}
	for _, name := range []string{"coats.toml", "guns.toml", "line.toml"} {
		data, err := shipped.ReadFile(name)
		if err != nil {
			return nil, err
		}
		if err := c.read(data, name); err != nil {
			return nil, err
		}
	}
	if len(shop) > 0 {
		if err := c.read(shop, file); err != nil {
			return nil, err
		}
	}
	return c, c.check(shop, file)
}

// read decodes a file over what is there already.
func (c *Catalogue) read(data []byte, file string) error {
	d := toml.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	err := d.Decode(&c.entries)
	var unknown *toml.StrictMissingError
	var fault *toml.DecodeError
	switch {
	case err == nil:
		return nil
	case errors.As(err, &unknown):
		row, _ := unknown.Errors[0].Position()
		key := unknown.Errors[0].Key()
		return &FileError{file, row, fmt.Sprintf("unknown key %q; %s", strings.Join(key, "."), known(key))}
	case errors.As(err, &fault):
		row, _ := fault.Position()
		return &FileError{file, row, strings.TrimPrefix(fault.Error(), "toml: ")}
	}
	return &FileError{File: file, Why: err.Error()}
}

// check builds what the entries describe, so that a fault shows when the file is
// read and not at the bench.
func (c *Catalogue) check(shop []byte, file string) error {
	fault := func(table, id, why string) error {
		return &FileError{file, headerLine(shop, table, id), fmt.Sprintf("%s %q: %s", table, id, why)}
	}
	for id, e := range c.entries.Gun {
		if e.Class == "" {
			e.Class = id
		}
		g, err := e.gun()
		if err != nil {
			return fault("gun", id, err.Error())
		}
		if !(e.Nearest > 0 && e.Farthest > e.Nearest) {
			return fault("gun", id, "nearest must be above 0 and farthest beyond it, such as nearest = \"5in\", farthest = \"7in\"")
		}
		c.guns[id] = g
		c.fallName(&e.origin, id)
	}
	for id, e := range c.entries.Coat {
		c.fallName(&e.origin, id)
		if !e.Waterborne {
			if e.DriesLike == "" {
				e.DriesLike = coat.ReferenceSolvent
			}
			var err error
			if e.solvent, err = coat.FindSolvent(e.DriesLike); err != nil {
				return fault("coat", id, "dries-like: "+err.Error())
			}
		}
		for class, b := range e.Working {
			if !(b.Low > 0 && b.Low <= b.Start && b.Start <= b.High) {
				return fault("coat", id, fmt.Sprintf("working.%s: low, start and high must be above 0 and in that order", class))
			}
		}
	}
	for id, e := range c.entries.Coupling {
		c.fallName(&e.origin, id)
		if e.Conductance == 0 && e.Bore > 0 {
			e.Conductance = line.OfBore(unit.Length(e.Bore), line.FullBore).DM3PerSBar()
		}
		if why := restrictionFault(e.Conductance, e.Ratio); why != "" {
			return fault("coupling", id, why)
		}
	}
	for id, e := range c.entries.Regulator {
		c.fallName(&e.origin, id)
		if why := restrictionFault(e.Conductance, e.Ratio); why != "" {
			return fault("regulator", id, why)
		}
		if !(e.Droop >= 0 && e.RatedFlow > 0) {
			return fault("regulator", id, "give droop and the rated-flow it is measured at, such as droop = \"5psi\", rated-flow = \"100cfm\"")
		}
	}
	for id, e := range c.entries.Filter {
		c.fallName(&e.origin, id)
		if why := restrictionFault(e.Conductance, e.Ratio); why != "" {
			return fault("filter", id, why)
		}
	}
	for id, e := range c.entries.Hose {
		c.fallName(&e.origin, id)
		if !(e.Bore > 0 && e.End > 0 && e.End <= e.Bore) {
			return fault("hose", id, "give bore and end, end no wider than bore, such as bore = \"3/8in\", end = \"8.5mm\"")
		}
	}
	if err := c.checkLine(); err != nil {
		var f *FieldError
		if errors.As(err, &f) {
			return &FileError{file, headerLine(shop, "line", ""), "line: " + f.Error()}
		}
		return err
	}
	return nil
}

func (c *Catalogue) fallName(o *origin, id string) {
	if o.Name == "" {
		o.Name = id
	}
	if o.Basis == "" {
		o.Basis, o.Source = string(calc.OwnReadings), "this shop's own file"
	}
}

func restrictionFault(c, b float64) string {
	switch {
	case !(c > 0):
		return "give conductance above 0, in dm3/(s bar), such as conductance = 4.0"
	case !(b >= 0 && b < 0.9):
		return "ratio must lie in 0 to 0.9, such as ratio = 0.3"
	}
	return ""
}

func (e *gunEntry) gun() (gun.Gun, error) {
	v := gun.Valve{
		Full:  line.Restriction{C: unit.DM3PerSBar(e.Valve.Conductance), B: e.Valve.Ratio},
		Turns: e.Valve.Turns,
	}
	for _, k := range e.Valve.Shape {
		v.Shape = append(v.Shape, gun.Knee{Opening: k[0], Share: k[1]})
	}
	s := gun.Stamp{Inlet: unit.Gauge(e.Inlet), Flow: unit.Flow(e.Flow), Cap: unit.Gauge(e.Cap)}
	return gun.New(s, unit.Gauge(e.CapLimit), v)
}

// headerLine is the line of a table's header in a file, 0 where it has none.
func headerLine(data []byte, table, id string) int {
	for i, l := range strings.Split(string(data), "\n") {
		l = strings.ReplaceAll(strings.TrimSpace(l), `"`, "")
		name := table
		if id != "" {
			name += "." + id
		}
		if strings.HasPrefix(l, "["+name+"]") || strings.HasPrefix(l, "["+name+".") {
			return i + 1
		}
	}
	return 0
}

// Item is an entry as a list shows it.
type Item struct {
	ID, Name, Note string
	Standing       calc.Standing
}

type ranked interface{ rank() int }

// ordered is the ids of entries by rank, then by name.
func ordered[E ranked](m map[string]E) []string {
	return slices.SortedFunc(maps.Keys(m), func(a, b string) int {
		if d := m[a].rank() - m[b].rank(); d != 0 {
			return d
		}
		return strings.Compare(a, b)
	})
}
