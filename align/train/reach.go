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
	r := m.onTarget()
	_, ok := r.minimise(m.program(0, nil))
	return ok
}

// best is the least worst ratio that a train can be brought to.
type best struct {
	y     []float64
	ratio float64   // of this plan
	bound float64   // no plan is better
	cuts  *cuts     // that were needed
	duals []float64 // what each stop adds to the ratio, in the order of stopRows
}

// bestRatio solves: minimise r with every cut of every item at most r.
func (m *model) bestRatio() (b best, ok bool) {
	b.cuts = m.newCuts()
	rows := m.stopRows(1)
	stops := len(rows)
	s, ok := b.cuts.minimise(m.program(1, rows), m.belowRatio, func(s *linprog.Solution) float64 { return s.Objective })
	if !ok {
		return b, false
	}
	b.y, b.duals = s.X[:m.n], s.RowDuals[:stops]
	b.ratio, b.bound = m.worst(b.y), max(0, s.Bound)
	b.cuts.prune(b.y, b.ratio)
	return b, true
}

// belowRatio holds a cut below the ratio, which is the variable after the
// coordinates: f(y) - r <= 0.
func (m *model) belowRatio(f *affine) linprog.Row {
	row := between(f, math.Inf(-1), 0, 1)
	row.Coefficients[m.n] = -1
	return row
}

// minimise solves a program to which every cut is a row. Where items are round it
// goes on with a tangent more wherever the answer stands outside its level, until
// none does by more than is worth it.
func (c *cuts) minimise(p linprog.Program, row func(*affine) linprog.Row, level func(*linprog.Solution) float64) (linprog.Solution, bool) {
	for i := range c.list {
		p.Rows = append(p.Rows, row(&c.list[i]))
	}
	solver, err := linprog.New(p)
	if err != nil {
		return linprog.Solution{}, false
	}
	for round := 1; ; round++ {
		s := solve(&solver, p)
		if s.Status != linprog.Optimal {
			return s, false
		}
		held, y := len(c.list), s.X[:c.m.n]
		if !c.deepen(y, level(&s)) || round >= mostRounds {
			return s, c.m.worstRound(y) <= nearEnough(level(&s))
		}
		for i := held; i < len(c.list); i++ {
			p.Rows = append(p.Rows, row(&c.list[i]))
			if solver.Add(p.Rows[len(p.Rows)-1]) != nil {
				return s, false
			}
		}
	}
}

// solve goes on from the basis that the solver has, or from scratch where that leads
// nowhere.
func solve(solver **linprog.Solver, p linprog.Program) linprog.Solution {
	s := (*solver).Solve()
	if s.Status != linprog.Stopped {
		return s
	}
	fresh, err := linprog.New(p)
	if err != nil {
		return s
	}
	*solver = fresh
	return fresh.Solve()
}
