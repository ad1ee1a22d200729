package nearest

import "math"

// tolerance is by how much a row of length 1 may be missed.
func tolerance(least float64) float64 { return 1e-10 * (1 + math.Abs(least)) }

// short tells by how much a row is broken, from what it lacks to its least value.
func (r Row) short(lack float64) float64 {
	if r.Equal {
		return math.Abs(lack)
	}
	return lack
}

// least returns the least value of a row made 1 long.
func (s *Solver) least(i int) float64 {
	if s.lengths[i] == 0 {
		return s.rows[i].Least
	}
	return s.rows[i].Least / s.lengths[i]
}

// lack returns b - a . x of a row made 1 long.
func (s *Solver) lack(i int) float64 {
	if s.lengths[i] == 0 {
		return s.rows[i].Least
	}
	return (s.rows[i].Least - dot(s.rows[i].Coefficients, s.x)) / s.lengths[i]
}

// broken tells whether a row is missed by more than the tolerance. What is not a
// number is broken.
func (s *Solver) broken(i int) bool {
	return !(s.rows[i].short(s.lack(i)) <= tolerance(s.least(i)))
}

// mostBroken returns the row that is broken most, the first of equals, or -1.
// Equalities come before all others: they never leave again.
func (s *Solver) mostBroken() int {
	worst, short := -1, 0.0
	for i, row := range s.rows {
		if s.inside[i] || !s.broken(i) {
			continue
		}
		v := row.short(s.lack(i))
		if worst < 0 || row.Equal && !s.rows[worst].Equal || row.Equal == s.rows[worst].Equal && v > short {
			worst, short = i, v
		}
	}
	return worst
}
