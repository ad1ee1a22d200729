package units

// TemperatureDifferenceUnit is a unit that a TemperatureDifference can be shown
// in. The zero value is the unit of the wire form.
type TemperatureDifferenceUnit uint8

// The units of temperature difference.
const (
	InKelvins TemperatureDifferenceUnit = iota
	InCelsiusDegrees
	InFahrenheitDegrees
)

var differences = quantity{
	name: "TemperatureDifference",
	units: []unit{
		InKelvins:           named("K", "1"),
		InCelsiusDegrees:    named("°C", "1", "C"),
		InFahrenheitDegrees: named("°F", "5/9", "F"),
	},
}

// ParseTemperatureDifference reads a difference with its unit, one of
//
//	K  °C (degC C)  °F (degF F)
//
// The unit tells a difference: "18 °F" is 10 K, "10 °C" as well.
//
// The number is a decimal one, as the package comment describes.
//
// The result is the float64 nearest to what the text denotes. The error is a
// *Fault: Missing, Malformed, Unknown (the unit), NotFinite or OutOfRange.
func ParseTemperatureDifference(s string) (TemperatureDifference, error) {
	x, err := differences.parse(s)
	return TemperatureDifference(x), err
}

// MustParseTemperatureDifference is ParseTemperatureDifference for tests and
// constants: it panics where that returns an error.
func MustParseTemperatureDifference(s string) TemperatureDifference {
	return must(ParseTemperatureDifference(s))
}

// String returns the wire form, in K: "10 K". It loses nothing:
// ParseTemperatureDifference gives d back.
func (d TemperatureDifference) String() string { return differences.wire(float64(d)) }

// Text returns d in a unit with so many digits after the point, halves rounded
// away from zero: "18.0 °F". It rounds the value that is held, which may stand
// a hair off the decimal number that was entered. It has no sign for zero. See
// MaxDigits for digits out of range; a unit that does not exist is taken for K.
func (d TemperatureDifference) Text(u TemperatureDifferenceUnit, digits int) string {
	return differences.text(float64(d), int(u), digits)
}

// In returns the number of units that d is, rounded at each of at most two
// steps, and NaN for a unit that does not exist.
func (d TemperatureDifference) In(u TemperatureDifferenceUnit) float64 {
	return differences.in(float64(d), int(u))
}

// MarshalText returns the wire form. A temperature difference that is not
// finite is a *Fault.
func (d TemperatureDifference) MarshalText() ([]byte, error) { return differences.marshal(float64(d)) }

// UnmarshalText reads what ParseTemperatureDifference reads. On an error it
// leaves d as it is.
func (d *TemperatureDifference) UnmarshalText(text []byte) error {
	return unmarshal(d, text, ParseTemperatureDifference)
}

// ParseTemperatureDifferenceUnit reads the name of a unit in any of the
// spellings of ParseTemperatureDifference. The error is a *Fault: Missing or
// Unknown.
func ParseTemperatureDifferenceUnit(s string) (TemperatureDifferenceUnit, error) {
	u, err := differences.parseUnit(s)
	return TemperatureDifferenceUnit(u), err
}

// String returns the name of the unit: "°F".
func (u TemperatureDifferenceUnit) String() string { return differences.unitName(int(u)) }

// MarshalText returns the name of the unit. A unit that does not exist is a
// *Fault.
func (u TemperatureDifferenceUnit) MarshalText() ([]byte, error) {
	return differences.marshalUnit(int(u))
}

// UnmarshalText reads what ParseTemperatureDifferenceUnit reads. On an error it
// leaves u as it is.
func (u *TemperatureDifferenceUnit) UnmarshalText(text []byte) error {
	return unmarshal(u, text, ParseTemperatureDifferenceUnit)
}
