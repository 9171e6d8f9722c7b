package catalogue

import (
	"fmt"
	"path/filepath"
	"reflect"

	"boothset/calc/unit"
	"boothset/presets/tables"
	"boothset/presets/words"
)

// FileError is a fault in a catalogue file.
type FileError struct {
	File         string
	Line, Column int // from 1; 0 where the whole file is meant
	Why          string
}

func (e *FileError) Error() string {
	if e.Line == 0 {
		return fmt.Sprintf("%s: %s", words.Path(e.File), e.Why)
	}
	return fmt.Sprintf("%s:%d:%d: %s", words.Path(e.File), e.Line, e.Column, e.Why)
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

// decode lays a file's tables over entries.
func (e *entries) decode(file *tomlFile, w *words.Words) error {
	if f := layTable(reflect.ValueOf(e).Elem(), file.root, nil, w); f != nil {
		return &FileError{file.name, f.at.Line, f.at.Column, f.why}
	}
	return nil
}

// readTables reads a file as tables.
func readTables(file string, data []byte, w *words.Words) (tomlFile, error) {
	root, f := tables.Read(data)
	if f != nil {
		return tomlFile{}, &FileError{file, f.At.Line, f.At.Column, newSentence(f.ID, f.Figures...).in(w, unit.US)}
	}
	return tomlFile{file, data, root}, nil
}

// LineFault is a fault of the shop's usual answer to a field, as a *FileError.
func (c *Catalogue) LineFault(field, why string) error {
	at := c.shop.place("line", field)
	return &FileError{c.shop.name, at.Line, at.Column, why}
}

// place is where an entry of a table begins, else where the table does.
func (f *tomlFile) place(table, id string) tables.Place {
	in := f.root.Table(table)
	switch entry := in.Get(id); {
	case entry == nil && in == nil:
		return tables.Place{}
	case entry == nil:
		return in.At
	case in.Table(id) != nil:
		return in.Table(id).At
	default:
		return entry.Key
	}
}

// HasShop reports whether a shop's file lies over what is shipped.
func (c *Catalogue) HasShop() bool { return c.shop.root != nil }

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
