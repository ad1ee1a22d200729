package nearest

import "math"

// flat is the sine of the angle to the span of the active rows below which a row
// counts as lying in it; noise is below which a coefficient counts as zero.
const (
	flat  = 1e-11
	noise = 1e-14
)

// enter moves x to the nearest point that keeps row q together with the active
// rows, dropping those that hold x back. It returns false if the row cannot be
// let in, with a proof if there is one that the set is empty, or if the limit of
// steps is reached.
func (s *Solver) enter(q int) bool {
	s.fresh = false
	new := active{row: q, sign: math.Copysign(1, s.rows[q].lack(s.x))}
	for ; s.steps < s.limit(); s.steps++ {
		outside := s.direction(new)
		whole := math.Inf(1) // the step at which the row is kept
		if outside > flat*flat {
			whole = new.sign * s.rows[q].lack(s.x) / outside
		}
		part, l := s.blocking()
		step := min(whole, part)
		if math.IsNaN(step) { // beyond what a float64 holds
			s.bad = true
			return false
		}
		if math.IsInf(step, 1) {
			s.prove(new)
			return false
		}
		s.move(&new, step, outside > flat*flat)
		if whole <= part {
			s.letIn(new)
			return true
		}
		s.drop(l)
	}
	return false
}

// direction prepares for a row: d, its normal along the vectors of the basis; z,
// the part of it that lies outside the span of the active rows; r, the active
// rows that make up the rest. It returns |z|^2.
func (s *Solver) direction(a active) (outside float64) {
	s.along(a)
	clear(s.z)
	for k := s.basis.size; k < len(s.d); k++ {
		if s.d[k] != 0 {
			addTo(s.z, s.d[k], s.basis.q[k])
		}
		outside += float64(s.d[k] * s.d[k])
	}
	copy(s.r, s.d)
	s.basis.solve(s.r)
	return outside
}

// along sets d to the components of a row, made 1 long, along the basis.
func (s *Solver) along(a active) {
	r := &s.rows[a.row]
	for k, q := range s.basis.q {
		s.d[k] = a.sign * r.dot(q) / r.length
	}
}

// blocking returns the step at which the first multiplier of an inequality comes
// down to zero, and which one that is.
func (s *Solver) blocking() (step float64, l int) {
	step, l = math.Inf(1), -1
	for i, a := range s.active {
		if s.rows[a.row].equal || s.r[i] <= noise {
			continue
		}
		if at := a.dual / s.r[i]; at < step {
			step, l = at, i
		}
	}
	return step, l
}

// move steps along the direction: x stays the sum of the active rows, the new one
// among them, times their multipliers.
func (s *Solver) move(new *active, step float64, outside bool) {
	if outside {
		addTo(s.x, step, s.z)
	}
	for i := range s.active {
		a := &s.active[i]
		a.dual -= float64(step * s.r[i])
		if !s.rows[a.row].equal {
			a.dual = max(a.dual, 0) // rounding
		}
	}
	new.dual += step
}

func (s *Solver) letIn(new active) {
	s.basis.push(s.d)
	s.active = append(s.active, new)
	s.rows[new.row].inside = true
	s.steps++
}

func (s *Solver) drop(l int) {
	s.basis.drop(l)
	s.rows[s.active[l].row].inside = false
	s.active = append(s.active[:l], s.active[l+1:]...)
}
