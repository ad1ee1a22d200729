package fuzzed

import (
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"

	"example.org/collinear/units"
)

// Wire is what of a package is written to JSON and read from it: one value of each
// type, or more, which can be written.
type Wire struct {
	Values []any
	Slack  float64 // how far a number may be off that is read, written and read again, as a part of it
}

// Seed hands the text of each value to f.Add. Texts that are none are left to Sound:
// fuzzing starts with a run of every seed, so that few are better.
func (w Wire) Seed(add func(...any)) {
	for i, v := range w.Values {
		text, err := json.Marshal(v)
		if err != nil {
			panic(fmt.Sprintf("%T: %v", v, err))
		}
		add(uint8(i), text)
	}
}

// shapes are texts that are JSON of the wrong shape, or none at all.
var shapes = []string{
	``, `null`, `{}`, `[]`, `""`, `0`, `-1e999`, `true`, `"x"`, `[null]`, `[[]]`, `{"":null}`, `"NaN mm"`, `"1e999 mm"`, `"\ud800"`, "\"\xff\"",
	`{"basis":"scatter","dof":1e999}`, `{"basis":"unknown","u":null}`, `{"basis":"stated","u":{},"correlation":[[1]]}`, `{"u":{"vertical":"-0 mm"}}`,
	`{"mean":"1 mm","deviation":"-1 mm"}`, `{"low":"1 mm","high":"-1 mm"}`, `{"by":"9e307 mm"}`,
}

// Sound asks that each value comes back from its own text, and that none is read
// amiss from half of it or from a text of another shape.
func (w Wire) Sound() error {
	var all []error
	for i, v := range w.Values {
		text, err := json.Marshal(v)
		if err == nil {
			err = w.read(i, text, true)
		}
		all = append(all, err, w.read(i, text[:len(text)/2], false))
		for _, shape := range shapes {
			all = append(all, w.read(i, []byte(shape), false))
		}
	}
	return errors.Join(all...)
}

// Try reads a text as one of the types. It complains unless the text is refused with
// faults, or as JSON; and unless what is read comes back when it is written, or is
// refused there, as a choice that was not made. What is read has no infinities.
func (w Wire) Try(which uint8, text []byte) error {
	return w.read(int(which)%len(w.Values), text, false)
}

func (w Wire) read(i int, text []byte, sound bool) error {
	typ := reflect.TypeOf(w.Values[i])
	first, second := reflect.New(typ), reflect.New(typ)
	if u, ok := first.Interface().(encoding.TextUnmarshaler); ok && !sound {
		if err := u.UnmarshalText(text); err != nil {
			if err := Refusal(err); err != nil {
				return fmt.Errorf("%v from %q: %w", typ, text, err)
			}
		}
		first = reflect.New(typ)
	}
	if err := json.Unmarshal(text, first.Interface()); err != nil {
		if sound || !refused(err) {
			return fmt.Errorf("%v from %q: %w", typ, text, err)
		}
		return nil
	}
	written, err := json.Marshal(first.Interface())
	if err != nil {
		if sound || !refused(err) {
			return fmt.Errorf("%v from %q cannot be written: %w", typ, text, err)
		}
		return nil // a choice that was not made has no word
	}
	if err := json.Unmarshal(written, second.Interface()); err != nil {
		return fmt.Errorf("%v from %q is written as %s, and that is refused: %w", typ, text, written, err)
	}
	if d := differ(first.Elem(), second.Elem(), w.Slack); d != "" {
		return fmt.Errorf("%v from %q comes back changed from %s: %s", typ, text, written, d)
	}
	if sound {
		if d := differ(reflect.ValueOf(w.Values[i]), first.Elem(), w.Slack); d != "" {
			return fmt.Errorf("%v comes back changed from %s: %s", typ, text, d)
		}
	}
	return unbounded(typ, text, first.Elem())
}

// refused tells whether an error is one that reading JSON may end with.
func refused(err error) bool {
	var syntax *json.SyntaxError
	var shape *json.UnmarshalTypeError
	return errors.As(err, &syntax) || errors.As(err, &shape) || len(units.Faults(err)) > 0 && Refusal(err) == nil
}

// unbounded complains of an infinity, which no text stands for.
func unbounded(typ reflect.Type, text []byte, v reflect.Value) (bad error) {
	floats(v, "", func(at string, x float64) bool {
		if math.IsInf(x, 0) {
			bad = fmt.Errorf("%v from %q has %v at %q", typ, text, x, at)
		}
		return bad == nil
	})
	return bad
}
