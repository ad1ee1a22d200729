package align

import (
	"encoding/json"
	"math"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// moveJSON is the wire form of a Move. U is absent where it is unknown.
type moveJSON struct {
	Foot  Foot    `json:"foot"`
	By    Vector  `json:"by"`
	U     *Vector `json:"u,omitempty"`
	Basis Basis   `json:"basis"`
	DoF   Freedom `json:"dof,omitzero"`
}

// MarshalJSON leaves out an unknown uncertainty, which has no number.
func (m Move) MarshalJSON() ([]byte, error) {
	wire := moveJSON{Foot: m.Foot, By: m.By, Basis: m.Basis, DoF: m.DoF}
	if m.Basis != Unknown {
		wire.U = &m.U
	}
	return json.Marshal(wire)
}

// UnmarshalJSON reads what MarshalJSON gives. It refuses an uncertainty that is
// missing (Missing), negative (OutOfRange), or does not go with the basis
// (Conflict), and what cannot be read, as a Covariance does.
func (m *Move) UnmarshalJSON(data []byte) error {
	wire, err := check.Read[moveJSON](data)
	if err != nil {
		return err
	}
	if err := wire.check(); err != nil {
		return err
	}
	*m = Move{Foot: wire.Foot, By: wire.By, Basis: wire.Basis, DoF: wire.DoF}
	if wire.U != nil {
		m.U = *wire.U
	} else {
		nan := units.Length(math.NaN())
		m.U = Vector{nan, nan}
	}
	return nil
}

func (m *moveJSON) check() error {
	var faults check.Faults
	var root check.Path
	at := root.Field("u")
	if m.U == nil {
		if m.Basis != Unknown {
			faults.Add(units.Missing, at, nil, "an uncertainty, or the basis unknown")
		}
	} else if m.Basis == Unknown || m.Basis == Declared && *m.U != (Vector{}) {
		faults.Add(units.Conflict, at, nil, "no uncertainty: the basis is "+m.Basis.String())
	} else { // a result may be larger than an input
		notBelowZero(&faults, at.Field("horizontal"), m.U.Horizontal)
		notBelowZero(&faults, at.Field("vertical"), m.U.Vertical)
	}
	at = root.Field("dof")
	m.DoF.check(&faults, at)
	if m.Basis != Scatter && m.DoF != (Freedom{}) {
		faults.Add(units.Conflict, at, nil, "none: only a scatter has them")
	}
	return faults.Err()
}

func notBelowZero(faults *check.Faults, at check.Path, u units.Length) {
	if u < 0 {
		faults.Add(units.OutOfRange, at, u, "a standard uncertainty not below zero")
	}
}
