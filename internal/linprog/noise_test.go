package linprog

import (
	"math"
	"testing"
)

// Two bounds that ought to be zero are rounding of 1e-15 beside others near one. The
// length that tolerances are measured by must not sink with them, or no answer could
// prove itself.
func TestBoundsOfRounding(t *testing.T) {
	const a, noise = 0.7071067811865475, 8.6e-16
	inf := math.Inf(1)
	p := Program{
		Cost:  []float64{0, 0, 1, 1},
		Lower: []float64{-inf, -inf, 0, 0},
		Upper: []float64{inf, inf, inf, inf},
		Rows: []Row{
			{[]float64{a, -a, 1, 0}, 0, inf}, {[]float64{a, -a, -1, 0}, -inf, 0},
			{[]float64{a, a, 0, 1}, 0, inf}, {[]float64{a, a, 0, -1}, -inf, 0},
			{[]float64{a, -1.417, 0, 0}, 0.2, 0.2},
			{[]float64{0, 0.0134, 0, 0}, noise, noise},
		},
	}
	s, err := New(p)
	if err != nil {
		t.Fatal(err)
	}
	got := s.Solve()
	if got.Status != Optimal || math.Abs(got.Objective-0.4) > 1e-9 {
		t.Errorf("%v, cost %v, want optimal at 0.4", got.Status, got.Objective)
	}
	if s.size < 1e-4 {
		t.Errorf("the length is %v, want that of the bounds that are meant", s.size)
	}
}
