package flange

import (
	"encoding/json"
	"math"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Shim is what goes under the flange at one bolt, on top of what is there now.
type Shim struct {
	Bolt      Bolt
	Thickness units.Length // not below zero

	// U is the standard uncertainty of how much thicker this shim is than the
	// thinnest, with the place of the bolts exact: that of s . (r u - r_0 u_0). The
	// thinnest is zero by choice, and its U is zero; where more than one is zero to
	// 1 nm, the first of them counts as it. NaN when Basis is Unknown.
	U     units.Length
	Basis align.Basis // where U comes from
	DoF   float64     // degrees of freedom of U, see align.CoverageFactor; zero: none to count
}

// shimOver returns a shim without its thickness, for a bolt that stands arm away
// from that of the thinnest:
//
//	u^2 = arm' V arm        V: covariance of the two slopes
func shimOver(off *align.Estimate, arm place, bolt Bolt) Shim {
	s := Shim{Bolt: bolt, Basis: off.Cov.Basis, DoF: off.Cov.EffectiveDoF([4]float64{1: arm.horizontal, 3: arm.vertical})}
	u, r := off.Cov.Standard(), off.Cov.Correlation()[1][3]
	h := float64(arm.horizontal * float64(u.Horizontal.Slope))
	v := float64(arm.vertical * float64(u.Vertical.Slope))
	square := float64(h*h) + float64(2*r*h*v) + float64(v*v)
	s.U = units.Length(math.Sqrt(max(0, square))) // rounding may take slopes that err alike below zero
	return s
}

// shimJSON is the wire form of a Shim. U is absent where it is unknown.
type shimJSON struct {
	Bolt      Bolt          `json:"bolt"`
	Thickness units.Length  `json:"thickness"`
	U         *units.Length `json:"u,omitempty"`
	Basis     align.Basis   `json:"basis"`
	DoF       float64       `json:"dof,omitzero"`
}

// MarshalJSON leaves out an unknown uncertainty, which has no number.
func (s Shim) MarshalJSON() ([]byte, error) {
	wire := shimJSON{Bolt: s.Bolt, Thickness: s.Thickness, Basis: s.Basis, DoF: s.DoF}
	if s.Basis != align.Unknown {
		wire.U = &s.U
	}
	return json.Marshal(wire)
}

// UnmarshalJSON reads what MarshalJSON gives. It refuses a thickness below zero, an
// uncertainty that is missing (Missing), negative (OutOfRange), or does not go with
// the basis (Conflict), degrees of freedom of what is no scatter, and what cannot be
// read, as an [align.Covariance] does.
func (s *Shim) UnmarshalJSON(data []byte) error {
	wire, err := check.Read[shimJSON](data)
	if err != nil {
		return err
	}
	if err := wire.check(); err != nil {
		return err
	}
	u := units.Length(math.NaN())
	if wire.U != nil {
		u = *wire.U
	}
	*s = Shim{Bolt: wire.Bolt, Thickness: wire.Thickness, U: u, Basis: wire.Basis, DoF: wire.DoF}
	return nil
}

func (s *shimJSON) check() error {
	var faults check.Faults
	var root check.Path
	if s.Thickness < 0 {
		faults.Add(units.OutOfRange, root.Field("thickness"), s.Thickness, "a thickness not below zero")
	}
	at := root.Field("u")
	if s.U == nil {
		if s.Basis != align.Unknown {
			faults.Add(units.Missing, at, nil, "an uncertainty, or the basis unknown")
		}
	} else if s.Basis == align.Unknown || s.Basis == align.Declared && *s.U != 0 {
		faults.Add(units.Conflict, at, nil, "no uncertainty: the basis is "+s.Basis.String())
	} else if *s.U < 0 {
		faults.Add(units.OutOfRange, at, *s.U, "a standard uncertainty not below zero")
	}
	at = root.Field("dof")
	if s.DoF < 0 {
		faults.Add(units.OutOfRange, at, s.DoF, "degrees of freedom not below zero")
	} else if s.DoF > 0 && s.Basis != align.Scatter {
		faults.Add(units.Conflict, at, s.DoF, "none: only a scatter has them")
	}
	return faults.Err()
}
