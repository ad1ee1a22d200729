// Package check gathers the faults of an input. Entry points walk their whole
// input with it, so that all independent faults come back at once. On a sound
// input it allocates nothing, but for Read: a path is put into words only when a
// fault needs it.
package check

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/collinear/units"
)

// Path leads to a field of an input. The zero Path is the input itself.
type Path struct {
	up    *Path
	name  string // of a field
	index int    // of an element of a list; below zero for a field
}

// Field returns the path to a named field of p.
func (p *Path) Field(name string) Path { return Path{up: p, name: name, index: -1} }

// Index returns the path to an element of the list p.
func (p *Path) Index(i int) Path { return Path{up: p, index: i} }

var escape = strings.NewReplacer("~", "~0", "/", "~1")

// String returns the path as a JSON Pointer (RFC 6901). It walks up in a loop
// and copies the names: with a recursion, or names that live on in the result,
// the compiler would put every path on the heap, also of sound input.
func (p *Path) String() string {
	pointer := ""
	for ; p.up != nil; p = p.up {
		pointer = "/" + p.step() + pointer
	}
	return pointer
}

func (p *Path) step() string {
	if p.index >= 0 {
		return strconv.Itoa(p.index)
	}
	return escape.Replace(strings.Clone(p.name))
}

// Faults gathers faults. The zero value holds none.
type Faults struct{ list []error }

// Add notes a fault. A value that is nil is left out.
func (f *Faults) Add(code units.Code, at Path, value any, want string) {
	fault := &units.Fault{Code: code, Path: at.String(), Want: want}
	if value != nil {
		fault.Value = fmt.Sprint(value)
	}
	f.Append(fault)
}

// Append notes a fault that was found elsewhere.
func (f *Faults) Append(fault *units.Fault) { f.list = append(f.list, fault) }

// Adopt notes the faults of what another package found wrong with the field at.
func (f *Faults) Adopt(at Path, err error) {
	for _, fault := range units.Faults(err) {
		moved := *fault
		moved.Path = at.String() + fault.Path
		f.Append(&moved)
	}
}

// Has tells whether a fault at this path was noted.
func (f *Faults) Has(path string) bool {
	return slices.ContainsFunc(f.list, func(err error) bool {
		var fault *units.Fault
		return errors.As(err, &fault) && fault.Path == path
	})
}

// Len returns how many faults were noted.
func (f *Faults) Len() int { return len(f.list) }

// Err returns all faults joined, or nil.
func (f *Faults) Err() error { return errors.Join(f.list...) }

// Numbers of a size between these, in what their type counts, can be multiplied
// and squared as often as it is done here without leaving a float64. For a
// length, which counts nanometres, the largest is 1000 km.
const (
	Largest = 1e15
	Least   = 1e-15
)

// Finest is the least uncertainty of a reading, a thousandth of a nanometre: one
// that is smaller would outweigh every other reading to the last digit.
const Finest = 1e-3

// Sound tells whether q is a finite number, and none that is too large: what
// Finite asks for.
func Sound[Q ~float64](q Q) bool { return math.Abs(float64(q)) <= Largest } // NaN is not

// The questions below are short enough to be compiled in place; words are found in
// functions of their own.

// Finite asks that q is a finite number, and none that is too large.
func Finite[Q ~float64](f *Faults, at Path, q Q) bool {
	return q >= -Largest && q <= Largest || f.notSound(at, q, float64(q))
}

func (f *Faults) notSound(at Path, q any, x float64) bool {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		f.Add(units.NotFinite, at, q, "a finite number")
	} else {
		f.Add(units.OutOfRange, at, q, "a number that can be reckoned with (a length of at most 1000 km)")
	}
	return false
}

// AtMost asks for a list no longer than any sound one, and tells whether it is: what is
// longer need not be walked.
func AtMost(f *Faults, at Path, length, most int, what string) bool {
	if length <= most {
		return true
	}
	f.Add(units.OutOfRange, at, length, "at most "+strconv.Itoa(most)+" "+what)
	return false
}

// Positive asks that q is finite and above zero; zero counts as missing.
func Positive[Q ~float64](f *Faults, at Path, q Q, what string) bool {
	return q >= Least && q <= Largest || f.notPositive(at, q, float64(q), what)
}

func (f *Faults) notPositive(at Path, q any, x float64, what string) bool {
	if !Sound(x) {
		return f.notSound(at, q, x)
	}
	if x == 0 {
		f.Add(units.Missing, at, q, what+" above zero")
	} else {
		f.Add(units.OutOfRange, at, q, what+" above zero")
	}
	return false
}

// NotNegative asks that q is finite and not below zero.
func NotNegative[Q ~float64](f *Faults, at Path, q Q, what string) bool {
	return q >= 0 && q <= Largest || f.negative(at, q, float64(q), what)
}

func (f *Faults) negative(at Path, q any, x float64, what string) bool {
	if !Sound(x) {
		return f.notSound(at, q, x)
	}
	f.Add(units.OutOfRange, at, q, what+" not below zero")
	return false
}

const uncertainty = "a standard uncertainty"

// Uncertainty asks that q is a standard uncertainty: zero where none is stated.
func Uncertainty[Q ~float64](f *Faults, at Path, q Q) bool {
	return NotNegative(f, at, q, uncertainty)
}

// Weight asks that q is a standard uncertainty that readings can be weighed by,
// or zero where none is stated.
func Weight[Q ~float64](f *Faults, at Path, q Q) bool {
	return Weighty(q) || f.noWeight(at, q, float64(q))
}

// Weighty tells whether q is what Weight asks for.
func Weighty[Q ~float64](q Q) bool { return q == 0 || q >= Finest && q <= Largest }

func (f *Faults) noWeight(at Path, q any, x float64) bool {
	if x > 0 && x < Finest {
		f.Add(units.OutOfRange, at, q, "a standard uncertainty of 0.001 nm or more, or none")
		return false
	}
	return f.negative(at, q, x, uncertainty)
}

// Unused asks that q, which this kind of input has no use for, was not given.
func Unused[Q ~float64](f *Faults, at Path, q Q, by string) bool {
	return q == 0 || f.used(at, q, by)
}

func (f *Faults) used(at Path, q any, by string) bool {
	f.Add(units.Conflict, at, q, "no value: "+by+" does not use it")
	return false
}
