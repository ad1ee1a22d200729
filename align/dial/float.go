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
// dials. Derived here: float adds the same to both, the slope with opposite
// signs.
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
			Reading: rootSum(a.U.Reading, b.U.Reading),
			Radius:  rootSum(a.U.Radius, b.U.Radius),
			Sag:     rootSum(a.U.Sag, b.U.Sag),
			Clock:   max(a.U.Clock, b.U.Clock), // one carrier, one clock
		},
	}
	for i := range f.Readings {
		f.Readings[i] = less(a.Readings[i], b.Readings[i])
	}
	return f, nil
}

func checkPair(a, b Face) error {
	var faults check.Faults
	var root check.Path
	atA, atB := root.Field("a"), root.Field("b")
	checkFace(&faults, atA, a)
	checkFace(&faults, atB, b)
	if a.Far != b.Far {
		faults.Add(units.Conflict, atB.Field("far"), b.Far, "both dials on the same side")
	}
	list := atB.Field("readings")
	if len(a.Readings) != len(b.Readings) {
		faults.Add(units.Conflict, list, len(b.Readings), "as many readings as the other dial has")
		return faults.Err()
	}
	for i, r := range b.Readings {
		if r.At.Normal() != a.Readings[i].At.Opposite() {
			reading := list.Index(i)
			faults.Add(units.Conflict, reading.Field("at"), r.At, a.Readings[i].At.Opposite().String()+", opposite the other dial")
		}
	}
	return faults.Err()
}

func checkFace(faults *check.Faults, at check.Path, f Face) {
	check.Positive(faults, at.Field("diameter"), f.Diameter, "a diameter")
	check.Finite(faults, at.Field("sag"), f.Sag)
	checkRound(faults, at.Field("readings"), f.Readings)
}

// rootSum combines two independent standard uncertainties.
func rootSum(u, v units.Length) units.Length {
	return units.Length(math.Sqrt(float64(u*u) + float64(v*v)))
}
