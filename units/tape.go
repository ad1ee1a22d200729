package units

import "math/big"

// How lengths are read off a tape rule: fractions of an inch or a foot, and
// feet with inches.

// feet are the spellings of the unit that may stand before inches.
var feet = []string{"ft", "'", "′"}

// number reads a decimal number and, where a unit of the quantity stands on a
// tape, a fraction or a whole number with a fraction.
func (s *scanner) number() (number, error) {
	n, err := s.decimal()
	if err != nil || !n.whole || !s.q.onTape() {
		return n, err
	}
	if s.skip("/") {
		return s.fraction(n.Rat)
	}
	if beside := s.skipBefore(" ") || s.skipBefore("-"); !beside {
		return n, nil
	}
	return s.mixed(n)
}

// skipBefore reads a separator, if it comes next and a digit comes after it.
func (s *scanner) skipBefore(separator string) bool {
	return s.digitAhead(len(separator)) && s.skip(separator)
}

// mixed reads the fraction beside a whole number. It has to be less than one.
func (s *scanner) mixed(whole number) (number, error) {
	start := s.at
	top := rational(s.digits())
	if !s.skip("/") {
		return whole, s.fault(Malformed, s.at, "the / of a fraction, as in 5 7/16, not a second number")
	}
	n, err := s.fraction(top)
	if err != nil {
		return n, err
	}
	if n.Cmp(big.NewRat(1, 1)) >= 0 {
		return n, s.fault(OutOfRange, start, "a fraction less than 1 beside a whole number")
	}
	n.Add(n.Rat, whole.Rat)
	return n, nil
}

// fraction reads the denominator below a numerator.
func (s *scanner) fraction(top *big.Rat) (number, error) {
	n := number{fraction: true}
	start := s.at
	digits := s.digits()
	if digits == "" {
		return n, s.fault(Malformed, start, "the digits of a denominator")
	}
	bottom := rational(digits)
	if bottom.Sign() == 0 {
		return n, s.fault(OutOfRange, start, "a denominator above zero")
	}
	n.Rat = top.Quo(top, bottom)
	return n, nil
}

// skipFeet reads the unit foot, if the quantity knows it and it comes next.
func (s *scanner) skipFeet() bool {
	if !s.q.onTape() {
		return false
	}
	for _, foot := range feet {
		if s.skip(foot) {
			return true
		}
	}
	return false
}

// inchesBeside reads the inches beside whole feet, with a space, a dash or
// nothing between, and returns both in inches.
func (s *scanner) inchesBeside(feet number) (*big.Rat, unit, error) {
	if !s.skip(" ") {
		s.skip("-")
	}
	start := s.at
	inches, err := s.number()
	if err != nil {
		return nil, unit{}, err
	}
	if inches.Cmp(big.NewRat(12, 1)) >= 0 {
		return nil, unit{}, s.fault(OutOfRange, start, "less than 12 inches beside feet")
	}
	s.skip(" ")
	inch := s.q.units[InInches]
	switch rest := s.text[s.at:]; {
	case rest == "":
		return nil, unit{}, s.fault(Missing, s.at, "inches after feet")
	case !inch.goesBy(rest):
		return nil, unit{}, s.fault(Malformed, s.at, "inches after feet and the end of the text")
	}
	sum := new(big.Rat).Mul(feet.Rat, big.NewRat(12, 1))
	return sum.Add(sum, inches.Rat), inch, nil
}
