package units

// TemperatureUnit is a unit that a Temperature can be shown in. The zero value
// is the unit of the wire form.
type TemperatureUnit uint8

// The units of temperature.
const (
	InCelsius TemperatureUnit = iota
	InFahrenheit
	InKelvin
)

var temperatures = quantity{
	name: "Temperature",
	units: []unit{
		InCelsius:    named("°C", "1", "C"),
		InFahrenheit: named("°F", "5/9", "F").from("32"),
		InKelvin:     named("K", "1").from("273.15"),
	},
}

// ParseTemperature reads a temperature with its unit, one of
//
//	°C (degC C)  °F (degF F)  K
//
// The unit tells a point: "68 °F" is 20 degrees C. Nothing is said here about
// what is possible, a temperature below absolute zero is read like any other.
//
// The number is a decimal one, as the package comment describes.
//
// The result is the float64 nearest to what the text denotes. The error is a
// *Fault: Missing, Malformed, Unknown (the unit), NotFinite or OutOfRange.
func ParseTemperature(s string) (Temperature, error) {
	x, err := temperatures.parse(s)
	if err != nil {
		return Temperature{}, err
	}
	return Celsius(x), nil
}

// MustParseTemperature is ParseTemperature for tests and constants: it panics
// where that returns an error.
func MustParseTemperature(s string) Temperature { return must(ParseTemperature(s)) }

// String returns the wire form, in degrees C: "25.3 °C". It loses nothing:
// ParseTemperature gives t back.
func (t Temperature) String() string { return temperatures.wire(t.Celsius()) }

// Text returns t in a unit with so many digits after the point, halves rounded
// away from zero: "77.5 °F". It rounds the value that is held, which may stand
// a hair off the decimal number that was entered. It has no sign for zero. See
// MaxDigits for digits out of range; a unit that does not exist is taken for
// degrees C.
func (t Temperature) Text(u TemperatureUnit, digits int) string {
	return temperatures.text(t.Celsius(), int(u), digits)
}

// In returns the number of units that t is, rounded at each of at most three
// steps, and NaN for a unit that does not exist.
func (t Temperature) In(u TemperatureUnit) float64 { return temperatures.in(t.Celsius(), int(u)) }

// MarshalText returns the wire form. A temperature that is not finite is a
// *Fault.
func (t Temperature) MarshalText() ([]byte, error) { return temperatures.marshal(t.Celsius()) }

// UnmarshalText reads what ParseTemperature reads. On an error it leaves t as
// it is.
func (t *Temperature) UnmarshalText(text []byte) error { return unmarshal(t, text, ParseTemperature) }

// ParseTemperatureUnit reads the name of a unit in any of the spellings of
// ParseTemperature. The error is a *Fault: Missing or Unknown.
func ParseTemperatureUnit(s string) (TemperatureUnit, error) {
	u, err := temperatures.parseUnit(s)
	return TemperatureUnit(u), err
}

// String returns the name of the unit: "°C".
func (u TemperatureUnit) String() string { return temperatures.unitName(int(u)) }

// MarshalText returns the name of the unit. A unit that does not exist is a
// *Fault.
func (u TemperatureUnit) MarshalText() ([]byte, error) { return temperatures.marshalUnit(int(u)) }

// UnmarshalText reads what ParseTemperatureUnit reads. On an error it leaves u
// as it is.
func (u *TemperatureUnit) UnmarshalText(text []byte) error {
	return unmarshal(u, text, ParseTemperatureUnit)
}
