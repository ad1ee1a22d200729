package pumpset

import (
	"strconv"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// System is the system of units in which a report shows lengths.
type System string

// The systems. The zero value leaves the choice to the job, and there to metric.
const (
	AsTheJob System = ""
	Metric   System = "metric"
	Inch     System = "inch"
)

// MarshalText gives the word.
func (s System) MarshalText() ([]byte, error) { return []byte(s), nil }

// UnmarshalText takes "metric" or "inch".
func (s *System) UnmarshalText(text []byte) error {
	switch System(text) {
	case Metric, Inch:
		*s = System(text)
		return nil
	}
	return unknown(text, "metric or inch")
}

// side is the side of the shaft that a foot stands on, as the crew sees it.
type side string

// The sides.
const (
	three side = "three"
	nine  side = "nine"
)

// UnmarshalText takes "three" or "nine".
func (s *side) UnmarshalText(text []byte) error {
	switch side(text) {
	case three, nine:
		*s = side(text)
		return nil
	}
	return unknown(text, "three or nine")
}

// rule names a published rule.
type rule string

const flexPlanes = rule("API RP 686")

// UnmarshalText takes the one rule that there is.
func (r *rule) UnmarshalText(text []byte) error {
	if rule(text) != flexPlanes {
		return unknown(text, string(flexPlanes))
	}
	*r = flexPlanes
	return nil
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
	return &units.Fault{Code: units.Unknown, Value: strict.Short(strconv.Quote(string(text))), Want: want}
}
