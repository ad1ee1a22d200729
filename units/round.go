package units

import "math"

// round returns the multiple of step nearest to x, halves away from zero, as
// Length.Round describes. The remainder is exact, so a tie is seen as a tie and
// nothing else is; dividing by the step first would round before the decision.
func round(x, step float64) float64 {
	if !(step > 0) || !finite(step) || !finite(x) {
		return x
	}
	if step == 1 { // the usual step, for which the standard library rounds alike
		return math.Round(x) + 0 // no negative zero
	}
	size := math.Abs(x)
	over := math.Mod(size, step)
	if short := step - over; short <= over {
		size += short
	} else {
		size -= over
	}
	if x < 0 && size != 0 {
		return -size
	}
	return size
}
