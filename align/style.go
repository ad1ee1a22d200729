package align

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Style is how a move is put into words. The zero value is in hundredths of a
// millimetre, seen from behind the movable machine, with the clock's own words.
type Style struct {
	Unit   units.LengthUnit `json:"unit"`
	Digits int              `json:"digits,omitzero"` // decimals; zero: enough to see 0.01 mm in the unit (0.01 mm, 0.1 mil, 0.0001 in, 1 um); negative: none
	View   View             `json:"view"`            // where the crew stands that reads the words; the view of the readings is not carried here
	Three  string           `json:"three,omitempty"` // the crew's own name for what lies at its 3 o'clock ("north"), and so on
	Nine   string           `json:"nine,omitempty"`
	Twelve string           `json:"twelve,omitempty"` // on a vertical machine, where nothing is raised: the mark at 12
	Six    string           `json:"six,omitempty"`
}

// String puts the move into words in the zero [Style]: in hundredths of a
// millimetre, as seen from behind the movable machine. It does not know the view
// of the readings.
func (m Move) String() string { return m.Text(Style{}) }

// Text puts the move into words, for one "inboard: lower 2.7 mil, push 4.0 mil
// towards 9 o'clock". A move that rounds to nothing is left: "inboard: leave".
func (m Move) Text(s Style) string {
	words := s.inWords(m.By)
	if m.Foot.Name == "" {
		return words
	}
	return m.Foot.Name + ": " + words
}

func (s Style) inWords(by Vector) string {
	if !check.Sound(by.Vertical) || !check.Sound(by.Horizontal) {
		return "unknown, the move is not a number"
	}
	vertical, horizontal := s.Height(by.Vertical), s.Sideways(by.Horizontal)
	if vertical == "" && horizontal == "" {
		return "leave"
	}
	if vertical != "" && horizontal != "" {
		return vertical + ", " + horizontal
	}
	if s.upright() {
		return vertical + horizontal // one of them is nothing
	}
	if vertical == "" {
		return "leave the height, " + horizontal
	}
	return vertical + ", leave sideways"
}

// upright tells whether the machine's axis stands: 12 and 6 are marks then.
func (s Style) upright() bool { return s.Twelve != "" || s.Six != "" }

// Height puts a vertical move alone into words, for one "raise 0.21 mm"; nothing
// if it rounds to nothing or is not a number.
func (s Style) Height(by units.Length) string {
	amount := s.amount(by)
	if amount == "" {
		return ""
	}
	if s.upright() {
		return "push " + amount + " towards " + pick(by > 0, s.Twelve, s.Six, "12 o'clock", "6 o'clock")
	}
	if by > 0 {
		return "raise " + amount
	}
	return "lower " + amount
}

// Sideways puts a horizontal move alone into words, for one "push 0.27 mm towards
// 3 o'clock"; nothing if it rounds to nothing or is not a number.
func (s Style) Sideways(by units.Length) string {
	amount := s.amount(by)
	if amount == "" {
		return ""
	}
	towardsThree := (by > 0) != (s.View == FromStationary)
	return "push " + amount + " towards " + pick(towardsThree, s.Three, s.Nine, "3 o'clock", "9 o'clock")
}

// pick chooses the caller's name for one side or the other, or the clock's.
func pick(first bool, one, other, clockOne, clockOther string) string {
	if !first {
		one, clockOne = other, clockOther
	}
	if one != "" {
		return one
	}
	return clockOne
}

// amount is the size of a move with its unit, or nothing if it rounds to nothing
// or is not a number.
func (s Style) amount(by units.Length) string {
	if !check.Sound(by) {
		return ""
	}
	text := max(by, -by).Text(s.Unit, s.digits())
	if text == units.Length(0).Text(s.Unit, s.digits()) {
		return ""
	}
	return text
}

func (s Style) digits() int {
	if s.Digits != 0 {
		return max(0, s.Digits)
	}
	switch s.Unit {
	case units.InMicrometres, units.InNanometres:
		return 0
	case units.InMils:
		return 1
	case units.InCentimetres:
		return 3
	case units.InInches:
		return 4
	case units.InMetres, units.InFeet:
		return 5
	}
	return 2
}
