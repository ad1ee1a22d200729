package main

import (
	"errors"
	"fmt"
	"math/big"
	"strconv"
	"strings"
)

// quantity is a number with the kind of its unit, exact.
type quantity struct {
	of    string
	value *big.Rat // in the unit of the kind whose factor is 1
}

// unitTable lists the units that an answer may use: the kind of each, its size, and
// for points on a scale where its zero lies.
var unitTable = map[string]struct{ of, size, zero string }{
	"mm": {"length", "1", ""}, "um": {"length", "1/1000", ""}, "nm": {"length", "1/1000000", ""},
	"cm": {"length", "10", ""}, "m": {"length", "1000", ""},
	"mil": {"length", "127/5000", ""}, "in": {"length", "127/5", ""}, "ft": {"length", "1524/5", ""},

	"mm/m": {"slope", "1", ""}, "um/m": {"slope", "1/1000", ""}, "mm/100mm": {"slope", "10", ""},
	"mil/in": {"slope", "1", ""}, "mil/ft": {"slope", "1/12", ""}, "in/ft": {"slope", "250/3", ""},
	"in/in": {"slope", "1000", ""}, "mm/mm": {"slope", "1000", ""}, "m/m": {"slope", "1000", ""},

	"deg": {"angle", "1", ""}, "rad": {"angle", radian, ""}, "mrad": {"angle", radian + "e-3", ""}, "urad": {"angle", radian + "e-6", ""},

	"K": {"temperature", "1", "-273.15"}, "°C": {"temperature", "1", ""}, "degC": {"temperature", "1", ""},
	"°F": {"temperature", "5/9", "-160/9"}, "degF": {"temperature", "5/9", "-160/9"},

	"rpm": {"rotational speed", "1", ""}, "Hz": {"rotational speed", "60", ""},
	"mm/s": {"speed", "1", ""}, "m/s": {"speed", "1000", ""}, "in/s": {"speed", "127/5", ""},

	"um/m/K": {"expansion", "1", ""}, "um/m/°F": {"expansion", "9/5", ""}, "um/m/degF": {"expansion", "9/5", ""},
	"1/K": {"expansion", "1000000", ""}, "1/°F": {"expansion", "1800000", ""}, "1/degF": {"expansion", "1800000", ""},
	"mil/in/°F": {"expansion", "1800", ""},

	"": {"number", "1", ""},
}

// radian is one in degrees, to more digits than any answer has.
const radian = "57.295779513082320876798154814105170332405472466564"

// readQuantity reads a decimal number and a unit, or hours and minutes of the
// dial's face.
func readQuantity(text string) (quantity, error) {
	if hours, minutes, isClock := strings.Cut(text, ":"); isClock {
		return readClock(hours, minutes)
	}
	number, name := text, ""
	if space := strings.LastIndexByte(text, ' '); space >= 0 {
		number, name = text[:space], text[space+1:]
	}
	u, known := unitTable[name]
	if !known {
		return quantity{}, fmt.Errorf("%q has no unit that is known here", text)
	}
	value, err := readNumber(number)
	if err != nil {
		return quantity{}, fmt.Errorf("%q: %w", text, err)
	}
	value.Mul(value, rational(u.size))
	if u.zero != "" {
		value.Add(value, rational(u.zero))
	}
	return quantity{u.of, value}, nil
}

// readWidth reads a quantity as a width on its scale: where the scale has its
// zero does not matter.
func readWidth(text string) (quantity, error) {
	q, err := readQuantity(text)
	if err != nil {
		return q, err
	}
	if zero := unitTable[text[strings.LastIndexByte(text, ' ')+1:]].zero; zero != "" {
		q.value.Sub(q.value, rational(zero))
	}
	return q, nil
}

func readClock(hours, minutes string) (quantity, error) {
	h, errH := readNumber(hours)
	m, errM := readNumber(minutes)
	if err := errors.Join(errH, errM); err != nil {
		return quantity{}, err
	}
	degrees := new(big.Rat).Add(h.Mul(h, rational("30")), m.Mul(m, rational("1/2")))
	return quantity{"angle", degrees}, nil
}

// apart returns how far two quantities are from one another, never below zero,
// and places on a circle the shorter way round.
func apart(a, b quantity, onCircle bool) *big.Rat {
	d := new(big.Rat).Sub(a.value, b.value)
	if onCircle && a.of == "angle" {
		turn := rational("360")
		turns := new(big.Rat).Quo(d, turn)
		half := new(big.Rat).Add(turns, rational("1/2"))
		whole := new(big.Int).Div(half.Num(), half.Denom()) // rounds down
		d.Sub(d, turn.Mul(turn, new(big.Rat).SetInt(whole)))
	}
	return d.Abs(d)
}

// rational reads a constant of this program.
func rational(text string) *big.Rat {
	r, ok := new(big.Rat).SetString(text)
	if !ok {
		panic("no number: " + text)
	}
	return r
}

// readNumber reads a decimal number, a fraction, or a whole number and a
// fraction off a tape.
func readNumber(text string) (*big.Rat, error) {
	whole, fraction, both := strings.Cut(text, " ")
	if !both && !strings.Contains(text, "/") {
		return readDecimal(text)
	}
	if !both {
		whole, fraction = "0", strings.TrimLeft(text, "+-")
	}
	top, bottom, _ := strings.Cut(fraction, "/")
	w, errW := readDecimal(whole)
	t, errT := readDecimal(top)
	b, errB := readDecimal(bottom)
	if err := errors.Join(errW, errT, errB); err != nil || b.Sign() == 0 {
		return nil, fmt.Errorf("a number is wanted")
	}
	size := t.Quo(t, b)
	size.Add(size, w.Abs(w))
	if strings.HasPrefix(text, "-") {
		size.Neg(size)
	}
	return size, nil
}

// readDecimal reads a decimal number. Its length and its exponent are bounded: a
// long text could otherwise ask for minutes, and one of a few bytes for gigabytes.
func readDecimal(text string) (*big.Rat, error) {
	const mostExponent, mostText = 400, 1000
	if len(text) > mostText {
		return nil, fmt.Errorf("a number of at most %d characters is wanted", mostText)
	}
	mantissa, exponent, _ := strings.Cut(strings.ToLower(text), "e")
	if exponent != "" {
		if e, err := strconv.Atoi(exponent); err != nil || max(e, -e) > mostExponent {
			return nil, fmt.Errorf("an exponent within %d is wanted", mostExponent)
		}
	}
	if strings.Trim(mantissa, "+-.0123456789") == "" {
		if r, ok := new(big.Rat).SetString(text); ok {
			return r, nil
		}
	}
	return nil, fmt.Errorf("a decimal number is wanted")
}
