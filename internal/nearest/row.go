package nearest

import "math"

// tolerance is by how much a row of length 1 may be missed.
func tolerance(least float64) float64 { return 1e-10 * (1 + math.Abs(least)) }

// row is a Row as the solver holds it. Of its coefficients those from the first to the
// last that is not zero are kept: what they are added to has the same bits without the
// others.
type row struct {
	first  int       // the variable of the first coefficient
	of     []float64 // the coefficients
	bound  float64   // the least value
	length float64   // of the coefficients
	least  float64   // the least value of the row made 1 long; the bound where there is no length
	equal  bool
	inside bool // it is let in
}

func newRow(first int, of []float64, from *Row) row {
	r := row{first: first, of: of, bound: from.Least, length: length(of), least: from.Least, equal: from.Equal}
	if r.length != 0 {
		r.least /= r.length
	}
	return r
}

// span returns where the numbers that are not zero begin and end.
func span(a []float64) (first, end int) {
	end = len(a)
	for end > 0 && a[end-1] == 0 {
		end--
	}
	for first < end && a[first] == 0 {
		first++
	}
	return first, end
}

// dot returns the sum of the coefficients times x.
func (r *row) dot(x []float64) float64 { return dot(r.of, x[r.first:]) }

// addTo adds factor times the coefficients to sum.
func (r *row) addTo(sum []float64, factor float64) { addTo(sum[r.first:], factor, r.of) }

// short tells by how much a row is broken, from what it lacks to its least value.
func (r *row) short(lack float64) float64 {
	if r.equal {
		return math.Abs(lack)
	}
	return lack
}

// lack returns b - a . x of a row made 1 long.
func (r *row) lack(x []float64) float64 {
	if r.length == 0 {
		return r.bound
	}
	return (r.bound - r.dot(x)) / r.length
}

// broken tells by how much a row is broken at x, and whether that is more than the
// tolerance. What is not a number is broken.
func (r *row) broken(x []float64) (short float64, is bool) {
	short = r.short(r.lack(x))
	return short, !(short <= tolerance(r.least))
}

// mostBroken returns the row that is broken most, the first of equals, or -1.
// Equalities come before all others: they never leave again.
func (s *Solver) mostBroken() int {
	worst, most := -1, 0.0
	for i := range s.rows {
		r := &s.rows[i]
		if r.inside {
			continue
		}
		short, broken := r.broken(s.x)
		if !broken {
			continue
		}
		if worst < 0 || r.equal && !s.rows[worst].equal || r.equal == s.rows[worst].equal && short > most {
			worst, most = i, short
		}
	}
	return worst
}
