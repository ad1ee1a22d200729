package units

import "errors"

// Code tells what kind of fault was found. Codes are stable, stand in records
// and on the wire, and work with errors.Is.
type Code string

// The codes.
const (
	Missing     Code = "missing"      // a value that is needed is not there
	NotFinite   Code = "not_finite"   // NaN or an infinity
	OutOfRange  Code = "out_of_range" // a number outside what it can be
	Malformed   Code = "malformed"    // text that cannot be read, or a value of the wrong type
	Unknown     Code = "unknown"      // a name that is not known here
	Duplicate   Code = "duplicate"    // the same thing given twice
	Conflict    Code = "conflict"     // values that contradict one another, or one that its kind does not use
	Unseen      Code = "unseen"       // a quantity that the readings cannot see
	Unreachable Code = "unreachable"  // a target that the limits do not allow, or an answer that a search does not come to
	Suspect     Code = "suspect"      // usable, but look at it again
)

// Error returns the code as it stands on the wire.
func (c Code) Error() string { return string(c) }

// Fault says what is wrong with one value of an input. Returned as an error it
// refuses the input; in the warnings of a result it goes with a usable answer.
type Fault struct {
	Code  Code   `json:"code"`            // what kind
	Path  string `json:"path"`            // JSON Pointer (RFC 6901) to the field in the input; "" is the input itself
	Value string `json:"value,omitempty"` // the value as it was found, if there was one
	Want  string `json:"want"`            // what was wanted instead
}

// Error names the field, the value, what was wanted and the code in one line.
func (f *Fault) Error() string {
	s := f.Path
	if s != "" {
		s += ": "
	}
	s += "want " + f.Want
	if f.Value != "" {
		s += ", got " + f.Value
	}
	return s + " (" + string(f.Code) + ")"
}

// Unwrap returns the code, so that errors.Is(err, units.Unseen) works.
func (f *Fault) Unwrap() error { return f.Code }

// Faults returns every fault in err, in their order, also from errors that were
// joined or wrapped: what a form needs to mark its fields. An error that is no
// fault holds none, and so does nil.
func Faults(err error) []*Fault {
	var all []*Fault
	collect(err, &all)
	return all
}

func collect(err error, all *[]*Fault) {
	if f, ok := err.(*Fault); ok {
		if f != nil {
			*all = append(*all, f)
		}
		return
	}
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		for _, e := range joined.Unwrap() {
			collect(e, all)
		}
		return
	}
	if inner := errors.Unwrap(err); inner != nil {
		collect(inner, all)
	}
}
