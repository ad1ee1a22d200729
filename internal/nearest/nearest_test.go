package nearest_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/internal/nearest"
)

func least(b float64, a ...float64) nearest.Row { return nearest.Row{Coefficients: a, Least: b} }
func equal(b float64, a ...float64) nearest.Row {
	return nearest.Row{Coefficients: a, Least: b, Equal: true}
}

// solve checks the answer on its way.
func solve(t *testing.T, n int, rows ...nearest.Row) nearest.Point {
	t.Helper()
	p := instance{n: n, rows: rows}
	got := p.solve()
	if got.Status != nearest.Stopped {
		if err := audit(p, got); err != nil {
			t.Error(err)
		}
	}
	return got
}

// Each worked out by hand.
func TestKnownPoints(t *testing.T) {
	for _, row := range []struct {
		name  string
		rows  []nearest.Row
		x     []float64
		duals []float64
	}{
		{"no rows", nil, []float64{0, 0}, []float64{}},
		{"origin inside", []nearest.Row{least(-1, 1, 0)}, []float64{0, 0}, []float64{0}},
		{"origin on the edge", []nearest.Row{least(0, 1, 0)}, []float64{0, 0}, []float64{0}},
		{"half-plane", []nearest.Row{least(10, 3, 4)}, []float64{1.2, 1.6}, []float64{0.4}},
		{"line from above", []nearest.Row{equal(-10, 3, 4)}, []float64{-1.2, -1.6}, []float64{-0.4}},
		{"line through the origin", []nearest.Row{equal(0, 3, 4)}, []float64{0, 0}, []float64{0}},
		{"corner", []nearest.Row{least(1, 1, 0), least(2, 0, 1)}, []float64{1, 2}, []float64{1, 2}},
		{"second row undoes the first", // x+y >= 2 alone gives (1, 1)
			[]nearest.Row{least(2, 1, 1), least(3, 1, 0)}, []float64{3, 0}, []float64{0, 3}},
		{"band", []nearest.Row{least(1, 1, 0), least(-1.5, -1, 0)}, []float64{1, 0}, []float64{1, 0}},
		{"band without width", []nearest.Row{least(1, 1, 0), least(-1, -1, 0)}, []float64{1, 0}, []float64{1, 0}},
		{"duplicate", []nearest.Row{least(1, 1, 0), least(1, 1, 0)}, []float64{1, 0}, []float64{1, 0}},
		{"stronger duplicate", []nearest.Row{least(1, 1, 0), least(4, 2, 0)}, []float64{2, 0}, []float64{0, 1}},
		{"zero row", []nearest.Row{least(-1, 0, 0), least(0, 0, 0), equal(0, 0, 0), least(1, 1, 0)}, []float64{1, 0}, []float64{0, 0, 0, 1}},
		{"zero row within the tolerance", []nearest.Row{least(0.9e-10, 0, 0), equal(-0.9e-10, 0, 0)}, []float64{0, 0}, []float64{0, 0}},
		{"equality pushes an inequality out", []nearest.Row{least(1, 1, 0), equal(5, 1, 0)}, []float64{5, 0}, []float64{0, 5}},
		{"equality with the wrong sign for an inequality", // y = 4 - 2x; nearest of all is x = 1.6
			[]nearest.Row{equal(4, 2, 1), least(2, 1, 0)}, []float64{2, 0}, []float64{0, 2}},
		{"wedge of a hundred-millionth", // the edges meet at (1, 1); 2^-26 is exact
			[]nearest.Row{least(1, 1, 0), least(-1+0x1p-26, -1, 0x1p-26)}, []float64{1, 1}, []float64{1 + 0x1p26, 0x1p26}},
		{"tiny coefficients", []nearest.Row{least(1e-200, 1e-200, 0)}, []float64{1, 0}, []float64{1e200}},
		{"huge coefficients", []nearest.Row{least(1e200, 0, 1e200)}, []float64{0, 1}, []float64{1e-200}},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := solve(t, 2, row.rows...)
			if got.Status != nearest.Found || !near(got.X, row.x, 1e-15) || !near(got.Duals, row.duals, 1e-15) {
				t.Errorf("got %+v, want %v with %v", got, row.x, row.duals)
			}
		})
	}
}

func near(got, want []float64, tolerance float64) bool {
	return slices.EqualFunc(got, want, func(g, w float64) bool {
		return math.Abs(g-w) <= tolerance*(1+math.Abs(w))
	})
}

