package strict

import (
	"math"
	"reflect"
	"strconv"

	"example.org/collinear/units"
	"github.com/go-json-experiment/json/jsontext"
)

// mostWhole is the largest whole number up to which every other is a float64,
// and so the same in whatever language wrote it.
const mostWhole = 1 << 53

// mostOf is the largest whole number that is read into v.
func mostOf(v reflect.Value) float64 {
	return min(mostWhole, math.Ldexp(1, v.Type().Bits()-1)-1)
}

// number reads a JSON number. A whole one may be written as 4, 4.0 or 4e0.
func (r *reader) number(dec *jsontext.Decoder, v reflect.Value) error {
	found, err := dec.ReadValue()
	if err != nil {
		return err
	}
	text, path := string(found), string(dec.StackPointer())
	x, err := strconv.ParseFloat(text, 64)
	switch {
	case err != nil: // that it is a number is known, so it is too large
		r.faults.Add(units.OutOfRange, path, Short(text), "a number that a float64 holds")
	case v.CanFloat():
		v.SetFloat(x)
	case x != math.Trunc(x):
		r.faults.Add(units.Malformed, path, Short(text), kinds[reflect.Int].words)
	case math.Abs(x) > mostOf(v):
		r.faults.Add(units.OutOfRange, path, Short(text), "a whole number of at most "+strconv.FormatFloat(mostOf(v), 'f', -1, 64))
	default:
		v.SetInt(int64(x))
	}
	return nil
}
