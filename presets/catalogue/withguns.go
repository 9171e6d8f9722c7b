package catalogue

import (
	"bytes"
	"errors"
	"reflect"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

// GunKeys is the keys that a gun's table may hold.
func GunKeys() []string { return tomlKeys(reflect.TypeFor[Gun]()) }

// WithGuns is the catalogue with guns of a shop's own beside those it has, by id; an id that it
// has already is not one of them. Each holds the keys of a gun's table. What is wrong comes as
// *GunError.
func (c *Catalogue) WithGuns(guns map[string]map[string]any) (*Catalogue, error) {
	own, err := toml.Marshal(map[string]any{KindGun: guns})
	if err != nil {
		return nil, &GunError{Why: err.Error()}
	}
	ends := append(bytes.Clone(c.shop.data), '\n')
	with, err := LoadIn(c.words, c.locale, append(ends, own...), c.shop.name)
	var f *FileError
	if errors.As(err, &f) {
		return nil, &GunError{Key: keyAt(string(own), f.Line-bytes.Count(ends, []byte("\n"))), Why: f.Why}
	}
	return with, err
}

// GunError is a fault of a gun that is none of the catalogue's files.
type GunError struct {
	Key string // of its table, empty where all of it is meant
	Why string
}

func (e *GunError) Error() string { return e.Why }

// keyAt is the key of a line of a text, from 1; empty where it has none.
func keyAt(text string, line int) string {
	for l := range strings.Lines(text) {
		if line--; line == 0 {
			key, _, given := strings.Cut(l, "=")
			if !given {
				return ""
			}
			return strings.TrimSpace(key)
		}
	}
	return ""
}
