package linprog

import "math"

// optimal computes point and multipliers of the present basis from the coefficients
// alone and returns them, if they prove each other.
func (s *Solver) optimal() (Solution, bool) {
	if !s.factorise() {
		return Solution{}, false
	}
	y, d := s.multipliers()
	if !s.complementary(y, s.n) || !s.complementary(d, 0) || !s.place() {
		return Solution{}, false
	}
	cost := dot(s.cost, s.value[:s.n])
	bound, terms := s.bound(y, d)
	if math.IsInf(bound, 0) || !(math.Abs(cost-bound) <= Optimality*(s.size+terms)) {
		return Solution{}, false
	}
	out := Solution{Status: Optimal, Objective: cost / s.money, Bound: bound / s.money, Pivots: s.run.pivots}
	return s.unscaled(out, y, d), true
}

// unscaled fills in point and multipliers, in the units of the program.
func (s *Solver) unscaled(out Solution, y, d []float64) Solution {
	out.X = make([]float64, s.n)
	for j := range out.X {
		out.X[j] = s.value[j] * s.column[j]
		d[j] /= s.column[j] * s.money
	}
	for i := range y {
		y[i] *= s.row[i] / s.money
	}
	out.RowDuals, out.ColumnDuals = y, d
	return out
}

// place computes the values of all basic variables anew and reports whether they are
// within their bounds. A structural variable that is out by no more than the
// tolerance is set to its bound first.
func (s *Solver) place() bool {
	c := &s.core
	for _, j := range c.columns {
		s.value[j] = 0
	}
	z := c.right
	for k, i := range c.rows {
		z[k] = s.value[s.n+i] - s.activity(i)
	}
	c.solve(z)
	for k, j := range c.columns {
		s.value[j] = z[k]
		if _, excess := s.outside(j); excess <= 1 {
			s.value[j] = max(s.lower[j], min(s.upper[j], z[k]))
		}
	}
	return s.rowsHold()
}

// rowsHold computes the values of all rows anew and reports whether all variables
// are within their bounds and the rows of the core at theirs.
func (s *Solver) rowsHold() bool {
	for _, i := range s.core.rows {
		at := s.value[s.n+i]
		if !(math.Abs(s.activity(i)-at) <= s.tolerance(at)) {
			return false
		}
	}
	for _, v := range s.basic {
		if v >= s.n {
			s.value[v] = s.activity(v - s.n)
		}
		if _, excess := s.outside(v); !(excess <= 1) {
			return false
		}
	}
	return true
}

// multipliers returns those of rows and columns for the cost.
func (s *Solver) multipliers() (rows, columns []float64) {
	c := &s.core
	z := c.right
	for k, j := range c.columns {
		z[k] = s.cost[j]
	}
	c.solveTransposed(z)
	for k, i := range c.rows {
		z[k] = s.signed(z[k], s.n+i)
	}
	rows, columns = s.spread(z)
	for j, cost := range s.cost {
		columns[j] = clean(cost-columns[j], noise)
	}
	for _, j := range c.columns {
		columns[j] = clean(columns[j], Optimality)
	}
	return rows, columns
}

// signed returns the multiplier of nonbasic variable v, or 0 if it is noise or has
// the wrong sign by no more than the tolerance.
func (s *Solver) signed(m float64, v int) float64 {
	x := s.value[v]
	if m > 0 && x > s.lower[v] || m < 0 && x < s.upper[v] {
		m = clean(m, Optimality)
	}
	return clean(m, noise)
}

// spread puts multipliers of the rows of the core among zeros for the others, and
// returns with them the sum of multiplier times row.
func (s *Solver) spread(z []float64) (rows, sum []float64) {
	both := make([]float64, len(s.row)+s.n)
	rows, sum = both[:len(s.row):len(s.row)], both[len(s.row):]
	for k, i := range s.core.rows {
		rows[i] = z[k]
		if z[k] != 0 {
			addTo(sum, rows[i], s.coefficients(i))
		}
	}
	return rows, sum
}

// clean returns x, or 0 if that is no larger than limit.
func clean(x, limit float64) float64 {
	if math.Abs(x) <= limit {
		return 0
	}
	return x
}

// complementary reports whether no multiplier, of variables from the given one on,
// asks for a move that the bounds allow.
func (s *Solver) complementary(multipliers []float64, from int) bool {
	for k, m := range multipliers {
		v := from + k
		if m > Optimality && s.value[v] > s.lower[v] || m < -Optimality && s.value[v] < s.upper[v] {
			return false
		}
	}
	return true
}

// bound returns what the multipliers prove of the cost, scaled: the least that rows
// and columns can come to, each on its own; and how large its terms are. A side
// without bound counts for nothing while its multiplier is no larger than the
// tolerance.
func (s *Solver) bound(y, d []float64) (sum, terms float64) {
	add := func(m float64, v int) {
		term := least(m, s.lower[v], s.upper[v], Optimality)
		sum, terms = sum+term, terms+math.Abs(term)
	}
	for i, m := range y {
		add(m, s.n+i)
	}
	for j, m := range d {
		add(m, j)
	}
	return sum, terms
}

// least returns the least value of m times x over the bounds of x. A side without
// bound counts as zero for an m up to limit.
func least(m, lower, upper, limit float64) float64 {
	side := lower
	if m < 0 {
		side = upper
	}
	if m == 0 || math.IsInf(side, 0) && math.Abs(m) <= limit {
		return 0
	}
	return float64(m * side)
}
