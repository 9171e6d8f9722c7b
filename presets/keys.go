package presets

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
)

// unknownKey says which key of a file is none of the catalogue's, and what may stand
// there. last ends in it; inside an inline table it may leave out what lies between.
func unknownKey(raw map[string]any, last []string) string {
	key := stray(raw, reflect.TypeFor[entries](), nil, last[len(last)-1])
	if key == nil {
		key = last
	}
	table := reflect.TypeFor[entries]()
	for _, k := range key[:len(key)-1] {
		table = at(table, k)
	}
	here := "keys here are "
	if len(key) == 1 {
		here = "tables are "
	}
	return fmt.Sprintf("unknown key %q; %s", strings.Join(key, "."), here+listed(tomlKeys(table)))
}

// stray is the path of the first key called name that its table has no place for.
func stray(table map[string]any, t reflect.Type, path []string, name string) []string {
	for _, k := range sortedKeys(table) {
		here := append(slices.Clone(path), k)
		in := at(t, k)
		if in == nil {
			if k == name {
				return here
			}
			continue
		}
		if sub, ok := table[k].(map[string]any); ok {
			if found := stray(sub, in, here, name); found != nil {
				return found
			}
		}
	}
	return nil
}

// at is the type of what stands at a key of a table, nil where nothing may.
func at(t reflect.Type, key string) reflect.Type {
	switch {
	case t == nil:
		return nil
	case t.Kind() == reflect.Pointer:
		return at(t.Elem(), key)
	case t.Kind() == reflect.Map:
		return t.Elem()
	case t.Kind() != reflect.Struct:
		return nil
	}
	for i := range t.NumField() {
		f := t.Field(i)
		if f.Anonymous {
			if in := at(f.Type, key); in != nil {
				return in
			}
		} else if key != "" && f.Tag.Get("toml") == key {
			return f.Type
		}
	}
	return nil
}

// tomlKeys is the keys that a table of a type may hold.
func tomlKeys(t reflect.Type) (keys []string) {
	if t == nil {
		return nil
	}
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	for i := range t.NumField() {
		f := t.Field(i)
		if f.Anonymous {
			keys = append(keys, tomlKeys(f.Type)...)
		} else if key := f.Tag.Get("toml"); key != "" {
			keys = append(keys, key)
		}
	}
	return keys
}

// wrongType says what a key holds where it holds something else.
func wrongType(key []string) string {
	t := reflect.TypeFor[entries]()
	for _, k := range key {
		t = at(t, k)
	}
	want := "a table"
	switch {
	case t == nil:
	case t == reflect.TypeFor[pressure]():
		want = `a pressure in quotes, such as "90psi"`
	case t == reflect.TypeFor[length]():
		want = `a length in quotes, such as "3/8in"`
	case t == reflect.TypeFor[flow]():
		want = `an air flow in quotes, such as "10cfm"`
	case t == reflect.TypeFor[percent]():
		want = `a percentage in quotes, such as "45%"`
	case t == reflect.TypeFor[temperature]():
		want = `a temperature in quotes, such as "20C"`
	case t == reflect.TypeFor[span]():
		want = `a time in quotes, such as "18s"`
	case t == reflect.TypeFor[volume]():
		want = `a volume in quotes, such as "600mL"`
	case t == reflect.TypeFor[[]string]():
		want = `a list of texts, such as ["25ft,3/8in"]`
	case t == reflect.TypeFor[[]length]():
		want = `a list of lengths in quotes, such as ["3/4in", "1in"]`
	case t == reflect.TypeFor[[][]float64]():
		want = "a list of pairs of numbers, such as [[0.0, 0.0], [1.0, 1.0]]"
	case t.Kind() == reflect.String:
		want = "text in quotes"
	case t.Kind() == reflect.Bool:
		want = "true or false"
	case t.Kind() == reflect.Int:
		want = "a whole number"
	case t.Kind() == reflect.Float64:
		want = "a number"
	}
	return fmt.Sprintf("key %q takes %s", strings.Join(key, "."), want)
}
