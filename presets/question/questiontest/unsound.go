package questiontest

import (
	"fmt"
	"math"
	"reflect"
)

// Unsound is the path of the first number in v that is not finite, empty where there is
// none; name is what v is called.
func Unsound(v any, name string) string { return unsound(reflect.ValueOf(v), name) }

func unsound(v reflect.Value, path string) string {
	switch v.Kind() {
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			return fmt.Sprintf("%s is %v", path, f)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if bad := unsound(v.Field(i), path+"."+v.Type().Field(i).Name); bad != "" {
				return bad
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if bad := unsound(v.Index(i), fmt.Sprintf("%s[%d]", path, i)); bad != "" {
				return bad
			}
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			return unsound(v.Elem(), path)
		}
	}
	return ""
}
