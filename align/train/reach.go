package train

import (
	"math"

	"example.org/collinear/internal/linprog"
)

// free returns bounds for n variables that have none and more that are not below
// zero.
func free(n, more int) (lower, upper []float64) {
	lower, upper = make([]float64, n+more), make([]float64, n+more)
	for i := range upper {
		upper[i] = math.Inf(1)
		if i < n {
			lower[i] = math.Inf(-1)
		}
	}
	return lower, upper
}

// program returns a linear program whose first variables are the coordinates, which
// cost nothing and are free, and the others cost one each and are not below zero.
func (m *model) program(more int, rows []linprog.Row) linprog.Program {
	lower, upper := free(m.n, more)
	cost := make([]float64, m.n+more)
	for i := range more {
		cost[m.n+i] = 1
	}
	return linprog.Program{Cost: cost, Lower: lower, Upper: upper, Rows: rows}
}

// reachesTargets tells whether every coupling can come to its target.
func (m *model) reachesTargets() bool {
	r := region{m: m, onTarget: true}
	solver, err := linprog.New(m.program(0, r.programRows(0)))
	return err == nil && solver.Solve().Status == linprog.Optimal
}

// best is the least worst ratio that a train can be brought to.
type best struct {
	y     []float64
	ratio float64   // of this plan
	bound float64   // no plan is better
	cuts  *cuts     // that were needed
	duals []float64 // what each stop adds to the ratio, in the order of stopRows
}

// bestRatio solves: minimise r with every cut of every item at most r. Where items
// are round the program is solved again with a tangent more wherever its answer
// stands outside, until it does not. ok is false where a solver came to no answer.
func (m *model) bestRatio() (b best, ok bool) {
	b.cuts = m.newCuts()
	rows := m.stopRows(1)
	stops := len(rows)
	for i := range b.cuts.list {
		rows = append(rows, m.belowRatio(&b.cuts.list[i]))
	}
	solver, err := linprog.New(m.program(1, rows))
	if err != nil {
		return b, false
	}
	for range mostRounds {
		s := solver.Solve()
		if s.Status != linprog.Optimal {
			return b, false
		}
		b.y, b.duals = s.X[:m.n], s.RowDuals[:stops]
		b.ratio, b.bound = m.worst(b.y), max(0, s.Bound)
		held := len(b.cuts.list)
		if !b.cuts.deepen(b.y, s.Objective) {
			return b, true
		}
		for i := held; i < len(b.cuts.list); i++ {
			if solver.Add(m.belowRatio(&b.cuts.list[i])) != nil {
				return b, false
			}
		}
	}
	return b, true // the gap between ratio and bound tells
}

// belowRatio holds a cut below the ratio, which is the variable after the
// coordinates: f(y) - r <= 0.
func (m *model) belowRatio(f *affine) linprog.Row {
	row := between(f, math.Inf(-1), 0, 1)
	row.Coefficients[m.n] = -1
	return row
}
