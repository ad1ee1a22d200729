package linprog

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

func TestZeroValues(t *testing.T) {
	var s Solver
	if got := s.Solve(); got.Status != Optimal || got.Objective != 0 || got.Bound != 0 || len(got.X) != 0 {
		t.Errorf("zero Solver: %+v", got)
	}
	if err := s.Add(Row{}); err != nil { // nothing at all is to be zero
		t.Fatal(err)
	}
	if got := s.Solve(); got.Status != Optimal || !slices.Equal(got.RowDuals, []float64{0}) {
		t.Errorf("zero Row: %+v", got)
	}
	if err := s.Add(Row{Lower: 1, Upper: 2}); err != nil {
		t.Fatal(err)
	}
	if got := s.Solve(); got.Status != Infeasible || got.Farkas[1] == 0 {
		t.Errorf("nothing is to be one: %+v", got)
	}
	if got := solver(t, Program{}).Solve(); got.Status != Optimal {
		t.Errorf("zero Program: %+v", got)
	}
	if got := (Solution{}); got.Status.String() != "none" {
		t.Errorf("zero Solution: %v", got.Status)
	}
}

func TestStatusWords(t *testing.T) {
	for s, want := range []string{"none", "optimal", "infeasible", "stopped", "none"} {
		if got := Status(s).String(); got != want {
			t.Errorf("%d: %q, want %q", s, got, want)
		}
	}
}

// A run that ends early says so, hands out nothing else, and can be taken up again.
func TestStopped(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	for k := range 50 {
		p := minimax(r)
		want := solver(t, p).Solve()
		if want.Pivots < 3 {
			continue
		}
		s := solver(t, p)
		s.limit = 1
		for n := 0; ; n++ {
			got := s.Solve()
			if got.Status == Stopped && (got.X != nil || got.RowDuals != nil || got.Farkas != nil || got.Pivots == 0) {
				t.Errorf("%d: %+v", k, got)
			}
			if n == 0 && got.Status != Stopped {
				t.Errorf("%d: %v after %d pivots", k, got.Status, got.Pivots)
			}
			if got.Status != Stopped {
				if !same(want, got, 1, 1) {
					t.Errorf("%d: in pieces %v %v, at once %v %v", k, got.Status, got.Objective, want.Status, want.Objective)
				}
				break
			}
			if n > 1000 {
				t.Fatalf("%d: no end", k)
			}
		}
	}
}

// What cannot be proved is not answered: here the numbers of the verification are
// spoilt.
func TestUnprovedIsStopped(t *testing.T) {
	p := good()
	s := solver(t, p)
	s.rows[3] = nan
	if got := s.Solve(); got.Status != Stopped {
		t.Errorf("%+v", got)
	}
	p.Rows[1].Lower, p.Rows[1].Upper = 7, 7 // above the variable's bound
	s = solver(t, p)
	for j := range s.rows {
		s.rows[j] = 0 // the tableau says infeasible, the rows do not
	}
	if got := s.Solve(); got.Status == Optimal {
		t.Errorf("%+v", got)
	}
}

// A tableau spoilt by rounding, here by force, is found out and built anew.
func TestSpoiltTableauIsRebuilt(t *testing.T) {
	stopped := 0
	for k := range 300 {
		r := rand.New(rand.NewPCG(uint64(k), 22))
		p := makers[k%len(makers)].make(r)
		want := solver(t, p).Solve()
		s := solver(t, p)
		s.limit = 1 + r.IntN(4)
		s.Solve()
		s.limit = 0
		for j := range s.tableau {
			s.tableau[j] *= 1 + 1e-3*normal(r)
		}
		for _, v := range s.basic {
			s.value[v] += 1e-3 * normal(r)
		}
		got := s.Solve()
		if got.Status == Stopped {
			stopped++
		} else if !same(want, got, 1, 1) {
			t.Errorf("%d: %v %v, want %v %v", k, got.Status, got.Objective, want.Status, want.Objective)
		}
	}
	if stopped > 6 {
		t.Errorf("%d of 300 were given up", stopped)
	}
}

// The least index alone is slow, but gets there, too.
func TestLeastIndexAlone(t *testing.T) {
	for k := range 1200 {
		r := rand.New(rand.NewPCG(uint64(k), 23))
		p := makers[k%len(makers)].make(r)
		want := solver(t, p).Solve()
		s := solver(t, p)
		s.patience, s.limit = -1, 100000
		if got := s.Solve(); !same(want, got, 1, 1) {
			t.Errorf("%d: %v %v, want %v %v", k, got.Status, got.Objective, want.Status, want.Objective)
		}
	}
}

