package units

// LinearSpeedUnit is a unit that a LinearSpeed can be shown in. The zero value
// is the unit of the wire form.
type LinearSpeedUnit uint8

// The units of linear speed.
const (
	InMillimetresPerSecond LinearSpeedUnit = iota
	InMetresPerSecond
	InInchesPerSecond
)

var linearSpeeds = quantity{
	name: "LinearSpeed",
	units: []unit{
		InMillimetresPerSecond: named("mm/s", "1"),
		InMetresPerSecond:      named("m/s", "1e3"),
		InInchesPerSecond:      named("in/s", "127/5"),
	},
}

// ParseLinearSpeed reads a speed with its unit, one of
//
//	mm/s  m/s  in/s
//
// The number is a decimal one, as the package comment describes.
//
// The result is the float64 nearest to what the text denotes. The error is a
// *Fault: Missing, Malformed, Unknown (the unit), NotFinite or OutOfRange.
func ParseLinearSpeed(s string) (LinearSpeed, error) {
	x, err := linearSpeeds.parse(s)
	return LinearSpeed(x), err
}

// MustParseLinearSpeed is ParseLinearSpeed for tests and constants: it panics
// where that returns an error.
func MustParseLinearSpeed(s string) LinearSpeed { return must(ParseLinearSpeed(s)) }

// String returns the wire form, in mm/s: "12 mm/s". It loses nothing:
// ParseLinearSpeed gives s back.
func (s LinearSpeed) String() string { return linearSpeeds.wire(float64(s)) }

// Text returns s in a unit with so many digits after the point, halves rounded
// away from zero: "1.13 in/s". It rounds the value that is held, which may
// stand a hair off the decimal number that was entered. It has no sign for
// zero. See MaxDigits for digits out of range; a unit that does not exist is
// taken for mm/s.
func (s LinearSpeed) Text(u LinearSpeedUnit, digits int) string {
	return linearSpeeds.text(float64(s), int(u), digits)
}

// In returns the number of units that s is, rounded at each of at most two
// steps, and NaN for a unit that does not exist.
func (s LinearSpeed) In(u LinearSpeedUnit) float64 { return linearSpeeds.in(float64(s), int(u)) }

// MarshalText returns the wire form. A linear speed that is not finite is a
// *Fault.
func (s LinearSpeed) MarshalText() ([]byte, error) { return linearSpeeds.marshal(float64(s)) }

// UnmarshalText reads what ParseLinearSpeed reads. On an error it leaves s as
// it is.
func (s *LinearSpeed) UnmarshalText(text []byte) error { return unmarshal(s, text, ParseLinearSpeed) }

// ParseLinearSpeedUnit reads the name of a unit in any of the spellings of
// ParseLinearSpeed. The error is a *Fault: Missing or Unknown.
func ParseLinearSpeedUnit(s string) (LinearSpeedUnit, error) {
	u, err := linearSpeeds.parseUnit(s)
	return LinearSpeedUnit(u), err
}

// String returns the name of the unit: "in/s".
func (u LinearSpeedUnit) String() string { return linearSpeeds.unitName(int(u)) }

// MarshalText returns the name of the unit. A unit that does not exist is a
// *Fault.
func (u LinearSpeedUnit) MarshalText() ([]byte, error) { return linearSpeeds.marshalUnit(int(u)) }

// UnmarshalText reads what ParseLinearSpeedUnit reads. On an error it leaves u
// as it is.
func (u *LinearSpeedUnit) UnmarshalText(text []byte) error {
	return unmarshal(u, text, ParseLinearSpeedUnit)
}
