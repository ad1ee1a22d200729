package arc

import (
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Arc is the part of a turn that readings cover: a full turn less the largest
// hole between neighbours. Readings spread evenly over a full turn leave a hole
// of one step, readings at one place cover nothing. The zero value, without a
// hole, is of no readings.
type Arc struct {
	Covered units.Angle `json:"covered"` // from 0 up to but not including 360 degrees
	Hole    units.Angle `json:"hole"`    // the largest between neighbours; both together are a full turn
	Middle  units.Clock `json:"middle"`  // of what is covered, as the set's view names it, from 0 up to but not including 360 degrees
}

// Of returns the arc that the readings of a set cover, across 12 o'clock too. Of
// several holes equally large that one counts which ends first, clockwise from 12
// o'clock in the library's view: readings at the quarters cover from 12 to 9. Only
// the clock positions and the view are used. It refuses a set without readings
// (Missing, at /readings), positions that are not finite (/readings/2/at) and a
// view that is not known (/view). Exact to some rounding units of a full turn.
func Of(set align.Set) (Arc, error) {
	var faults check.Faults
	var root check.Path
	list := root.Field("readings")
	if len(set.Readings) == 0 {
		faults.Add(units.Missing, list, nil, "at least one reading")
	}
	for i := range set.Readings {
		reading := list.Index(i)
		check.Finite(&faults, reading.Field("at"), set.Readings[i].At)
	}
	if set.View != align.FromMovable && set.View != align.FromStationary {
		faults.Add(units.OutOfRange, root.Field("view"), set.View, "a known view")
	}
	if err := faults.Err(); err != nil {
		return Arc{}, err
	}
	covered, hole, middle := arcOf(set.Readings, set.View)
	return Arc{covered, hole, set.View.Clock(middle).Normal()}, nil
}

// arcOf returns the arc that readings cover, the largest hole between
// neighbours, and the middle of the arc in the library's view, from 0 up to a turn
// and a half. There is one reading at least.
func arcOf(readings []align.Reading, view align.View) (arc, hole units.Angle, middle units.Clock) {
	at := make([]units.Clock, len(readings))
	for i := range readings {
		at[i] = view.Clock(readings[i].At).Normal()
	}
	slices.Sort(at)
	covered, start := covering(at)
	return angle(covered), angle(fullTurn - covered), start + covered/2
}

const fullTurn units.Clock = 360

// covering returns how many degrees the sorted, normal positions cover, and where
// that arc starts, going clockwise: where the largest hole ends.
func covering(at []units.Clock) (covered, start units.Clock) {
	last := at[len(at)-1]
	widest, start := at[0]+fullTurn-last, at[0]
	for i, t := range at[1:] {
		if hole := t - at[i]; hole > widest {
			widest, start = hole, t
		}
	}
	return fullTurn - widest, start
}

// angle converts a part of a turn from degrees.
func angle(c units.Clock) units.Angle { return units.Angle(c) * units.Degree }
