package last

import (
	"reflect"
	"slices"
	"strings"
	"unicode"
)

// The bounds of what a draft may hold.
const (
	mostRunes  = 200 // of a text
	mostValues = 64  // of a list, of pages and of a page's fields
)

// tidy is a draft's own copy, cut to its bounds, without what cannot be printed in its
// texts.
func tidy(d Draft) Draft { return tidied(reflect.ValueOf(d)).Interface().(Draft) }

func tidied(v reflect.Value) reflect.Value {
	out := reflect.New(v.Type()).Elem()
	switch v.Kind() {
	case reflect.String:
		out.SetString(clean(v.String()))
	case reflect.Slice:
		for i := range min(v.Len(), mostValues) {
			out = reflect.Append(out, tidied(v.Index(i)))
		}
	case reflect.Map:
		if v.Len() == 0 {
			break
		}
		out.Set(reflect.MakeMap(v.Type()))
		keys := v.MapKeys()
		slices.SortFunc(keys, func(a, b reflect.Value) int { return strings.Compare(a.String(), b.String()) })
		for _, k := range keys[:min(len(keys), mostValues)] {
			out.SetMapIndex(tidied(k), tidied(v.MapIndex(k)))
		}
	case reflect.Struct:
		out.Set(v)
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				out.Field(i).Set(tidied(v.Field(i)))
			}
		}
	default:
		return v
	}
	return out
}

// clean is a text of at most mostRunes, all of which can be printed.
func clean(text string) string {
	n := 0
	return strings.Map(func(r rune) rune {
		if n == mostRunes || r == unicode.ReplacementChar || !unicode.IsPrint(r) {
			return -1
		}
		n++
		return r
	}, text)
}
