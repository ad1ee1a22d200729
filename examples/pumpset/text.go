package main

import (
	"encoding"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/collinear/units"
)

// words are a line of the crew's own text.
type words string

// UnmarshalText takes a line that can be printed.
func (w *words) UnmarshalText(text []byte) error {
	const most = 300
	s := string(text)
	switch n := utf8.RuneCountInString(s); {
	case strings.TrimSpace(s) == "":
		return &units.Fault{Code: units.Missing, Want: "some text, or the field left out"}
	case n > most:
		return &units.Fault{Code: units.OutOfRange, Value: strconv.Itoa(n), Want: "at most " + strconv.Itoa(most) + " characters"}
	}
	for _, r := range s {
		if !unicode.IsGraphic(r) {
			return &units.Fault{Code: units.Malformed, Value: short(strconv.Quote(s)), Want: "one line of characters that can be printed"}
		}
	}
	*w = words(s)
	return nil
}

// written is a quantity as the crew wrote it down, so that a report can show
// "5 7/16 in" and not what became of it. The zero value is none: "0 mm" is a
// length.
type written[Q any, P interface {
	*Q
	encoding.TextUnmarshaler
}] struct {
	Value Q
	text  string
}

type (
	length   = written[units.Length, *units.Length]
	position = written[units.Clock, *units.Clock]
)

// given tells whether there is a quantity at all.
func (w written[Q, P]) given() bool { return w.text != "" }

// String returns the text as it was written.
func (w written[Q, P]) String() string { return w.text }

// MarshalText gives the text as it was written.
func (w written[Q, P]) MarshalText() ([]byte, error) { return []byte(w.text), nil }

// UnmarshalText reads what the quantity reads.
func (w *written[Q, P]) UnmarshalText(text []byte) error {
	if err := P(&w.Value).UnmarshalText(text); err != nil {
		return err
	}
	w.text = string(text)
	return nil
}

// system is the system of units in which a report shows lengths.
type system string

// The systems. The zero value leaves the choice to the job, and there to metric.
const (
	asTheJob system = ""
	metric   system = "metric"
	inch     system = "inch"
)

// MarshalText gives the word.
func (s system) MarshalText() ([]byte, error) { return []byte(s), nil }

// UnmarshalText takes "metric" or "inch".
func (s *system) UnmarshalText(text []byte) error {
	switch system(text) {
	case metric, inch:
		*s = system(text)
		return nil
	}
	return unknown(text, "metric or inch")
}

// format names what a document is, so that a later one is not mistaken for it.
type format string

const (
	jobFormat    = format("pumpset job 1")
	recordFormat = "pumpset record 1"
)

// UnmarshalText takes the one format of a job.
func (f *format) UnmarshalText(text []byte) error {
	if format(text) != jobFormat {
		return unknown(text, strconv.Quote(string(jobFormat)))
	}
	*f = jobFormat
	return nil
}

func unknown(text []byte, want string) error {
	if len(text) == 0 {
		return &units.Fault{Code: units.Missing, Want: want}
	}
	return &units.Fault{Code: units.Unknown, Value: short(strconv.Quote(string(text))), Want: want}
}
