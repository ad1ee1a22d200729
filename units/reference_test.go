package units_test

import (
	"math"
	"math/big"
	"regexp"
	"strings"
)

// The reference reads the same texts as the package in the most obvious way,
// slowly: regular expressions for the grammar, every spelling of every unit
// written out, long multiplication for the numbers, bisection for the rounding.
// It shares no code with the package.

// refUnit is a unit: a number n of it is (n - zeroNum/zeroDen) * num/den.
type refUnit struct {
	spellings        string // with | between
	num, den         string
	zeroNum, zeroDen string // empty: 0
}

var refUnits = map[string][]refUnit{
	"Length": {
		{spellings: "mm", num: "1000000", den: "1"},
		{spellings: "um|\u00b5m|\u03bcm", num: "1000", den: "1"},
		{spellings: "nm", num: "1", den: "1"},
		{spellings: "cm", num: "10000000", den: "1"},
		{spellings: "m", num: "1000000000", den: "1"},
		{spellings: "mil|thou", num: "25400", den: "1"},
		{spellings: refInch, num: "25400000", den: "1"},
		{spellings: refFoot, num: "304800000", den: "1"},
	},
	"Slope": {
		{spellings: "mm/m", num: "1", den: "1000"},
		{spellings: "mil/in|thou/in", num: "1", den: "1000"},
		{spellings: "mm/100mm|mm/100 mm", num: "1", den: "100"},
		{spellings: "um/m|\u00b5m/m|\u03bcm/m", num: "1", den: "1000000"},
		{spellings: "mil/ft|thou/ft", num: "1", den: "12000"},
		{spellings: "in/ft", num: "1", den: "12"},
		{spellings: "in/in|mm/mm|m/m", num: "1", den: "1"},
	},
	"Angle": {
		{spellings: "rad", num: "1", den: "1"},
		{spellings: "mrad", num: "1", den: "1000"},
		{spellings: "urad|\u00b5rad|\u03bcrad", num: "1", den: "1000000"},
		{spellings: "deg|°", num: machin(), den: "18" + strings.Repeat("0", machinDigits+1)},
	},
	"Clock": {{spellings: "deg|°", num: "1", den: "1"}},
	"Temperature": {
		{spellings: "°C|degC|C", num: "1", den: "1"},
		{spellings: "°F|degF|F", num: "5", den: "9", zeroNum: "32", zeroDen: "1"},
		{spellings: "K", num: "1", den: "1", zeroNum: "27315", zeroDen: "100"},
	},
	"TemperatureDifference": {
		{spellings: "K|°C|degC|C", num: "1", den: "1"},
		{spellings: "°F|degF|F", num: "5", den: "9"},
	},
	"RotationalSpeed": {
		{spellings: "rpm|RPM|r/min", num: "1", den: "1"},
		{spellings: "Hz", num: "60", den: "1"},
	},
	"LinearSpeed": {
		{spellings: "mm/s", num: "1", den: "1"},
		{spellings: "m/s", num: "1000", den: "1"},
		{spellings: "in/s", num: "254", den: "10"},
	},
	"Expansion": {
		{spellings: "um/m/K|um/m/°C|um/m/degC|um/m/C|\u00b5m/m/K|\u00b5m/m/°C|\u00b5m/m/degC|\u00b5m/m/C|" +
			"\u03bcm/m/K|\u03bcm/m/°C|\u03bcm/m/degC|\u03bcm/m/C", num: "1", den: "1000000"},
		{spellings: "um/m/°F|um/m/degF|um/m/F|\u00b5m/m/°F|\u00b5m/m/degF|\u00b5m/m/F|" +
			"\u03bcm/m/°F|\u03bcm/m/degF|\u03bcm/m/F", num: "9", den: "5000000"},
		{spellings: "mil/in/°F|mil/in/degF|mil/in/F|thou/in/°F|thou/in/degF|thou/in/F", num: "9", den: "5000"},
		{spellings: "1/K|1/°C|1/degC|1/C", num: "1", den: "1"},
		{spellings: "1/°F|1/degF|1/F", num: "9", den: "5"},
	},
}

