package units

// ExpansionUnit is a unit that an Expansion can be shown in. The zero value is
// the unit of the wire form.
type ExpansionUnit uint8

// The units of coefficient of expansion.
const (
	InMicrometresPerMetreKelvin ExpansionUnit = iota
	InMicrometresPerMetreFahrenheitDegree
	InMilsPerInchFahrenheitDegree
	InPerKelvin
	InPerFahrenheitDegree
)

var expansions = quantity{
	name:  "Expansion",
	shift: 6,
	units: []unit{
		InMicrometresPerMetreKelvin:           named("um/m/K", "1/1e6", "um/m/°C", "um/m/C"),
		InMicrometresPerMetreFahrenheitDegree: named("um/m/°F", "9/5e6", "um/m/F"),
		InMilsPerInchFahrenheitDegree:         named("mil/in/°F", "9/5e3", "mil/in/F"),
		InPerKelvin:                           named("1/K", "1", "1/°C", "1/C"),
		InPerFahrenheitDegree:                 named("1/°F", "9/5", "1/F"),
	},
}

// ParseExpansion reads a coefficient with its unit, one of
//
//	um/m/K (µm/m/K um/m/°C um/m/degC um/m/C)
//	um/m/°F (µm/m/°F um/m/degF um/m/F)
//	mil/in/°F (mil/in/degF mil/in/F, and with thou)
//	1/K (1/°C 1/degC 1/C)
//	1/°F (1/degF 1/F)
//
// Before a unit that begins with a 1 there must be a space. A degree here is a
// difference: "6.3e-6 1/°F" is 11.34e-6 per kelvin.
//
// The number is a decimal one, as the package comment describes.
//
// The result is the float64 nearest to what the text denotes. The error is a
// *Fault: Missing, Malformed, Unknown (the unit), NotFinite or OutOfRange.
func ParseExpansion(s string) (Expansion, error) {
	x, err := expansions.parse(s)
	return Expansion(x), err
}

// MustParseExpansion is ParseExpansion for tests and constants: it panics where
// that returns an error.
func MustParseExpansion(s string) Expansion { return must(ParseExpansion(s)) }

// String returns the wire form, in um/m/K: "11.3 um/m/K". It loses nothing:
// ParseExpansion gives e back.
func (e Expansion) String() string { return expansions.wire(float64(e)) }

// Text returns e in a unit with so many digits after the point, halves rounded
// away from zero: "0.0063 mil/in/°F". It rounds the value that is held, which
// may stand a hair off the decimal number that was entered. It has no sign for
// zero. See MaxDigits for digits out of range; a unit that does not exist is
// taken for um/m/K.
func (e Expansion) Text(u ExpansionUnit, digits int) string {
	return expansions.text(float64(e), int(u), digits)
}

// In returns the number of units that e is, rounded at each of at most two
// steps, and NaN for a unit that does not exist.
func (e Expansion) In(u ExpansionUnit) float64 { return expansions.in(float64(e), int(u)) }

// MarshalText returns the wire form. A coefficient of expansion that is not
// finite is a *Fault.
func (e Expansion) MarshalText() ([]byte, error) { return expansions.marshal(float64(e)) }

// UnmarshalText reads what ParseExpansion reads. On an error it leaves e as it
// is.
func (e *Expansion) UnmarshalText(text []byte) error { return unmarshal(e, text, ParseExpansion) }

// ParseExpansionUnit reads the name of a unit in any of the spellings of
// ParseExpansion. The error is a *Fault: Missing or Unknown.
func ParseExpansionUnit(s string) (ExpansionUnit, error) {
	u, err := expansions.parseUnit(s)
	return ExpansionUnit(u), err
}

// String returns the name of the unit: "mil/in/°F".
func (u ExpansionUnit) String() string { return expansions.unitName(int(u)) }

// MarshalText returns the name of the unit. A unit that does not exist is a
// *Fault.
func (u ExpansionUnit) MarshalText() ([]byte, error) { return expansions.marshalUnit(int(u)) }

// UnmarshalText reads what ParseExpansionUnit reads. On an error it leaves u as
// it is.
func (u *ExpansionUnit) UnmarshalText(text []byte) error {
	return unmarshal(u, text, ParseExpansionUnit)
}
