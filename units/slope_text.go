package units

// SlopeUnit is a unit that a Slope can be shown in. The zero value is the
// unit of the wire form.
type SlopeUnit uint8

// The units of slope.
const (
	InMillimetresPerMetre SlopeUnit = iota
	InMilsPerInch
	InMillimetresPer100Millimetres
	InMicrometresPerMetre
	InMilsPerFoot
	InInchesPerFoot
	InInchesPerInch
	InMillimetresPerMillimetre
)

var slopes = quantity{
	name:  "Slope",
	shift: 3,
	units: []unit{
		InMillimetresPerMetre:          named("mm/m", "1/1e3"),
		InMilsPerInch:                  named("mil/in", "1/1e3"),
		InMillimetresPer100Millimetres: named("mm/100mm", "1/1e2", "mm/100 mm"),
		InMicrometresPerMetre:          named("um/m", "1/1e6"),
		InMilsPerFoot:                  named("mil/ft", "1/12e3"),
		InInchesPerFoot:                named("in/ft", "1/12"),
		InInchesPerInch:                named("in/in", "1"),
		InMillimetresPerMillimetre:     named("mm/mm", "1", "m/m"),
	},
}

// ParseSlope reads a slope with its unit, one of
//
//	mm/m  mil/in (thou/in)  mm/100mm (mm/100 mm)  um/m (µm/m)
//	mil/ft (thou/ft)  in/ft  in/in  mm/mm (m/m)
//
// A bare per cent sign is not among them, for it does not say of what, nor is
// mrad: that is an Angle.
//
// The number is a decimal one, as the package comment describes.
//
// The result is the float64 nearest to what the text denotes. The error is a
// *Fault: Missing, Malformed, Unknown (the unit), NotFinite or OutOfRange.
func ParseSlope(s string) (Slope, error) {
	x, err := slopes.parse(s)
	return Slope(x), err
}

// MustParseSlope is ParseSlope for tests and constants: it panics where that
// returns an error.
func MustParseSlope(s string) Slope { return must(ParseSlope(s)) }

// String returns the wire form, in mm/m: "0.4 mm/m". It loses nothing:
// ParseSlope gives s back.
func (s Slope) String() string { return slopes.wire(float64(s)) }

// Text returns s in a unit with so many digits after the point, halves rounded
// away from zero: "0.50 mil/in". It rounds the value that is held, which may
// stand a hair off the decimal number that was entered. It has no sign for
// zero. See MaxDigits for digits out of range; a unit that does not exist is
// taken for mm/m.
func (s Slope) Text(u SlopeUnit, digits int) string {
	return slopes.text(float64(s), int(u), digits)
}

// In returns the number of units that s is, rounded once, and NaN for a unit
// that does not exist.
func (s Slope) In(u SlopeUnit) float64 { return slopes.in(float64(s), int(u)) }

// MarshalText returns the wire form. A slope that is not finite is a *Fault.
func (s Slope) MarshalText() ([]byte, error) { return slopes.marshal(float64(s)) }

// UnmarshalText reads what ParseSlope reads. On an error it leaves s as it is.
func (s *Slope) UnmarshalText(text []byte) error { return unmarshal(s, text, ParseSlope) }

// ParseSlopeUnit reads the name of a unit in any of the spellings of
// ParseSlope. The error is a *Fault: Missing or Unknown.
func ParseSlopeUnit(s string) (SlopeUnit, error) {
	u, err := slopes.parseUnit(s)
	return SlopeUnit(u), err
}

// String returns the name of the unit: "mil/in".
func (u SlopeUnit) String() string { return slopes.unitName(int(u)) }

// MarshalText returns the name of the unit. A unit that does not exist is a
// *Fault.
func (u SlopeUnit) MarshalText() ([]byte, error) { return slopes.marshalUnit(int(u)) }

// UnmarshalText reads what ParseSlopeUnit reads. On an error it leaves u as it
// is.
func (u *SlopeUnit) UnmarshalText(text []byte) error { return unmarshal(u, text, ParseSlopeUnit) }
