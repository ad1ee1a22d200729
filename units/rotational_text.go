package units

// RotationalSpeedUnit is a unit that a RotationalSpeed can be shown in. The
// zero value is the unit of the wire form.
type RotationalSpeedUnit uint8

// The units of rotational speed.
const (
	InRevolutionsPerMinute RotationalSpeedUnit = iota
	InHertz
)

var rotationalSpeeds = quantity{
	name: "RotationalSpeed",
	units: []unit{
		InRevolutionsPerMinute: named("rpm", "1", "RPM", "r/min"),
		InHertz:                named("Hz", "60"),
	},
}

// ParseRotationalSpeed reads a speed with its unit, one of
//
//	rpm (RPM r/min)  Hz
//
// The number is a decimal one, as the package comment describes.
//
// The result is the float64 nearest to what the text denotes. The error is a
// *Fault: Missing, Malformed, Unknown (the unit), NotFinite or OutOfRange.
func ParseRotationalSpeed(s string) (RotationalSpeed, error) {
	x, err := rotationalSpeeds.parse(s)
	return RotationalSpeed(x), err
}

// MustParseRotationalSpeed is ParseRotationalSpeed for tests and constants: it
// panics where that returns an error.
func MustParseRotationalSpeed(s string) RotationalSpeed { return must(ParseRotationalSpeed(s)) }

// String returns the wire form, in rpm: "1780 rpm". It loses nothing:
// ParseRotationalSpeed gives s back.
func (s RotationalSpeed) String() string { return rotationalSpeeds.wire(float64(s)) }

// Text returns s in a unit with so many digits after the point, halves rounded
// away from zero: "29.7 Hz". It rounds the value that is held, which may stand
// a hair off the decimal number that was entered. It has no sign for zero. See
// MaxDigits for digits out of range; a unit that does not exist is taken for
// rpm.
func (s RotationalSpeed) Text(u RotationalSpeedUnit, digits int) string {
	return rotationalSpeeds.text(float64(s), int(u), digits)
}

// In returns the number of units that s is, rounded once, and NaN for a unit
// that does not exist.
func (s RotationalSpeed) In(u RotationalSpeedUnit) float64 {
	return rotationalSpeeds.in(float64(s), int(u))
}

// MarshalText returns the wire form. A rotational speed that is not finite is a
// *Fault.
func (s RotationalSpeed) MarshalText() ([]byte, error) { return rotationalSpeeds.marshal(float64(s)) }

// UnmarshalText reads what ParseRotationalSpeed reads. On an error it leaves s
// as it is.
func (s *RotationalSpeed) UnmarshalText(text []byte) error {
	return unmarshal(s, text, ParseRotationalSpeed)
}

// ParseRotationalSpeedUnit reads the name of a unit in any of the spellings of
// ParseRotationalSpeed. The error is a *Fault: Missing or Unknown.
func ParseRotationalSpeedUnit(s string) (RotationalSpeedUnit, error) {
	u, err := rotationalSpeeds.parseUnit(s)
	return RotationalSpeedUnit(u), err
}

// String returns the name of the unit: "rpm".
func (u RotationalSpeedUnit) String() string { return rotationalSpeeds.unitName(int(u)) }

// MarshalText returns the name of the unit. A unit that does not exist is a
// *Fault.
func (u RotationalSpeedUnit) MarshalText() ([]byte, error) {
	return rotationalSpeeds.marshalUnit(int(u))
}

// UnmarshalText reads what ParseRotationalSpeedUnit reads. On an error it
// leaves u as it is.
func (u *RotationalSpeedUnit) UnmarshalText(text []byte) error {
	return unmarshal(u, text, ParseRotationalSpeedUnit)
}
