package align

import (
	"encoding/json"
	"math"

	"example.org/collinear/units"
)

// distributionJSON is the wire form of a Distribution. A mean or a deviation that
// does not exist is absent.
type distributionJSON[Q units.Length | units.Slope] struct {
	Mean      *Q          `json:"mean,omitempty"`
	Deviation *Q          `json:"deviation,omitempty"`
	Symmetric Interval[Q] `json:"symmetric"`
	Shortest  Interval[Q] `json:"shortest"`
}

// MarshalJSON leaves out a mean and a deviation that the distribution has not.
func (d Distribution[Q]) MarshalJSON() ([]byte, error) {
	wire := distributionJSON[Q]{Symmetric: d.Symmetric, Shortest: d.Shortest}
	if !math.IsNaN(float64(d.Mean)) {
		wire.Mean = &d.Mean
	}
	if !math.IsNaN(float64(d.Deviation)) {
		wire.Deviation = &d.Deviation
	}
	return json.Marshal(wire)
}

// UnmarshalJSON reads what MarshalJSON gives; what is absent becomes NaN.
func (d *Distribution[Q]) UnmarshalJSON(data []byte) error {
	var wire distributionJSON[Q]
	if err := json.Unmarshal(data, &wire); err != nil {
		return err
	}
	*d = Distribution[Q]{Q(math.NaN()), Q(math.NaN()), wire.Symmetric, wire.Shortest}
	if wire.Mean != nil {
		d.Mean = *wire.Mean
	}
	if wire.Deviation != nil {
		d.Deviation = *wire.Deviation
	}
	return nil
}
