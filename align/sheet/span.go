package sheet

import "math"

// span is a number that is known to lie between two others.
type span struct{ at, low, high float64 }

// exactlyAt is the span of a number that is given.
func exactlyAt(x float64) span { return span{x, x, x} }

// rounding is how far two ways to reckon the same number in floating point may differ,
// as a share of it.
const rounding = 1e-9

// wider lets the number be off by so much more, either way.
func (s span) wider(by float64) span { return span{s.at, s.low - by, s.high + by} }

// meets tells whether a number can lie in both spans. What is no number lies in none.
func (s span) meets(t span) bool {
	slack := float64(rounding * (math.Abs(s.at) + math.Abs(t.at)))
	return s.low <= t.high+slack && t.low <= s.high+slack && s.finite() && t.finite()
}

// reach is how far the number may lie from its middle.
func (s span) reach() float64 { return max(s.high-s.at, s.at-s.low) }

func (s span) finite() bool { return s.high-s.low < math.Inf(1) } // of two infinities it is no number

// apart is how far the middle of t lies from that of s, counted in the width of s.
func (s span) apart(t span) float64 {
	return math.Abs(s.at-t.at) / (s.high - s.low)
}

// through carries spans through a rule: every input by itself to either end of its
// span, and what that does added up. Exact where the rule is linear in each input.
func (r rule) through(inputs []span) span {
	v := make(values, len(inputs))
	for i, in := range inputs {
		v[i] = in.at
	}
	at := r(v)
	low, high := at, at
	for i, in := range inputs {
		down, up := 0.0, 0.0
		for _, end := range [...]float64{in.low, in.high} {
			v[i] = end
			moved := r(v) - at
			down, up = min(down, moved), max(up, moved)
		}
		v[i] = in.at
		low, high = low+down, high+up
	}
	return span{at, low, high}
}
