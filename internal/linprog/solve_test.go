package linprog

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestProofs solves programs of all kinds and lengths and judges each result in
// exact rationals.
func TestProofs(t *testing.T) {
	each := 834 // 12 kinds: 10 008 programs
	if testing.Short() {
		each = 60
	}
	for _, m := range makers {
		t.Run(m.name, func(t *testing.T) {
			var seen tally
			for k := range each {
				r := rand.New(rand.NewPCG(uint64(k), 20))
				p := stretched(m.make(r), []float64{1, 1e-3, 1e3}[k%3])
				seen.judge(t, k, p)
			}
			t.Logf("%+v", seen)
		})
	}
}

// tally counts results.
type tally struct {
	Optimal, Infeasible, Hair, Pivots, Most int
}

func (c *tally) judge(t *testing.T, k int, p Program) {
	t.Helper()
	s, err := New(p)
	if err != nil {
		t.Fatalf("%d: %v", k, err)
	}
	got := s.Solve()
	c.Pivots += got.Pivots
	c.Most = max(c.Most, got.Pivots)
	switch g := newJudge(t, p, s); got.Status {
	case Optimal:
		c.Optimal++
		cost, primal, dual := g.optimum()
		if primal > 0 || dual > 0 {
			c.Hair++
		}
		if primal > 1.001 || dual > 1.001 {
			t.Errorf("%d: the basis misses by %g and %g tolerances", k, primal, dual)
		}
		if !near9(got.Objective, cost, s.size/s.money) || !near9(got.Bound, cost, s.size/s.money) {
			t.Errorf("%d: objective %v, bound %v, exactly %v", k, got.Objective, got.Bound, cost)
		}
		checkSolution(t, k, s, p, got)
		for _, v := range s.basic {
			if v < s.n && got.ColumnDuals[v] != 0 || v >= s.n && got.RowDuals[v-s.n] != 0 {
				t.Errorf("%d: basic variable %d has a multiplier", k, v)
			}
		}
	case Infeasible:
		c.Infeasible++
		row, _ := s.leaving()
		if gap := g.ray(row); gap < margin*s.size {
			t.Errorf("%d: the proof of infeasibility has gap %g", k, gap)
		}
	default:
		t.Errorf("%d: %v after %d pivots", k, got.Status, got.Pivots)
	}
}

func near9(a, b, size float64) bool {
	return math.Abs(a-b) <= 1e-9*(size+math.Abs(a)+math.Abs(b))
}

// checkSolution checks the reported numbers against the program as it was given.
func checkSolution(t *testing.T, k int, s *Solver, p Program, got Solution) {
	t.Helper()
	for j, x := range got.X {
		if x < p.Lower[j] || x > p.Upper[j] {
			t.Errorf("%d: x[%d] = %v is not within [%v, %v]", k, j, x, p.Lower[j], p.Upper[j])
		}
		if d := got.ColumnDuals[j]; d > 1e-9/s.money/s.column[j] && x > p.Lower[j] || d < -1e-9/s.money/s.column[j] && x < p.Upper[j] {
			t.Errorf("%d: reduced cost %g of x[%d] = %v within [%v, %v]", k, d, j, x, p.Lower[j], p.Upper[j])
		}
	}
	for i, r := range p.Rows {
		x, y := dot(r.Coefficients, got.X), got.RowDuals[i]
		slack := Feasibility * 1.01 / s.row[i] * max(s.size, finite(r.Lower)*s.row[i], finite(r.Upper)*s.row[i])
		if x < r.Lower-slack || x > r.Upper+slack {
			t.Errorf("%d: row %d = %v is not within [%v, %v]", k, i, x, r.Lower, r.Upper)
		}
		if y > 0 && x > r.Lower+slack || y < 0 && x < r.Upper-slack {
			t.Errorf("%d: multiplier %g of row %d = %v within [%v, %v]", k, y, i, x, r.Lower, r.Upper)
		}
	}
}
