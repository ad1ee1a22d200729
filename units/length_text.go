package units

// LengthUnit is a unit that a Length can be shown in. The zero value is the
// unit of the wire form.
type LengthUnit uint8

// The units of length.
const (
	InMillimetres LengthUnit = iota
	InMicrometres
	InNanometres
	InCentimetres
	InMetres
	InMils
	InInches
	InFeet
)

var lengths = quantity{
	name:  "Length",
	shift: -6,
	units: []unit{
		InMillimetres: named("mm", "1e6"),
		InMicrometres: named("um", "1e3"),
		InNanometres:  named("nm", "1"),
		InCentimetres: named("cm", "1e7"),
		InMetres:      named("m", "1e9"),
		InMils:        named("mil", "25400"),
		InInches:      named("in", "25.4e6", "inch", `"`, "″").onTape(),
		InFeet:        named("ft", "304.8e6", "'", "′").onTape(),
	},
}

// ParseLength reads a length with its unit, one of
//
//	mm  um (µm)  nm  cm  m  mil (thou)  in (inch " ″)  ft (' ′)
//
// The number is a decimal one, as the package comment describes. Before an inch
// or a foot it may be a fraction, or a whole number and a fraction below 1 with
// a space or a dash between: "7/16 in", `5-7/16"`. Whole feet may be followed
// by less than 12 inches: "3 ft 5 7/16 in", `3'-5 7/16"`. A sign stands in
// front and counts for all of it: "-5 7/16 in" is -(5 + 7/16) in.
//
// The result is the float64 nearest to what the text denotes. The error is a
// *Fault: Missing, Malformed, Unknown (the unit), NotFinite or OutOfRange.
func ParseLength(s string) (Length, error) {
	x, err := lengths.parse(s)
	return Length(x), err
}

// MustParseLength is ParseLength for tests and constants: it panics where that
// returns an error.
func MustParseLength(s string) Length { return must(ParseLength(s)) }

// String returns the wire form, in mm: "0.363764 mm". It loses nothing:
// ParseLength gives l back.
func (l Length) String() string { return lengths.wire(float64(l)) }

// Text returns l in a unit with so many digits after the point, halves rounded
// away from zero: "2.7 mil". It has no sign for zero. See MaxDigits for digits
// out of range; a unit that does not exist is taken for millimetres.
func (l Length) Text(u LengthUnit, digits int) string {
	return lengths.text(float64(l), int(u), digits)
}

// In returns the number of units that l is, rounded once, and NaN for a unit
// that does not exist.
func (l Length) In(u LengthUnit) float64 { return lengths.in(float64(l), int(u)) }

// MarshalText returns the wire form. A length that is not finite is a *Fault.
func (l Length) MarshalText() ([]byte, error) { return lengths.marshal(float64(l)) }

// UnmarshalText reads what ParseLength reads. On an error it leaves l as it is.
func (l *Length) UnmarshalText(text []byte) error { return unmarshal(l, text, ParseLength) }

// ParseLengthUnit reads the name of a unit in any of the spellings of
// ParseLength. The error is a *Fault: Missing or Unknown.
func ParseLengthUnit(s string) (LengthUnit, error) {
	u, err := lengths.parseUnit(s)
	return LengthUnit(u), err
}

// String returns the name of the unit: "mil".
func (u LengthUnit) String() string { return lengths.unitName(int(u)) }

// MarshalText returns the name of the unit. A unit that does not exist is a
// *Fault.
func (u LengthUnit) MarshalText() ([]byte, error) { return lengths.marshalUnit(int(u)) }

// UnmarshalText reads what ParseLengthUnit reads. On an error it leaves u as it
// is.
func (u *LengthUnit) UnmarshalText(text []byte) error { return unmarshal(u, text, ParseLengthUnit) }
