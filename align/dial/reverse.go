package dial

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Reverse is two rim dials, each on one shaft and touching the other.
type Reverse struct {
	CarriedByStationary Rim        `json:"carried_by_stationary"` // touches the movable shaft
	CarriedByMovable    Rim        `json:"carried_by_movable"`    // touches the stationary shaft
	View                align.View `json:"view"`                  // both sets are named from this one standpoint
	Limits              Limits     `json:"limits,omitzero"`
}

// Sets returns the method's general form, for align.Fit and Predict: the dial
// carried by the stationary shaft, then that carried by the movable one.
// Readings of a return to the start are left out.
func (m Reverse) Sets() [2]align.Set {
	return [2]align.Set{
		m.CarriedByStationary.set(align.Stationary, m.View),
		m.CarriedByMovable.set(align.Movable, m.View),
	}
}

// Solve returns the centreline by the closed form
//
//	w = +-(R12 - R6)/2 at both stations     slope = (w_m - w_s)/(x_m - x_s)
//
// for the vertical plane, 3 and 9 in place of 12 and 6 for the horizontal; plus
// for the dial carried by the stationary shaft. It refuses input that is not
// sound with paths from the method (/carried_by_movable/sag), and two dials at
// one station (Conflict); a miss over the limits is a warning, and so are stations
// that stand the wrong way round (Suspect, at /carried_by_stationary/station): the
// dial carried by the stationary shaft touches the movable one, which lies on the
// positive side of the other dial.
func (m Reverse) Solve() (result Result, err error) {
	s, v := m.CarriedByStationary, m.CarriedByMovable
	var faults check.Faults
	var root check.Path
	if s.Station == v.Station && check.Sound(s.Station) {
		field := root.Field("carried_by_movable")
		faults.Add(units.Conflict, field.Field("station"), v.Station, "a station other than that of the other dial")
	}
	err = result.solve(&[2]part{
		{set: s.set(align.Stationary, m.View), readings: s.Readings, field: "carried_by_stationary"},
		{set: v.set(align.Movable, m.View), readings: v.Readings, field: "carried_by_movable"},
	}, m.Limits, &faults)
	if err != nil {
		return Result{}, err
	}
	onMovable, onStationary := result.Checks[0].Quarters, result.Checks[1].Quarters
	result.Value = through(
		s.Station, s.displaced(align.Stationary, onMovable),
		v.Station, v.displaced(align.Movable, onStationary))
	if s.Station < v.Station {
		result.Warnings = append(result.Warnings, units.Fault{
			Code: units.Suspect, Path: "/carried_by_stationary/station", Value: s.Station.String(),
			Want: "a station on the movable side of " + v.Station.String() + ", where the other dial touches the stationary shaft",
		})
	}
	return result, nil
}
