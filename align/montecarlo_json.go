package align

import (
	"encoding/json"
	"math"

	"example.org/collinear/internal/check"
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

// UnmarshalJSON reads what MarshalJSON gives; a mean or a deviation that is absent
// becomes NaN. It refuses a distribution without an interval (Missing, at /shortest),
// and what cannot be read, as a Covariance does.
func (d *Distribution[Q]) UnmarshalJSON(data []byte) error {
	wire, err := check.Read[distributionJSON[Q]](data, "symmetric", "shortest")
	if err != nil {
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
