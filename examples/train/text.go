package main

import (
	"slices"
	"strconv"
	"strings"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type words = strict.Words

// format names the sort of document.
type format string

// UnmarshalText takes the one format of a job.
func (f *format) UnmarshalText(text []byte) error { return choose(f, text, "train job 1") }

// system is how lengths are shown. The zero value leaves the choice to the job,
// and there to metric.
type system string

// The systems.
const (
	asTheJob system = ""
	metric   system = "metric"
	inch     system = "inch"
)

// MarshalText gives the word.
func (s system) MarshalText() ([]byte, error) { return []byte(s), nil }

// UnmarshalText takes "metric" or "inch".
func (s *system) UnmarshalText(text []byte) error { return choose(s, text, metric, inch) }

// end is an end of the train.
type end string

// The ends, by their machine.
const (
	first end = "first"
	last  end = "last"
)

// UnmarshalText takes "first" or "last".
func (e *end) UnmarshalText(text []byte) error { return choose(e, text, first, last) }

// choose sets dst to the one of the words that the text is.
func choose[T ~string](dst *T, text []byte, list ...T) error {
	if found := T(text); slices.Contains(list, found) {
		*dst = found
		return nil
	}
	wanted := make([]string, len(list))
	for i, word := range list {
		wanted[i] = strconv.Quote(string(word))
	}
	code := units.Unknown
	if len(text) == 0 {
		code = units.Missing
	}
	return &units.Fault{Code: code, Value: strict.Short(strconv.Quote(string(text))), Want: strings.Join(wanted, " or ")}
}
