package units

import "math"

// Angle is a plane angle. It counts radians.
//
// Held to the last bit: 1000*Milliradian == Radian. Not held: a degree is not a
// float64, so 180*Degree is pi only to the nearest, and 18 degrees added up one
// by one are not 18*Degree; a position round a shaft is therefore a Clock. An
// angle and the slope of the same number differ by a third of its cube (1 mrad
// is a slope of 1 mm/m and 3.3e-7 of it), so the step from one to the other has
// a name.
//
// The zero value is no angle.
type Angle float64

// The angles that others are counted in.
const (
	Radian      Angle = 1
	Milliradian Angle = 1e-3
	Microradian Angle = 1e-6
	Degree      Angle = math.Pi / 180 // rounded to the nearest float64
)

// pi is written out so far that the rounding of a text in degrees cannot depend
// on what is cut off: a text of 64 bytes comes nowhere near so close to a tie.
const pi = "3.14159265358979323846264338327950288419716939937510" +
	"58209749445923078164062862089986280348253421170679"

// Slope returns the tangent of a.
func (a Angle) Slope() Slope { return Slope(math.Tan(float64(a))) }
