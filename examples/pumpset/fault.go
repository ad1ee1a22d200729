package main

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"example.org/collinear/units"
)

// faults gathers what is wrong with a job.
type faults []*units.Fault

func (f *faults) add(code units.Code, path, value, want string) {
	f.append(&units.Fault{Code: code, Path: path, Value: value, Want: want})
}

// append notes a fault that was found elsewhere.
func (f *faults) append(fault *units.Fault) { *f = append(*f, fault) }

// adopt notes the faults that the library found, under the names that their
// fields have in the job. A field that has a fault already gets no second one:
// the first explains the others.
func (f *faults) adopt(err error, rename func(path string) string) {
	for _, found := range units.Faults(err) {
		renamed := *found
		renamed.Path = rename(found.Path)
		if !slices.ContainsFunc(*f, func(g *units.Fault) bool { return g.Path == renamed.Path }) {
			f.append(&renamed)
		}
	}
}

// err returns all faults as one error, or nil. It is never a nil *faults in
// disguise.
func (f faults) err() error {
	if len(f) == 0 {
		return nil
	}
	return f
}

// Error puts each fault on a line.
func (f faults) Error() string {
	lines := make([]string, len(f))
	for i, fault := range f {
		lines[i] = fault.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap lets units.Faults and errors.Is see each of them.
func (f faults) Unwrap() []error {
	all := make([]error, len(f))
	for i, fault := range f {
		all[i] = fault
	}
	return all
}

// complain prints one line for each fault, and for an error that is none.
func complain(w io.Writer, name string, err error) {
	say := func(what error) { fmt.Fprintln(w, printable(name+": "+what.Error())) }
	all := units.Faults(err)
	for _, fault := range all {
		say(fault)
	}
	if len(all) == 0 {
		say(err)
	}
}

// printable spells out what would break the line or steer the terminal: a path
// may hold any name that stands in a document.
func printable(line string) string {
	var out strings.Builder
	for _, r := range line {
		if unicode.IsGraphic(r) {
			out.WriteRune(r)
		} else {
			out.WriteString(strings.Trim(strconv.QuoteRune(r), "'"))
		}
	}
	return out.String()
}

// step returns the path to an element of a list.
func step(list string, i int) string { return list + "/" + strconv.Itoa(i) }