// TestLarge solves programs of the largest size meant, and some with every vertex
// heavily degenerate.
func TestLarge(t *testing.T) {
	count := 20
	if testing.Short() {
		count = 3
	}
	for _, m := range []maker{
		{"fractions", func(r *rand.Rand) Program { return draw(r, normal, 100, 300) }},
		{"signs", func(r *rand.Rand) Program { return draw(r, signs, 100, 300) }},
		{"one vertex", oneVertex},
		{"trains", func(r *rand.Rand) Program { return train(2 + r.IntN(23)) }},
		{"least largest of many", func(r *rand.Rand) Program { return manyLargest(r, 1) }},
		{"least sum of many", func(r *rand.Rand) Program { return manyLargest(r, 70) }},
	} {
		t.Run(m.name, func(t *testing.T) {
			most := 0
			for k := range count {
				r := rand.New(rand.NewPCG(uint64(k), 24))
				p := stretched(m.make(r), []float64{1, 1e-3, 1e3}[k%3])
				s := solver(t, p)
				got := s.Solve()
				most = max(most, got.Pivots)
				switch got.Status {
				case Optimal:
					checkSolution(t, k, s, p, got)
				case Infeasible:
					checkFarkas(t, k, p, got)
				default:
					t.Errorf("%d: %v after %d pivots", k, got.Status, got.Pivots)
				}
			}
			t.Logf("most pivots: %d", most)
		})
	}
}

// checkFarkas checks the reported proof in floating point.
func checkFarkas(t *testing.T, k int, p Program, got Solution) {
	t.Helper()
	var rows, columns span
	sum := make([]float64, len(p.Cost))
	for i, m := range got.Farkas {
		rows.add(m, p.Rows[i].Lower, p.Rows[i].Upper, 0)
		addTo(sum, m, p.Rows[i].Coefficients)
	}
	for j, m := range sum {
		columns.add(m, p.Lower[j], p.Upper[j], 1e-9)
	}
	if !(max(rows.low-columns.high, columns.low-rows.high) > 0) {
		t.Errorf("%d: no proof: rows come to %v, columns to %v", k, rows, columns)
	}
}

func oneVertex(r *rand.Rand) Program {
	n := 20 + r.IntN(80)
	p := empty(n)
	for j := range n {
		p.Lower[j], p.Upper[j], p.Cost[j] = -3, 3, signs(r)
	}
	for range 2 * n {
		p.Rows = append(p.Rows, Row{coefficients(r, signs, n), 0, inf})
	}
	return p
}

// manyLargest has 30 moves and 70 lines, as many distances or one for all.
func manyLargest(r *rand.Rand, distances int) Program {
	const n = 30
	p := moves(r, n, distances)
	for k := range distances {
		p.Cost[n+k], p.Upper[n+k] = 1, inf
	}
	for k := range 70 {
		a := coefficients(r, normal, n)
		p.Rows = append(p.Rows, within(a, n+k%distances, n+distances, fraction(r))...)
	}
	return p
}

// One bound that never binds, however large, does not blunt the tolerance of others.
func TestLargeBoundsDoNotBlunt(t *testing.T) {
	p := Program{
		Cost: []float64{0, 0}, Lower: []float64{-1e6, -1e6}, Upper: []float64{1e6, 1e6},
		Rows: []Row{{[]float64{1, 1}, 1, inf}, {[]float64{1, 1}, -inf, 1 - 1e-5}, {[]float64{1, -1}, -1, 1}, {[]float64{1, 0}, -1, 1}},
	}
	if got := solver(t, p).Solve(); got.Status != Infeasible {
		t.Errorf("%v: 1 <= x + y <= 1 - 1e-5 was met by %v", got.Status, got.X)
	}
}

// Bounds that should be zero but for rounding are no measure for the others.
func TestNoiseInBounds(t *testing.T) {
	p := Program{
		Cost: []float64{0, 1}, Lower: []float64{-inf, 0}, Upper: []float64{inf, inf},
		Rows: []Row{{[]float64{3, 1}, 1e-17, inf}, {[]float64{3, -1}, -inf, -2e-17}, {[]float64{0.1, 0}, 0.3, 0.3}},
	}
	if got := solver(t, p).Solve(); got.Status != Optimal || math.Abs(got.Objective-9) > 1e-12 {
		t.Errorf("%v %v", got.Status, got.Objective)
	}
}
