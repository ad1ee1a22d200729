package units

import "math"

// Slope is the inclination of a line as the ratio of its rise to its run: the
// tangent of the angle. It has no unit of its own; 1 mm/m, 1 mil/in and 0.001
// are the same slope.
//
// Held to the last bit: MillimetrePerMetre == MilPerInch, 10*MillimetrePerMetre
// == MillimetrePer100Millimetres, and Mil.Per(Inch) == MilPerInch. Not held: a
// thousandth is not a float64, so MilPerInch added up ten times is not
// 10*MilPerInch, and s.Over(run).Per(run) may differ from s in the last bit. A
// slope and an angle differ (1 mm/m is an angle of 1 mrad less 3.3e-7 of it),
// so the step from one to the other has a name.
//
// The zero value is parallel.
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
