package nearest

import "math"

// refresh makes the basis, x and the multipliers afresh from the active rows. A
// row whose multiplier turns out to be negative leaves, the most negative first:
// that keeps x nearest for the rows that stay.
func (s *Solver) refresh() {
	for {
		s.steps++
		s.factorise()
		l := s.mostNegative()
		if l < 0 {
			s.fresh = true
			return
		}
		s.drop(l)
	}
}

// factorise solves the active rows as equations: with N = Q R their normals, the
// shortest x is Q w with R' w = b, and the multipliers are R^-1 w.
func (s *Solver) factorise() {
	s.basis.clear()
	for i, a := range s.active {
		s.along(a)
		s.basis.push(s.d)
		s.r[i] = a.sign * s.rows[a.row].least
	}
	s.basis.solveTransposed(s.r)
	clear(s.x)
	for k := range s.active {
		addTo(s.x, s.r[k], s.basis.q[k])
	}
	s.basis.solve(s.r)
	for i := range s.active {
		s.active[i].dual = s.r[i]
	}
}

// mostNegative returns the active inequality with the most negative multiplier,
// or -1.
func (s *Solver) mostNegative() int {
	worst, least := -1, 0.0
	for i, a := range s.active {
		if !s.rows[a.row].equal && a.dual < least {
			worst, least = i, a.dual
		}
	}
	return worst
}

// verdict checks the conditions under which x is the nearest point, on the rows
// as handed over.
func (s *Solver) verdict() Status {
	// What lack can be off by: products, sums and a division, each by 2^-53.
	if float64(len(s.x)+2)*0x1p-53*length(s.x) > tolerance(0) {
		return Stopped
	}
	for i := range s.rows {
		if _, broken := s.rows[i].broken(s.x); broken {
			return Stopped
		}
	}
	rest, size := s.z, length(s.x)
	copy(rest, s.x)
	for _, a := range s.active {
		r := &s.rows[a.row]
		if math.Abs(r.lack(s.x)) > tolerance(r.least) || !r.equal && a.dual < 0 {
			return Stopped
		}
		r.addTo(rest, -a.sign*a.dual/r.length)
		size += math.Abs(a.dual)
	}
	if length(rest) <= 1e-13*size {
		return Found
	}
	return Stopped
}

// prove looks whether the row that could not be let in, less the active rows that
// it is made up of, is a contradiction. The package comment has the margins.
func (s *Solver) prove(new active) {
	proof, rest := make([]float64, len(s.rows)), s.z
	clear(rest)
	sum, size, largest := 0.0, 0.0, 0.0
	take := func(a active, y float64) {
		r := &s.rows[a.row]
		if !r.equal {
			y = max(y, 0) // below the noise
		}
		if y == 0 {
			return
		}
		proof[a.row] = a.sign * y / r.length
		r.addTo(rest, proof[a.row])
		sum += float64(a.sign * y * r.least)
		size += float64(math.Abs(y) * (1 + math.Abs(r.least)))
		largest = max(largest, math.Abs(r.least))
	}
	take(new, 1)
	for i, a := range s.active {
		take(a, -s.r[i])
	}
	if sum > 1e-13*size && sum >= 100*(1+largest)*length(rest) {
		s.proof = proof
	}
}
