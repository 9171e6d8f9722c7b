package presets

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"strings"
	"syscall"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/pelletier/go-toml/v2"
)

// Catalogue is every coat, gun and part that can be named, and the shop's usual line. It
// speaks one language: that of its names and of what it says will not do.
type Catalogue struct {
	words   *words.Words
	locale  words.Locale
	entries *tables
}

// entries is the tables as files hold them.
type entries struct {
	Coat      map[string]*coatEntry      `toml:"coat"`
	Gun       map[string]*gunEntry       `toml:"gun"`
	Coupling  map[string]*couplingEntry  `toml:"coupling"`
	Hose      map[string]*hoseEntry      `toml:"hose"`
	Regulator map[string]*regulatorEntry `toml:"regulator"`
	Filter    map[string]*filterEntry    `toml:"filter"`
	Bore      map[string]*boreEntry      `toml:"bore"`
	Usual     map[string]*usualEntry     `toml:"usual"` // by field
	Tolerance map[string]*toleranceEntry `toml:"tolerance"`
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
	if !absolute(dir) { // unset, or relative, which the XDG rules say to ignore
		home := getenv("HOME")
		if home == "" {
			return ""
		}
		dir = path.Join(home, ".config")
	}
	return path.Join(dir, "boothset", "shop.toml")
}

// absolute is filepath.IsAbs for the paths that people have. That package is not imported
// because its init comes late, and a sub-command would wait for it (cmd/boothset/command/first).
func absolute(dir string) bool {
	const drives = os.PathSeparator == '\\'
	return path.IsAbs(dir) || drives && len(dir) > 2 && dir[1] == ':' && os.IsPathSeparator(dir[2])
}

// Open is the shipped catalogue with the shop's file over it, where there is one. It
// speaks w; its units, where the shop's file gives none, are the locale's.
func Open(getenv func(string) string, w *words.Words) (*Catalogue, error) {
	locale := words.LocaleOf(getenv)
	file := ShopFile(getenv)
	if file == "" {
		return LoadIn(w, locale, nil, "")
	}
	data, err := os.ReadFile(file)
	var broken *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, syscall.ENOTDIR): // the last where home is no folder
		return LoadIn(w, locale, nil, "")
	case errors.As(err, &broken):
		return nil, &FileError{File: file, Why: sentence("file-unreadable", text("why", broken.Err.Error())).in(w, unit.US)}
	case err != nil:
		return nil, &FileError{File: file, Why: err.Error()}
	}
	return LoadIn(w, locale, data, file)
}

// Load is LoadIn in English, in no locale.
func Load(shop []byte, file string) (*Catalogue, error) {
	return LoadIn(words.English(), words.Locale{}, shop, file)
}

// LoadIn is the shipped catalogue with a shop's own TOML over it: an entry of the same
// name changes the values it gives and keeps the rest, a new name is added. Faults of
// the shop's file come as *FileError with file as its name.
func LoadIn(w *words.Words, locale words.Locale, shop []byte, file string) (*Catalogue, error) {
	shop = bytes.TrimPrefix(shop, []byte("\ufeff")) // some editors put a byte order mark first
	c := &Catalogue{words: w, locale: locale, entries: &shipped}
	if len(shop) > 0 { // what is shipped is known to do
		if err := c.layOver(shop, file); err != nil {
			return nil, err
		}
	}
	return c, nil
}

// layOver lays a shop's file over the shipped catalogue.
func (c *Catalogue) layOver(shop []byte, file string) error {
	own, raw, err := decode(c.words, shop, file)
	if err != nil {
		return err
	}
	all := shipped.entries()
	if err := all.lay(raw); err != nil {
		return err
	}
	all.claim(&own, c.words)
	f := c.hold(all)
	if f == nil {
		if why := c.checkLine(); why != nil {
			f = &fault{"line", "", why}
		}
	}
	if f != nil {
		return &FileError{file, headerLine(shop, f.table, f.id), f.in(c.words, c.System())}
	}
	return nil
}

// hold makes the catalogue that of entries, and gives the first fault in them.
func (c *Catalogue) hold(e *entries) *fault {
	c.entries = tablesOf(e)
	if f := c.check(); f != nil {
		return f
	}
	c.entries.tolerate()
	return nil
}

// lay lays a file's tables over the entries, key by key.
func (e *entries) lay(raw map[string]any) error {
	unfolded, err := toml.Marshal(raw) // an inline table would replace what is under it
	if err != nil {
		return err
	}
	return toml.Unmarshal(unfolded, e)
}

// decode reads a file, strictly: as entries, and as it stands.
func decode(w *words.Words, data []byte, file string) (e entries, raw map[string]any, err error) {
	d := toml.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	strict := d.Decode(&e)
	loose := toml.Unmarshal(data, &raw)
	var unknown *toml.StrictMissingError
	var fault *toml.DecodeError
	switch {
	case strict == nil:
		return e, raw, loose
	case errors.As(strict, &unknown):
		row, _ := unknown.Errors[0].Position()
		return e, raw, &FileError{file, row, unknownKey(raw, unknown.Errors[0].Key(), w).in(w, unit.US)}
	case errors.As(strict, &fault):
		row, _ := fault.Position()
		why := strings.TrimPrefix(fault.Error(), "toml: ")
		if wrong := misread(raw, fault.Key(), w); wrong != "" {
			why = wrong
		} else if strings.HasPrefix(why, "cannot decode") {
			why = wrongType(fault.Key()).in(w, unit.US)
		}
		return e, raw, &FileError{file, row, why}
	}
	return e, raw, &FileError{File: file, Why: strict.Error()}
}

// headerLine is the line of a table's header in a file, 0 where it has none.
func headerLine(data []byte, table, id string) int {
	name := table
	if id != "" {
		name += "." + id
	}
	plain := strings.NewReplacer(`"`, "", "'", "", " ", "", "\t", "")
	for i, l := range strings.Split(string(data), "\n") {
		l = plain.Replace(l)
		if strings.HasPrefix(l, "["+name+"]") || strings.HasPrefix(l, "["+name+".") {
			return i + 1
		}
	}
	return 0
}

// Item is an entry as a list shows it.
type Item struct {
	ID, Name string
	Standing calc.Ground
}