const (
	refInch = `in|inch|"|″`
	refFoot = `ft|'|′`

	sign     = `([+-]?)`
	decimal  = `((?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)(?:[eE][+-]?[0-9]{1,3})?)`
	fraction = `([0-9]+)/([0-9]+)`
)

var (
	refPlain    = regexp.MustCompile(`^` + sign + decimal + ` ?([^0-9 ].*)$`)
	refSpaced   = regexp.MustCompile(`^` + sign + decimal + ` (1/.*)$`) // a unit that begins with a digit
	refFraction = regexp.MustCompile(`^` + sign + `(?:([0-9]+)[ -])?` + fraction + ` ?(` + refInch + `|` + refFoot + `)$`)
	refFeet     = regexp.MustCompile(`^` + sign + `([0-9]+) ?(?:` + refFoot + `)[ -]?` +
		`(?:` + decimal + `|(?:([0-9]+)[ -])?` + fraction + `) ?(?:` + refInch + `)$`)
	refHours = regexp.MustCompile(`^(1[0-2]|[1-9]):([0-5][0-9])$`)
)

// refParse returns the value that a text denotes and whether it is accepted.
func refParse(kind, text string) (float64, bool) {
	if len(text) > 64 {
		return 0, false
	}
	if m := refHours.FindStringSubmatch(text); m != nil && kind == "Clock" {
		hours := new(big.Rat).SetFrac(count(m[1]), big.NewInt(1))
		if m[1] == "12" {
			hours = new(big.Rat)
		}
		exact := hours.Mul(hours, big.NewRat(30, 1))
		return nearest(exact.Add(exact, new(big.Rat).SetFrac(count(m[2]), big.NewInt(2))))
	}
	number, minus, name := refNumber(kind, text)
	if number == nil {
		return 0, false
	}
	if minus {
		number.Neg(number)
	}
	for _, u := range refUnits[kind] {
		for _, spelling := range strings.Split(u.spellings, "|") {
			if spelling == name {
				return nearest(u.value(number))
			}
		}
	}
	return 0, false
}

// refNumber returns the size, the sign and the unit of a text, or nil.
func refNumber(kind, text string) (size *big.Rat, minus bool, unit string) {
	for _, form := range []*regexp.Regexp{refPlain, refSpaced} {
		if m := form.FindStringSubmatch(text); m != nil && strings.Contains(unitsOf(kind), "|"+m[3]+"|") {
			return count10(m[2]), m[1] == "-", m[3]
		}
	}
	if kind != "Length" {
		return nil, false, ""
	}
	if m := refFraction.FindStringSubmatch(text); m != nil {
		return refMixed(m[2], m[3], m[4]), m[1] == "-", m[5]
	}
	if m := refFeet.FindStringSubmatch(text); m != nil {
		inches := refInches(m[3:])
		if inches == nil || inches.Cmp(big.NewRat(12, 1)) >= 0 {
			return nil, false, ""
		}
		for range 12 {
			inches.Add(inches, new(big.Rat).SetFrac(count(m[2]), big.NewInt(1)))
		}
		return inches, m[1] == "-", "in"
	}
	return nil, false, ""
}

// refInches reads the inches beside feet: a decimal number, or a fraction with
// or without a whole number.
func refInches(m []string) *big.Rat {
	if m[0] != "" {
		return count10(m[0])
	}
	return refMixed(m[1], m[2], m[3])
}

func unitsOf(kind string) string {
	all := "|"
	for _, u := range refUnits[kind] {
		all += u.spellings + "|"
	}
	return all
}

