package linprog

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// The verification at the end makes up for most mistakes on the way, at the price of
// time. So the parts are tested here one by one.

// checkTableau checks that every column of the tableau is a solution of the rows, and
// that no reduced cost has the wrong sign.
func checkTableau(t *testing.T, k int, s *Solver) {
	t.Helper()
	for j, v := range s.nonbasic {
		x := make([]float64, len(s.value))
		x[v] = 1
		size := 1.0
		for i, b := range s.basic {
			x[b] = s.line(i)[j]
			size = max(size, math.Abs(x[b]))
		}
		for i := range s.row {
			if miss := dot(s.coefficients(i), x[:s.n]) - x[s.n+i]; math.Abs(miss) > 1e-9*size {
				t.Errorf("%d: row %d misses by %g in column %d", k, i, miss, j)
			}
		}
		d := s.reduced()[j]
		if miss := dot(s.cost, x[:s.n]) - d; math.Abs(miss) > 1e-9*size {
			t.Errorf("%d: reduced cost %d misses by %g", k, j, miss)
		}
		if d > 0 && s.value[v] > s.lower[v] || d < 0 && s.value[v] < s.upper[v] {
			t.Errorf("%d: reduced cost %g at %v within [%v, %v]", k, d, s.value[v], s.lower[v], s.upper[v])
		}
	}
}

// checkScale checks that the largest coefficient of every row is near 1, and that of
// every column, too, unless rows were added.
func checkScale(t *testing.T, k int, s *Solver, columns bool) {
	t.Helper()
	for i := range s.row {
		if top := largestOf(s.coefficients(i)); top > 1 || top <= 0.25 && top != 0 {
			t.Errorf("%d: row %d has largest coefficient %v", k, i, top)
		}
	}
	for j := 0; columns && j < s.n; j++ {
		top := 0.0
		for i := range s.row {
			top = max(top, math.Abs(s.coefficients(i)[j]))
		}
		if top > 1 || top <= 0.5 && top != 0 {
			t.Errorf("%d: column %d has largest coefficient %v", k, j, top)
		}
	}
}

func TestTableau(t *testing.T) {
	for k := range 600 {
		r := rand.New(rand.NewPCG(uint64(k), 25))
		p := makers[k%len(makers)].make(r)
		s := solver(t, p)
		checkScale(t, k, s, true)
		s.limit = 1 + r.IntN(12)
		s.Solve()
		checkTableau(t, k, s)
		for range 3 {
			if err := s.Add(Row{times(coefficients(r, normal, s.n), 1e3), -1, 1}); err != nil {
				t.Fatal(err)
			}
		}
		checkScale(t, k, s, false)
		checkTableau(t, k, s)
		basis := slices.Sorted(slices.Values(s.basic))
		s.refactor()
		checkTableau(t, k, s)
		if now := slices.Sorted(slices.Values(s.basic)); !slices.Equal(now, basis) {
			t.Errorf("%d: the basis was %v and is %v", k, basis, now)
		}
		for i, v := range s.basic {
			if v >= s.n && math.Abs(s.value[v]-s.activity(v-s.n)) > 1e-9*(1+math.Abs(s.value[v])) {
				t.Errorf("%d: row %d has value %v", k, i, s.value[v])
			}
		}
	}
}

// boxes has variables within [0, 1] of costs 1, 2, 3, which together have to reach b.
func boxes(b float64) Program {
	return Program{
		Cost: []float64{1, 2, 3}, Lower: []float64{0, 0, 0}, Upper: []float64{1, 1, 1},
		Rows: []Row{{[]float64{1, 1, 1}, b, inf}},
	}
}

func TestBoundsFlip(t *testing.T) {
	for _, c := range []struct {
		reach  float64
		enters int
		why    string
	}{
		{0.5, 0, "the cheapest is enough"},
		{1, 0, "the cheapest is enough, in full"},
		{1.0005, 1, "a little of the second is needed"},
		{1.8, 1, "the cheapest goes to its other bound, the second enters"},
		{2.5, 2, "two go to their other bounds, the third enters"},
	} {
		s := solver(t, boxes(c.reach))
		got := s.Solve()
		if got.Status != Optimal || got.Pivots != 1 || s.basic[0] != c.enters {
			t.Errorf("%s: %v after %d pivots, variable %d entered", c.why, got.Status, got.Pivots, s.basic[0])
		}
	}
}

func TestLargestPivotAmongTies(t *testing.T) {
	p := Program{
		Cost: []float64{0.25, 1, 0.5}, Lower: []float64{0, 0, 0}, Upper: []float64{inf, inf, inf},
		Rows: []Row{{[]float64{0.25, 1, 0.5}, 2, inf}, {[]float64{1, 1, 1}, -inf, 100}},
	}
	s := solver(t, p)
	if s.Solve(); s.basic[0] != 1 {
		t.Errorf("variable %d entered", s.basic[0])
	}
}

