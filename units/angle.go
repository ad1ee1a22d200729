package units

import "math"

// Angle is a plane angle in radians.
type Angle float64

// The angles that others are counted in.
const (
	Radian      Angle = 1
	Milliradian Angle = 1e-3
	Degree      Angle = math.Pi / 180 // rounded to the nearest float64: 360*Degree is a full turn to 2e-16 of it
)

// Slope returns the tangent of a.
func (a Angle) Slope() Slope { return Slope(math.Tan(float64(a))) }
