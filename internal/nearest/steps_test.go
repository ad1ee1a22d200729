package nearest

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// How many steps a search takes, and what it comes to: of rows of few distinct
// numbers, many of which meet in one point, lie on one another or contradict. A step
// that is taken otherwise where several would do changes no answer, and would not be
// seen elsewhere. Where these numbers change on purpose, look at the times before the
// new ones are written here.
func TestStepsOfSearches(t *testing.T) {
	want := []int{ // steps and status
		3, 2, 2, 2, 5, 1, 3, 2, 0, 2, 2, 1, 4, 2, 5, 2, 4, 2, 2, 2, 6, 1, 2, 2,
		2, 1, 2, 2, 0, 2, 4, 2, 2, 2, 0, 2, 5, 2, 3, 2, 4, 2, 5, 1, 5, 2, 2, 2,
		0, 2, 2, 2, 4, 1, 3, 2, 1, 2, 0, 2, 2, 2, 3, 1, 4, 2, 2, 2, 2, 1, 3, 2,
		2, 2, 5, 2, 7, 1, 4, 1, 6, 1, 6, 2, 5, 2, 3, 2, 5, 2, 4, 1, 5, 2, 0, 2,
		3, 2, 5, 2, 5, 2, 2, 2, 0, 2, 2, 2, 7, 2, 3, 2, 1, 2, 4, 2, 3, 2, 11, 1,
	}
	var got []int
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 3))
		n := 2 + r.IntN(5)
		s := New(n)
		for range 4 + r.IntN(12) {
			row := Row{Coefficients: make([]float64, n), Least: float64(r.IntN(4) - 1), Equal: r.IntN(8) == 0}
			for j := range row.Coefficients {
				row.Coefficients[j] = float64(r.IntN(3) - 1)
			}
			s.Add(row)
		}
		status := s.Solve().Status
		got = append(got, s.steps, int(status))
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %d", got)
	}
}

// A point that is so far away that a float64 cannot tell its rows is not told.
func TestFarthestPoint(t *testing.T) {
	for least, want := range map[float64]Status{2e5: Found, 2.5e5: Stopped} {
		s := New(2)
		s.Add(Row{[]float64{1, 0}, least, false})
		if got := s.Solve().Status; got != want {
			t.Errorf("%v: %v, want %v", least, got, want)
		}
	}
}
