package linprog

import "math"

// run is how far one Solve has got.
type run struct {
	pivots   int
	stalled  int  // pivots since the dual objective last rose
	patience int  // how many of those are normal
	fresh    bool // no pivot since the tableau was built
}

// careful reports whether the run has stalled, so that only the least index makes
// sure that no basis comes back.
func (r *run) careful() bool { return r.stalled > r.patience }

// mostAnswers is at how many answers that do not prove themselves Solve gives up.
const mostAnswers = 13

// Solve finds a cheapest point, or proves that there is none. It goes on from where
// the Solve before ended.
func (s *Solver) Solve() Solution {
	limit := s.begin()
	for range mostAnswers {
		if answer, proved := s.pivotOn(limit); proved {
			return answer
		}
		s.rebuild() // what could not be proved is put down to rounding in the tableau
	}
	return s.stopped()
}

func (s *Solver) stopped() Solution { return Solution{Status: Stopped, Pivots: s.run.pivots} }

// begin sets up a run and returns after how many pivots it is to end.
func (s *Solver) begin() (limit int) {
	if s.money == 0 { // the zero Solver
		s.money = 1
	}
	s.size = s.length()
	s.run = run{patience: 2*s.n + 20}
	if s.patience != 0 {
		s.run.patience = s.patience
	}
	if s.limit != 0 {
		return s.limit
	}
	return 200 + 20*len(s.value)
}

// pivotOn makes pivots, up to the limit, until none is left to be made, and tells
// whether the answer has proved itself.
func (s *Solver) pivotOn(limit int) (answer Solution, proved bool) {
	for s.run.pivots <= limit {
		p, gap := s.leaving()
		if p < 0 {
			return s.optimal()
		}
		q := s.entering(p, gap, s.tolerance(s.target(p, gap)))
		if q < 0 {
			return s.infeasible(p)
		}
		s.step(p, q, gap)
	}
	return s.stopped(), true
}

// step makes one pivot, or sees to it that the entry to pivot on is no rounding.
func (s *Solver) step(p, q int, gap float64) {
	if math.Abs(s.line(p)[q]) < smallestPivot && !s.run.fresh {
		s.rebuild()
	} else {
		s.exchange(p, q, gap)
	}
}

func (s *Solver) rebuild() {
	s.refactor()
	s.run.fresh = true
}

// target returns the bound to which the basic variable of row p has to go.
func (s *Solver) target(p int, gap float64) float64 {
	if gap > 0 {
		return s.lower[s.basic[p]]
	}
	return s.upper[s.basic[p]]
}

// exchange makes one step: variables that were passed go to their other bounds, the
// variable of column q takes what is left of the gap, and the basic variable of row
// p comes to its bound.
func (s *Solver) exchange(p, q int, gap float64) {
	goal := s.target(p, gap)
	s.flip(gap, s.line(p))
	out, in := s.basic[p], s.nonbasic[q]
	step := (goal - s.value[out]) / s.line(p)[q]
	s.shift(q, step)
	s.value[in] += step
	s.value[out] = goal
	s.pivot(p, q)
	s.sign()
	s.note(q)
}

// flip sets the variables that the ratio test passed to the bounds that help.
func (s *Solver) flip(gap float64, line []float64) {
	for _, o := range s.ratio.passed {
		v := s.nonbasic[o.column]
		to := s.upper[v]
		if (line[o.column] > 0) != (gap > 0) {
			to = s.lower[v]
		}
		s.shift(o.column, to-s.value[v])
		s.value[v] = to
	}
}

// shift moves the basic variables as the nonbasic one of column q moves by step.
func (s *Solver) shift(q int, step float64) {
	for i, v := range s.basic {
		if a := s.line(i)[q]; a != 0 {
			s.value[v] += float64(a * step)
		}
	}
}

// note keeps count after a pivot in column q, which now has the dual step.
func (s *Solver) note(q int) {
	s.run.pivots++
	s.run.fresh = false
	s.run.stalled++
	if math.Abs(s.reduced()[q]) > near {
		s.run.stalled = 0
	}
}
