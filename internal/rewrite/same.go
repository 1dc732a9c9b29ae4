package rewrite

import (
	"reflect"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// same reports whether two drinks say the same. Where a thing stands is not what it says, and paths
// and what the parser keeps for its own use follow from what is said.
func same(a, b *drink.Drink) bool {
	return equal(reflect.ValueOf(*a), reflect.ValueOf(*b))
}

var derived = map[reflect.Type]bool{reflect.TypeFor[fail.Place](): true, reflect.TypeFor[drink.Reading](): true}

func equal(a, b reflect.Value) bool {
	if a.IsValid() != b.IsValid() || a.IsValid() && a.Type() != b.Type() {
		return false
	}
	switch a.Kind() {
	case reflect.Struct:
		for i := range a.NumField() {
			f := a.Type().Field(i)
			if !derived[f.Type] && f.Name != "Path" && !equal(a.Field(i), b.Field(i)) {
				return false
			}
		}
		return true
	case reflect.Slice:
		if a.Len() != b.Len() {
			return false
		}
		for i := range a.Len() {
			if !equal(a.Index(i), b.Index(i)) {
				return false
			}
		}
		return true
	case reflect.Pointer, reflect.Interface:
		if a.IsNil() || b.IsNil() {
			return a.IsNil() == b.IsNil()
		}
		return equal(a.Elem(), b.Elem())
	}
	return a.Equal(b)
}
