package fuzzed

import (
	"cmp"
	"fmt"
	"math"
	"reflect"
	"slices"
)

// twin copies a value with all that it points to, so that what is done to one is
// not seen in the other. Fields that are not exported are copied as they stand.
func twin(v reflect.Value) reflect.Value {
	c := reflect.New(v.Type()).Elem()
	c.Set(v)
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				c.Field(i).Set(twin(v.Field(i)))
			}
		}
	case reflect.Array:
		for i := range v.Len() {
			c.Index(i).Set(twin(v.Index(i)))
		}
	case reflect.Slice:
		if !v.IsNil() {
			c.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
		}
		for i := range v.Len() {
			c.Index(i).Set(twin(v.Index(i)))
		}
	case reflect.Map:
		if !v.IsNil() {
			c.Set(reflect.MakeMap(v.Type()))
		}
		for _, key := range v.MapKeys() {
			c.SetMapIndex(key, twin(v.MapIndex(key)))
		}
	case reflect.Pointer:
		if !v.IsNil() {
			c.Set(reflect.New(v.Type().Elem()))
			c.Elem().Set(twin(v.Elem()))
		}
	}
	return c
}

// differ says where two values of one type differ, or nothing. Floats are alike with
// the same bits, as NaN and as NaN, or when they differ by less than the part slack
// of the larger one. A list that is empty is like one that is not there.
func differ(a, b reflect.Value, slack float64) string {
	switch a.Kind() {
	case reflect.Float64:
		x, y := a.Float(), b.Float()
		if math.Float64bits(x) == math.Float64bits(y) || x != x && y != y || math.Abs(x-y) < slack*max(math.Abs(x), math.Abs(y)) {
			return ""
		}
		return fmt.Sprintf(": %v and %v", x, y)
	case reflect.Struct:
		for i := range a.NumField() {
			if d := differ(a.Field(i), b.Field(i), slack); d != "" {
				return "." + a.Type().Field(i).Name + d
			}
		}
		return ""
	case reflect.Slice, reflect.Array:
		if a.Len() != b.Len() {
			return fmt.Sprintf(": %d and %d of them", a.Len(), b.Len())
		}
		for i := range a.Len() {
			if d := differ(a.Index(i), b.Index(i), slack); d != "" {
				return fmt.Sprintf("[%d]%s", i, d)
			}
		}
		return ""
	case reflect.Map:
		if a.Len() != b.Len() {
			return fmt.Sprintf(": %d and %d of them", a.Len(), b.Len())
		}
		for _, key := range a.MapKeys() {
			other := b.MapIndex(key)
			if !other.IsValid() {
				return fmt.Sprintf("[%v]: only in one", key)
			}
			if d := differ(a.MapIndex(key), other, slack); d != "" {
				return fmt.Sprintf("[%v]%s", key, d)
			}
		}
		return ""
	case reflect.Pointer, reflect.Interface:
		if a.IsNil() || b.IsNil() {
			if a.IsNil() != b.IsNil() {
				return ": only one is there"
			}
			return ""
		}
		return differ(a.Elem(), b.Elem(), slack)
	case reflect.Func, reflect.Chan:
		return ""
	}
	if !a.Equal(b) {
		return fmt.Sprintf(": %v and %v", a, b)
	}
	return ""
}

// floats calls f with every float64 in a value, also with those that are not exported,
// and with the way there, until f says no. What rests on a basis that is unknown is left
// out: the type says that its uncertainty is NaN.
func floats(v reflect.Value, at string, f func(at string, x float64) bool) bool {
	switch v.Kind() {
	case reflect.Float64:
		return f(at, v.Float())
	case reflect.Struct:
		if b := v.FieldByName("Basis"); b.IsValid() && fmt.Sprint(b) == "unknown" {
			return true
		}
		for i := range v.NumField() {
			if !floats(v.Field(i), at+"."+v.Type().Field(i).Name, f) {
				return false
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if !floats(v.Index(i), fmt.Sprintf("%s[%d]", at, i), f) {
				return false
			}
		}
	case reflect.Map:
		for _, key := range sortedKeys(v) {
			if !floats(v.MapIndex(key), fmt.Sprintf("%s[%v]", at, key), f) {
				return false
			}
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			return floats(v.Elem(), at, f)
		}
	}
	return true
}

func sortedKeys(v reflect.Value) []reflect.Value {
	return slices.SortedFunc(slices.Values(v.MapKeys()), func(a, b reflect.Value) int {
		return cmp.Compare(fmt.Sprint(a), fmt.Sprint(b))
	})
}
