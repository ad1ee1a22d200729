package align

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Foot is a station at which a machine stands on its feet: both feet of one end.
type Foot struct {
	Name string       `json:"name"`
	X    units.Length `json:"x"`          // signed station; zero is the coupling centre, not "not given"
	U    units.Length `json:"u,omitzero"` // standard uncertainty of X
}

// MostFeet is how many stations may be asked for at once. Ours: far more than any
// machine has.
const MostFeet = 1000

// Move is how far the feet of one station go: up is positive (shims equally
// under both feet), towards 3 o'clock is positive.
type Move struct {
	Foot  Foot
	By    Vector
	U     Vector  // standard uncertainty of By; NaN when Basis is Unknown
	Basis Basis   // where U comes from
	DoF   Freedom // degrees of freedom of U, where part of it comes from a scatter
}

// Corrections returns the move at every foot that takes the movable machine to
// its target, for an estimate that is what was found minus the target:
//
//	by = -(offset + slope*x)    u^2 = Voo + 2 x Vos + x^2 Vss + slope^2 u(x)^2
//
// in each plane. With more than two feet the moves lie on one line, so that the
// frame is not bent. To move the stationary machine instead, take the corrections
// of e.Times(-1).
//
// It refuses an empty list (Missing), one of more than MostFeet (OutOfRange), a name given twice (Duplicate), a station
// that is not finite (NotFinite) and a negative uncertainty (OutOfRange), with
// paths from /feet, and an estimate that is not finite, with paths from /value
// and /cov.
func (e Estimate) Corrections(feet ...Foot) ([]Move, error) {
	return e.AppendCorrections(make([]Move, 0, len(feet)), feet...)
}

// AppendCorrections is Corrections appended to dst; it allocates nothing where
// dst has room. On refusal dst is returned as it was.
func (e Estimate) AppendCorrections(dst []Move, feet ...Foot) ([]Move, error) {
	if err := checkCorrections(&e, feet); err != nil {
		return dst, err
	}
	for i := range feet {
		dst = append(dst, e.correction(&feet[i]))
	}
	return dst, nil
}

func (e *Estimate) correction(f *Foot) Move {
	w, u := e.Value.At(f.X), e.Cov.at(f.X)
	tilt := e.Value.Tilt()
	own := Vector{tilt.Horizontal.Over(f.U), tilt.Vertical.Over(f.U)} // what the foot's station brings in
	basis := e.Cov.Basis
	if f.U != 0 {
		basis = max(basis, Stated)
	}
	return Move{
		Foot: *f,
		By:   Vector{0 - w.Horizontal, 0 - w.Vertical}, // 0 - w, not -w: no negative zero
		U: Vector{
			units.Length(root2(float64(u.Horizontal), float64(own.Horizontal))),
			units.Length(root2(float64(u.Vertical), float64(own.Vertical))),
		},
		Basis: basis,
		DoF:   e.Cov.freedom(f.X, own),
	}
}

// freedom returns the degrees of freedom of w at station x beside uncertainties
// that are known.
func (c *Covariance) freedom(x units.Length, known Vector) Freedom {
	if c.Basis != Scatter {
		return Freedom{}
	}
	h, v := passing(x)
	square := func(u units.Length) float64 { return float64(mm(u) * mm(u)) }
	return Freedom{c.effective(h, square(known.Horizontal)), c.effective(v, square(known.Vertical))}
}

func checkCorrections(e *Estimate, feet []Foot) error {
	var faults check.Faults
	var root check.Path
	e.check(&faults, root)
	list := root.Field("feet")
	if len(feet) == 0 {
		faults.Add(units.Missing, list, nil, "at least one foot")
	}
	if !check.AtMost(&faults, list, len(feet), MostFeet, "feet") {
		return faults.Err()
	}
	for i := range feet {
		foot := list.Index(i)
		check.Finite(&faults, foot.Field("x"), feet[i].X)
		check.Uncertainty(&faults, foot.Field("u"), feet[i].U)
		if named(feet[:i], feet[i].Name) {
			faults.Add(units.Duplicate, foot.Field("name"), feet[i].Name, "a name that no other foot has")
		}
	}
	return faults.Err()
}

// named tells whether one of the feet has this name; no name is none.
func named(feet []Foot, name string) bool {
	for i := range feet {
		if name != "" && feet[i].Name == name {
			return true
		}
	}
	return false
}
