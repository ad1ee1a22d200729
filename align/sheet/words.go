package sheet

import (
	"math"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/internal/words"
)

// System is the system of units that a working is shown in. The zero value is
// Metric.
type System uint8

// The systems.
const (
	Metric System = iota // mm, mm/m, degrees C
	Inch                 // inches and mils, mil/in, degrees F
)

var systemWords = words.List{Metric: "metric", Inch: "inch"}

// String returns the wire form, for one "inch".
func (s System) String() string { return systemWords.Word(uint8(s)) }

// MarshalText gives the wire form.
func (s System) MarshalText() ([]byte, error) { return systemWords.Marshal(uint8(s)) }

// UnmarshalText reads the wire form.
func (s *System) UnmarshalText(text []byte) error { return words.Unmarshal(s, systemWords, text) }

// index is where the digits of the system stand; a system that does not exist is shown
// as Metric.
func (s System) index() int {
	if s == Inch {
		return 1
	}
	return 0
}

// exactly is how many digits more than the rounded answer the exact one shows.
const exactly = 6

// rounded is x as a hand writes it, with its unit and the words of its sign.
func (k kind) rounded(x float64, s System, v align.View) string {
	return k.worded(x, s, v, natures[k].digits[s.index()])
}

func (k kind) worded(x float64, s System, v align.View, digits int) string {
	n := &natures[k]
	if n.words[0] == "" {
		return n.text(x, s, digits)
	}
	amount := n.text(math.Abs(x), s, digits)
	if amount != n.text(0, s, digits) {
		return strings.Replace(n.words[k.side(x < 0, v)], "%", amount, 1)
	}
	if k == raise || k == push {
		return "leave"
	}
	return amount
}

// side is which of its words a kind uses: those of a positive sign, 0, or of a
// negative one, 1. Seen from the stationary end 3 and 9 exchange.
func (k kind) side(negative bool, v align.View) int {
	if negative != (natures[k].mirrors && v == align.FromStationary) {
		return 1
	}
	return 0
}

// amount is a size without a sign, with a digit more than an answer has.
func (k kind) amount(x float64, s System) string {
	return natures[k].text(x, s, natures[k].digits[s.index()]+1)
}

// long is x with its sign and digits enough to check a rounding by.
func (k kind) long(x float64, s System) string {
	return natures[k].text(x, s, natures[k].digits[s.index()]+exactly)
}

// put is x with its sign, as it is put into a formula: with the digits of a line above, or,
// of a given number, with no more than it has.
func (k kind) put(x float64, s System, whole bool) string {
	amount, unit, _ := strings.Cut(natures[k].text(x, s, natures[k].digits[s.index()]), " ")
	if !whole && strings.Contains(amount, ".") {
		amount = strings.TrimRight(strings.TrimRight(amount, "0"), ".")
	}
	text := strings.TrimSpace(amount + " " + unit)
	if strings.HasPrefix(text, "-") || strings.Contains(unit, "/") {
		return "(" + text + ")"
	}
	return text
}
