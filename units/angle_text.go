package units

// AngleUnit is a unit that an Angle can be shown in. The zero value is the
// unit of the wire form.
type AngleUnit uint8

// The units of angle.
const (
	InRadians AngleUnit = iota
	InMilliradians
	InMicroradians
	InDegrees
)

var angles = quantity{
	name: "Angle",
	units: []unit{
		InRadians:      named("rad", "1"),
		InMilliradians: named("mrad", "1/1e3"),
		InMicroradians: named("urad", "1/1e6"),
		InDegrees:      named("deg", pi+"/180"),
	},
}

// ParseAngle reads an angle with its unit, one of
//
//	rad  mrad  urad (µrad)  deg (°)
//
// The number is a decimal one, as the package comment describes.
//
// The result is the float64 nearest to what the text denotes. The error is a
// *Fault: Missing, Malformed, Unknown (the unit), NotFinite or OutOfRange.
func ParseAngle(s string) (Angle, error) {
	x, err := angles.parse(s)
	return Angle(x), err
}

// MustParseAngle is ParseAngle for tests and constants: it panics where that
// returns an error.
func MustParseAngle(s string) Angle { return must(ParseAngle(s)) }

// String returns the wire form, in rad: "0.0005 rad". It loses nothing:
// ParseAngle gives a back.
func (a Angle) String() string { return angles.wire(float64(a)) }

// Text returns a in a unit with so many digits after the point, halves rounded
// away from zero: "22.5 deg". It rounds the value that is held, which may stand
// a hair off the decimal number that was entered. It has no sign for zero. See
// MaxDigits for digits out of range; a unit that does not exist is taken for
// rad.
func (a Angle) Text(u AngleUnit, digits int) string {
	return angles.text(float64(a), int(u), digits)
}

// In returns the number of units that a is, rounded at each of at most two
// steps, and NaN for a unit that does not exist.
func (a Angle) In(u AngleUnit) float64 { return angles.in(float64(a), int(u)) }

// MarshalText returns the wire form. An angle that is not finite is a *Fault.
func (a Angle) MarshalText() ([]byte, error) { return angles.marshal(float64(a)) }

// UnmarshalText reads what ParseAngle reads. On an error it leaves a as it is.
func (a *Angle) UnmarshalText(text []byte) error { return unmarshal(a, text, ParseAngle) }

// ParseAngleUnit reads the name of a unit in any of the spellings of
// ParseAngle. The error is a *Fault: Missing or Unknown.
func ParseAngleUnit(s string) (AngleUnit, error) {
	u, err := angles.parseUnit(s)
	return AngleUnit(u), err
}

// String returns the name of the unit: "mrad".
func (u AngleUnit) String() string { return angles.unitName(int(u)) }

// MarshalText returns the name of the unit. A unit that does not exist is a
// *Fault.
func (u AngleUnit) MarshalText() ([]byte, error) { return angles.marshalUnit(int(u)) }

// UnmarshalText reads what ParseAngleUnit reads. On an error it leaves u as it
// is.
func (u *AngleUnit) UnmarshalText(text []byte) error { return unmarshal(u, text, ParseAngleUnit) }
