package fuzzed

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"

	"example.org/collinear/units"
)

// Call is a function with arguments that it answers. A method is given as an
// expression, such as align.Line.At, and its receiver is the first argument.
type Call struct {
	Name string
	Of   any
	With []any
	Open string // why a result may be an infinity or NaN though the arguments are plain; "" if it may not
}

// Calls are the functions of a package.
type Calls []Call

// Seed hands each function to f.Add with its own arguments. Fuzzing starts with a run
// of every seed, so that few are better; Sound tries more.
func (c Calls) Seed(add func(...any)) {
	for i := range c {
		add(uint8(i), []byte{})
		add(uint8(i), []byte{2, byte(i), 0, 6, 80, byte(7 * i), 0, 2, 1})
	}
}

// Sound tries each function with its own arguments, which it has to answer: what
// were refused would leave the fuzzer on this side of the checks. Then it changes their
// places one by one, in several ways, and asks what Try asks; where there are many, it
// skips some, and where it is to be short, all.
func (c Calls) Sound(short bool) error {
	var all []error
	for i, call := range c {
		r, err := call.run(call.arguments())
		if err == nil && r.err != nil {
			err = fmt.Errorf("refuses: %w", r.err)
		}
		if err != nil {
			all = append(all, fmt.Errorf("%s %w", call.Name, err))
		}
		places := len(placesOf(call.arguments(), nil))
		if short {
			places = 0
		}
		for at := 0; at < places; at += 1 + places/most {
			for _, change := range changes {
				all = append(all, c.Try(uint8(i), append([]byte{1, byte(at), byte(at >> 8)}, change...)))
			}
		}
	}
	return errors.Join(all...)
}

// most places are changed by Sound, so that a test that always runs takes no minutes.
const most = 16

// changes are what Sound makes of a number: zero, the opposite, far larger, far
// smaller, NaN, an infinity, the largest, the smallest, and a little less.
var changes = [][]byte{{0}, {1}, {2, 60}, {2, 196}, {4, 0}, {4, 1}, {4, 4}, {4, 6}, {6, 31}}

// Try spoils the arguments of one of the functions and calls it twice. It complains
// unless both answers are the same and the arguments are as before; unless an error
// is made of faults that say what and where; and unless an answer is made of numbers
// that are finite. A function without an error has nothing but an answer to say it
// with: of it that is asked only where the arguments are plain.
func (c Calls) Try(which uint8, raw []byte) error {
	call := c[int(which)%len(c)]
	with := call.arguments()
	tape := Tape(raw)
	tape.Spoil(with.Addr().Interface())
	if _, err := call.run(with); err != nil {
		return fmt.Errorf("%s %w, given %+v", call.Name, err, with.Interface())
	}
	return nil
}

// arguments returns a copy of the arguments, as a struct with a field for each.
func (c Call) arguments() reflect.Value {
	typ := reflect.TypeOf(c.Of)
	fields := make([]reflect.StructField, typ.NumIn())
	for i := range fields {
		fields[i] = reflect.StructField{Name: fmt.Sprintf("Arg%d", i), Type: typ.In(i)}
	}
	with := reflect.New(reflect.StructOf(fields)).Elem()
	for i, arg := range c.With {
		with.Field(i).Set(twin(reflect.ValueOf(arg)))
	}
	return with
}

// answer is what a function returned; the error stands apart.
type answer struct {
	results []reflect.Value
	err     error
	fails   bool // whether it can return an error
}

func (c Call) call(with reflect.Value) answer {
	in := make([]reflect.Value, with.NumField())
	for i := range in {
		in[i] = with.Field(i)
	}
	f := reflect.ValueOf(c.Of)
	var a answer
	if f.Type().IsVariadic() {
		a.results = f.CallSlice(in)
	} else {
		a.results = f.Call(in)
	}
	if last := len(a.results) - 1; last >= 0 && a.results[last].Type() == reflect.TypeFor[error]() {
		a.err, _ = a.results[last].Interface().(error)
		a.results, a.fails = a.results[:last], true
	}
	return a
}

func (c Call) run(with reflect.Value) (answer, error) {
	before := twin(with)
	first := c.call(with)
	if d := differ(before, with, 0); d != "" {
		return first, fmt.Errorf("changes its arguments: %s", d)
	}
	second := c.call(with)
	if fmt.Sprint(first.err) != fmt.Sprint(second.err) {
		return first, fmt.Errorf("says %w, and then %w", first.err, second.err)
	}
	for i := range first.results {
		if d := differ(first.results[i], second.results[i], 0); d != "" {
			return first, fmt.Errorf("answers differently: %s", d)
		}
	}
	if first.err != nil {
		return first, first.refusal()
	}
	if c.Open != "" || !first.fails && !plain(with) {
		return first, nil
	}
	return first, first.finite()
}

// refusal complains of an error that is not made of faults, and of an answer beside it.
func (a answer) refusal() error {
	for _, r := range a.results {
		if !r.IsZero() && !(r.Kind() == reflect.Slice && r.Len() == 0) {
			return fmt.Errorf("refuses with %w, and answers %+v", a.err, r.Interface())
		}
	}
	return Refusal(a.err)
}

// finite complains of an answer with a number that cannot be reckoned with.
func (a answer) finite() error {
	for _, r := range a.results {
		var bad error
		floats(r, "", func(at string, x float64) bool {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				bad = fmt.Errorf("answers %v at %q", x, at)
			}
			return bad == nil
		})
		if bad != nil {
			return bad
		}
	}
	return nil
}

// plain tells whether every number is zero or of a size that machines come near to.
func plain(v reflect.Value) bool {
	return floats(v, "", func(_ string, x float64) bool {
		return x == 0 || math.Abs(x) > 1e-30 && math.Abs(x) < 1e30
	})
}

// Refusal complains of an error that holds no fault, or one that says too little.
func Refusal(err error) error {
	faults := units.Faults(err)
	if len(faults) == 0 {
		return fmt.Errorf("an error without a fault: %w", err)
	}
	for _, f := range faults {
		if f.Code == "" || f.Want == "" || f.Path != "" && !strings.HasPrefix(f.Path, "/") {
			return fmt.Errorf("a fault that says too little: %+v", *f)
		}
	}
	return nil
}
