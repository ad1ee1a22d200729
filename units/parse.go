package units

import (
	"math"
	"math/big"
	"strconv"
	"strings"
	"unicode/utf8"
)

// The bounds of what is read, checked before any arithmetic.
const (
	maxText     = 64 // bytes
	maxExponent = 3  // digits
)

// scanner reads one text from the left.
type scanner struct {
	q    *quantity
	text string
	at   int // bytes read
}

// number is a number as it was written, without its sign.
type number struct {
	*big.Rat
	whole    bool // digits alone
	fraction bool // with a stroke
}

// parse returns the float64 nearest to the exact value that a text denotes.
func (q *quantity) parse(text string) (float64, error) {
	s := &scanner{q: q, text: text}
	if err := s.bounds(); err != nil {
		return 0, err
	}
	negative := s.sign()
	if s.saysNotFinite() {
		return 0, s.fault(NotFinite, s.at, "a finite number")
	}
	n, err := s.number()
	if err != nil {
		return 0, err
	}
	exact, u, err := s.measure(n)
	if err != nil {
		return 0, err
	}
	if negative {
		exact.Neg(exact)
	}
	return s.nearest(u.value(exact))
}

// bounds refuses a text that is empty or too long.
func (s *scanner) bounds() error {
	if s.text == "" {
		return s.fault(Missing, 0, "a number and a unit, one of "+s.q.names())
	}
	if len(s.text) > maxText {
		return s.fault(Malformed, maxText, "the end of the text after at most "+strconv.Itoa(maxText)+" bytes")
	}
	return nil
}

// saysNotFinite tells whether the word that comes next stands for NaN or an
// infinity.
func (s *scanner) saysNotFinite() bool {
	rest := s.text[s.at:]
	word := rest[:len(rest)-len(strings.TrimLeftFunc(rest, isLetter))]
	switch strings.ToLower(word) {
	case "nan", "inf", "infinity":
		return true
	}
	return false
}