// refMixed returns the value of a fraction beside a whole number, which is empty
// if there is none, or nil.
func refMixed(whole, top, bottom string) *big.Rat {
	t, b := count(top), count(bottom)
	if b.Sign() == 0 || whole != "" && t.Cmp(b) >= 0 {
		return nil
	}
	r := new(big.Rat).SetFrac(t, b)
	return r.Add(r, new(big.Rat).SetFrac(count(whole), big.NewInt(1)))
}

func (u refUnit) value(number *big.Rat) *big.Rat {
	r := new(big.Rat).Set(number)
	if u.zeroNum != "" {
		r.Sub(r, new(big.Rat).SetFrac(count(u.zeroNum), count(u.zeroDen)))
	}
	return r.Mul(r, new(big.Rat).SetFrac(count(u.num), count(u.den)))
}

// count returns the value of digits, one after the other.
func count(digits string) *big.Int {
	n := new(big.Int)
	for _, d := range digits {
		n.Mul(n, big.NewInt(10))
		n.Add(n, big.NewInt(int64(d-'0')))
	}
	return n
}

// count10 returns the value of a decimal number, by moving its point.
func count10(decimal string) *big.Rat {
	mantissa, power, _ := strings.Cut(strings.ToLower(decimal), "e")
	whole, part, _ := strings.Cut(mantissa, ".")
	down := strings.HasPrefix(power, "-")
	top, bottom := count(whole+part), count("1"+strings.Repeat("0", len(part)))
	for range count(strings.TrimLeft(power, "+-")).Int64() {
		if down {
			bottom.Mul(bottom, big.NewInt(10))
		} else {
			top.Mul(top, big.NewInt(10))
		}
	}
	return new(big.Rat).SetFrac(top, bottom)
}

// nearest returns the float64 nearest to a value, halves to even, by bisection
// over the bits, and whether nothing was lost at the ends of the range.
func nearest(exact *big.Rat) (float64, bool) {
	size := new(big.Rat).Abs(exact)
	low, high := uint64(0), math.Float64bits(math.Inf(1))
	for high-low > 1 { // size stands from low up to high
		middle := low + (high-low)/2
		if ratOfBits(middle).Cmp(size) <= 0 {
			low = middle
		} else {
			high = middle
		}
	}
	twice := new(big.Rat).Add(size, size)
	switch twice.Cmp(new(big.Rat).Add(ratOfBits(low), ratOfBits(high))) {
	case 1:
		low = high
	case 0:
		low += low & 1
	}
	x := math.Float64frombits(low)
	if exact.Sign() < 0 {
		x = -x
	}
	return x, !math.IsInf(x, 0) && (x != 0 || exact.Sign() == 0)
}

// ratOfBits returns the value of a float64; an infinity is taken for the power
// of two that would be next.
func ratOfBits(bits uint64) *big.Rat {
	x := math.Float64frombits(bits)
	if math.IsInf(x, 1) {
		r := new(big.Rat).SetFloat64(0x1p1023)
		return r.Add(r, r)
	}
	return new(big.Rat).SetFloat64(x)
}

const machinDigits = 140

// machin returns the digits of pi, 3 and machinDigits more, by Machin's formula
// of 1706, pi/4 = 4 atan(1/5) - atan(1/239), in whole numbers with ten guard
// digits.
func machin() string {
	one := count("1" + strings.Repeat("0", machinDigits+10))
	atan := func(n int64) *big.Int { // of 1/n
		sum, term := new(big.Int), new(big.Int).Quo(one, big.NewInt(n))
		for k := int64(1); term.Sign() != 0; k += 2 {
			part := new(big.Int).Quo(term, big.NewInt(k))
			if k%4 == 1 {
				sum.Add(sum, part)
			} else {
				sum.Sub(sum, part)
			}
			term.Quo(term, big.NewInt(n*n))
		}
		return sum
	}
	pi := new(big.Int).Mul(atan(5), big.NewInt(4))
	pi.Sub(pi, atan(239)).Mul(pi, big.NewInt(4))
	digits := pi.String()
	return digits[:machinDigits+1]
}