// Beside each set stands by how little it misses not being empty.
func TestEmpty(t *testing.T) {
	for _, row := range []struct {
		name        string
		empty, twin []nearest.Row
	}{
		{"band inside out", []nearest.Row{least(1, 1, 0), least(-1+1e-9, -1, 0)}, []nearest.Row{least(1, 1, 0), least(-1-1e-9, -1, 0)}},
		{"band inside out within the tolerance", []nearest.Row{least(1, 1, 0), least(-1+3e-10, -1, 0)}, []nearest.Row{least(1, 1, 0), least(-1+1e-10, -1, 0)}},
		{"three half-planes", []nearest.Row{least(1, 1, 1), least(1, -1, 1), least(-0.99, 0, -1)}, []nearest.Row{least(1, 1, 1), least(1, -1, 1), least(-1, 0, -1)}},
		{"parallel lines", []nearest.Row{equal(1, 1, 2), equal(2.5, 2, 4)}, []nearest.Row{equal(1, 1, 2), equal(2, 2, 4)}},
		{"three lines", []nearest.Row{equal(1, 1, 0), equal(1, 0, 1), equal(2.1, 1, 1)}, []nearest.Row{equal(1, 1, 0), equal(1, 0, 1), equal(2, 1, 1)}},
		{"line outside a half-plane", []nearest.Row{equal(-1, 1, 0), least(0, 1, 0)}, []nearest.Row{equal(0, 1, 0), least(0, 1, 0)}},
		{"zero row", []nearest.Row{least(1, 1, 0), least(1.1e-10, 0, 0)}, []nearest.Row{least(1, 1, 0), least(1e-10, 0, 0)}},
		{"zero equality from above", []nearest.Row{equal(-1.1e-10, 0, 0)}, []nearest.Row{equal(-1e-10, 0, 0)}},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := solve(t, 2, row.empty...); got.Status != nearest.Empty {
				t.Errorf("got %+v, want empty", got)
			}
			if got := solve(t, 2, row.twin...); got.Status != nearest.Found {
				t.Errorf("twin: got %+v, want found", got)
			}
		})
	}
}

// What cannot be judged is said to be so, with nothing that could be taken for an
// answer, and an empty set stays empty.
func TestStopped(t *testing.T) {
	for _, row := range []struct {
		name string
		rows []nearest.Row
	}{
		{"not a number", []nearest.Row{least(1, math.NaN(), 0)}},
		{"least not a number", []nearest.Row{least(math.NaN(), 1, 0)}},
		{"infinite coefficient", []nearest.Row{least(1, 0, math.Inf(-1))}},
		{"infinite least", []nearest.Row{least(math.Inf(1), 1, 0)}},
		{"least of a zero row not a number", []nearest.Row{least(math.NaN(), 0, 0)}},
		{"too long", []nearest.Row{least(1, math.MaxFloat64, math.MaxFloat64)}},
		{"too far", []nearest.Row{least(math.MaxFloat64, 0.1, 0)}},
		{"a multiplier larger than any number", []nearest.Row{least(1e-303, 1e-306, 0)}}, // 1000 / 1e-306
		{"so far that rounding exceeds the tolerance", []nearest.Row{equal(0, 1, 7), least(3e7, -4, 1)}},
		{"meets thirty away at a tiny angle", []nearest.Row{least(1, 1, 0), least(-1+3e-10, -1, 9e-12)}},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := solve(t, 2, row.rows...)
			if got.Status != nearest.Stopped || got.X != nil || got.Duals != nil {
				t.Errorf("got %+v, want stopped", got)
			}
		})
	}
}

func TestWrongNumberOfCoefficients(t *testing.T) {
	for _, n := range []int{1, 3} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%d coefficients for 2 variables were taken", n)
				}
			}()
			nearest.New(2).Add(least(0, make([]float64, n)...))
		}()
	}
}

func TestZeroValues(t *testing.T) {
	var none nearest.Point
	if none.Status.String() != "none" || none.Status == nearest.Found {
		t.Errorf("got %v", none.Status)
	}
	if got := nearest.New(0).Solve(); got.Status != nearest.Found || len(got.X) != 0 {
		t.Errorf("no variables: %+v", got)
	}
	var s nearest.Solver
	if got := s.Solve(); got.Status != nearest.Found || len(got.X) != 0 {
		t.Errorf("zero solver: %+v", got)
	}
	s.Add(nearest.Row{}, nearest.Row{Least: 1})
	if got := s.Solve(); got.Status != nearest.Empty || got.Duals[1] != 1 {
		t.Errorf("zero solver with 0 >= 1: %+v", got)
	}
	for status, name := range map[nearest.Status]string{nearest.Found: "found", nearest.Empty: "empty", nearest.Stopped: "stopped"} {
		if status.String() != name {
			t.Errorf("%d is called %v", status, status)
		}
	}
}

// The rows that were handed over are neither kept nor changed.
func TestRowsAreCopied(t *testing.T) {
	rows := []nearest.Row{least(2, 2, 0), least(1, 0, 3)}
	s := nearest.New(2)
	s.Add(rows...)
	rows[0].Coefficients[0], rows[1] = 77, least(9, 9, 9)
	first := s.Solve()
	if !near(first.X, []float64{1, 1.0 / 3}, 1e-15) || rows[0].Coefficients[0] != 77 {
		t.Errorf("got %+v", first)
	}
	first.X[0], first.Duals[0] = 5, 5
	if again := s.Solve(); !near(again.X, []float64{1, 1.0 / 3}, 1e-15) || again.Duals[0] == 5 {
		t.Errorf("got %+v after the caller wrote to the first answer", again)
	}
}
