package nearest

import (
	"math"
	"testing"
)

// The verdict at the end refuses what is not the nearest point. Rounding alone does
// not come to that, so here what a search ended with is spoilt by hand.

// corner is a solver at the point of x >= 1, y >= 2 that is nearest to the origin:
// the corner (1, 2), with the multipliers 1 and 2. The third row is slack.
func corner(t *testing.T) *Solver {
	t.Helper()
	s := New(2)
	s.Add(Row{[]float64{1, 0}, 1, false}, Row{[]float64{0, 1}, 2, false}, Row{[]float64{1, 1}, -9, false})
	if got := s.Solve(); got.Status != Found || s.verdict() != Found {
		t.Fatalf("%+v", got)
	}
	return s
}

func TestVerdictRefuses(t *testing.T) {
	of := func(s *Solver, row int) *active {
		for i := range s.active {
			if s.active[i].row == row {
				return &s.active[i]
			}
		}
		return nil
	}
	for _, row := range []struct {
		name  string
		spoil func(*Solver)
	}{
		{"an active row that is broken", func(s *Solver) { s.x[0] -= 1e-9 }},
		{"an active row that is slack", func(s *Solver) { s.x[0] += 1e-9; of(s, 0).dual += 1e-9 }}, // the sum is right
		{"a row that is not active and broken", func(s *Solver) { s.rows[2].bound = 4 }},
		{"no number", func(s *Solver) { s.x[0] = math.NaN() }},
		{"a point too far to tell", func(s *Solver) { s.x[0] = 1e9 }},
		{"a multiplier of the wrong sign", func(s *Solver) { of(s, 1).dual = -2 }},
		{"a point that is not the sum of its rows", func(s *Solver) { of(s, 1).dual = 2 + 1e-9 }},
		{"a row with a multiplier that is forgotten", func(s *Solver) { s.active = s.active[:1] }},
	} {
		s := corner(t)
		if row.spoil(s); s.verdict() != Stopped {
			t.Errorf("%s: %v", row.name, s.verdict())
		}
	}
}

// A search that the limit of steps ends says so, wherever it is: before a row is
// looked at, or when the row that was in its way has gone and it has not come in
// itself. What it leaves behind is sound: the next search comes to the end.
func TestLimitOfSteps(t *testing.T) {
	for _, left := range []int{0, 1} {
		s := New(2)
		s.Add(Row{[]float64{1, 1}, 2, false})
		if got := s.Solve(); got.Status != Found {
			t.Fatalf("%+v", got)
		}
		s.Add(Row{[]float64{1, 0}, 3, false}) // at (3, 0), where x + y >= 2 has no multiplier
		s.steps = s.limit() - left
		if got := s.search(); got != Stopped {
			t.Errorf("%d steps left: %v", left, got)
		}
		got := s.Solve()
		if got.Status != Found || got.X[0] != 3 || got.X[1] != 0 || got.Duals[0] != 0 || got.Duals[1] != 3 {
			t.Errorf("%d steps left, once more: %+v", left, got)
		}
	}
}

// A multiplier of zero is no negative one, and a row whose multiplier is negative goes,
// also the first.
func TestMultiplierOfZero(t *testing.T) {
	s := corner(t)
	s.active[0].dual = 0
	if l := s.mostNegative(); l != -1 {
		t.Errorf("row %d has a negative multiplier", l)
	}
	s = corner(t)
	s.Add(Row{[]float64{1, 1}, 3, false}) // holds as well
	s.active = append(s.active, active{row: 3, sign: 1})
	if s.verdict() != Found {
		t.Errorf("%v", s.verdict())
	}
	s.active = []active{{row: 2, sign: 1}}
	if s.refresh(); len(s.active) != 0 {
		t.Errorf("%+v stays", s.active)
	}
}

// Noise does not hold a row back, and of two that do so alike the first goes.
func TestBlockingOfEquals(t *testing.T) {
	s := corner(t)
	s.active[0].dual, s.active[1].dual = 1, 1
	copy(s.r, []float64{noise, noise})
	if _, l := s.blocking(); l != -1 {
		t.Errorf("row %d blocks", l)
	}
	copy(s.r, []float64{1, 1})
	if step, l := s.blocking(); step != 1 || l != 0 {
		t.Errorf("row %d blocks at %v", l, step)
	}
}

// A contradiction stands out from the rounding of its terms, and from what its rows
// leave when they ought to cancel.
func TestProofStandsOut(t *testing.T) {
	for _, c := range []struct {
		name      string
		gap, left float64
		want      bool
	}{
		{"more than the rounding", 5e-13, 0, true},
		{"less than the rounding", 3e-13, 0, false},
		{"more than what is left", 1e-3, 4e-6, true},
		{"less than what is left", 1e-3, 6e-6, false},
	} {
		s := New(2)
		s.Add(Row{[]float64{1, 0}, 1, false}, Row{[]float64{-1, c.left}, c.gap - 1, false})
		s.active = []active{{row: 1, sign: 1}}
		s.r[0] = -1
		if s.prove(active{row: 0, sign: 1}); (s.proof != nil) != c.want {
			t.Errorf("%s: %v", c.name, s.proof)
		}
	}
}
