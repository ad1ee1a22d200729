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

// checkCostScale checks that the largest cost is near 1.
func checkCostScale(t *testing.T, k int, s *Solver) {
	t.Helper()
	top := 0.0
	for _, c := range s.cost {
		top = max(top, math.Abs(c))
	}
	if top > 1 || top <= 0.25 && top != 0 {
		t.Errorf("%d: the largest cost is %v", k, top)
	}
}

func TestTableau(t *testing.T) {
	for k := range 600 {
		r := rand.New(rand.NewPCG(uint64(k), 25))
		p := makers[k%len(makers)].make(r)
		s := solver(t, p)
		checkScale(t, k, s, true)
		checkCostScale(t, k, s)
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
	step := func() {
		p, gap := s.leaving()
		s.step(p, s.entering(p, gap, s.tolerance(s.target(p, gap))), gap)
	}
	if step(); s.run.pivots != 0 || !s.run.fresh {
		t.Errorf("%d pivots, fresh %v", s.run.pivots, s.run.fresh)
	}
	if step(); s.run.pivots != 1 || s.run.fresh {
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

func TestLargestOf(t *testing.T) {
	if got := largestOf([]float64{1, -3, 2}); got != 3 {
		t.Errorf("got %v", got)
	}
}

// A gap has to stand out from the tolerance, which goes with the size of the program,
// and from the rounding of large terms; what ought to have cancelled has no say, even
// of a variable without bounds.
func TestContradictionStandsOut(t *testing.T) {
	for _, c := range []struct {
		name               string
		size, at, gap, sum float64 // of the program, the bounds, between them, what is left of the free variable
		y                  float64
		want               bool
	}{
		{"less than the tolerance", 8, 0, 7.9 * margin, 0, 1, false},
		{"more than the tolerance", 8, 0, 8.1 * margin, 0, 1, true},
		{"less than the rounding", 1, 1e6, 5e-8, 0, 1, false},
		{"more than the rounding", 1, 1e6, 7e-8, 0, 1, true},
		{"noise beside a large multiplier", 1, 0, 1, 50 * noise, 100, true},
		{"more than noise", 1, 0, 1, 200 * noise, 100, false},
	} {
		s := solver(t, Program{
			Cost: []float64{0, 0}, Lower: []float64{0, -inf}, Upper: []float64{0, inf},
			Rows: []Row{{[]float64{1, 0}, 0, inf}},
		})
		s.size = c.size
		s.lower[0], s.upper[0], s.lower[2] = c.at, c.at, c.at+c.gap
		if got := s.contradicts([]float64{c.y}, []float64{c.y, c.sum}); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// A nonbasic variable goes where its reduced cost asks, if there is a bound, and else
// stays at a bound or, unless it is that of a row, at zero.
func TestSeat(t *testing.T) {
	const little = Optimality / 1000
	for _, c := range []struct {
		v                                    int // 1: of the row
		lower, upper, value, reduced, wanted float64
	}{
		{0, 0, 5, 3, 1, 0}, {0, 0, 5, 3, -1, 5},
		{0, -inf, 5, 0, 1, 0}, {0, -inf, 5, 5, 1, 5}, {0, 0, inf, 0, -1, 0},
		{0, 0, 5, 0, 0, 0}, {0, 0, 5, 0, -little, 0}, {0, 0, 5, 5, little, 5}, {0, 1, 5, 1, -little, 1},
		{0, 0, 5, 5, Optimality, 5}, {0, 0, 5, 0, -Optimality, 0},
		{0, 1, 5, 3, little, 1}, {0, 1, 5, 3, -little, 5}, {0, 1, 5, 9, little, 5},
		{0, -1, 1, 0, little, 0}, {1, -1, 1, 0, little, -1},
	} {
		s := solver(t, Program{Cost: []float64{0}, Lower: []float64{0}, Upper: []float64{1}, Rows: []Row{{[]float64{1}, 0, 1}}})
		s.lower[c.v], s.upper[c.v], s.value[c.v] = c.lower, c.upper, c.value
		if got := s.seat(c.v, c.reduced); got != c.wanted {
			t.Errorf("%+v: got %v", c, got)
		}
	}
}
