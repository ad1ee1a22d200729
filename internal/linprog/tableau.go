package linprog

import "math"

// line returns the tableau row of the basic variable in row i; -1 is the cost's.
func (s *Solver) line(i int) []float64 { return s.tableau[(i+1)*s.n : (i+2)*s.n] }

// reduced returns the reduced costs of the nonbasic variables.
func (s *Solver) reduced() []float64 { return s.line(-1) }

// start makes all rows basic and writes the tableau for it: the coefficients
// themselves.
func (s *Solver) start() {
	for j := range s.nonbasic {
		s.nonbasic[j] = j
	}
	for i := range s.basic {
		s.basic[i] = s.n + i
		s.value[s.n+i] = s.activity(i)
	}
	copy(s.tableau, s.cost)
	copy(s.tableau[s.n:], s.rows)
}

// dropped is the size below which an entry of the pivot column counts as zero: what
// cancelled to nothing but for rounding.
const dropped = 1e-14

// pivot makes the variable of column q basic in row p, for the one that was.
//
// From basic = a n + rest follows n = (basic - rest)/a, which is put into all other
// rows.
func (s *Solver) pivot(p, q int) {
	main := s.line(p)
	inverse := 1 / main[q]
	for j := range main {
		main[j] *= -inverse
	}
	main[q] = inverse
	for i := -1; i < len(s.basic); i++ {
		if i != p {
			s.eliminate(s.line(i), main, q)
		}
	}
	s.basic[p], s.nonbasic[q] = s.nonbasic[q], s.basic[p]
}

// eliminate replaces the variable of column q in a row.
func (s *Solver) eliminate(row, main []float64, q int) {
	factor := row[q]
	row[q] = 0
	if math.Abs(factor) > dropped {
		addTo(row, factor, main)
	}
}

// refactor builds the tableau of the present basis anew from the coefficients, with
// the largest pivot first. Where the rest of the basis is singular the row stays
// basic and the variable nonbasic.
func (s *Solver) refactor() {
	wanted := make([]bool, len(s.value)) // to become basic, or nonbasic
	left := 0
	for _, v := range s.basic {
		if v < s.n {
			wanted[v] = true
			left++
		}
	}
	for _, v := range s.nonbasic {
		wanted[v] = v >= s.n
	}
	s.start()
	for ; left > 0; left-- {
		p, q := s.largest(wanted)
		if p < 0 {
			break
		}
		wanted[s.basic[p]], wanted[s.nonbasic[q]] = false, false
		s.pivot(p, q)
	}
	s.settle()
}

// largest returns the place of the largest tableau entry between a row and a column
// that are both wanted, or -1 if none is fit to be a pivot.
func (s *Solver) largest(wanted []bool) (p, q int) {
	p, q = -1, -1
	top := smallestPivot
	for i, b := range s.basic {
		if !wanted[b] {
			continue
		}
		for j, a := range s.line(i) {
			if wanted[s.nonbasic[j]] && math.Abs(a) > top {
				p, q, top = i, j, math.Abs(a)
			}
		}
	}
	return p, q
}

// settle brings what follows a changed tableau in order: each nonbasic variable goes
// to the bound its reduced cost asks for, and the basic ones take their values.
func (s *Solver) settle() {
	for j, v := range s.nonbasic {
		s.value[v] = s.seat(v, s.reduced()[j])
	}
	s.sign()
	for i, v := range s.basic {
		sum := 0.0
		for j, w := range s.nonbasic {
			if a := s.line(i)[j]; a != 0 {
				sum += float64(a * s.value[w])
			}
		}
		s.value[v] = sum
	}
}

// seat returns the value of nonbasic variable v for its reduced cost: the present
// one if it may stay.
func (s *Solver) seat(v int, reduced float64) float64 {
	lower, upper := s.lower[v], s.upper[v]
	if reduced > Optimality && !math.IsInf(lower, -1) {
		return lower
	}
	if reduced < -Optimality && !math.IsInf(upper, 1) {
		return upper
	}
	x := max(lower, min(upper, s.value[v]))
	if v < s.n && x == 0 || x == lower || x == upper {
		return x
	}
	return cheapest(reduced, lower, upper)
}

// sign sets reduced costs to zero that rounding and near ties took past it. What
// this shifts the cost by is found, and judged, when the result is verified.
func (s *Solver) sign() {
	d := s.reduced()
	for j, v := range s.nonbasic {
		x, lower, upper := s.value[v], s.lower[v], s.upper[v]
		if d[j] > 0 && x > lower || d[j] < 0 && x < upper {
			d[j] = 0
		}
	}
}

// addTo adds a multiple of one vector to another.
func addTo(to []float64, factor float64, from []float64) {
	from = from[:len(to)]
	for j := range to {
		to[j] += float64(factor * from[j])
	}
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for j := range a {
		sum += float64(a[j] * b[j])
	}
	return sum
}
