package strict

import (
	"encoding"
	"errors"
	"reflect"
	"strings"

	"example.org/collinear/units"
	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// Read reads a document within the bounds into dst, a pointer. What says in
// words what it is, for one "a job". The error holds all faults.
func Read(data []byte, b Bounds, what string, dst any) error {
	if err := scan(data, b, what); err != nil {
		return err
	}
	return Decode(data, what, dst)
}

// Decode is Read for text that is known to be JSON.
func Decode(data []byte, what string, dst any) error {
	var r reader
	r.options = json.JoinOptions(
		jsontext.AllowDuplicateNames(true), // object notes them itself, and goes on
		json.WithUnmarshalers(json.UnmarshalFromFunc(r.value)),
	)
	if err := json.Unmarshal(data, dst, r.options); err != nil { // of errFull no more is told
		r.faults.Add(units.Malformed, "", Short(err.Error()), what)
	}
	return r.faults.Err()
}

// reader stands in for the decoder's own way with objects, text and numbers,
// which ends at the first fault. It notes a fault and goes on behind the value.
type reader struct {
	options json.Options
	faults  Faults
}

// errFull ends the reading where no further fault would be told.
var errFull = errors.New("too many faults")

// value reads what comes next into dst, a pointer. What it does not read it
// leaves to the decoder.
func (r *reader) value(dec *jsontext.Decoder, dst any) error {
	if r.faults.full() {
		return errFull
	}
	v := reflect.ValueOf(dst).Elem()
	want := wantOf(v.Type())
	if !strings.ContainsRune(want.json, rune(dec.PeekKind())) {
		return r.mismatch(dec, want.words)
	}
	text, isText := dst.(encoding.TextUnmarshaler)
	switch {
	case v.Kind() == reflect.Pointer: // the decoder makes room and comes back
	case isText:
		return r.text(dec, text)
	case v.Kind() == reflect.Struct:
		return r.object(dec, v)
	case v.CanInt(), v.CanFloat():
		return r.number(dec, v)
	}
	return errors.ErrUnsupported
}

// want tells which JSON a Go value is read from, by the first letter of its
// token, and in words.
type want struct{ json, words string }

var kinds = map[reflect.Kind]want{
	reflect.String:  {`"`, `text in quotes, a quantity with its unit`},
	reflect.Struct:  {"{", "an object"},
	reflect.Slice:   {"[", "a list"},
	reflect.Bool:    {"tf", "true or false"},
	reflect.Int:     {"0", "a whole number"},
	reflect.Float64: {"0", "a number"},
}

var textUnmarshaler = reflect.TypeFor[encoding.TextUnmarshaler]()

// wantOf looks through a pointer: what it points to is what is wanted.
func wantOf(t reflect.Type) want {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if reflect.PointerTo(t).Implements(textUnmarshaler) {
		return kinds[reflect.String]
	}
	return kinds[t.Kind()]
}

// mismatch notes a value of a wrong type.
func (r *reader) mismatch(dec *jsontext.Decoder, want string) error {
	found, err := dec.ReadValue()
	if err != nil {
		return err
	}
	r.faults.Add(units.Malformed, string(dec.StackPointer()), Short(string(found)), want)
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
		r.faults.Append(&placed)
	}
	return nil
}
