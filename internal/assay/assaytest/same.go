package assaytest

import (
	"fmt"
	"math"
	"reflect"
)

// Differ gives the first place at which two values differ, bit for bit; empty if they do
// not. Unlike reflect.DeepEqual it holds NaN to be NaN.
func Differ(a, b any) string { return differ("", reflect.ValueOf(a), reflect.ValueOf(b)) }

func differ(at string, a, b reflect.Value) string {
	if a.IsValid() != b.IsValid() || a.IsValid() && a.Type() != b.Type() {
		return at + ": of different types"
	}
	switch a.Kind() {
	case reflect.Float64:
		if x, y := a.Float(), b.Float(); math.Float64bits(x) != math.Float64bits(y) && !(math.IsNaN(x) && math.IsNaN(y)) {
			return fmt.Sprintf("%s: %v and %v", at, x, y)
		}
		return ""
	case reflect.Pointer, reflect.Interface:
		if a.IsNil() || b.IsNil() {
			if a.IsNil() != b.IsNil() {
				return at + ": one is nil"
			}
			return ""
		}
		if a.Kind() == reflect.Pointer && a.Pointer() == b.Pointer() {
			return ""
		}
		return differ(at, a.Elem(), b.Elem())
	case reflect.Struct:
		for i := range a.NumField() {
			if d := differ(at+"."+a.Type().Field(i).Name, a.Field(i), b.Field(i)); d != "" {
				return d
			}
		}
		return ""
	case reflect.Slice, reflect.Array:
		if a.Len() != b.Len() {
			return fmt.Sprintf("%s: of length %d and %d", at, a.Len(), b.Len())
		}
		for i := range a.Len() {
			if d := differ(fmt.Sprintf("%s[%d]", at, i), a.Index(i), b.Index(i)); d != "" {
				return d
			}
		}
		return ""
	case reflect.Map:
		if a.Len() != b.Len() {
			return fmt.Sprintf("%s: of length %d and %d", at, a.Len(), b.Len())
		}
		for _, key := range a.MapKeys() {
			if d := differ(fmt.Sprintf("%s[%v]", at, key), a.MapIndex(key), b.MapIndex(key)); d != "" {
				return d
			}
		}
		return ""
	}
	if !a.Equal(b) {
		return fmt.Sprintf("%s: %v and %v", at, a, b)
	}
	return ""
}
