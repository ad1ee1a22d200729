package arc

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Robust is a fit that a few bad readings cannot spoil, with what it made of every
// reading.
type Robust struct {
	align.Fitted
	Weights []Weight     `json:"weights"`        // one for every reading of the sets, in their order
	Scale   units.Length `json:"scale,omitzero"` // standard deviation of a reading that residuals were measured by; zero where uncertainties are stated, or where nothing could be told
	Settled bool         `json:"settled"`        // whether the weights stand still
}

// Weight is what one reading counted for.
type Weight struct {
	Set      int          `json:"set"`
	Reading  int          `json:"reading"`
	Weight   float64      `json:"weight"`   // 1: untouched; 0: left out
	Residual units.Length `json:"residual"` // reading less fit
	Off      float64      `json:"off"`      // Residual over the standard deviation of a reading; zero where that is not known
	Judged   bool         `json:"judged"`   // whether it could be told from the others at all: if not, its weight is 1, or 0 as the last one of its set
}

// Down returns the readings that count for less than 1, in their order.
func (r Robust) Down() []Weight {
	var down []Weight
	for _, w := range r.Weights {
		if w.Weight < 1 {
			down = append(down, w)
		}
	}
	return down
}

// leastLeftOver is how many readings have to be left over before their own scatter
// can tell which of them are bad. It is ours: with fewer, the median of absolute
// residuals is mostly made by the bad one.
const leastLeftOver = 4

// FitRobust is [align.Fit] with less weight for readings that the others
// contradict: a dial that was knocked, a step of the coupling's play, a slip of the
// pen. Nothing is dropped in silence: every reading is reported with its weight and
// its residual, and those that count for less come as warnings too (Suspect, at
// /sets/0/readings/4). Look at them before you believe them bad.
//
// It makes the sum of costs of r/u least, where r is the residual of a reading and
// u its standard uncertainty, that of its angle included. The cost is half the
// square up to 2.5 u, grows in a straight line to 3.5 u, and less and less to 8.5 u,
// beyond which a reading counts for nothing: Hampel's three parts. The sum can have
// several minima. The search starts at Huber's answer, which is the only one of its
// kind, and then tries to leave out, or to take back, every reading in turn as long
// as the sum falls; where it stays large, every two, with up to 60 readings. That
// counts a residual's leverage without being told: leaving out a reading lowers the
// sum of squares by the square of its standardised residual, r/(u sqrt(1 -
// leverage)), which is worth its cost beyond about 4.9, also at the ends of an arc,
// where a bad reading pulls the fit after it. Of nine readings on 120 degrees that is
// about 8 u for the first and the last, 6 u for those in the middle.
//
// Where no uncertainty is stated, u is Scale, from the median of absolute residuals.
// With fewer than four readings left over (degrees of freedom) the scatter cannot
// tell: all weights are 1, with a warning. Nor can a set of three readings ever, nor
// one of four that stands alone: an error of any of them looks like an error of
// another. Such readings are not judged, keep weight 1 and are warned of, also where
// other sets have some that are.
//
// The covariance is that of readings with these weights: a weight w counts as an
// uncertainty of u/sqrt(w), a reading of weight zero is left out and no longer counts
// among the degrees of freedom. Where nothing is stated, what is left scatters about
// the fit with sum(w r^2)/(sum(w) - unknowns), the basis is Scatter, and the degrees
// of freedom of the covariance are sum(w) - unknowns. It takes the weights for known:
// that they were chosen by the same readings adds some percent, see below. Where all
// weights are 1, the answer is Fit's to the last bit.
//
// Measured on two probes with nine readings each over 120, 180 and 360 degrees, of
// stated uncertainty: with one reading, any of them, bad by 20 u, the root mean
// square error of the four numbers and at the feet is at most 1.4 times the standard
// uncertainty of the fit to sound readings, where least squares is off by 3 to 12
// times; where none is stated, 1.6 times. Two bad readings of 20 u are found as well,
// also two at the ends that err alike. Without a bad reading the variance of Fit is
// 98 to 99 % of this one's, stated or not. A reading bad by 6 u at an end of a short
// arc brings an error of up to 3 times: what cannot be told is not left out.
// The constants were chosen by that simulation: parts at 1.5, 2.5 and 6 u cost 4 %
// on sound readings, at 2, 3 and 7 u 2 %, and touch a reading of every fourth sound
// measurement; 3, 4 and 10 u win nothing that counts, and see a bad reading later.
//
// It is linear, as Fit is: on a short arc the circle of a rim bends the residuals by
// micrometres, which are not bad readings. It is deterministic, and stops after at
// most a hundred rounds from each start: if the weights have not settled by then,
// Settled is false, with a warning. It is false too where more readings would go than
// half of the degrees of freedom of the plain fit (ours): those that remain agree by
// chance. The answer is Fit's then, with all weights 1.
//
// It refuses what Fit refuses, and more than MostJudged readings in all (OutOfRange, at
// /sets): its time grows with the square of their number.
func FitRobust(sets ...align.Set) (Robust, error) {
	plain, err := align.Fit(sets...)
	if err != nil {
		return Robust{}, err
	}
	if err := checkJudged(sets); err != nil {
		return Robust{}, err
	}
	s := newSearch(plain, sets)
	r := Robust{Fitted: plain}
	best := trial{weights: ones(len(s.u)), settled: true}
	if s.canTell(&r) {
		best = s.best()
		s.leaveLone(best.weights)
	}
	r.Settled = best.settled
	tooMany := 2*leftOut(best.weights) > plain.DegreesOfFreedom
	if tooMany || s.weighted(&r.Fitted, sets, best.weights) != nil { // or what is left does not see enough
		r.Fitted, r.Settled = plain, false
		best.weights = ones(len(s.u))
	}
	if err := s.report(&r, sets, best.weights); err != nil {
		return Robust{}, err
	}
	s.warn(&r, sets)
	return r, nil
}

// MostJudged is how many readings [FitRobust] takes, of all sets together. Ours: of more
// than that a mean of neighbours serves as well.
const MostJudged = 1000

func checkJudged(sets []align.Set) error {
	n := 0
	for i := range sets {
		n += len(sets[i].Readings)
	}
	var faults check.Faults
	var root check.Path
	check.AtMost(&faults, root.Field("sets"), n, MostJudged, "readings in all")
	return faults.Err()
}

// canTell tells whether there is a standard deviation to measure residuals by, and
// settles which.
func (s *search) canTell(r *Robust) bool {
	if s.stated {
		return true
	}
	if r.DegreesOfFreedom < leastLeftOver {
		return false
	}
	if r.Scale = s.scale(r.DegreesOfFreedom); r.Scale == 0 {
		return false
	}
	s.measure(r.Scale)
	return true
}

// leaveLone leaves out what is left of a set of which all readings but one are
// gone: one alone only sets the zero.
func (s *search) leaveLone(weights []float64) {
	n := 0
	for i := range s.sets {
		own := weights[n : n+len(s.sets[i].Readings)]
		n += len(own)
		if counting(own) < 2 {
			clear(own)
		}
	}
}

// leftOut returns how many readings count for nothing.
func leftOut(weights []float64) (count int) {
	for _, w := range weights {
		if w == 0 {
			count++
		}
	}
	return count
}

// counting returns how many readings count for something.
func counting(weights []float64) int {
	count := 0
	for i, w := range weights {
		if w < faint {
			weights[i] = 0
			continue
		}
		count++
	}
	return count
}
