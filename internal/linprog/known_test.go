package linprog

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Programs whose answer is known in closed form.

// TestWorked solves
//
//	minimise 2 x + 3 y  under  x + y >= 4,  x <= 3,  y >= 0
//
// by hand: x is cheaper, so x = 3 and y = 1, cost 9. One more unit asked for costs 3
// (all of it y); one unit more of x allowed saves 3 - 2 = 1.
func TestWorked(t *testing.T) {
	s := solver(t, Program{
		Cost: []float64{2, 3}, Lower: []float64{0, 0}, Upper: []float64{3, inf},
		Rows: []Row{{[]float64{1, 1}, 4, inf}},
	})
	got := s.Solve()
	if got.Status != Optimal || got.Objective != 9 || got.Bound != 9 {
		t.Errorf("%v, cost %v, bound %v", got.Status, got.Objective, got.Bound)
	}
	if !slices.Equal(got.X, []float64{3, 1}) {
		t.Errorf("x = %v", got.X)
	}
	if !slices.Equal(got.RowDuals, []float64{3}) || !slices.Equal(got.ColumnDuals, []float64{-1, 0}) {
		t.Errorf("multipliers %v, %v", got.RowDuals, got.ColumnDuals)
	}
}

// TestWorkedInfeasible: x + y >= 4 cannot be met by x <= 1, y <= 2; the row alone is
// the proof.
func TestWorkedInfeasible(t *testing.T) {
	s := solver(t, Program{
		Cost: []float64{0, 1}, Lower: []float64{0, 0}, Upper: []float64{1, 2},
		Rows: []Row{{[]float64{1, 1}, 4, inf}},
	})
	got := s.Solve()
	if got.Status != Infeasible || len(got.Farkas) != 1 || got.Farkas[0] == 0 || got.X != nil {
		t.Errorf("%+v", got)
	}
}

// TestLine fits the line u + v k to the values 0, 1, 0 at k = 0, 1, 2 with the least
// largest error: by symmetry it is level, half-way, with error 1/2 (Chebyshev).
func TestLine(t *testing.T) {
	p := Program{Cost: []float64{0, 0, 1}, Lower: []float64{-inf, -inf, 0}, Upper: []float64{inf, inf, inf}}
	for k, value := range []float64{0, 1, 0} {
		p.Rows = append(p.Rows, within([]float64{1, float64(k)}, 2, 3, -value)...)
	}
	got := solver(t, p).Solve()
	if got.Status != Optimal || !slices.Equal(got.X, []float64{0.5, 0, 0.5}) {
		t.Errorf("%v %v", got.Status, got.X)
	}
}

// The number nearest to all of a sample is half-way between its ends, and that with
// the least sum of distances is the median.
func TestMiddles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sample := rapid.SliceOfN(rapid.Float64Range(-9, 9), 1, 12).Draw(t, "sample")
		half := (slices.Max(sample) - slices.Min(sample)) / 2
		if got := solver(t, spreadOf(sample, 1)).Solve(); got.Status != Optimal || math.Abs(got.Objective-half) > 1e-8 {
			t.Errorf("largest distance: %v %v, want %v", got.Status, got.Objective, half)
		}
		if got := solver(t, spreadOf(sample, len(sample))).Solve(); got.Status != Optimal || math.Abs(got.Objective-sumToMedian(sample)) > 1e-8 {
			t.Errorf("sum of distances: %v %v, want %v", got.Status, got.Objective, sumToMedian(sample))
		}
	})
}

// spreadOf returns: minimise the sum of distances of one number from the sample, with
// one distance for each or, if there is but one, for all.
func spreadOf(sample []float64, distances int) Program {
	p := empty(1 + distances)
	p.Lower[0] = -inf
	for j := range p.Upper {
		p.Upper[j] = inf
		if j > 0 {
			p.Cost[j] = 1
		}
	}
	for k, x := range sample {
		p.Rows = append(p.Rows, within([]float64{1}, 1+k%distances, 1+distances, -x)...)
	}
	return p
}

func sumToMedian(sample []float64) float64 {
	sorted := slices.Sorted(slices.Values(sample))
	sum := 0.0
	for _, x := range sample {
		sum += math.Abs(x - sorted[len(sorted)/2])
	}
	return sum
}

// Plans of few moves have to come out where nothing has to move: the method starts
// from all variables at zero and leaves them there if it can.
func TestNothingMovesForNothing(t *testing.T) {
	p := empty(3)
	for j := range p.Lower {
		p.Lower[j], p.Upper[j] = -5, 5
	}
	p.Lower[2] = 0.5
	p.Rows = []Row{{[]float64{1, 1, 1}, -1, 1}}
	got := solver(t, p).Solve()
	if !slices.Equal(got.X, []float64{0, 0, 0.5}) || got.Pivots != 0 {
		t.Errorf("%v after %d pivots", got.X, got.Pivots)
	}
}
