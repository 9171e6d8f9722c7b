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
	Line, Column int // from 1; 0 where the whole file, or the whole line, is meant
	Why          string
}

func (e *FileError) Error() string {
	switch {
	case e.Line == 0:
		return fmt.Sprintf("%s: %s", e.File, e.Why)
	case e.Column == 0:
		return fmt.Sprintf("%s:%d: %s", e.File, e.Line, e.Why)
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

// LineFault is a fault of the shop's usual answer to a field, as a *FileError.
func (c *Catalogue) LineFault(field, why string) error {
	const table = "line"
	row := headerLine(c.shop.data, table, "")
	for i, l := range strings.Split(string(c.shop.data), "\n") {
		key, _, _ := strings.Cut(l, "=")
		if i >= row && row > 0 && strings.Trim(key, " \t\"'") == field {
			row = i + 1
			break
		}
	}
	return &FileError{File: c.shop.name, Line: row, Why: why}
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
