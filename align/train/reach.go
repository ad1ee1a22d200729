package train

import (
	"math"

	"example.org/collinear/internal/linprog"
)

// best is the least worst ratio that a train can be brought to.
type best struct {
	ratio   float64 // of this plan
	bound   float64 // no plan is better
	cuts    *cuts   // that were needed
	holding []end   // that hold the ratio up: those with a multiplier
}

// bestRatio solves: minimise r with every cut of every item at most r.
func (m *model) bestRatio() (b best, ok bool) {
	b.cuts = m.newCuts()
	p := m.inMoves(1, m.undivided)
	belowRatio := func(f *affine) linprog.Row { // f - r <= 0
		row := p.row(f, math.Inf(-1), 0)
		row.Coefficients[p.more()] = -1
		return row
	}
	s, ok := b.cuts.minimise(p, belowRatio, func(s *linprog.Solution) float64 { return s.Objective })
	if !ok {
		return b, false
	}
	y := p.coordinates(s.X)
	b.ratio, b.bound, b.holding = m.worst(y), max(0, s.Bound), p.holding(&s)
	b.cuts.prune(y, b.ratio)
	return b, true
}

// holding lists the ends that have a multiplier, where each move is in one piece.
func (p *program) holding(s *linprog.Solution) []end {
	var list []end
	for i := range p.m.stops {
		if dual := s.ColumnDuals[p.first[i]]; dual > 0 {
			list = append(list, end{i, Low})
		} else if dual < 0 {
			list = append(list, end{i, High})
		}
	}
	return list
}

// minimise solves a program to which every cut is a row. Where items are round it
// goes on with a tangent more wherever the answer stands outside its level, until
// none does by more than is worth it.
func (c *cuts) minimise(p *program, row func(*affine) linprog.Row, level func(*linprog.Solution) float64) (linprog.Solution, bool) {
	for i := range c.list {
		p.Rows = append(p.Rows, row(&c.list[i]))
	}
	solver := &c.m.space.linear
	if solver.Load(p.Program) != nil {
		return linprog.Solution{}, false
	}
	var s linprog.Solution
	var y []float64
	for range mostRounds {
		s = solve(solver, p.Program)
		if s.Status != linprog.Optimal {
			return s, false
		}
		y = p.coordinates(s.X)
		fresh := c.deepen(y, level(&s))
		if len(fresh) == 0 {
			break
		}
		for i := range fresh {
			p.Rows = append(p.Rows, row(&fresh[i]))
			if solver.Add(p.Rows[len(p.Rows)-1]) != nil {
				return s, false
			}
		}
	}
	return s, c.m.nearEnough(y, level(&s))
}

// solve goes on from the basis that the solver has, or from scratch where that leads
// nowhere.
func solve(solver *linprog.Solver, p linprog.Program) linprog.Solution {
	s := solver.Solve()
	if s.Status != linprog.Stopped || solver.Load(p) != nil {
		return s
	}
	return solver.Solve()
}
