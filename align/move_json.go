package align

import (
	"encoding/json"
	"math"

	"example.org/collinear/units"
)

// moveJSON is the wire form of a Move. U is absent where it is unknown.
type moveJSON struct {
	Foot  Foot    `json:"foot"`
	By    Vector  `json:"by"`
	U     *Vector `json:"u,omitempty"`
	Basis Basis   `json:"basis"`
}

// MarshalJSON leaves out an unknown uncertainty, which has no number.
func (m Move) MarshalJSON() ([]byte, error) {
	wire := moveJSON{Foot: m.Foot, By: m.By, Basis: m.Basis}
	if m.Basis != Unknown {
		wire.U = &m.U
	}
	return json.Marshal(wire)
}

// UnmarshalJSON reads what MarshalJSON gives.
func (m *Move) UnmarshalJSON(data []byte) error {
	var wire moveJSON
	if err := json.Unmarshal(data, &wire); err != nil {
		return err
	}
	*m = Move{Foot: wire.Foot, By: wire.By, Basis: wire.Basis}
	switch {
	case m.Basis == Unknown:
		nan := units.Length(math.NaN())
		m.U = Vector{nan, nan}
	case wire.U != nil:
		m.U = *wire.U
	default:
		return &units.Fault{Code: units.Missing, Path: "/u", Want: "an uncertainty, or the basis unknown"}
	}
	return nil
}