// A pivot of 1e-9 gives way to the last good one that was passed.
func TestSmallPivotGivesWay(t *testing.T) {
	s := solver(t, Program{
		Cost: []float64{1, 1}, Lower: []float64{0, 0}, Upper: []float64{1, inf},
		Rows: []Row{{[]float64{1, 1e-9}, 1.5, inf}, {[]float64{0, 1}, -inf, 1e9}},
	})
	s.begin()
	p, gap := s.leaving()
	if q := s.entering(p, gap, 0); q != 0 || len(s.ratio.passed) != 0 {
		t.Errorf("column %d entered, %d passed", q, len(s.ratio.passed))
	}
	if got := s.Solve(); got.Status != Optimal || math.Abs(got.Objective-(1+5e8)) > 1 {
		t.Errorf("%v %v", got.Status, got.Objective)
	}
}

// A single small pivot is taken only from a tableau that is fresh.
func TestSmallPivotNeedsFreshTableau(t *testing.T) {
	s := solver(t, Program{
		Cost: []float64{1, 1}, Lower: []float64{0, 0}, Upper: []float64{inf, inf},
		Rows: []Row{{[]float64{1, 1e-9}, -inf, inf}, {[]float64{-1, 1e-9}, 1, inf}, {[]float64{0, 1}, -inf, 1e9}},
	})
	s.begin()
	if s.step(); s.run.pivots != 0 || !s.run.fresh {
		t.Errorf("%d pivots, fresh %v", s.run.pivots, s.run.fresh)
	}
	if s.step(); s.run.pivots != 1 || s.run.fresh {
		t.Errorf("%d pivots, fresh %v", s.run.pivots, s.run.fresh)
	}
	if got := s.Solve(); got.Status != Optimal {
		t.Error(got.Status)
	}
}

// In a stall a variable between its bounds goes first, then the least index.
func TestLeastIndex(t *testing.T) {
	s := solver(t, Program{
		Cost: []float64{0, 0, 0, 0}, Lower: []float64{0, 0, -9, -9}, Upper: []float64{9, 9, 9, 9},
		Rows: []Row{{[]float64{-1, 1, 1, 1}, 1, inf}, {[]float64{1, 0, 0, 0}, 1, inf}},
	})
	s.patience = -1
	s.begin()
	p, gap := s.leaving()
	if q := s.entering(p, gap, 0); p != 0 || q != 2 {
		t.Errorf("row %d, column %d", p, q)
	}
}

func TestStallIsSeen(t *testing.T) {
	p := Program{Cost: []float64{0, 1}, Lower: []float64{0, 0}, Upper: []float64{9, 9},
		Rows: []Row{{[]float64{1, 0}, 1, inf}}}
	s := solver(t, p)
	if s.Solve(); s.run.pivots != 1 || s.run.stalled != 1 {
		t.Errorf("free pivot: %d pivots, %d in a stall", s.run.pivots, s.run.stalled)
	}
	p.Rows[0].Coefficients = []float64{0, 1}
	s = solver(t, p)
	if s.Solve(); s.run.pivots != 1 || s.run.stalled != 0 {
		t.Errorf("costly pivot: %d pivots, %d in a stall", s.run.pivots, s.run.stalled)
	}
}

func TestWrongSigns(t *testing.T) {
	s := solver(t, boxes(2.5))
	s.Solve() // the first two at their upper bounds, the row at its lower one
	row := s.n
	for _, c := range []struct {
		v    int
		m    float64
		want float64
		fine bool
	}{
		{row, 3, 3, true},
		{row, -1e-10, 0, true},
		{row, -1e-8, -1e-8, false},
		{row, 1e-12, 0, true},
		{0, -1, -1, true},
		{0, 1e-8, 1e-8, false},
		{0, 1e-10, 0, true},
	} {
		if got := s.signed(c.m, c.v); got != c.want {
			t.Errorf("variable %d: %v for %v", c.v, got, c.m)
		}
		if got := s.complementary([]float64{c.m}, c.v); got != c.fine {
			t.Errorf("variable %d, multiplier %v: %v", c.v, c.m, got)
		}
	}
}

// Of a variable at the wrong one of two bounds a refactored tableau makes the best.
func TestSettle(t *testing.T) {
	s := solver(t, boxes(2.5))
	s.Solve()
	s.value[0] = 0 // where only a dearer variable helps
	s.rebuild()
	if s.value[0] != 1 {
		t.Errorf("x[0] = %v", s.value[0])
	}
	checkTableau(t, 0, s)
}

// A feasible point that is not the cheapest proves nothing, and neither do rows that
// cannot be met by the values that the basis asks for.
func TestProofIsRefused(t *testing.T) {
	p := boxes(2.5)
	p.Upper[2] = 9
	s := solver(t, p)
	s.Solve()
	if _, ok := s.optimal(); !ok {
		t.Error("the optimum was refused")
	}
	s.value[0] = 0 // feasible still, as the third has room, but dearer
	if got, ok := s.optimal(); ok {
		t.Errorf("%v was proved to be cheapest", got.X)
	}
	s = solver(t, boxes(2.5))
	s.Solve()
	s.value[0] = 0 // now the third would have to go to 1.5
	if got, ok := s.optimal(); ok {
		t.Errorf("%v was proved to be feasible", got.X)
	}
	if got, ok := s.infeasible(0); ok {
		t.Errorf("%v proves a feasible program infeasible", got.Farkas)
	}
}
