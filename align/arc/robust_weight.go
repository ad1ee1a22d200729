package arc

import "math"

// Hampel's three parts, in standard deviations of a reading: up to untouched a
// reading counts in full, from there its pull stays the same up to level, and
// falls in a straight line to nothing at gone. Huber's weights, which start the
// search, leave out the fall. (F. R. Hampel et al., Robust Statistics, 1986, and
// P. J. Huber, Robust Statistics, 1981, from memory; the constants are ours, see
// FitRobust.)
const (
	untouched = 2.5
	level     = 3.5
	gone      = 8.5
)

// costOfGone is what a reading that counts for nothing adds to the sum that the
// search makes least: (gone - untouched + level) untouched / 2.
const costOfGone = untouched * (gone - untouched + level) / 2

// huber returns the weight of a reading that stands t standard deviations off.
func huber(t float64) float64 { return untouched / max(untouched, math.Abs(t)) }

// hampel is the same with a pull that falls back to nothing.
func hampel(t float64) float64 {
	t = math.Abs(t)
	if t <= level {
		return huber(t)
	}
	return untouched / t * max(0, gone-t) / (gone - level)
}

// cost is the integral of hampel(t) t from zero: half the square of a reading
// that is untouched, and never more than costOfGone.
func cost(t float64) float64 {
	t = math.Abs(t)
	if t <= untouched {
		return t * t / 2
	}
	if t <= level {
		return untouched * (t - untouched/2)
	}
	left := max(0, gone-t)
	return costOfGone - float64(untouched*left*left/(gone-level)/2)
}
