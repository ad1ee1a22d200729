package softfoot

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// AtShaft is what the probes of an alignment saw while one foot was loosened, all
// others tight: how the shaft moved at the station of that foot. Take it from a
// fit before and a fit after, or from following the move.
type AtShaft struct {
	Y        units.Length `json:"y"`        // of the loosened foot, across, positive towards 3 o'clock; not zero
	Up       units.Length `json:"up"`       // of the shaft there
	Sideways units.Length `json:"sideways"` // of the shaft there, positive towards 3 o'clock
}

// Rolling returns the lift of the foot when the machine moves as a rigid body,
// its shaft at the given height above the feet: it rises, and rolls as its shaft
// goes sideways,
//
//	lift = up - (y/height) sideways
//
// It refuses numbers that are not finite (/up), a foot that is under the shaft
// (/y), a height that is not above zero (/height), and a lift that cannot be reckoned
// with (OutOfRange).
func (a AtShaft) Rolling(height units.Length) (units.Length, error) {
	var faults check.Faults
	var root check.Path
	a.check(&faults)
	check.Positive(&faults, root.Field("height"), height, "a height of the shaft centreline above the feet")
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return lifted(a.Up - units.Length(float64(a.Y/height)*float64(a.Sideways)))
}

// Hinged returns the lift of the foot when the frame swings about the foot across
// from it, at the given place across, which its bolt holds down:
//
//	lift = up (y - across)/(-across)
//
// With the shaft midway that is twice what the shaft shows. It suits a frame that
// bends better than [AtShaft.Rolling], and has no need of Sideways. It refuses
// numbers that are not finite (/up), a foot that is under the shaft (/y), feet that
// are not on either side of the shaft (Conflict, at /across), and a lift that cannot
// be reckoned with (OutOfRange).
func (a AtShaft) Hinged(across units.Length) (units.Length, error) {
	var faults check.Faults
	var root check.Path
	placed := a.check(&faults)
	at := root.Field("across")
	if check.Finite(&faults, at, across) {
		if max(across, -across) < check.Least {
			faults.Add(units.Missing, at, across, "a place across that is not under the shaft")
		} else if placed && (across > 0) == (a.Y > 0) {
			faults.Add(units.Conflict, at, across, "a place on the other side of the shaft than y")
		}
	}
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return lifted(units.Length(float64(a.Up) * float64((a.Y-across)/-across)))
}

// lifted returns the lift, if it can be one.
func lifted(lift units.Length) (units.Length, error) {
	if !check.Sound(lift) {
		return 0, &units.Fault{Code: units.OutOfRange, Want: "places and a motion of the shaft of a lift that can be reckoned with"}
	}
	return lift, nil
}

// check tells whether it is known where the foot stands.
func (a AtShaft) check(faults *check.Faults) (placed bool) {
	var root check.Path
	placed = check.Finite(faults, root.Field("y"), a.Y)
	if placed && max(a.Y, -a.Y) < check.Least {
		faults.Add(units.Missing, root.Field("y"), a.Y, "a place across that is not under the shaft")
		placed = false
	}
	check.Finite(faults, root.Field("up"), a.Up)
	check.Finite(faults, root.Field("sideways"), a.Sideways)
	return placed
}
