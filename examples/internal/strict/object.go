package strict

import (
	"reflect"
	"strings"

	"example.org/collinear/units"
	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// object reads the fields of a struct.
func (r *reader) object(dec *jsontext.Decoder, v reflect.Value) error {
	if _, err := dec.ReadToken(); err != nil {
		return err
	}
	here, fields := string(dec.StackPointer()), fieldsOf(v)
	for dec.PeekKind() != '}' {
		if err := r.member(dec, fields); err != nil {
			return err
		}
	}
	for _, f := range fields {
		if f.needed && !f.seen {
			r.faults.Add(units.Missing, here+"/"+f.name, "", "this field")
		}
	}
	_, err := dec.ReadToken()
	return err
}

// member reads one name and its value, which is skipped where it has no place.
func (r *reader) member(dec *jsontext.Decoder, fields []field) error {
	if r.faults.full() {
		return errFull
	}
	token, err := dec.ReadToken()
	if err != nil {
		return err
	}
	name, path := token.String(), string(dec.StackPointer())
	i := indexOf(fields, name)
	switch {
	case i < 0:
		r.faults.Add(units.Unknown, path, Short(name), "one of "+names(fields))
	case fields[i].seen:
		r.faults.Add(units.Duplicate, path, Short(name), "each field once")
	default:
		fields[i].seen = true
		return json.UnmarshalDecode(dec, fields[i].Addr().Interface(), r.options)
	}
	return dec.SkipValue()
}

// field is one field of an object that is being read.
type field struct {
	reflect.Value
	name         string
	needed, seen bool
}

// fieldsOf lists the fields of a struct. One that may be left out when it is
// written may be left out when it is read.
func fieldsOf(v reflect.Value) []field {
	fields := make([]field, v.NumField())
	for i := range fields {
		name, options, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
		fields[i] = field{Value: v.Field(i), name: name, needed: !strings.HasPrefix(options, "omit")}
	}
	return fields
}

func indexOf(fields []field, name string) int {
	for i, f := range fields {
		if f.name == name {
			return i
		}
	}
	return -1
}

func names(fields []field) string {
	all := make([]string, len(fields))
	for i, f := range fields {
		all[i] = f.name
	}
	return strings.Join(all, ", ")
}
