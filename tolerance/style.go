package tolerance

import (
	"math"

	"example.org/collinear/units"
)

// Style is how a verdict is put into words. The zero value is in hundredths of a
// millimetre and of a millimetre per metre.
type Style struct {
	Length       units.LengthUnit `json:"length"`
	LengthDigits int              `json:"length_digits,omitzero"` // decimals; zero: enough to see 0.01 mm in the unit; negative: none
	Slope        units.SlopeUnit  `json:"slope"`
	SlopeDigits  int              `json:"slope_digits,omitzero"` // decimals; zero: enough to see 0.01 mm/m in the unit; negative: none
}

// String puts the verdict into words in the zero [Style].
func (v Verdict) String() string { return v.Text(Style{}) }

// Text puts the outcome and the governing item into words, for one "within,
// offset 0.04 mm of 0.10 mm". The rule and the probability are told by
// [Verdict.Chance].
func (v Verdict) Text(s Style) string {
	if !outcomeNames.Known(uint8(v.Outcome)) {
		return "no verdict"
	}
	return v.Outcome.String() + ", " + v.Governing().Text(s)
}

// String puts the item into words in the zero [Style].
func (i Item) String() string { return i.Text(Style{}) }

// Text puts the item into words: "offset 0.04 mm of 0.10 mm", "vertical tilt at
// the stationary flex plane 0.60 mm/m of 0.50 mm/m". Where found and limit would
// look the same and are not within, as many digits more are shown as it takes to
// tell them apart.
func (i Item) Text(s Style) string {
	if !quantityNames.Known(uint8(i.Of)) {
		return "nothing"
	}
	digits := s.digits(i.Of)
	var found, limit string
	for more := range units.MaxDigits {
		found, limit = s.amount(i.Of, i.Found, digits+more), s.amount(i.Of, i.Limit, digits+more)
		if found != limit || i.Within() {
			break
		}
	}
	return i.name() + " " + found + " of " + limit
}

func (i Item) name() string {
	name := spoken[i.Of]
	if i.Plane == Horizontal || i.Plane == Vertical {
		return i.Plane.String() + " " + name
	}
	return name
}

var spoken = [...]string{
	Offset:         "offset",
	Slope:          "slope",
	FlexStationary: "tilt at the stationary flex plane",
	FlexMovable:    "tilt at the movable flex plane",
}

// amount shows a rounded to the Resolution, as it was compared: a slope of 0.125
// mm/m that is held a hair above would else look larger than a limit held a hair
// below.
func (s Style) amount(q Quantity, a Amount, digits int) string {
	nm := q.nanometres(a)
	if q == Offset {
		return nm.Text(s.Length, digits)
	}
	return nm.Per(units.Metre).Text(s.Slope, digits)
}

func (s Style) digits(q Quantity) int {
	digits, hundredth := s.SlopeDigits, (units.MillimetrePerMetre / 100).In(s.Slope)
	if q == Offset {
		digits, hundredth = s.LengthDigits, (units.Millimetre / 100).In(s.Length)
	}
	if digits != 0 {
		return digits // below zero shows none
	}
	const rounding = 1 + 1e-9
	return max(0, int(math.Ceil(-math.Log10(hundredth*rounding))))
}
