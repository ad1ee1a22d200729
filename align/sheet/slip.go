package sheet

import (
	"strings"

	"example.org/collinear/internal/words"
)

// SlipKind is what a hand did in place of what the line asks for. The zero value is
// none.
type SlipKind uint8

// The slips. Trainers know them all; no source counts them.
const (
	TotalNotHalved        SlipKind = iota + 1 // a total indicator reading taken for an offset, or an offset for a total reading
	SagForgotten                              // the bracket's sag left in
	SagAdded                                  // the sag added where it comes off
	SagOnce                                   // the sag counted once between top and bottom, where it counts twice
	TopAndBottomExchanged                     // 12 and 6 o'clock taken for one another
	LeftAndRightExchanged                     // 3 and 9 o'clock seen from the other end
	RadiusAndDiameter                         // a radius where the diameter belongs, or the other way round
	LeftAtDial                                // the offset left where it was measured, not carried to the coupling centre
	WrongDatum                                // a distance counted from another place than its formula does
	FeetExchanged                             // inboard and outboard taken for one another
	MilForHundredth                           // mils taken for hundredths of a millimetre, or the other way round
	ThirtyTwo                                 // a temperature difference converted with the 32 of a point on the scale
	PositionForCorrection                     // where the shaft lies, given as the way that it has to go
	MachinesExchanged                         // the movable machine or its dial taken for the stationary one
	CommonNotTakenOff                         // the movement of all feet left in the lift of one
)

var slipWords = words.List{
	"",
	TotalNotHalved:        "total_not_halved",
	SagForgotten:          "sag_forgotten",
	SagAdded:              "sag_added",
	SagOnce:               "sag_once",
	TopAndBottomExchanged: "top_and_bottom_exchanged",
	LeftAndRightExchanged: "left_and_right_exchanged",
	RadiusAndDiameter:     "radius_and_diameter",
	LeftAtDial:            "left_at_dial",
	WrongDatum:            "wrong_datum",
	FeetExchanged:         "feet_exchanged",
	MilForHundredth:       "mil_for_hundredth",
	ThirtyTwo:             "thirty_two",
	PositionForCorrection: "position_for_correction",
	MachinesExchanged:     "machines_exchanged",
	CommonNotTakenOff:     "common_not_taken_off",
}

// slipSays puts each slip into words for a person.
var slipSays = [...]string{
	TotalNotHalved:        "a total indicator reading is twice the offset: one was taken for the other",
	SagForgotten:          "the sag of the bracket was left in",
	SagAdded:              "the sag was added where it comes off",
	SagOnce:               "the sag was counted once from top to bottom, where it counts twice",
	TopAndBottomExchanged: "12 and 6 o'clock were taken for one another",
	LeftAndRightExchanged: "3 and 9 o'clock were seen from the other end",
	RadiusAndDiameter:     "a radius and a diameter were taken for one another",
	LeftAtDial:            "the offset was left where the dial stands, not carried to the coupling centre",
	WrongDatum:            "a distance was counted from the wrong place",
	FeetExchanged:         "inboard and outboard were taken for one another",
	MilForHundredth:       "mils and hundredths of a millimetre were taken for one another",
	ThirtyTwo:             "a temperature difference was converted with the 32 that belongs to a point on the scale",
	PositionForCorrection: "where the shaft lies was given as the way it has to go",
	MachinesExchanged:     "the movable machine and the stationary one were taken for one another",
	CommonNotTakenOff:     "the movement that all feet make was not taken off",
}

// String returns the wire form, for one "sag_once".
func (k SlipKind) String() string { return slipWords.Word(uint8(k)) }

// MarshalText gives the wire form.
func (k SlipKind) MarshalText() ([]byte, error) { return slipWords.Marshal(uint8(k)) }

// UnmarshalText reads the wire form.
func (k *SlipKind) UnmarshalText(text []byte) error { return words.Unmarshal(k, slipWords, text) }

// Words says what the hand did, for a person: "the bracket's sag was left in". Nothing for
// a kind that is none.
func (k SlipKind) Words() string {
	if !slipWords.Known(uint8(k)) {
		return ""
	}
	return slipSays[k]
}

// Slip is one thing that a hand did in place of another, at one line or at several
// alike.
type Slip struct {
	Kind  SlipKind `json:"kind"`
	Steps []string `json:"steps"` // where, in the order of the working
}

// String says what was done and where.
func (s Slip) String() string {
	words := s.Kind.Words()
	if words == "" {
		return s.Kind.String()
	}
	return words + " (at " + strings.Join(s.Steps, ", ") + ")"
}
