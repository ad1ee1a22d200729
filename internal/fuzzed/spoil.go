package fuzzed

import (
	"math"
	"reflect"

	"example.org/collinear/units"
)

// Near returns a number that has to do with x: mostly one of its size, because only
// those get past the first checks, and at times any float64.
func (t *Tape) Near(x float64) float64 {
	switch kind := t.Byte(); kind % 8 {
	case 0:
		return 0
	case 1:
		return -x
	case 2:
		return math.Ldexp(x, 4*int(int8(t.Byte())))
	case 3:
		return t.Float64()
	case 4:
		return edges[int(t.Byte())%len(edges)]
	case 5:
		return float64(int8(t.Byte()))
	default:
		return x * float64(int8(t.Byte())) / 32
	}
}

// edges are numbers at which a formula may go wrong that is right beside them.
var edges = []float64{
	math.NaN(), math.Inf(1), math.Inf(-1), math.Copysign(0, -1),
	math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64, 0x1p-1022,
	1e300, 1e155, 1e-155, 1e15, 1e12, -1e12, 1, 360, 180, -90, 0x1p53, 1 - 0x1p-53,
}

// Text returns a text that has to do with s: without its first or last part, twice,
// empty, or with some byte put in.
func (t *Tape) Text(s string) string {
	at := int(t.Byte()) % (len(s) + 1)
	switch kind := t.Byte(); kind % 6 {
	case 0:
		return s[at:]
	case 1:
		return s[:at]
	case 2:
		return s + s
	case 3:
		return ""
	case 4:
		return string(rune('a' + t.Byte()%4))
	default:
		return s[:at] + string([]byte{t.Byte()}) + s[at:]
	}
}

// Spoil changes up to three places of what v points to: a number, a choice, a text,
// the length or the order of a list, whether something is given. An end of the tape
// changes nothing. Fields that are not exported stay as they are, but for those of
// types that Fresh makes anew.
func (t *Tape) Spoil(v any) {
	for range t.Byte() % 4 {
		places := placesOf(reflect.ValueOf(v).Elem(), nil)
		if len(places) == 0 {
			return
		}
		at := int(t.Byte()) | int(t.Byte())<<8
		t.change(places[at%len(places)])
	}
}

// placesOf lists what of a value can be changed.
func placesOf(v reflect.Value, places []reflect.Value) []reflect.Value {
	switch v.Kind() {
	case reflect.Struct:
		if _, made := fresh[v.Type()]; made {
			places = append(places, v)
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				places = placesOf(v.Field(i), places)
			}
		}
	case reflect.Array:
		for i := range v.Len() {
			places = placesOf(v.Index(i), places)
		}
	case reflect.Slice:
		places = append(places, v)
		for i := range v.Len() {
			places = placesOf(v.Index(i), places)
		}
	case reflect.Pointer:
		if v.CanSet() {
			places = append(places, v)
		}
		if !v.IsNil() {
			places = placesOf(v.Elem(), places)
		}
	case reflect.Interface, reflect.Func, reflect.Chan:
	default:
		places = append(places, v)
	}
	return places
}

// change makes one place another.
func (t *Tape) change(v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(t.Near(v.Float()))
	case reflect.Uint8:
		v.SetUint(uint64(t.Byte() % 16))
	case reflect.Uint, reflect.Uint32, reflect.Uint64:
		v.SetUint(v.Uint() + uint64(t.Byte()))
	case reflect.Int:
		v.SetInt(int64(int8(t.Byte())))
	case reflect.Bool:
		v.SetBool(!v.Bool())
	case reflect.String:
		v.SetString(t.Text(v.String()))
	case reflect.Slice:
		t.relist(v)
	case reflect.Map:
		t.rekey(v)
	case reflect.Pointer:
		if v.IsNil() {
			v.Set(reflect.New(v.Type().Elem()))
		} else {
			v.SetZero()
		}
	case reflect.Struct:
		v.Set(reflect.ValueOf(fresh[v.Type()](t)))
	}
}

// relist drops an element, doubles one, exchanges two, or empties the list. A list
// stays shorter than 16, so that no search takes long.
func (t *Tape) relist(v reflect.Value) {
	kind, n := t.Byte()%5, v.Len()
	if n == 0 || kind == 4 && n < 16 {
		v.Set(reflect.Append(v, reflect.Zero(v.Type().Elem())))
		return
	}
	at := int(t.Byte()) % n
	switch {
	case kind == 0:
		v.SetZero()
	case kind == 1:
		v.Set(reflect.AppendSlice(v.Slice(0, at), v.Slice(at+1, n)))
	case kind == 2 && n < 16:
		v.Set(reflect.Append(v, v.Index(at)))
	default:
		reflect.Swapper(v.Interface())(0, at)
	}
}

// rekey changes the value of one key, the first in order, or takes it out.
func (t *Tape) rekey(v reflect.Value) {
	keys := sortedKeys(v)
	if len(keys) == 0 {
		return
	}
	key := keys[int(t.Byte())%len(keys)]
	value := reflect.New(v.Type().Elem()).Elem()
	value.Set(v.MapIndex(key))
	if places := placesOf(value, nil); len(places) > 0 && t.Byte()%4 != 0 {
		t.change(places[int(t.Byte())%len(places)])
		v.SetMapIndex(key, value)
		return
	}
	v.SetMapIndex(key, reflect.Value{})
}

// fresh makes values of types that keep their fields to themselves.
var fresh = map[reflect.Type]func(*Tape) any{
	reflect.TypeFor[units.Temperature](): func(t *Tape) any { return units.Celsius(t.Near(60)) },
}

// Fresh says how Spoil makes values of a type that keeps its fields to itself. It is
// called before any target runs.
func Fresh[V any](make func(*Tape) V) {
	fresh[reflect.TypeFor[V]()] = func(t *Tape) any { return make(t) }
}
