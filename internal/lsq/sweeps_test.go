package lsq

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// The sweeps end by themselves long before their limit, whatever the rank.
func TestSweepsEnd(t *testing.T) {
	most := 0
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(t, "n")
		entry := rapid.OneOf(rapid.Float64Range(-1, 1), rapid.SampledFrom([]float64{0, 1, 1e-9, 1e-17, 1e-170, 1e-310}))
		a := rapid.SliceOfN(entry, n*n, n*n).Draw(t, "columns")
		rank := rapid.IntRange(1, n).Draw(t, "rank")
		for j := rank; j < n; j++ { // the others repeat the first ones, times something
			factor := rapid.SampledFrom([]float64{1, 3, -0.1, 1e-8}).Draw(t, "factor")
			for i := range n {
				a[j*n+i] = factor * a[(j-rank)*n+i]
			}
		}
		v := make([]float64, n*n)
		identity(v, n)
		sweeps := 1
		for ; rotateColumns(a, v, n); sweeps++ {
			if sweeps == maxSweeps {
				t.Fatalf("no end after %d sweeps", sweeps)
			}
		}
		most = max(most, sweeps)
	})
	t.Logf("at most %d sweeps", most)
}

// Equal values keep their order.
func TestSortKeepsEquals(t *testing.T) {
	s, v := []float64{1, 2, 1}, []float64{1, 0, 0, 0, 2, 0, 0, 0, 3}
	sortDescending(s, v)
	if !slices.Equal(s, []float64{2, 1, 1}) || !slices.Equal(v, []float64{0, 2, 0, 1, 0, 0, 0, 0, 3}) {
		t.Errorf("got %v, %v", s, v)
	}
}
