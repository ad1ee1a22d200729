package units

import (
	"strconv"
	"strings"
)

// MaxDigits is the largest number of digits after the point that a Text method
// prints; it takes more for this many, and fewer than none for none.
const MaxDigits = 30

// Numbers whose first digit stands between these powers of ten are printed
// without an exponent on the wire.
const (
	leastPlain = -7
	mostPlain  = 20
)

// wire returns the lossless text of x: the shortest digits that tell x from its
// neighbours, moved by a power of ten, and the unit.
func (q *quantity) wire(x float64) string {
	name := " " + q.units[0].name
	if !finite(x) {
		return strconv.FormatFloat(x, 'g', -1, 64) + name
	}
	return shifted(x, q.shift) + name
}

// marshal returns the wire form of x, which has to be finite.
func (q *quantity) marshal(x float64) ([]byte, error) {
	if !finite(x) {
		return nil, &Fault{
			Code:  NotFinite,
			Value: q.wire(x),
			Want:  "units." + q.name + ".MarshalText: a finite number",
		}
	}
	return []byte(q.wire(x)), nil
}

// shifted prints the shortest digits of x with the point moved by a number of
// places to the right.
func shifted(x float64, places int) string {
	if x == 0 {
		return "0" // a negative zero too
	}
	mantissa, power, _ := strings.Cut(strconv.FormatFloat(x, 'e', -1, 64), "e")
	exponent, _ := strconv.Atoi(power)
	exponent += places
	if exponent < leastPlain || exponent > mostPlain {
		return mantissa + "e" + strconv.Itoa(exponent)
	}
	unsigned, negative := strings.CutPrefix(mantissa, "-")
	plain := placed(strings.Replace(unsigned, ".", "", 1), exponent)
	if negative {
		return "-" + plain
	}
	return plain
}

// placed writes digits, the first of which counts ten to the exponent, without
// an exponent.
func placed(digits string, exponent int) string {
	if exponent < 0 {
		return "0." + strings.Repeat("0", -exponent-1) + digits
	}
	if len(digits) <= exponent+1 {
		return digits + strings.Repeat("0", exponent+1-len(digits))
	}
	return digits[:exponent+1] + "." + digits[exponent+1:]
}

// text returns x in a unit for a person, rounded from its exact value with
// halves away from zero. A unit that does not exist is taken for the first,
// which the text then names.
func (q *quantity) text(x float64, index, digits int) string {
	if index >= len(q.units) {
		index = 0
	}
	u := q.units[index]
	if !finite(x) {
		return strconv.FormatFloat(x, 'g', -1, 64) + " " + u.name
	}
	s := u.number(x).FloatString(min(max(digits, 0), MaxDigits))
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-")
	}
	return s + " " + u.name
}

// unitName returns the name of a unit, or the type and the number of one that
// does not exist.
func (q *quantity) unitName(index int) string {
	if index >= len(q.units) {
		return q.name + "Unit(" + strconv.Itoa(index) + ")"
	}
	return q.units[index].name
}

// marshalUnit returns the name of a unit that exists.
func (q *quantity) marshalUnit(index int) ([]byte, error) {
	name := q.unitName(index)
	if index >= len(q.units) {
		return nil, &Fault{
			Code:  Unknown,
			Value: name,
			Want:  "units." + q.name + "Unit.MarshalText: one of " + q.names(),
		}
	}
	return []byte(name), nil
}
