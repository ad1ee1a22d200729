package units

import "math"

// Slope is the inclination of a line as the ratio of its rise to its run: the
// tangent of the angle. It has no unit of its own; 1 mm/m, 1 mil/in and 0.001
// are the same slope. A slope and an angle differ (1 mrad is 1 mm/m less
// 3.3e-7 of it), so the step from one to the other has a name.
type Slope float64

// The slopes that others are counted in.
const (
	MillimetrePerMetre          Slope = 1e-3
	MilPerInch                  Slope = 1e-3
	MillimetrePer100Millimetres Slope = 1e-2
)

// Over returns the rise of the slope over a run: the gap that a slope opens
// across a diameter, or the drop from one foot to the other.
func (s Slope) Over(run Length) Length { return Length(float64(s) * float64(run)) }

// Angle returns the angle whose tangent is s.
func (s Slope) Angle() Angle { return Angle(math.Atan(float64(s))) }
