package dial

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Target is a wanted position in a maker's words: "0.05 mm low, coupling gap
// 0.02 mm open at the top". It says where the movable shaft is to lie relative
// to the stationary one. A target given as dial readings needs no type of its
// own: solve them by their method, sag included if they include it, and take
// the value.
type Target struct {
	Station  units.Length `json:"station,omitzero"`  // where the offset is meant; zero: at the coupling centre
	High     units.Length `json:"high,omitzero"`     // of the movable shaft; low is negative
	ToThree  units.Length `json:"to_three,omitzero"` // of the movable shaft, towards 3 o'clock as the view names it; towards 9 is negative
	Opening  units.Length `json:"opening,omitzero"`  // how much wider the gap is at OpenAt than opposite
	OpenAt   units.Clock  `json:"open_at"`           // as the view names it; left out it is 12
	Diameter units.Length `json:"diameter,omitzero"` // across which the opening is meant; needed with one
	View     align.View   `json:"view"`
}

// Centreline returns the target in the library's signs. It refuses numbers that
// are not finite, an opening without a diameter (Missing, at /diameter), and a target
// that cannot be reckoned with, as of an opening of 1 m across 1 nm (OutOfRange).
func (t Target) Centreline() (align.Centreline, error) {
	if err := t.check(); err != nil {
		return align.Centreline{}, err
	}
	w := align.Vector{Horizontal: t.ToThree, Vertical: t.High}
	if t.View == align.FromStationary {
		w.Horizontal = 0 - w.Horizontal
	}
	var tilt align.Tilt
	var steep error // the only one left: the rest was checked above
	if t.Opening != 0 {
		tilt, steep = align.SlopeFromGap(t.Opening, t.View.Clock(t.OpenAt), t.Diameter)
	}
	c := centrelineAt(w, tilt, t.Station)
	if steep != nil || align.Exact(c).Validate() != nil {
		return align.Centreline{}, &units.Fault{Code: units.OutOfRange, Want: "an opening, a diameter and a station of a target that can be reckoned with"}
	}
	return c, nil
}

func (t Target) check() error {
	var faults check.Faults
	var root check.Path
	check.Finite(&faults, root.Field("station"), t.Station)
	check.Finite(&faults, root.Field("high"), t.High)
	check.Finite(&faults, root.Field("to_three"), t.ToThree)
	check.Finite(&faults, root.Field("opening"), t.Opening)
	check.Finite(&faults, root.Field("open_at"), t.OpenAt)
	if t.Opening != 0 || t.Diameter != 0 {
		check.Positive(&faults, root.Field("diameter"), t.Diameter, "a diameter")
	}
	if t.View > align.FromStationary {
		faults.Add(units.OutOfRange, root.Field("view"), t.View, "a known view")
	}
	return faults.Err()
}
