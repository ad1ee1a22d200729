package arc

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// statedAt returns the standard uncertainty that is stated for reading i, or zero.
func statedAt(s align.Set, i int) units.Length {
	if u := s.Readings[i].U; u != 0 {
		return u
	}
	return s.U.Reading
}

// deviationAt returns the standard deviation that a reading of uncertainty u has
// on a centreline: u, and what the uncertainty of its own angle adds by the slope
// of the harmonic there (JCGM 100:2008, 5.1.2).
func deviationAt(s align.Set, c align.Centreline, i int, u units.Length) units.Length {
	if s.U.Angle == 0 {
		return u
	}
	byAngle := slopeAt(s, c, s.Readings[i].At) * units.Length(s.U.Angle)
	return units.Length(math.Sqrt(float64(u*u) + float64(byAngle*byAngle)))
}

// slopeAt returns how a reading grows with its clock position, per radian. Of a
// harmonic that is half the difference of the readings a quarter ahead and a
// quarter behind.
func slopeAt(s align.Set, c align.Centreline, at units.Clock) units.Length {
	at = at.Normal() // a quarter on from the largest position would be too large
	return predicted(s, c, at-units.Three, at+units.Three)[1].Value / 2
}

// predicted is what a set that was fitted shows at positions that can be reckoned with,
// on a centreline that can: Predict has nothing to refuse then.
func predicted(s align.Set, c align.Centreline, at ...units.Clock) []align.Reading {
	readings, _ := s.Predict(c, at...)
	return readings
}
