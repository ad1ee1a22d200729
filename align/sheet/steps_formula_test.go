package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"example.org/collinear/units"
)

// reader works out a formula as it stands, by the usual precedence: an oracle for what
// a line shows that knows nothing of the rule behind it.
type reader struct {
	words   []string
	at      int
	symbols map[string]float64
	used    map[string]bool
}

// workedOut is what a formula's right side comes to with numbers for its symbols, and
// which of them it has.
func workedOut(formula string, symbols map[string]float64) (x float64, used map[string]bool, err error) {
	left, right, found := strings.Cut(formula, " = ")
	if !found || left == "" {
		return 0, nil, fmt.Errorf("%q has no two sides", formula)
	}
	r := &reader{words: wordsOf(right), symbols: symbols, used: map[string]bool{}}
	defer func() {
		if told := recover(); told != nil {
			err = fmt.Errorf("%q: %v", formula, told)
		}
	}()
	x = r.sum()
	if r.at != len(r.words) {
		return 0, nil, fmt.Errorf("%q: %q is left over", formula, r.words[r.at:])
	}
	return x, r.used, nil
}

// wordsOf parts a formula into symbols, numbers and signs.
func wordsOf(text string) []string {
	var list []string
	for len(text) > 0 {
		n := max(1, len(text)-len(strings.TrimLeftFunc(text, func(r rune) bool {
			return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '.'
		})))
		if word := text[:n]; word != " " {
			list = append(list, word)
		}
		text = text[n:]
	}
	return list
}

func (r *reader) next() string {
	if r.at == len(r.words) {
		return ""
	}
	return r.words[r.at]
}

func (r *reader) skip(word string) bool {
	if r.next() != word {
		return false
	}
	r.at++
	return true
}

func (r *reader) sum() float64 {
	x := r.product()
	for {
		switch {
		case r.skip("+"):
			x += r.product()
		case r.skip("-"):
			x -= r.product()
		default:
			return x
		}
	}
}

func (r *reader) product() float64 {
	x := r.power()
	for {
		switch {
		case r.skip("*"):
			x *= r.power()
		case r.skip("/"):
			x /= r.power()
		default:
			return x
		}
	}
}

func (r *reader) power() float64 {
	if r.skip("-") {
		return -r.power()
	}
	x := r.single()
	if r.skip("^") {
		x = math.Pow(x, r.power())
	}
	return x
}

func (r *reader) single() float64 {
	word := r.next()
	r.at++
	if word == "(" {
		return r.list()[0]
	}
	if x, ok := r.symbols[word]; ok {
		r.used[word] = true
		return x
	}
	if x, err := strconv.ParseFloat(word, 64); err == nil {
		return x
	}
	if word == "pi" {
		return math.Pi
	}
	if !r.skip("(") {
		panic(fmt.Sprintf("%q stands for nothing", word))
	}
	return call(word, r.list())
}

// list reads what stands in brackets, from behind the first.
func (r *reader) list() []float64 {
	list := []float64{r.sum()}
	for r.skip(",") {
		list = append(list, r.sum())
	}
	if !r.skip(")") {
		panic("a bracket is left open")
	}
	return list
}

func call(name string, of []float64) float64 {
	x := of[0]
	switch name {
	case "sin", "cos":
		sin, cos := units.Clock(x).SinCos()
		if name == "sin" {
			return sin
		}
		return cos
	case "sqrt":
		return math.Sqrt(x)
	case "max":
		for _, y := range of {
			x = math.Max(x, y)
		}
		return x
	case "min":
		for _, y := range of {
			x = math.Min(x, y)
		}
		return x
	}
	panic(fmt.Sprintf("%q is no function", name))
}
