package nearest_test

import (
	"fmt"
	"testing"

	"example.org/collinear/internal/nearest"
)

// A solver that was used for other rows and other sizes answers as a new one does, to
// the bit: nothing of them is left.
func TestResetLikeNew(t *testing.T) {
	used := nearest.New(0)
	for k := range 400 {
		p := makeInstance(k%len(kinds), 1+k*7%9, uint64(k))
		half := len(p.rows) / 2
		fresh := nearest.New(p.n)
		used.Reset(p.n)
		for _, rows := range [][]nearest.Row{p.rows[:half], p.rows[half:]} {
			used.Add(rows...)
			fresh.Add(rows...)
			if got, want := used.Solve(), fresh.Solve(); fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("%d: %+v, a new solver %+v", k, got, want)
			}
		}
	}
}

// Without variables there is one point, which has no coordinates but is there: it keeps
// all rows, or none does.
func TestNoVariables(t *testing.T) {
	s := nearest.New(0)
	s.Add(nearest.Row{Least: -1}, nearest.Row{Equal: true})
	if got := s.Solve(); got.Status != nearest.Found || got.X == nil {
		t.Errorf("%v %v", got.Status, got.X)
	}
	s.Add(nearest.Row{Least: 1e-9})
	if got := s.Solve(); got.Status != nearest.Empty {
		t.Errorf("%v where the row asks for more than zero", got.Status)
	}
}

// Rows are kept from their first coefficient that is not zero to the last: zeros
// before, between and after them change no bit of the answer.
func TestZerosAroundCoefficients(t *testing.T) {
	for k := range 200 {
		c := chanceOf(uint64(k))
		n := 2 + k%5
		narrow, wide := instance{n: n}, instance{n: n + 5}
		for range 2 * n {
			a, b := c.vector(n), c.NormFloat64()
			narrow.least(b, a...)
			wide.least(b, append(append(make([]float64, 3), a...), 0, 0)...)
		}
		got, want := wide.solve(), narrow.solve()
		if got.Status != want.Status || got.X != nil && fmt.Sprint(got.X[3:3+n]) != fmt.Sprint(want.X) {
			t.Errorf("%d: %v %v, without zeros %v %v", k, got.Status, got.X, want.Status, want.X)
		}
	}
}
