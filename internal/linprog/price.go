package linprog

// leaving returns the row whose basic variable leaves the basis, and by how much it
// has to rise (or, negative, to fall) to its bound; -1 if all are within theirs.
//
// As a rule it is the one furthest outside, measured by the tolerance of the bound;
// in a stall it is the one counted first among all variables.
func (s *Solver) leaving() (p int, gap float64) {
	p = -1
	worst := 1.0
	for i, v := range s.basic {
		g, excess := s.outside(v)
		if !(excess > 1) {
			continue
		}
		better := excess > worst
		if s.run.careful() {
			better = p < 0 || v < s.basic[p]
		}
		if better {
			p, gap, worst = i, g, excess
		}
	}
	return p, gap
}

// outside returns how far the value of a variable has to go to be within its bounds,
// and how many tolerances that is.
func (s *Solver) outside(v int) (gap, excess float64) {
	x, lower, upper := s.value[v], s.lower[v], s.upper[v]
	if x >= lower && x <= upper {
		return 0, 0
	}
	if x > upper {
		gap = upper - x
		return gap, -gap / s.tolerance(upper)
	}
	gap = lower - x // also if x is not a number: then so is the excess
	return gap, gap / s.tolerance(lower)
}
