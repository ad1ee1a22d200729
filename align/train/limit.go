package train

import (
	"encoding/json"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Limit is how far the feet of a station can go from where they stand, in one
// plane: signed moves, upwards and towards 3 o'clock positive. The zero value is
// free. In JSON it is {"at_least": "-0.3 mm", "at_most": "2 mm"}, with either left
// out where there is no end that way.
type Limit struct {
	low, high       units.Length
	hasLow, hasHigh bool
}

// Fixed is the limit of a station that cannot move.
func Fixed() Limit { return Between(0, 0) }

// Between is the limit of a station that can go from low to high, both included:
// bolt-bound either way, or base-bound below and under a ceiling above.
func Between(low, high units.Length) Limit {
	return Limit{low: low, high: high, hasLow: true, hasHigh: true}
}

// AtLeast is the limit of a station whose move is low or more: with low = minus
// what can come out from under the feet, it is base-bound.
func AtLeast(low units.Length) Limit { return Limit{low: low, hasLow: true} }

// AtMost is the limit of a station whose move is high or less: under a ceiling, or
// bolt-bound towards 3 o'clock.
func AtMost(high units.Length) Limit { return Limit{high: high, hasHigh: true} }

// Low returns the least move, if there is one.
func (l Limit) Low() (low units.Length, ok bool) { return l.low, l.hasLow }

// High returns the largest move, if there is one.
func (l Limit) High() (high units.Length, ok bool) { return l.high, l.hasHigh }

// limitJSON is the wire form of a Limit.
type limitJSON struct {
	AtLeast *units.Length `json:"at_least,omitempty"`
	AtMost  *units.Length `json:"at_most,omitempty"`
}

// MarshalJSON gives the ends that there are.
func (l Limit) MarshalJSON() ([]byte, error) {
	var wire limitJSON
	if l.hasLow {
		wire.AtLeast = &l.low
	}
	if l.hasHigh {
		wire.AtMost = &l.high
	}
	return json.Marshal(wire)
}

// UnmarshalJSON reads what MarshalJSON gives, and refuses other names (Unknown) and
// values of a wrong type (Malformed), with the path in the limit. Whether the ends
// are in order is for the plan to check.
func (l *Limit) UnmarshalJSON(data []byte) error {
	wire, err := check.Read[limitJSON](data) // an end that is misspelt would leave the station free
	if err != nil {
		return err
	}
	var read Limit
	if wire.AtLeast != nil {
		read.low, read.hasLow = *wire.AtLeast, true
	}
	if wire.AtMost != nil {
		read.high, read.hasHigh = *wire.AtMost, true
	}
	*l = read
	return nil
}

// check asks for ends that are numbers, the lower not above the upper.
func (l Limit) check(faults *check.Faults, at check.Path) {
	low := check.Finite(faults, at.Field("at_least"), l.low)
	high := check.Finite(faults, at.Field("at_most"), l.high)
	if low && high && l.hasLow && l.hasHigh && l.low > l.high {
		faults.Add(units.Conflict, at.Field("at_least"), l.low, "at most the "+l.high.String()+" of at_most")
	}
}
