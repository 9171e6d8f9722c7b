package catalogue

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// unknownKey says which key of a file is none of the catalogue's, and what may stand
// there. last ends in it; inside an inline table it may leave out what lies between.
func unknownKey(raw map[string]any, last []string, w *words.Words) *sentence {
	key := stray(raw, reflect.TypeFor[entries](), nil, last[len(last)-1])
	if key == nil {
		key = last
	}
	table := reflect.TypeFor[entries]()
	for _, k := range key[:len(key)-1] {
		table = at(table, k)
	}
	id := "file-unknown-key"
	if len(key) == 1 {
		id = "file-unknown-table"
	}
	return newSentence(id, calc.TextFigure("key", strings.Join(key, ".")), calc.TextFigure("names", w.Listed(tomlKeys(table))))
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
func wrongType(key []string) *sentence {
	t := reflect.TypeFor[entries]()
	for _, k := range key {
		t = at(t, k)
	}
	want := "takes-table"
	switch {
	case t == nil:
	case t == reflect.TypeFor[pressure]():
		want = "takes-pressure"
	case t == reflect.TypeFor[length]():
		want = "takes-length"
	case t == reflect.TypeFor[flow]():
		want = "takes-flow"
	case t == reflect.TypeFor[percent]():
		want = "takes-percent"
	case t == reflect.TypeFor[temperature]():
		want = "takes-temperature"
	case t == reflect.TypeFor[span]():
		want = "takes-span"
	case t == reflect.TypeFor[volume]():
		want = "takes-volume"
	case t == reflect.TypeFor[[]string]():
		want = "takes-texts"
	case t == reflect.TypeFor[[]length]():
		want = "takes-lengths"
	case t.Kind() == reflect.String:
		want = "takes-text"
	case t.Kind() == reflect.Bool:
		want = "takes-bool"
	case t.Kind() == reflect.Int:
		want = "takes-whole"
	case t.Kind() == reflect.Float64:
		want = "takes-number"
	}
	return newSentence("file-key-takes", calc.TextFigure("key", strings.Join(key, ".")), calc.SentenceFigure("what", want))
}

// misread says why the value at a key is no quantity, empty where that is not what is
// wrong there. In an inline table the key may leave out the last of it.
func misread(raw map[string]any, key []string, w *words.Words) string {
	var v any = raw
	t := reflect.TypeFor[entries]()
	for _, k := range key {
		table, ok := v.(map[string]any)
		if !ok {
			return ""
		}
		v, t = table[k], at(t, k)
	}
	why := unreadable(v, t)
	if why == nil {
		return ""
	}
	quantity := w.Say("quantity-" + why.Quantity)
	return fmt.Sprintf("%s %q: %s", quantity, why.Given, sentenceOf(why).in(w, unit.US))
}

// unreadable is the first error by key of a value, or of a table's values, as quantities
// of a type.
func unreadable(v any, t reflect.Type) *unit.ParseError {
	switch v := v.(type) {
	case map[string]any:
		for _, k := range sortedKeys(v) {
			if why := unreadable(v[k], at(t, k)); why != nil {
				return why
			}
		}
	case []any:
		if t == nil || t.Kind() != reflect.Slice {
			return nil
		}
		for _, one := range v {
			if why := unreadable(one, t.Elem()); why != nil {
				return why
			}
		}
	case string, int64, float64, bool:
		if t == nil {
			return nil
		}
		var why *unit.ParseError
		if q, ok := reflect.New(t).Interface().(interface{ read(string) error }); ok && errors.As(q.read(fmt.Sprint(v)), &why) {
			return why
		}
	}
	return nil
}
