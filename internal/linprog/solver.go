package linprog

import (
	"fmt"
	"math"
)

// Solver holds a program, scaled, and the basis reached so far. The zero Solver has
// no variables. It is not safe for use by several goroutines at once.
//
// Variables are counted through: first the n of the program, then one per row, whose
// value is that of Coefficients . x ("logical" variables; those of the program are
// called structural). At any time n of them are nonbasic: each sits at a bound or,
// if it never had to move, between its bounds at zero. The others, as many as there
// are rows, are basic: their values follow.
type Solver struct {
	n            int
	column, row  []float64 // scales of variables and rows, see scale.go
	money        float64   // scale of the cost
	rows         []float64 // scaled coefficients, row after row
	cost         []float64 // scaled, of the structural variables
	lower, upper []float64 // scaled, of all variables
	value        []float64 // scaled, of all variables

	// tableau has one row of n numbers for the cost and then one for each basic
	// variable: how it depends on the nonbasic ones. The first row is the reduced
	// costs.
	tableau  []float64
	basic    []int // the variable of each row
	nonbasic []int // the variable of each column

	size  float64 // what a bound is like, see length
	run   run
	ratio ratio
	core  core

	limit, patience int // of a run; 0 for the default
}

// New returns a solver for p, of which nothing is kept. It refuses lengths that do
// not fit, what is not a number or too large (1e60), bounds without a number
// between them, and costs without the finite bound that [Program] asks for. What it
// accepts can still be infeasible.
func New(p Program) (*Solver, error) {
	s := new(Solver)
	if err := s.Load(p); err != nil {
		return nil, err
	}
	return s, nil
}

// Load makes the solver one for p, as New does, in the memory that it has. A program
// that is refused leaves the solver as it was.
func (s *Solver) Load(p Program) error {
	if err := p.check(); err != nil {
		return err
	}
	s.allocate(len(p.Cost), len(p.Rows))
	s.equilibrate(p.Rows)
	s.money = s.costScale(p.Cost)
	for j, c := range p.Cost {
		s.cost[j] = c * s.column[j] * s.money
		s.lower[j], s.upper[j] = p.Lower[j]/s.column[j], p.Upper[j]/s.column[j]
		s.value[j] = cheapest(c, s.lower[j], s.upper[j])
	}
	for i := range p.Rows {
		s.load(i, &p.Rows[i])
	}
	s.start()
	return nil
}

// allocate makes room for n variables and m rows. What it holds is whatever there was
// before.
func (s *Solver) allocate(n, m int) {
	s.n = n
	s.column, s.row = resized(s.column, n), resized(s.row, m)
	s.rows, s.cost = resized(s.rows, n*m), resized(s.cost, n)
	s.lower, s.upper, s.value = resized(s.lower, n+m), resized(s.upper, n+m), resized(s.value, n+m)
	s.tableau = resized(s.tableau, n*(m+1))
	s.basic, s.nonbasic = resized(s.basic, m), resized(s.nonbasic, n)
}

// resized returns a slice of that length, in the memory of the one given if it is
// enough.
func resized[T any](s []T, n int) []T {
	if n > cap(s) {
		return make([]T, n)
	}
	return s[:n]
}

// cheapest returns where a variable costs least; of several such places the one
// nearest to zero.
func cheapest(cost, lower, upper float64) float64 {
	if cost > 0 {
		return lower
	}
	if cost < 0 {
		return upper
	}
	return max(lower, min(upper, 0))
}

// load scales a row and its bounds into place.
func (s *Solver) load(i int, r *Row) {
	to := s.coefficients(i)
	for j, a := range r.Coefficients {
		to[j] = a * s.row[i] * s.column[j]
	}
	s.lower[s.n+i], s.upper[s.n+i] = r.Lower*s.row[i], r.Upper*s.row[i]
}

// coefficients returns the scaled coefficients of a row.
func (s *Solver) coefficients(i int) []float64 { return s.rows[i*s.n : (i+1)*s.n] }

// Add takes in one more row. The basis stays, with the new row basic, so no reduced
// cost changes and the next Solve goes on from there: a few pivots, as a rule. A row
// that New would refuse is refused, and leaves the solver as it was.
func (s *Solver) Add(r Row) error {
	if err := r.check(s.n); err != nil {
		return fmt.Errorf("linprog: added row: %w", err)
	}
	i := len(s.basic)
	s.row = append(s.row, s.rowScale(r.Coefficients))
	s.rows = append(s.rows, r.Coefficients...)
	s.lower, s.upper = append(s.lower, 0), append(s.upper, 0)
	s.value = append(s.value, 0)
	s.load(i, &r)
	s.basic = append(s.basic, s.n+i)
	s.tableau = append(s.tableau, r.Coefficients...)
	s.express(i)
	s.value[s.n+i] = s.activity(i)
	return nil
}

// express writes the tableau row of logical variable i, which is basic in row i, in
// terms of the nonbasic variables.
func (s *Solver) express(i int) {
	to, from := s.line(i), s.coefficients(i)
	clear(to)
	for j, v := range s.nonbasic {
		if v < s.n {
			to[j] = from[v]
		}
	}
	for k, v := range s.basic[:i] {
		if v < s.n && from[v] != 0 {
			addTo(to, from[v], s.line(k))
		}
	}
}

// activity returns the value of a row under the values of the structural variables.
func (s *Solver) activity(i int) float64 { return dot(s.coefficients(i), s.value[:s.n]) }

// tolerance returns by how much a scaled value may pass this bound.
func (s *Solver) tolerance(bound float64) float64 {
	return Feasibility * max(s.size, math.Abs(bound))
}
