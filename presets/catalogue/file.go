package catalogue

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/pelletier/go-toml/v2"
)

// FileError is a fault in a catalogue file.
type FileError struct {
	File         string
	Line, Column int // from 1; 0 where the whole file is meant
	Why          string
}

func (e *FileError) Error() string {
	if e.Line == 0 {
		return fmt.Sprintf("%s: %s", e.File, e.Why)
	}
	return fmt.Sprintf("%s:%d:%d: %s", e.File, e.Line, e.Column, e.Why)
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
		row, column := unknown.Errors[0].Position()
		return e, raw, &FileError{file, row, column, unknownKey(raw, unknown.Errors[0].Key(), w).in(w, unit.US)}
	case errors.As(strict, &fault):
		row, column := fault.Position()
		why := strings.TrimPrefix(fault.Error(), "toml: ")
		if wrong := misread(raw, fault.Key(), w); wrong != "" {
			why = wrong
		} else if strings.HasPrefix(why, "cannot decode") {
			why = wrongType(fault.Key()).in(w, unit.US)
		}
		return e, raw, &FileError{file, row, column, why}
	}
	return e, raw, &FileError{File: file, Why: strict.Error()}
}

// place is a place in a file, from 1; 0 where it is not known.
type place struct{ row, column int }

// headerPlace is the place of a table's header in a file, which may be that of a table inside.
func headerPlace(data []byte, table, id string) place {
	name := table
	if id != "" {
		name += "." + id
	}
	plain := strings.NewReplacer(`"`, "", "'", "", " ", "", "\t", "")
	row := 0
	for l := range strings.SplitSeq(string(data), "\n") {
		row++
		if p := plain.Replace(l); strings.HasPrefix(p, "["+name+"]") || strings.HasPrefix(p, "["+name+".") {
			return place{row, indent(l) + 1}
		}
	}
	return place{}
}

// keyPlace is the place of a key of a table in a file, else that of the table's header.
func keyPlace(data []byte, table, name string) place {
	at := headerPlace(data, table, "")
	if at.row == 0 {
		return at
	}
	rows := strings.Split(string(data), "\n")
	for i, l := range rows[at.row:] {
		k, _, given := strings.Cut(l, "=")
		switch k = strings.TrimSpace(k); {
		case given && strings.Trim(k, `"'`) == name:
			return place{at.row + i + 1, indent(l) + 1}
		case strings.HasPrefix(k, "["):
			return at
		}
	}
	return at
}

// indent is how many blanks a row begins with.
func indent(row string) int { return len(row) - len(strings.TrimLeft(row, " \t")) }

// LineFault is a fault of the shop's usual answer to a field, as a *FileError.
func (c *Catalogue) LineFault(field, why string) error {
	at := keyPlace(c.shop.data, "line", field)
	return &FileError{c.shop.name, at.row, at.column, why}
}

// HasShop reports whether a shop's file lies over what is shipped.
func (c *Catalogue) HasShop() bool { return len(c.shop.data) > 0 }

// LineKeys is the fields that the shop's usual line answers, its units among them.
func (c *Catalogue) LineKeys() []string { return sortedKeys(c.line) }

// Usual is the shop's usual answers to a field as its file gives them, several for one
// that may be given more than once, none where it has none; false where they are no text.
func (c *Catalogue) Usual(field string) ([]string, bool) {
	switch v := c.line[field].(type) {
	case nil:
		return nil, true
	case string:
		return []string{v}, true
	case []any:
		var all []string
		for _, x := range v {
			s, ok := x.(string)
			if !ok {
				return nil, false
			}
			all = append(all, s)
		}
		return all, true
	}
	return nil, false
}
