package adapter

import (
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// The library takes a zero for a value that was not given. On the wire the two
// can be told apart, and are.

// value returns what was given, or zero.
func value[T any](given *T) T {
	if given == nil {
		return *new(T)
	}
	return *given
}

// above notes a value that was given and is zero, where the library would take
// it for none. What is below zero it sees for itself.
func above[Q ~float64](f *strict.Faults, path string, given *Q) {
	if given != nil && *given == 0 {
		f.Add(units.OutOfRange, path, "0", "a value above zero")
	}
}

// limit returns a limit that was given. One of zero becomes the least number
// that is none; it rounds to zero where lengths are compared.
func limit(given *units.Length) units.Length {
	if given != nil && *given == 0 {
		return 1e-12 * units.Nanometre
	}
	return value(given)
}

// same is the renaming of a library whose paths are those of the wire.
func same(path string) string { return path }

// below puts a path in front of those of the library.
func below(prefix string) func(string) string {
	return func(path string) string { return prefix + path }
}
