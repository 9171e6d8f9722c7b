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

// LineFault is a fault of the shop's usual answer to a field, as a *FileError.
func (c *Catalogue) LineFault(field, why string) error {
	at := keyPlace(c.shop.data, "line", field)
	return &FileError{c.shop.name, at.row, at.column, why}
}

// HasShop reports whether a shop's file lies over what is shipped.
func (c *Catalogue) HasShop() bool { return len(c.shop.data) > 0 }

// LineKeys is the fields that the shop's usual line answers, its units among them.
func (c *Catalogue) LineKeys() []string { return sortedKeys(c.line) }

// OwnLineKeys is the fields of the line that the shop's own file answers.
func (c *Catalogue) OwnLineKeys() []string { return sortedKeys(c.own) }

// Usual is the shop's usual answers to a field as its file gives them: one, or where list
// is set a list of them. None where it has none, or an empty text; false where it is not
// text, or no list of texts.
func (c *Catalogue) Usual(field string, list bool) (all []string, ok bool) {
	v, given := c.line[field]
	if one, isText := v.(string); !list {
		if one != "" {
			all = []string{one}
		}
		return all, isText || !given
	}
	texts, isList := v.([]any)
	for _, x := range texts {
		s, isText := x.(string)
		if !isText {
			return nil, false
		}
		all = append(all, s)
	}
	return all, isList || !given
}
