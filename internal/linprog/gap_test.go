package linprog

import (
	"math"
	"testing"
)

// The second variable has a cost below the noise and goes to 1e9, so the cheapest
// point costs 1.005. With a multiplier that counts as zero for the row that holds it
// there, what is left proves no more than 1: an optimum that its bound is not equal
// to is none, and a program that has a point is not infeasible.
func TestGapToTheBoundIsNoOptimum(t *testing.T) {
	const dear, tiny, far = 1, 5e-12, 1e9
	s := solver(t, Program{
		Cost:  []float64{dear, tiny},
		Lower: []float64{1, 0},
		Upper: []float64{10, math.Inf(1)},
		Rows:  []Row{{[]float64{0, 1}, far, math.Inf(1)}},
	})
	got := s.Solve()
	switch {
	case got.Status == Infeasible:
		t.Errorf("infeasible: %+v", got)
	case got.Status == Optimal && math.Abs(got.Objective-(1+tiny*far)) > 1e-5:
		t.Errorf("the cheapest costs %v", got.Objective)
	case got.Status == Optimal && math.Abs(got.Objective-got.Bound) > 1e-5:
		t.Errorf("optimal at %v, but proved is %v only", got.Objective, got.Bound)
	case got.Status != Optimal && got.X != nil:
		t.Errorf("%v, with a point: %v", got.Status, got.X)
	}
}
