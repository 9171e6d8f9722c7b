package catalogue

import (
	"errors"
	"reflect"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/tables"
	"boothset/presets/words"
)

// misplaced is a value of a file that will not do: where, and why in words.
type misplaced struct {
	at  tables.Place
	why string
}

// layTable lays a file's table over what an entry, or all entries, hold: key by key, and a
// table in it likewise. path is the table's own key.
func layTable(to reflect.Value, t *tables.Table, path []string, w *words.Words) *misplaced {
	for _, name := range t.Names {
		v := t.Get(name)
		here := append(slices.Clone(path), name)
		if to.Kind() == reflect.Map {
			if f := layEntry(to, name, v, here, w); f != nil {
				return f
			}
			continue
		}
		field := fieldOf(to, name)
		if !field.IsValid() {
			return &misplaced{v.Key, unknownKey(to.Type(), here, w)}
		}
		if f := layValue(field, v, here, w); f != nil {
			return f
		}
	}
	return nil
}

// layEntry lays a value over what a map holds at a key.
func layEntry(to reflect.Value, name string, v *tables.Value, path []string, w *words.Words) *misplaced {
	if to.IsNil() {
		to.Set(reflect.MakeMap(to.Type()))
	}
	entry := reflect.New(to.Type().Elem()).Elem()
	if held := to.MapIndex(reflect.ValueOf(name)); held.IsValid() {
		entry.Set(held)
	}
	if f := layValue(entry, v, path, w); f != nil {
		return f
	}
	to.SetMapIndex(reflect.ValueOf(name), entry)
	return nil
}

// layValue lays a value over another.
func layValue(to reflect.Value, v *tables.Value, path []string, w *words.Words) *misplaced {
	if q, ok := to.Addr().Interface().(quantity); ok {
		return layQuantity(q, v, to.Type(), path, w)
	}
	switch to.Kind() {
	case reflect.Pointer:
		if to.IsNil() {
			to.Set(reflect.New(to.Type().Elem()))
		}
		return layValue(to.Elem(), v, path, w)
	case reflect.Struct, reflect.Map:
		if t, ok := v.Of.(*tables.Table); ok {
			return layTable(to, t, path, w)
		}
	case reflect.Interface:
		to.Set(reflect.ValueOf(untyped(v)))
		return nil
	case reflect.Slice:
		if list, ok := v.Of.(tables.List); ok {
			to.Set(reflect.MakeSlice(to.Type(), len(list), len(list)))
			for i, one := range list {
				if f := layValue(to.Index(i), one, path, w); f != nil {
					if _, quantities := to.Index(i).Addr().Interface().(quantity); !quantities {
						f.why = wrongType(to.Type(), path, w)
					}
					return f
				}
			}
			return nil
		}
	default:
		x := reflect.ValueOf(v.Of)
		if whole, ok := v.Of.(int64); ok && to.Kind() == reflect.Float64 {
			x = reflect.ValueOf(float64(whole))
		}
		if x.Kind() == to.Kind() || to.CanInt() && x.CanInt() && !to.OverflowInt(x.Int()) {
			to.Set(x.Convert(to.Type()))
			return nil
		}
	}
	return &misplaced{v.At, wrongType(to.Type(), path, w)}
}

// quantity is what reads itself from text with its unit.
type quantity interface{ read(string) error }

func layQuantity(q quantity, v *tables.Value, t reflect.Type, path []string, w *words.Words) *misplaced {
	switch v.Of.(type) {
	case string, int64, float64, bool:
	default:
		return &misplaced{v.At, wrongType(t, path, w)}
	}
	err := q.read(v.Text)
	var unread *unit.ParseError
	if errors.As(err, &unread) {
		return &misplaced{v.At, w.Say("quantity-"+unread.Quantity) + " " + words.Quoted(unread.Given) + ": " + sentenceOf(unread).in(w, unit.US)}
	}
	return nil
}

// untyped is a value as what it is.
func untyped(v *tables.Value) any {
	switch of := v.Of.(type) {
	case tables.List:
		all := make([]any, len(of))
		for i, one := range of {
			all[i] = untyped(one)
		}
		return all
	case *tables.Table:
		all := map[string]any{}
		for _, name := range of.Names {
			all[name] = untyped(of.Get(name))
		}
		return all
	}
	return v.Of
}

// fieldOf is what stands at a key of a table, not valid where nothing may.
func fieldOf(to reflect.Value, key string) reflect.Value {
	for i := range to.NumField() {
		f := to.Type().Field(i)
		if f.Anonymous {
			if in := fieldOf(to.Field(i), key); in.IsValid() {
				return in
			}
		} else if key != "" && f.Tag.Get("toml") == key {
			return to.Field(i)
		}
	}
	return reflect.Value{}
}

// unknownKey says that a key is none of a table's, and what may stand there.
func unknownKey(table reflect.Type, key []string, w *words.Words) string {
	id := "file-unknown-key"
	if len(key) == 1 {
		id = "file-unknown-table"
	}
	return newSentence(id, calc.GivenFigure("key", strings.Join(key, ".")), calc.TextFigure("names", w.Listed(tomlKeys(table)))).in(w, unit.US)
}

// tomlKeys is the keys that a table of a type may hold.
func tomlKeys(t reflect.Type) (keys []string) {
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

// takes is the sentence of what stands at a key of a type, empty where its kind says it.
func takes(t reflect.Type) string {
	switch t {
	case reflect.TypeFor[pressure]():
		return "takes-pressure"
	case reflect.TypeFor[length]():
		return "takes-length"
	case reflect.TypeFor[speed]():
		return "takes-speed"
	case reflect.TypeFor[flow]():
		return "takes-flow"
	case reflect.TypeFor[percent]():
		return "takes-percent"
	case reflect.TypeFor[temperature]():
		return "takes-temperature"
	case reflect.TypeFor[span]():
		return "takes-span"
	case reflect.TypeFor[minutes]():
		return "takes-span"
	case reflect.TypeFor[volume]():
		return "takes-volume"
	case reflect.TypeFor[density]():
		return "takes-density"
	case reflect.TypeFor[voc]():
		return "takes-voc"
	case reflect.TypeFor[[]string]():
		return "takes-texts"
	case reflect.TypeFor[[]length]():
		return "takes-lengths"
	}
	return ""
}

// wrongType says what a key holds where it holds something else.
func wrongType(t reflect.Type, key []string, w *words.Words) string {
	want := takes(t)
	switch {
	case want != "":
	case t.Kind() == reflect.String:
		want = "takes-text"
	case t.Kind() == reflect.Bool:
		want = "takes-bool"
	case t.Kind() == reflect.Int:
		want = "takes-whole"
	case t.Kind() == reflect.Float64:
		want = "takes-number"
	default:
		want = "takes-table"
	}
	return newSentence("file-key-takes", calc.GivenFigure("key", strings.Join(key, ".")), calc.SentenceFigure("what", want)).in(w, unit.US)
}
