package arc

import (
	"encoding/json"
	"math"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// agreementJSON is the wire form of an Agreement. Chi2 and P are absent where they
// are unknown.
type agreementJSON struct {
	Difference align.Estimate `json:"difference"`
	Compared   int            `json:"compared"`
	Apart      bool           `json:"apart,omitzero"`
	Chi2       *float64       `json:"chi2,omitempty"`
	DoF        float64        `json:"dof,omitzero"`
	P          *float64       `json:"p,omitempty"`
}

// MarshalJSON leaves out an unknown probability, which has no number.
func (c Agreement) MarshalJSON() ([]byte, error) {
	wire := agreementJSON{Difference: c.Difference, Compared: c.Compared, Apart: c.Apart, DoF: c.DoF}
	if c.Difference.Cov.Basis != align.Unknown {
		wire.Chi2, wire.P = &c.Chi2, &c.P
	}
	return json.Marshal(wire)
}

// UnmarshalJSON reads what MarshalJSON gives. It refuses numbers that are missing
// (Missing), cannot be (OutOfRange), or do not go with the basis (Conflict), an
// agreement without its difference (Missing, at /difference), and what cannot be
// read, as an [align.Covariance] does.
func (c *Agreement) UnmarshalJSON(data []byte) error {
	wire, err := check.Read[agreementJSON](data, "difference")
	if err != nil {
		return err
	}
	if err := wire.check(); err != nil {
		return err
	}
	*c = Agreement{
		Difference: wire.Difference, Compared: wire.Compared, Apart: wire.Apart, DoF: wire.DoF,
		Chi2: math.NaN(), P: math.NaN(),
	}
	if wire.P != nil {
		c.Chi2, c.P = *wire.Chi2, *wire.P
	}
	return nil
}

func (w *agreementJSON) check() error {
	var faults check.Faults
	var root check.Path
	if w.Compared < 0 || w.Compared > 4 {
		faults.Add(units.OutOfRange, root.Field("compared"), w.Compared, "0 to 4 numbers")
	}
	if !(w.DoF >= 0) {
		faults.Add(units.OutOfRange, root.Field("dof"), w.DoF, "degrees of freedom not below zero")
	}
	w.number(&faults, root.Field("chi2"), w.Chi2, math.MaxFloat64)
	w.number(&faults, root.Field("p"), w.P, 1)
	return faults.Err()
}

// number asks for a number from zero to most, where the basis is known.
func (w *agreementJSON) number(faults *check.Faults, at check.Path, q *float64, most float64) {
	if w.Difference.Cov.Basis == align.Unknown {
		if q != nil {
			faults.Add(units.Conflict, at, *q, "no number: the basis is unknown")
		}
	} else if q == nil {
		faults.Add(units.Missing, at, nil, "a number, or the basis unknown")
	} else if !(*q >= 0 && *q <= most) {
		faults.Add(units.OutOfRange, at, *q, "a number from zero up to what it can be")
	}
}
