package arc

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// checkForecast walks all that a forecast is given.
func checkForecast(expected align.Centreline, feet []align.Foot, sets []align.Set) error {
	var faults check.Faults
	var root check.Path
	checkCentreline(&faults, root.Field("expected"), expected)
	if len(feet) > 0 {
		_, err := align.Estimate{}.Corrections(feet...)
		faults.Adopt(root, err)
	}
	list := root.Field("sets")
	if len(sets) == 0 {
		faults.Add(units.Missing, list, nil, "at least one set of readings")
	}
	for i := range sets {
		set := list.Index(i)
		faults.Adopt(set, sets[i].Validate())
		if unstated(sets[i]) {
			u := set.Field("u")
			faults.Add(units.Missing, u.Field("reading"), nil, "the standard uncertainty of a reading: without one there is nothing to forecast")
		}
	}
	return faults.Err()
}

// unstated tells whether no reading of the set has an uncertainty.
func unstated(s align.Set) bool {
	for _, r := range s.Readings {
		if r.U != 0 {
			return false
		}
	}
	return s.U.Reading == 0
}

func checkCentreline(faults *check.Faults, at check.Path, c align.Centreline) {
	checkLine(faults, at.Field("horizontal"), c.Horizontal)
	checkLine(faults, at.Field("vertical"), c.Vertical)
}

func checkLine(faults *check.Faults, at check.Path, l align.Line) {
	check.Finite(faults, at.Field("offset"), l.Offset)
	check.Finite(faults, at.Field("slope"), l.Slope)
}
