package main

import (
	"encoding"
	"errors"
	"reflect"
	"strings"

	"example.org/collinear/units"
	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// readJob reads a job and refuses everything about the document that is not as
// JOB.md says, all of it at once: text that is no quantity, values of a wrong
// type, fields that are unknown, doubled or missing. What the job says is
// looked at later, by solve.
func readJob(data []byte) (job, error) {
	if err := scan(data); err != nil {
		return job{}, err
	}
	var r reader
	r.options = json.JoinOptions(
		jsontext.AllowDuplicateNames(true), // object notes them itself, and goes on
		json.WithUnmarshalers(json.UnmarshalFromFunc(r.value)),
	)
	var j job
	if err := json.Unmarshal(data, &j, r.options); err != nil {
		r.faults.add(units.Malformed, "", short(err.Error()), "a job")
	}
	if err := r.faults.err(); err != nil {
		return job{}, err
	}
	return j, nil
}

// reader stands in for the decoder's own way with objects and text, which ends
// at the first fault. It notes a fault and goes on behind the value.
type reader struct {
	options json.Options
	faults  faults
}

// value reads what comes next into dst, a pointer. What it does not read it
// leaves to the decoder.
func (r *reader) value(dec *jsontext.Decoder, dst any) error {
	text, isText := dst.(encoding.TextUnmarshaler)
	v := reflect.ValueOf(dst).Elem()
	want := kinds[v.Kind()]
	if isText {
		want = kinds[reflect.String]
	}
	switch {
	case v.Kind() == reflect.Pointer && dec.PeekKind() != 'n':
		return errors.ErrUnsupported // the decoder makes room and comes back
	case !strings.ContainsRune(want.json, rune(dec.PeekKind())):
		return r.mismatch(dec, want.words)
	case isText:
		return r.text(dec, text)
	case v.Kind() == reflect.Struct:
		return r.object(dec, v)
	}
	return errors.ErrUnsupported
}

// kinds tells which JSON a Go value is read from, by the first letter of its
// token, and in words. There is no number in a job: quantities are text.
var kinds = map[reflect.Kind]struct{ json, words string }{
	reflect.String:  {`"`, `text in quotes, a quantity with its unit`},
	reflect.Struct:  {"{", "an object"},
	reflect.Pointer: {"{", "an object"},
	reflect.Slice:   {"[", "a list"},
	reflect.Bool:    {"tf", "true or false"},
}

// mismatch notes a value of a wrong type.
func (r *reader) mismatch(dec *jsontext.Decoder, want string) error {
	found, err := dec.ReadValue()
	if err != nil {
		return err
	}
	r.faults.add(units.Malformed, string(dec.StackPointer()), short(string(found)), want)
	return nil
}

// text reads a quantity, a word from a list, or a line of text.
func (r *reader) text(dec *jsontext.Decoder, dst encoding.TextUnmarshaler) error {
	token, err := dec.ReadToken()
	if err != nil {
		return err
	}
	for _, found := range units.Faults(dst.UnmarshalText([]byte(token.String()))) {
		placed := *found
		placed.Path = string(dec.StackPointer())
		r.faults.append(&placed)
	}
	return nil
}

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
			r.faults.add(units.Missing, here+"/"+f.name, "", "this field")
		}
	}
	_, err := dec.ReadToken()
	return err
}

// member reads one name and its value, which is skipped where it has no place.
func (r *reader) member(dec *jsontext.Decoder, fields []field) error {
	token, err := dec.ReadToken()
	if err != nil {
		return err
	}
	name, path := token.String(), string(dec.StackPointer())
	i := indexOf(fields, name)
	switch {
	case i < 0:
		r.faults.add(units.Unknown, path, short(name), "one of "+names(fields))
	case fields[i].seen:
		r.faults.add(units.Duplicate, path, short(name), "each field once")
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

// fieldsOf lists the fields of a struct. One that may be left out when a job is
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
