package dial

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// WithoutFloat returns one face from two dials on one carrier, on the same side,
// half a turn apart, whose difference no axial float of the shafts can touch:
//
//	a(t) - b(t)        read at t of dial a, across the sum of both diameters
//
// Reading i of b was taken together with reading i of a, and its At is where
// dial b touched: opposite. Sags add up; uncertainties combine as of independent
// dials, that of a reading stated where both dials state it; of the two clock
// uncertainties the larger is taken, since one carrier has one clock. Derived
// here: float adds the same to both, the slope with opposite signs.
//
// It refuses diameters that are not above zero, dials on different sides
// (Conflict, at /b/far), sweeps of different length (Conflict, at /b/readings),
// a reading of b that is not opposite its partner (Conflict, at
// /b/readings/1/at), and numbers that are not finite.
func WithoutFloat(a, b Face) (Face, error) {
	if err := checkPair(a, b); err != nil {
		return Face{}, err
	}
	f := Face{
		Diameter: a.Diameter + b.Diameter, Far: a.Far, Sag: a.Sag + b.Sag,
		Readings: make([]align.Reading, len(a.Readings)),
		U: align.Uncertainty{
			Radius: rootSum(a.U.Radius, b.U.Radius),
			Sag:    rootSum(a.U.Sag, b.U.Sag),
			Clock:  max(a.U.Clock, b.U.Clock), // one carrier, one clock
		},
	}
	for i := range f.Readings {
		f.Readings[i] = less(a.reading(i), b.reading(i))
	}
	return f, nil
}

// reading returns reading i with the uncertainty that counts for it.
func (f *Face) reading(i int) align.Reading {
	r := f.Readings[i]
	if r.U == 0 {
		r.U = f.U.Reading
	}
	return r
}

func checkPair(a, b Face) error {
	var faults check.Faults
	var root check.Path
	checkFace(&faults, "a", a)
	checkFace(&faults, "b", b)
	at := root.Field("b")
	if a.Far != b.Far {
		faults.Add(units.Conflict, at.Field("far"), b.Far, "both dials on the same side")
	}
	list := at.Field("readings")
	if len(a.Readings) != len(b.Readings) {
		faults.Add(units.Conflict, list, len(b.Readings), "as many readings as the other dial has")
		return faults.Err()
	}
	for i, r := range b.Readings {
		other := a.Readings[i].At
		if check.Sound(r.At) && check.Sound(other) && !samePlace(r.At, other.Opposite()) {
			reading := list.Index(i)
			faults.Add(units.Conflict, reading.Field("at"), r.At, degrees(other.Opposite())+", opposite the other dial")
		}
	}
	return faults.Err()
}

// checkFace asks for a sound face. Either carrier will do: both see the same.
func checkFace(faults *check.Faults, field string, f Face) {
	var root check.Path
	at := root.Field(field)
	check.Positive(faults, at.Field("diameter"), f.Diameter, "a diameter")
	one := part{field: field, diameter: f.Diameter, swept: true}
	set := f.set(align.Stationary, align.FromMovable)
	set.Readings = f.Readings // with the return to the start
	for _, fault := range units.Faults(set.Validate()) {
		fault.Path = one.newPath(fault.Path)
		if !faults.Has(fault.Path) {
			faults.Append(fault)
		}
	}
}

// rootSum combines two independent standard uncertainties.
func rootSum(u, v units.Length) units.Length {
	return units.Length(math.Sqrt(float64(u*u) + float64(v*v)))
}
