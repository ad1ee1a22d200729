package units

import (
	"math"
	"math/big"
	"slices"
	"strings"
)

// unit is a named unit of a quantity. A text that gives it a number denotes
// (number - zero) * factor, exactly, counted as the quantity counts.
type unit struct {
	name   string   // as it is printed
	others []string // further spellings that are read
	tape   bool     // read off a tape rule: fractions are allowed
	factor *big.Rat
	zero   *big.Rat // the number at which the value is zero; only a temperature's is not 0

	mul, div, rise float64 // factor is mul/div and zero is rise, for In
}

// quantity is what the text forms of one type share: one parser, one printer
// and one converter work on all of them.
type quantity struct {
	name  string // of its type, for messages
	shift int    // the number printed is the value times ten to this power
	units []unit // in the order of the type's unit constants; the first is that of the wire form
}

// named returns a unit. The factor is a whole number, or two with a stroke
// between them, so that In rounds as seldom as can be; only pi is neither.
func named(name, factor string, others ...string) unit {
	above, below, found := strings.Cut(factor, "/")
	if !found {
		below = "1"
	}
	u := unit{name: name, others: others, zero: new(big.Rat)}
	num, den := rational(above), rational(below)
	u.mul, _ = num.Float64()
	u.div, _ = den.Float64()
	u.factor = num.Quo(num, den)
	return u
}

// from returns u with its value zero at the given number.
func (u unit) from(zero string) unit {
	u.zero = rational(zero)
	u.rise, _ = u.zero.Float64()
	return u
}

// onTape returns u with fractions allowed.
func (u unit) onTape() unit {
	u.tape = true
	return u
}

// rational returns the exact value of a decimal number. It is given constants
// and text whose length and exponent were checked; nothing else reaches it.
func rational(decimal string) *big.Rat {
	r, _ := new(big.Rat).SetString(decimal)
	return r
}

// spelling brings the spellings of a unit's parts to one: the two characters
// for micro (U+00B5 and U+03BC), the degree sign, and the two words for a
// thousandth of an inch.
var spelling = strings.NewReplacer("\u00b5", "u", "\u03bc", "u", "°", "deg", "thou", "mil")

// goesBy tells whether u may be written as name.
func (u unit) goesBy(name string) bool {
	name = spelling.Replace(name)
	return name == spelling.Replace(u.name) ||
		slices.ContainsFunc(u.others, func(o string) bool { return name == spelling.Replace(o) })
}

// find returns the index of the unit that is written as name, or -1.
func (q *quantity) find(name string) int {
	return slices.IndexFunc(q.units, func(u unit) bool { return u.goesBy(name) })
}

// onTape tells whether any unit of q is read off a tape rule.
func (q *quantity) onTape() bool {
	return slices.ContainsFunc(q.units, func(u unit) bool { return u.tape })
}

// names lists the units for a message.
func (q *quantity) names() string {
	all := make([]string, len(q.units))
	for i, u := range q.units {
		all[i] = u.name
	}
	return strings.Join(all, ", ")
}

// in returns the number of units that x is, NaN for a unit that does not
// exist. It allocates nothing.
func (q *quantity) in(x float64, index int) float64 {
	if index >= len(q.units) {
		return math.NaN()
	}
	u := &q.units[index]
	return float64(x*u.div/u.mul) + u.rise
}

// number returns the exact number of units u that x, which is finite, is.
func (u unit) number(x float64) *big.Rat {
	r := new(big.Rat).SetFloat64(x)
	r.Quo(r, u.factor)
	return r.Add(r, u.zero)
}

// value returns the exact value of a number of units u.
func (u unit) value(number *big.Rat) *big.Rat {
	r := new(big.Rat).Sub(number, u.zero)
	return r.Mul(r, u.factor)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