func isLetter(r rune) bool { return 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z' }

// sign reads a sign, if there is one, and tells whether it is a minus.
func (s *scanner) sign() (negative bool) {
	negative = s.text[0] == '-'
	if negative || s.text[0] == '+' {
		s.at++
	}
	return negative
}

// decimal reads digits with at most one point, after which there must be a
// digit, and an exponent of ten.
func (s *scanner) decimal() (number, error) {
	start := s.at
	whole := s.digits()
	n := number{whole: true}
	if s.skip(".") {
		n.whole = false
		if s.digits() == "" {
			return n, s.fault(Malformed, s.at, "a digit after the point")
		}
	} else if whole == "" {
		return n, s.fault(Malformed, s.at, "a digit")
	}
	if s.skip("e") || s.skip("E") {
		n.whole = false
		if err := s.exponent(); err != nil {
			return n, err
		}
	}
	n.Rat = rational(s.text[start:s.at])
	return n, nil
}

func (s *scanner) exponent() error {
	if !s.skip("-") {
		s.skip("+")
	}
	start := s.at
	switch n := len(s.digits()); {
	case n == 0:
		return s.fault(Malformed, s.at, "the digits of an exponent")
	case n > maxExponent:
		return s.fault(OutOfRange, start, "an exponent of at most "+strconv.Itoa(maxExponent)+" digits")
	}
	return nil
}

// measure reads the unit that ends the text, and returns how many of which
// unit the whole text denotes.
func (s *scanner) measure(n number) (*big.Rat, unit, error) {
	s.skip(" ")
	rest := s.text[s.at:]
	if i := s.q.find(rest); i >= 0 {
		u := s.q.units[i]
		if n.fraction && !u.tape {
			return nil, u, s.fault(Malformed, s.at, "an inch or a foot after a fraction, or a decimal number before this unit")
		}
		return n.Rat, u, nil
	}
	if n.whole && s.skipFeet() {
		return s.inchesBeside(n)
	}
	return nil, unit{}, s.noUnit(rest)
}

// noUnit says what is wrong where a unit should stand.
func (s *scanner) noUnit(rest string) error {
	spaced := s.at > 0 && s.text[s.at-1] == ' '
	if rest == "" && !spaced {
		return s.fault(Missing, s.at, "a unit, one of "+s.q.names())
	}
	if rest == "" {
		return s.fault(Missing, s.at, "a unit after the space, one of "+s.q.names())
	}
	if rest[0] == ',' {
		return s.fault(Malformed, s.at, "a decimal point, not a comma")
	}
	if rest[0] == ' ' {
		return s.fault(Malformed, s.at, "a unit after a single space")
	}
	if rest[0] == '-' || rest[0] == '+' {
		return s.fault(Malformed, s.at, "a unit, not a second sign")
	}
	if '0' <= rest[0] && rest[0] <= '9' || rest[0] == '.' {
		return s.fault(Malformed, s.at, "a unit, not a second number")
	}
	if s.q.find(strings.TrimRight(rest, " ")) >= 0 {
		return s.fault(Malformed, s.at+len(strings.TrimRight(rest, " ")), "the end of the text, not a space")
	}
	return s.fault(Unknown, s.at, "a unit, one of "+s.q.names())
}

// nearest rounds to the nearest float64, halves to even. A value that would be
// lost on the way, at either end of the range, is refused.
func (s *scanner) nearest(exact *big.Rat) (float64, error) {
	x, _ := exact.Float64()
	if math.IsInf(x, 0) || x == 0 && exact.Sign() != 0 {
		return 0, s.fault(OutOfRange, 0, "a value between the least and the greatest that a float64 holds")
	}
	return x, nil
}

// digits reads the digits that come next.
func (s *scanner) digits() string {
	start := s.at
	for s.digitAhead(0) {
		s.at++
	}
	return s.text[start:s.at]
}

// digitAhead tells whether there is a digit so many bytes ahead.
func (s *scanner) digitAhead(bytes int) bool {
	i := s.at + bytes
	return i < len(s.text) && '0' <= s.text[i] && s.text[i] <= '9'
}

// skip reads what, if it comes next.
func (s *scanner) skip(what string) bool {
	if !strings.HasPrefix(s.text[s.at:], what) {
		return false
	}
	s.at += len(what)
	return true
}

func (s *scanner) fault(code Code, at int, want string) error {
	return misread("Parse"+s.q.name, code, s.text, at, want)
}

// misread returns the fault of a text that the named function cannot read: what
// it wanted at which byte, counted from 0.
func misread(function string, code Code, text string, at int, want string) error {
	return &Fault{
		Code:  code,
		Value: quoted(text),
		Want:  "units." + function + ": at byte " + strconv.Itoa(at) + ": " + want,
	}
}

// quoted returns a text in quotes, one that is too long to be read cut short.
func quoted(text string) string {
	if len(text) <= maxText {
		return strconv.Quote(text)
	}
	cut := maxText
	for cut > maxText-utf8.UTFMax && !utf8.RuneStart(text[cut]) {
		cut--
	}
	return strconv.Quote(text[:cut]) + "..."
}

// parseUnit returns the index of the unit that a text names.
func (q *quantity) parseUnit(text string) (int, error) {
	if text == "" {
		return 0, misread("Parse"+q.name+"Unit", Missing, text, 0, "one of "+q.names())
	}
	if len(text) <= maxText {
		if i := q.find(text); i >= 0 {
			return i, nil
		}
	}
	return 0, misread("Parse"+q.name+"Unit", Unknown, text, 0, "one of "+q.names())
}

// unmarshal sets dst to what text holds, and leaves it as it is if that cannot
// be read.
func unmarshal[Q any](dst *Q, text []byte, parse func(string) (Q, error)) error {
	q, err := parse(string(text))
	if err == nil {
		*dst = q
	}
	return err
}

// must returns q, and panics if there is an error.
func must[Q any](q Q, err error) Q {
	if err != nil {
		panic(err)
	}
	return q
}
