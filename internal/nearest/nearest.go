package nearest

import (
	"fmt"
	"math"
	"slices"
)

// Row is one condition: the sum of Coefficients times x is at least Least, or
// equal to it where Equal is set.
type Row struct {
	Coefficients []float64 // as many as there are variables
	Least        float64
	Equal        bool
}

// Status tells what a [Point] is. Its zero value stands for no answer.
type Status uint8

// What can come of a search; the package comment says what each promises.
const (
	Found   Status = 1 + iota // X is the nearest point
	Empty                     // no point keeps all rows
	Stopped                   // neither could be shown
)

// String returns the name of the status.
func (s Status) String() string {
	switch s {
	case Found:
		return "found"
	case Empty:
		return "empty"
	case Stopped:
		return "stopped"
	default:
		return "none"
	}
}

// Point is the answer of [Solver.Solve].
type Point struct {
	Status Status

	// X is the nearest point if one was found, and nil otherwise.
	X []float64

	// Duals has a multiplier per row, in the order in which they were added.
	// Those of inequalities are not negative. If a point was found, X is the sum
	// of the rows times their multipliers, and slack rows have zero. If the set
	// is empty, they are the proof: the rows times their multipliers add up to
	// zero, the least values to something positive. Otherwise nil.
	Duals []float64

	// Steps counts what this call had to do: rows let in, rows dropped and
	// factorisations from scratch.
	Steps int
}

// Solver holds the rows added so far and the nearest point that was found for
// them, from which the search goes on when more rows come. It is made by [New],
// and not for use by several goroutines at a time.
type Solver struct {
	rows   []row
	copies []float64 // of coefficients

	proof []float64 // multipliers that prove the set to be empty, from the moment there is a proof
	bad   bool      // a number that is not finite was handed over

	basis  basis
	active []active // in the order of the basis
	x      []float64
	steps  int  // of this call of Solve
	fresh  bool // basis, x and multipliers were made afresh from the active rows

	d, r, z []float64 // of the row that is about to be let in, see direction

	vectors []float64 // the memory of all the above
}

// active is a row that was let in, taken as sign (a . x - b) / |a| >= 0.
type active struct {
	row  int
	sign float64 // -1 for an equality that was approached from above
	dual float64 // of the row with its sign and its length made 1
}

// New returns a solver for n variables without rows.
func New(n int) *Solver {
	s := new(Solver)
	s.Reset(n)
	return s
}

// Reset makes the solver one for n variables without rows, as New does, in the memory
// that it has.
func (s *Solver) Reset(n int) {
	*s = Solver{
		rows: s.rows[:0], copies: s.copies[:0], active: s.active[:0], basis: s.basis, vectors: s.vectors, fresh: true,
	}
	if n*(2*n+4) > cap(s.vectors) {
		s.vectors = make([]float64, n*(2*n+4))
	}
	rest := s.vectors[:cap(s.vectors)]
	take := func(n int) []float64 {
		v := rest[:n:n]
		rest = rest[n:]
		return v
	}
	s.x, s.d, s.r, s.z = take(n), take(n), take(n), take(n)
	clear(s.x)
	s.basis.reset(take(n*n), take(n*n), n)
}

// Add takes in more rows. It copies them. It panics if a row does not have as
// many coefficients as there are variables, which is a mistake of the program,
// never of its data.
func (s *Solver) Add(rows ...Row) {
	s.rows = slices.Grow(s.rows, len(rows))
	for i := range rows {
		of := rows[i].Coefficients
		if n := len(s.x); len(of) != n {
			panic(fmt.Sprintf("nearest: %d coefficients for %d variables", len(of), n))
		}
		first, end := span(of)
		start := len(s.copies)
		s.copies = append(s.copies, of[first:end]...) // where this moves, earlier rows stay where they are
		s.rows = append(s.rows, newRow(first, s.copies[start:], &rows[i]))
		s.judge(len(s.rows) - 1)
	}
}

// judge looks for what is wrong with a row by itself.
func (s *Solver) judge(i int) {
	r := &s.rows[i]
	if math.IsInf(r.length, 0) || math.IsNaN(r.length) || math.IsInf(r.least, 0) || math.IsNaN(r.least) {
		s.bad = true
	} else if r.length == 0 && s.proof == nil && r.short(r.least) > tolerance(r.least) {
		s.proof = make([]float64, i+1)
		s.proof[i] = math.Copysign(1, r.least)
	}
}

// Solve returns the point nearest to the origin that keeps all rows.
func (s *Solver) Solve() Point {
	s.steps = 0
	status := s.search()
	point := Point{Status: status, Steps: s.steps}
	switch status {
	case Found:
		point.X = make([]float64, len(s.x)) // not nil, even without variables
		copy(point.X, s.x)
		point.Duals = s.duals()
	case Empty:
		point.Duals = make([]float64, len(s.rows))
		copy(point.Duals, s.proof)
	}
	return point
}

// search lets in broken rows until none is left. An answer is trusted only on a
// fresh basis; so is the lack of one.
func (s *Solver) search() Status {
	for s.steps < s.limit() {
		if s.bad {
			return Stopped
		}
		if s.proof != nil {
			return Empty
		}
		fresh, q := s.fresh, s.mostBroken()
		switch {
		case q < 0 && fresh:
			return s.verdict()
		case q < 0:
			s.refresh()
		case s.enter(q):
			// x keeps this row now, and is farther away
		case s.proof != nil:
			// empty, at the next turn
		case fresh:
			s.refresh() // for the next call
			return Stopped
		default:
			s.refresh()
		}
	}
	s.refresh() // a half-done step leaves x without its multipliers
	return Stopped
}

// limit is far above what is needed, which is a few steps for each active row.
func (s *Solver) limit() int { return 50 * (1 + len(s.x) + len(s.rows)) }

// duals returns the multipliers of the rows as they were handed over.
func (s *Solver) duals() []float64 {
	duals := make([]float64, len(s.rows))
	for _, a := range s.active {
		duals[a.row] = a.sign * a.dual / s.rows[a.row].length
	}
	return duals
}
