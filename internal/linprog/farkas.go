package linprog

import "math"

// infeasible computes from the coefficients alone why row p of the tableau cannot
// meet its bound, and returns that if it is a proof.
func (s *Solver) infeasible(p int) (Solution, bool) {
	if !s.factorise() {
		return Solution{}, false
	}
	y, sum := s.ray(s.basic[p])
	if !s.contradicts(y, sum) {
		return Solution{}, false
	}
	for i := range y {
		y[i] *= s.row[i]
	}
	return Solution{Status: Infeasible, Farkas: y, Pivots: s.run.pivots}, true
}

// ray returns the multipliers of rows that write basic variable v in terms of
// nonbasic ones, and the sum of multiplier times row, where the other basic variables
// cancel but for rounding.
func (s *Solver) ray(v int) (y, sum []float64) {
	c := &s.core
	z := c.right
	for k, j := range c.columns {
		z[k] = 0
		if v >= s.n {
			z[k] = -s.coefficients(v - s.n)[j]
		} else if v == j {
			z[k] = 1
		}
	}
	c.solveTransposed(z)
	for k := range z {
		z[k] = clean(z[k], noise)
	}
	y, sum = s.spread(z)
	if v >= s.n {
		y[v-s.n] = 1
		addTo(sum, 1, s.coefficients(v-s.n))
	}
	return y, sum
}

// contradicts reports whether y times the rows comes to one range from the bounds of
// the rows and to another, apart from it, from those of the variables. The gap has to
// stand out from the tolerance and from the rounding of the sums.
func (s *Solver) contradicts(y, sum []float64) bool {
	var rows, columns span
	limit := noise * max(1, largestOf(y)) // other basic variables cancel to so much
	for i, m := range y {
		rows.add(m, s.lower[s.n+i], s.upper[s.n+i], limit)
	}
	for j, m := range sum {
		columns.add(m, s.lower[j], s.upper[j], limit)
	}
	gap := max(rows.low-columns.high, columns.low-rows.high)
	return gap > float64(margin*s.size)+float64(rounding*(rows.terms+columns.terms))
}

const (
	margin   = Feasibility / 4
	rounding = 0x1p-45 // of sums of some hundred terms
)

// span is the range of a sum, and how large its terms are.
type span struct{ low, high, terms float64 }

// add takes in multiplier m times a number between the bounds; a side without bound
// counts as zero for an m up to limit.
func (r *span) add(m, lower, upper, limit float64) {
	r.low += least(m, lower, upper, limit)
	r.high -= least(-m, lower, upper, limit)
	r.terms += float64(math.Abs(m) * max(finite(lower), finite(upper)))
}
