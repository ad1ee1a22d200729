package strict

import (
	"strconv"
	"strings"

	"example.org/collinear/units"
)

// Most is how many faults of one document are told: more than anybody mends at once,
// and few enough that a document of nothing but faults does not become a list a
// hundred times as long.
const Most = 200

// Faults gathers what is wrong with a document, up to Most faults and one that says
// that there are more. The zero value holds none.
type Faults []*units.Fault

// Add notes a fault.
func (f *Faults) Add(code units.Code, path, value, want string) {
	f.Append(&units.Fault{Code: code, Path: path, Value: value, Want: want})
}

// Append notes a fault that was found elsewhere.
func (f *Faults) Append(fault *units.Fault) {
	switch n := len(*f); {
	case n < Most:
		*f = append(*f, fault)
	case n == Most:
		*f = append(*f, &units.Fault{
			Code: units.OutOfRange, Value: "more",
			Want: "at most " + strconv.Itoa(Most) + " faults: what else is wrong is not listed",
		})
	}
}

// full tells whether no further fault will be told.
func (f Faults) full() bool { return len(f) > Most }

// Adopt notes the faults that the library found, under the names that their
// fields have in the document. A field that has a fault already gets no second
// one: the first explains the others.
func (f *Faults) Adopt(err error, rename func(path string) string) {
	found := units.Faults(err)
	if len(found) == 0 || f.full() {
		return
	}
	explained := map[string]bool{}
	for _, fault := range *f {
		explained[fault.Path] = true
	}
	for _, fault := range found {
		if f.full() {
			return
		}
		renamed := *fault
		renamed.Path = rename(fault.Path)
		if !explained[renamed.Path] {
			explained[renamed.Path] = true
			f.Append(&renamed)
		}
	}
}

// Err returns all faults as one error, or nil. It is never a nil *Faults in
// disguise.
func (f Faults) Err() error {
	if len(f) == 0 {
		return nil
	}
	return f
}

// Error puts each fault on a line.
func (f Faults) Error() string {
	lines := make([]string, len(f))
	for i, fault := range f {
		lines[i] = fault.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap lets units.Faults and errors.Is see each of them.
func (f Faults) Unwrap() []error {
	all := make([]error, len(f))
	for i, fault := range f {
		all[i] = fault
	}
	return all
}

// Step returns the path to an element of a list.
func Step(list string, i int) string { return list + "/" + strconv.Itoa(i) }

// Short cuts what was found to a length that fits on a line, and keeps it on
// one.
func Short(found string) string {
	const most, looked = 60, 1000 // characters that are kept, and bytes that are looked at for them
	cut := len(found) > looked
	found = strings.ToValidUTF8(strings.Join(strings.Fields(found[:min(len(found), looked)]), " "), "?")
	if runes := []rune(found); cut || len(runes) > most {
		return string(runes[:min(len(runes), most)]) + "..."
	}
	return found
}
